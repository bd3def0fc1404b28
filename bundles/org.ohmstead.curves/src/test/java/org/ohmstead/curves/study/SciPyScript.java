// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.study;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Runs the Python script beside the tests. */
final class SciPyScript {
    static final String PYTHON = "/usr/bin/python3";

    private SciPyScript() {}

    /** Returns the numbers of each line that the script prints. */
    static double[][] run(Path script, List<StudyPoint> points, int runs) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of(PYTHON, "-B", script.toString()));
        if (runs > 0) {
            command.add(Integer.toString(runs));
        }
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        try (OutputStream input = process.getOutputStream()) {
            input.write(StudyData.lines(points).getBytes(StandardCharsets.US_ASCII));
        }
        String output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        int code = process.waitFor();
        if (code != 0) {
            throw new IOException("The script ended with " + code + ": " + output);
        }
        return output.trim()
                .lines()
                .map(line -> Arrays.stream(line.trim().split("\\s+"))
                        .mapToDouble(Double::parseDouble)
                        .toArray())
                .toArray(double[][]::new);
    }

    /** Returns whether Python with SciPy is there. */
    static boolean available() throws InterruptedException {
        try {
            Process process = new ProcessBuilder(PYTHON, "-c", "import numpy, scipy.optimize")
                    .redirectErrorStream(true)
                    .start();
            process.getInputStream().readAllBytes();
            return process.waitFor() == 0;
        } catch (IOException e) {
            System.getLogger("test").log(System.Logger.Level.INFO, "Python is not there", e);
            return false;
        }
    }
}
