// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.ui.tests;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeSet;
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

    /** What may grow by how much: pools of threads, jars that are opened late and what the platform keeps breathe. */
    private static final Map<String, Double> SLACK =
            Map.of("threads", 2.0, "handles", 1.0, "heap in MB", 4.0, "classes", 200.0);

    private final List<Map<String, Double>> looks = new ArrayList<>();

    /** Looks. */
    void look(SwtLeaks toolkit) throws IOException, JMException {
        Map<String, Double> look = new HashMap<>();
        look.put("threads", (double) ManagementFactory.getThreadMXBean().getThreadCount());
        List<String> open = openFiles();
        look.put("handles", (double) open.size());
        look.put("databases", (double)
                open.stream().filter(file -> file.contains(".db")).count());
        look.put("heap in MB", heap());
        look.put("classes", (double) ManagementFactory.getClassLoadingMXBean().getLoadedClassCount());
        look.put("controls", (double) toolkit.controls());
        toolkit.alive().forEach((kind, count) -> look.put("SWT " + kind, (double) count));
        objects(look);
        looks.add(look);
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
    private static void objects(Map<String, Double> look) throws JMException {
        String counted = (String) ManagementFactory.getPlatformMBeanServer()
                .invoke(
                        new ObjectName("com.sun.management:type=DiagnosticCommand"),
                        "gcClassHistogram",
                        new Object[] {new String[0]},
                        new String[] {String[].class.getName()});
        counted.lines().map(COUNTED::matcher).filter(Matcher::matches).forEach(line -> {
            if (!line.group(2).startsWith("org.ohmstead.ui.tests.")) {
                look.put(OBJECTS + line.group(2), Double.valueOf(line.group(1)));
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
        return looks.stream()
                .flatMap(look -> look.keySet().stream())
                .collect(Collectors.toCollection(TreeSet::new))
                .stream()
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
        return median(looks.subList(looks.size() / 3, 2 * looks.size() / 3), figure);
    }

    private double last(String figure) {
        return median(looks.subList(2 * looks.size() / 3, looks.size()), figure);
    }

    private static double median(List<Map<String, Double>> some, String figure) {
        return some.stream()
                .mapToDouble(look -> look.getOrDefault(figure, 0.0))
                .sorted()
                .skip((some.size() - 1) / 2)
                .findFirst()
                .orElseThrow();
    }

    /** Returns the figures in a line. */
    String summary() {
        return Stream.concat(
                        looks.stream()
                                .flatMap(look -> look.keySet().stream())
                                .filter(figure -> !figure.startsWith(OBJECTS))
                                .distinct()
                                .sorted()
                                .map(figure -> line(figure, looks.get(0).getOrDefault(figure, 0.0))),
                        Stream.of("(first look, median of the middle third, of the last)"))
                .collect(Collectors.joining("; "));
    }

    private String line(String figure, double first) {
        return String.format(Locale.ROOT, "%s %.1f, %.1f, %.1f", figure, first, middle(figure), last(figure))
                .replace(".0", "");
    }
}
