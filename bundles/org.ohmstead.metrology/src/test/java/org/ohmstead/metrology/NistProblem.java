// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A nonlinear set of the NIST Statistical Reference Datasets as its file gives it. */
record NistProblem(
        List<Observation> observations,
        double[][] starts,
        double[] certified,
        double[] standardDeviations,
        double rss,
        double residualStandardDeviation) {

    private static final String NUMBER = "([-+0-9.Ee]+)";
    private static final Pattern PARAMETER =
            Pattern.compile("\\s*b\\d =\\s+" + NUMBER + "\\s+" + NUMBER + "\\s+" + NUMBER + "\\s+" + NUMBER + "\\s*");
    private static final int FIRST_DATA_LINE = 60;

    static NistProblem read(String name) throws IOException {
        List<double[]> rows = new ArrayList<>();
        double rss = 0;
        double deviation = 0;
        List<String> lines = lines(name + ".dat");
        for (String line : lines.subList(0, FIRST_DATA_LINE)) {
            Matcher matcher = PARAMETER.matcher(line);
            if (matcher.matches()) {
                double[] row = new double[4];
                Arrays.setAll(row, i -> Double.parseDouble(matcher.group(i + 1)));
                rows.add(row);
            } else if (line.startsWith("Residual Sum of Squares:")) {
                rss = Double.parseDouble(line.substring(line.indexOf(':') + 1).trim());
            } else if (line.startsWith("Residual Standard Deviation:")) {
                deviation =
                        Double.parseDouble(line.substring(line.indexOf(':') + 1).trim());
            }
        }
        List<Observation> observations = new ArrayList<>();
        for (String line : lines.subList(FIRST_DATA_LINE, lines.size())) {
            if (!line.isBlank()) {
                String[] fields = line.trim().split("\\s+");
                observations.add(Observation.of(Double.parseDouble(fields[1]), Double.parseDouble(fields[0])));
            }
        }
        return new NistProblem(
                observations,
                new double[][] {column(rows, 0), column(rows, 1)},
                column(rows, 2),
                column(rows, 3),
                rss,
                deviation);
    }

    static double[][] readTable(String file) throws IOException {
        List<String> lines = lines(file);
        return lines.subList(1, lines.size()).stream()
                .filter(line -> !line.isBlank())
                .map(line -> Arrays.stream(line.split(","))
                        .mapToDouble(Double::parseDouble)
                        .toArray())
                .toArray(double[][]::new);
    }

    /** NIST's measure of agreement: the number of correct significant digits, at most 15. */
    static double correctDigits(double actual, double certified) {
        double error = Math.abs(actual - certified) / Math.abs(certified);
        return error > 0 ? Math.min(15, -Math.log10(error)) : 15;
    }

    private static double[] column(List<double[]> rows, int index) {
        return rows.stream().mapToDouble(row -> row[index]).toArray();
    }

    private static List<String> lines(String file) throws IOException {
        try (InputStream stream = NistProblem.class.getResourceAsStream("nist/" + file)) {
            return new String(stream.readAllBytes(), StandardCharsets.US_ASCII)
                    .lines()
                    .toList();
        }
    }
}
