// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.benchmarks;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Runs the product in a heap of a given size and reads from Java's own log how much of it was ever taken. */
final class HeapRun {
    /** Such as "Pause Full (System.gc()) 23M->12M(64M)". */
    private static final Pattern PAUSE = Pattern.compile("(\\d+)M->(\\d+)M\\((\\d+)M\\)");

    private static final Pattern HEAP_AT_EXIT = Pattern.compile("(?:generation|space)\\s+total (\\d+)K, used (\\d+)K");
    private static final double KIBIBYTES = 1024;
    private static final long MOST_MINUTES = 20;

    private final Room room;
    private final int heapMegabytes;
    private String said = "";
    private OptionalDouble mostMegabytes = OptionalDouble.empty();

    /** Prepares a run with a heap of so many megabytes (of 1024 x 1024 bytes). */
    HeapRun(Room room, int heapMegabytes) {
        this.room = room;
        this.heapMegabytes = heapMegabytes;
    }

    /**
     * Runs the product to its end.
     *
     * @param before words before the product's start script, such as those of a screen
     * @param javaOptions further options of Java
     * @param environment what else is in the environment
     * @param words the product's words
     * @return the exit code
     */
    int run(List<String> before, String javaOptions, Map<String, String> environment, String... words)
            throws IOException, InterruptedException {
        Path log = room.folder().resolve("gc.log");
        Path output = room.folder().resolve("output.txt");
        Files.deleteIfExists(log);
        List<String> command = new ArrayList<>(before);
        command.add(room.product().resolve("ohmstead").toString());
        command.addAll(List.of(words));
        ProcessBuilder builder =
                new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(output.toFile());
        builder.environment().putAll(environment);
        builder.environment().put("JAVA_HOME", System.getProperty("java.home"));
        builder.environment()
                .put("OHMSTEAD_STATE", room.folder().resolve("state").toString());
        builder.environment()
                .put(
                        "OHMSTEAD_JAVA_OPTIONS",
                        "-Xmx" + heapMegabytes + "m -XX:+ExitOnOutOfMemoryError -Xlog:gc,gc+heap+exit:file=" + log + " "
                                + javaOptions);
        Process process = builder.start();
        if (!process.waitFor(MOST_MINUTES, TimeUnit.MINUTES)) {
            process.destroyForcibly();
            throw new IOException("The product did not end within " + MOST_MINUTES + " minutes.");
        }
        said = Files.readString(output, StandardCharsets.UTF_8);
        mostMegabytes = Files.exists(log) ? most(Files.readAllLines(log)) : OptionalDouble.empty();
        return process.exitValue();
    }

    /** Returns what the product said. */
    String said() {
        return said;
    }

    /** Returns the most of the heap that was in use before a collection or at the end, in megabytes. */
    OptionalDouble mostMegabytes() {
        return mostMegabytes;
    }

    /** Reads Java's log of its collections, and of the heap at its end. */
    static OptionalDouble most(List<String> lines) {
        double most = 0;
        double atExit = 0;
        for (String line : lines) {
            Matcher pause = PAUSE.matcher(line);
            if (pause.find()) {
                most = Math.max(most, Double.parseDouble(pause.group(1)));
            }
            Matcher heap = HEAP_AT_EXIT.matcher(line);
            if (heap.find() && !line.contains("Metaspace")) {
                atExit += Double.parseDouble(heap.group(2)) / KIBIBYTES;
            }
        }
        return Math.max(most, atExit) > 0 ? OptionalDouble.of(Math.max(most, atExit)) : OptionalDouble.empty();
    }
}
