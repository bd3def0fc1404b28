// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import java.util.Arrays;

/**
 * Sums of many samples times the cosines and sines of an angle and its multiples. The samples are taken as the rows of a table. Rows are
 * first added up column by column, each with its own factors, where one loop runs along a row with nothing to wait for; what turns from
 * column to column comes in once, at the end. Rows at the same distance from the middle of the table go together: their sums meet the
 * cosines only, their differences the sines.
 */
final class ColumnProjection {
    /** With fewer samples the columns themselves would be most of the work. */
    static final int LEAST_SAMPLES = 4096;

    private static final int COLUMNS = 128;
    /** Pairs of rows that are added in one go, so that the sums are fetched and put back less often. */
    private static final int TOGETHER = 4;
    /** Groups of rows whose factors come from those before by turning; then they are worked out anew, so that rounding does not grow. */
    private static final int RUN = 16;

    private final double[] samples;
    private final double radiansPerSample;
    private final int orders;
    private final int rows;
    private final double[] plain = new double[COLUMNS];
    private final double[][] evenSums;
    private final double[][] oddSums;
    private final double[][] even = new double[TOGETHER][COLUMNS];
    private final double[][] odd = new double[TOGETHER][COLUMNS];
    private final double[][] cosines;
    private final double[][] sines;
    private final double[] turnCosines;
    private final double[] turnSines;

    private ColumnProjection(double[] samples, double radiansPerSample, int orders) {
        this.samples = samples;
        this.radiansPerSample = radiansPerSample;
        this.orders = orders;
        this.rows = samples.length / COLUMNS;
        evenSums = new double[orders][COLUMNS];
        oddSums = new double[orders][COLUMNS];
        cosines = new double[TOGETHER][orders];
        sines = new double[TOGETHER][orders];
        turnCosines = new double[orders];
        turnSines = new double[orders];
        double turn = radiansPerSample * COLUMNS * TOGETHER;
        HarmonicBasis.multiples(Math.cos(turn), Math.sin(turn), turnCosines, turnSines);
    }

    /** Returns the sums as {@link HarmonicBasis#project} does. */
    static double[] sums(double[] samples, double radiansPerSample, int orders) {
        ColumnProjection projection = new ColumnProjection(samples, radiansPerSample, orders);
        projection.addPairs();
        projection.addSingle((projection.rows - 1) / 2, projection.rows % 2 == 0 ? 0 : COLUMNS);
        projection.addSingle(projection.rows, samples.length % COLUMNS);
        return projection.total();
    }

    /** How far the middle of a row lies behind that of the table, in samples. */
    private double distance(int row) {
        return (row - 0.5 * (rows - 1)) * COLUMNS;
    }

    /** All rows but the one in the middle, from the middle outwards. */
    private void addPairs() {
        int pairs = rows / 2;
        int groups = pairs / TOGETHER;
        for (int group = 0; group < groups; group++) {
            for (int i = 0; i < TOGETHER; i++) {
                int upper = rows - pairs + group * TOGETHER + i;
                if (group % RUN == 0) {
                    setFactors(i, distance(upper));
                } else {
                    turn(cosines[i], sines[i], turnCosines, turnSines);
                }
                fold(samples, upper * COLUMNS, (rows - 1 - upper) * COLUMNS, even[i], odd[i]);
                add(plain, even[i], 1, COLUMNS);
            }
            for (int n = 0; n < orders; n++) {
                addFour(evenSums[n], even, cosines[0][n], cosines[1][n], cosines[2][n], cosines[3][n]);
                addFour(oddSums[n], odd, sines[0][n], sines[1][n], sines[2][n], sines[3][n]);
            }
        }
        for (int upper = rows - pairs + groups * TOGETHER; upper < rows; upper++) {
            setFactors(0, distance(upper));
            fold(samples, upper * COLUMNS, (rows - 1 - upper) * COLUMNS, even[0], odd[0]);
            add(plain, even[0], 1, COLUMNS);
            for (int n = 0; n < orders; n++) {
                add(evenSums[n], even[0], cosines[0][n], COLUMNS);
                add(oddSums[n], odd[0], sines[0][n], COLUMNS);
            }
        }
    }

