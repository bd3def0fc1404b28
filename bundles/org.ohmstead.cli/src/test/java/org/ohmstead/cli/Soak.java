// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;

/** What a long run may not have more and more of, looked at again and again. */
final class Soak {
    private static final Path HANDLES = Path.of("/proc/self/fd");
    private static final double MEGABYTE = 1 << 20;

    private final List<Look> looks = new ArrayList<>();

    /**
     * One look.
     *
     * @param threads how many threads there are
     * @param handles how many files and sockets are open; 0 where the system does not say
     * @param databases how many of them belong to a database
     * @param heapMegabytes what of the heap is in use after a full collection
     * @param classes how many classes are loaded
     */
    record Look(int threads, int handles, int databases, double heapMegabytes, int classes) {}

    /** Looks. */
    Look look() throws IOException {
        List<String> open = openFiles();
        Look look = new Look(
                ManagementFactory.getThreadMXBean().getThreadCount(),
                open.size(),
                (int) open.stream().filter(file -> file.contains(".db")).count(),
                heap(),
                ManagementFactory.getClassLoadingMXBean().getLoadedClassCount());
        looks.add(look);
        return look;
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
        List<String> growth = new ArrayList<>();
        grown(growth, "threads", Look::threads, 1);
        grown(growth, "handles", Look::handles, 2);
        grown(growth, "databases", Look::databases, 0);
        grown(growth, "heap in MB", Look::heapMegabytes, 2 + 0.05 * middle(Look::heapMegabytes));
        grown(growth, "classes", Look::classes, 60);
        return growth;
    }

    private void grown(List<String> growth, String what, ToDoubleFunction<Look> figure, double slack) {
        double before = middle(figure);
        double now = last(figure);
        if (now > before + slack) {
            growth.add(String.format(Locale.ROOT, "%s: from %.1f to %.1f", what, before, now));
        }
    }

    private double middle(ToDoubleFunction<Look> figure) {
        return median(looks.subList(looks.size() / 3, 2 * looks.size() / 3), figure);
    }

    private double last(ToDoubleFunction<Look> figure) {
        return median(looks.subList(2 * looks.size() / 3, looks.size()), figure);
    }

    private static double median(List<Look> some, ToDoubleFunction<Look> figure) {
        return some.stream()
                .mapToDouble(figure)
                .sorted()
                .skip(some.size() / 2)
                .findFirst()
                .orElseThrow();
    }

    /** Returns the figures in a line. */
    String summary() {
        Look first = looks.get(0);
        return String.format(
                Locale.ROOT,
                "threads %d, %.0f, %.0f; handles %d, %.0f, %.0f; of databases %d, %.0f, %.0f; heap in MB %.1f, %.1f,"
                        + " %.1f; classes %d, %.0f, %.0f (first look, median of the middle third, of the last)",
                first.threads(),
                middle(Look::threads),
                last(Look::threads),
                first.handles(),
                middle(Look::handles),
                last(Look::handles),
                first.databases(),
                middle(Look::databases),
                last(Look::databases),
                first.heapMegabytes(),
                middle(Look::heapMegabytes),
                last(Look::heapMegabytes),
                first.classes(),
                middle(Look::classes),
                last(Look::classes));
    }
}
