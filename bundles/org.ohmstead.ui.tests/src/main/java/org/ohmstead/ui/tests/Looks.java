// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.ui.tests;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.management.JMException;
import javax.management.ObjectName;

/** What a workbench that works all day may not have more and more of, looked at again and again. */
final class Looks {
    private static final Path HANDLES = Path.of("/proc/self/fd");
    private static final double MEGABYTE = 1 << 20;
    /** A line of the virtual machine's own count: rank, instances, bytes, class. */
    private static final Pattern COUNTED = Pattern.compile("\\s*\\d+:\\s+(\\d+)\\s+\\d+\\s+(org\\.ohmstead\\.\\S+).*");

    private static final String OBJECTS = "objects of ";
    private static final int MORE_LOOKS = 16;

    /** What may grow by how much: pools of threads, jars that are opened late and what the platform keeps breathe. */
    private static final Map<String, Double> SLACK =
            Map.of("threads", 2.0, "handles", 1.0, "heap in MB", 4.0, "classes", 200.0);

    /** Of each figure what was seen, look by look; kept small, as the heap that is looked at holds it too. */
    private final Map<String, double[]> figures = new TreeMap<>();

    private int looks;

    /** Looks. */
    void look(SwtLeaks toolkit) throws IOException, JMException {
        put("threads", ManagementFactory.getThreadMXBean().getThreadCount());
        List<String> open = openFiles();
        put("handles", open.size());
        put("databases", open.stream().filter(file -> file.contains(".db")).count());
        put("heap in MB", heap());
        put("classes", ManagementFactory.getClassLoadingMXBean().getLoadedClassCount());
        put("controls", toolkit.controls());
        toolkit.alive().forEach((kind, count) -> put("SWT " + kind, count));
        objects();
        looks++;
    }

    private void put(String figure, double value) {
        double[] seen = figures.getOrDefault(figure, new double[0]);
        if (looks >= seen.length) {
            seen = Arrays.copyOf(seen, looks + MORE_LOOKS);
            figures.put(figure, seen);
        }
        seen[looks] = value;
    }

    private static double heap() {
        double least = Double.MAX_VALUE;
        for (int round = 0; round < 3; round++) {
            System.gc();
            least = Math.min(
                    least,
                    ManagementFactory.getMemoryMXBean().getHeapMemoryUsage().getUsed() / MEGABYTE);
        }
        return least;
    }

    /** Counts the objects of our classes that something still holds. */
    private void objects() throws JMException {
        String counted = (String) ManagementFactory.getPlatformMBeanServer()
                .invoke(
                        new ObjectName("com.sun.management:type=DiagnosticCommand"),
                        "gcClassHistogram",
                        new Object[] {new String[0]},
                        new String[] {String[].class.getName()});
        counted.lines().map(COUNTED::matcher).filter(Matcher::matches).forEach(line -> {
            if (!line.group(2).startsWith("org.ohmstead.ui.tests.")) {
                put(OBJECTS + line.group(2), Double.parseDouble(line.group(1)));
            }
        });
    }

    private static List<String> openFiles() throws IOException {
        List<String> open = new ArrayList<>();
        if (!Files.isDirectory(HANDLES)) {
            return open;
        }
        try (Stream<Path> handles = Files.list(HANDLES)) {
            for (Path handle : handles.toList()) {
                try {
                    open.add(Files.readSymbolicLink(handle).toString());
                } catch (IOException closedMeanwhile) {
                    continue;
                }
            }
        }
        return open;
    }

    /** Returns what there is more of in the last third than in the middle one, each a sentence. */
    List<String> growth() {
        return figures.keySet().stream()
                .filter(figure -> last(figure) > middle(figure) + slack(figure))
                .map(figure ->
                        String.format(Locale.ROOT, "%s: from %.1f to %.1f", figure, middle(figure), last(figure)))
                .toList();
    }

    // Whatever is just being closed may still be there, once; what a round leaves behind is more by then.
    private static double slack(String figure) {
        return SLACK.getOrDefault(figure, figure.startsWith(OBJECTS) ? 1.0 : 0.0);
    }

    private double middle(String figure) {
        return median(figure, looks / 3, 2 * looks / 3);
    }

    private double last(String figure) {
        return median(figure, 2 * looks / 3, looks);
    }

    private double median(String figure, int from, int to) {
        // What was not there lately has a shorter column.
        double[] some = Arrays.copyOfRange(Arrays.copyOf(figures.get(figure), looks), from, to);
        Arrays.sort(some);
        return some[(some.length - 1) / 2];
    }

    /** Returns the figures in a line. */
    String summary() {
        return Stream.concat(
                        figures.keySet().stream()
                                .filter(figure -> !figure.startsWith(OBJECTS))
                                .map(figure -> line(figure, figures.get(figure)[0])),
                        Stream.of("(first look, median of the middle third, of the last)"))
                .collect(Collectors.joining("; "));
    }

    private String line(String figure, double first) {
        return String.format(Locale.ROOT, "%s %.1f, %.1f, %.1f", figure, first, middle(figure), last(figure))
                .replace(".0", "");
    }
}
