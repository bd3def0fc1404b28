// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.benchmarks;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Where a row works.
 *
 * @param checkout top folder of the checkout
 * @param product folder of the built product
 * @param folder a folder for the row's files; removed afterwards
 * @param rounds how often ours and the reference take turns
 */
public record Room(Path checkout, Path product, Path folder, int rounds) {
    private static final Path STATUS = Path.of("/proc/self/status");
    private static final String CORES = "Cpus_allowed_list:";

    /** Returns the same with another folder to work in. */
    Room in(Path other) {
        return new Room(checkout, product, other, rounds);
    }

    /** Returns a script of this bundle. */
    public Path script(String name) {
        return checkout.resolve("bundles/org.ohmstead.benchmarks/src/main/python")
                .resolve(name);
    }

    /** Returns the words that hold a program to one core of those this program may use, or none where that cannot be done. */
    public static List<String> onOneCore() throws IOException {
        Optional<String> core = lastCore();
        return core.isPresent() && Files.isExecutable(Path.of("/usr/bin/taskset"))
                ? List.of("/usr/bin/taskset", "-c", core.get())
                : List.of();
    }

    private static Optional<String> lastCore() throws IOException {
        if (!Files.isReadable(STATUS)) {
            return Optional.empty();
        }
        // Such as "0-1" or "2,5-7"; the first core has more of the system's own work.
        return Files.readAllLines(STATUS).stream()
                .filter(line -> line.startsWith(CORES))
                .map(line -> line.substring(CORES.length()).strip().replaceAll(".*[,-]", ""))
                .findFirst();
    }

    /** Returns a program that starts Java, on one core if wanted, to be given to what asks for a path of Java. */
    public Path java(boolean oneCore) throws IOException {
        Path java = Path.of(System.getProperty("java.home"), "bin", "java");
        List<String> words = oneCore ? onOneCore() : List.of();
        if (words.isEmpty()) {
            return java;
        }
        Path script = folder.resolve("java-on-one-core");
        if (!Files.exists(script)) {
            Files.writeString(script, "#!/bin/sh\nexec " + String.join(" ", words) + " '" + java + "' \"$@\"\n");
            if (!script.toFile().setExecutable(true)) {
                throw new IOException(script + " could not be made executable.");
            }
        }
        return script;
    }

    /** Returns the command of a Python script of this bundle with its words, on one core if wanted. */
    public List<String> python(boolean oneCore, String script, List<String> words) throws IOException {
        List<String> command = new ArrayList<>(oneCore ? onOneCore() : List.of());
        command.addAll(List.of("/usr/bin/python3", script(script).toString()));
        command.addAll(words);
        return command;
    }
}