    /** A row by itself, as long as it is. */
    private void addSingle(int row, int width) {
        if (width == 0) {
            return;
        }
        setFactors(0, distance(row));
        System.arraycopy(samples, row * COLUMNS, even[0], 0, width);
        add(plain, even[0], 1, width);
        for (int n = 0; n < orders; n++) {
            add(evenSums[n], even[0], cosines[0][n], width);
            add(oddSums[n], even[0], sines[0][n], width);
        }
    }

    private void setFactors(int place, double distance) {
        double angle = radiansPerSample * distance;
        HarmonicBasis.multiples(Math.cos(angle), Math.sin(angle), cosines[place], sines[place]);
    }

    private static void turn(double[] cosines, double[] sines, double[] turnCosines, double[] turnSines) {
        for (int n = 0; n < cosines.length; n++) {
            double cosine = cosines[n];
            double sine = sines[n];
            cosines[n] = cosine * turnCosines[n] - sine * turnSines[n];
            sines[n] = sine * turnCosines[n] + cosine * turnSines[n];
        }
    }

    private static void fold(double[] samples, int upper, int lower, double[] even, double[] odd) {
        for (int q = 0; q < COLUMNS; q++) {
            double after = samples[upper + q];
            double before = samples[lower + q];
            even[q] = after + before;
            odd[q] = after - before;
        }
    }

    private static void add(double[] sums, double[] row, double factor, int width) {
        for (int q = 0; q < width; q++) {
            sums[q] += factor * row[q];
        }
    }

    private static void addFour(double[] sums, double[][] rows, double a, double b, double c, double d) {
        double[] first = rows[0];
        double[] second = rows[1];
        double[] third = rows[2];
        double[] fourth = rows[3];
        for (int q = 0; q < COLUMNS; q++) {
            sums[q] += a * first[q] + b * second[q] + (c * third[q] + d * fourth[q]);
        }
    }

    /** The columns, each turned by its distance from the middle one, and all by that of the table from the middle of the record. */
    private double[] total() {
        double[] localCosines = new double[orders];
        double[] localSines = new double[orders];
        double[] columnCosines = new double[orders];
        double[] columnSines = new double[orders];
        for (int q = 0; q < COLUMNS / 2; q++) {
            int mirrored = COLUMNS - 1 - q;
            double angle = radiansPerSample * (mirrored - 0.5 * (COLUMNS - 1));
            HarmonicBasis.multiples(Math.cos(angle), Math.sin(angle), columnCosines, columnSines);
            for (int n = 0; n < orders; n++) {
                double evenSum = evenSums[n][mirrored] + evenSums[n][q];
                double evenDifference = evenSums[n][mirrored] - evenSums[n][q];
                double oddSum = oddSums[n][mirrored] + oddSums[n][q];
                double oddDifference = oddSums[n][mirrored] - oddSums[n][q];
                localCosines[n] += evenSum * columnCosines[n] - oddDifference * columnSines[n];
                localSines[n] += evenDifference * columnSines[n] + oddSum * columnCosines[n];
            }
        }
        double angle = radiansPerSample * 0.5 * (rows * COLUMNS - samples.length);
        HarmonicBasis.multiples(Math.cos(angle), Math.sin(angle), columnCosines, columnSines);
        double[] sums = new double[2 * orders + 1];
        sums[0] = Arrays.stream(plain).sum();
        for (int n = 0; n < orders; n++) {
            sums[n + 1] = columnCosines[n] * localCosines[n] - columnSines[n] * localSines[n];
            sums[orders + n + 1] = columnSines[n] * localCosines[n] + columnCosines[n] * localSines[n];
        }
        return sums;
    }
}
