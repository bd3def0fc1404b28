// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.benchmarks;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;

/**
 * A script that does the reference's work: it prints its figures ("figure NAME NUMBER"), then "ready", and then, for each line with a
 * number that it reads, does the work so many times and prints the seconds of each ("seconds S S ..."). It lives until it is closed, so that
 * loading its libraries and planning count for nothing.
 */
public final class Reference implements AutoCloseable {
    private static final long LAST_SECONDS = 10;

    private final Process process;
    private final BufferedReader out;
    private final PrintWriter in;
    private final Path errors;
    private final Map<String, Double> figures = new LinkedHashMap<>();

    private Reference(Process process, Path errors) {
        this.process = process;
        this.errors = errors;
        this.out = new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
        this.in = new PrintWriter(process.getOutputStream(), true, StandardCharsets.UTF_8);
    }

    /**
     * Starts a script and waits until it is ready.
     *
     * @param room where it works
     * @param command the program and its words
     */
    public static Reference start(Room room, List<String> command) throws IOException {
        Path errors = Files.createTempFile(room.folder(), "reference", ".log");
        ProcessBuilder builder = new ProcessBuilder(command).redirectError(errors.toFile());
        // One thread for linear algebra, so that a core is a core.
        for (String threads : List.of("OPENBLAS_NUM_THREADS", "OMP_NUM_THREADS", "MKL_NUM_THREADS")) {
            builder.environment().put(threads, "1");
        }
        // What holds the library to the instructions of another processor would slow it down.
        builder.environment().keySet().removeAll(List.of("OPENBLAS_CORETYPE", "OPENBLAS_L2_SIZE"));
        builder.environment().put("PYTHONDONTWRITEBYTECODE", "1");
        Reference reference = new Reference(builder.start(), errors);
        try {
            reference.awaitReady();
        } catch (IOException e) {
            reference.close();
            throw e;
        }
        return reference;
    }

    private void awaitReady() throws IOException {
        for (String line = line(); !line.equals("ready"); line = line()) {
            String[] words = line.split(" ");
            if (words.length == 3 && words[0].equals("figure")) {
                figures.put(words[1], Double.parseDouble(words[2]));
            }
        }
    }

    private String line() throws IOException {
        String line = out.readLine();
        if (line == null) {
            throw new IOException(
                    "The reference ended too early: " + Files.readString(errors).strip());
        }
        return line;
    }

    /** Returns the figures that it came to, by name. */
    public Map<String, Double> figures() {
        return figures;
    }

    /** Has it do the work some times and returns the seconds of each. */
    public double[] seconds(int times) throws IOException {
        in.println(times);
        String line = line();
        String[] words = line.split(" ");
        if (!words[0].equals("seconds") || words.length != times + 1) {
            throw new IOException("The reference said \"" + line + "\" where " + times + " times were asked for.");
        }
        double[] seconds = new double[times];
        for (int i = 0; i < times; i++) {
            seconds[i] = Double.parseDouble(words[i + 1]);
        }
        return seconds;
    }

    @Override
    public void close() {
        in.close();
        try {
            if (!process.waitFor(LAST_SECONDS, TimeUnit.SECONDS)) {
                process.destroyForcibly();
            }
        } catch (InterruptedException e) {
            process.destroyForcibly();
            Thread.currentThread().interrupt();
        }
    }
}
