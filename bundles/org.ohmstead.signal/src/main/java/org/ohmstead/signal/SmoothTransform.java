// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

/**
 * The Fourier transform of a real record whose length is even and otherwise a product of 2, 3 and 5. Pairs of samples are taken as complex
 * numbers and laid out as a rectangle; its columns are transformed, turned, and then its rows, each time many at once. So a long record
 * passes through the memory twice, and the rest happens in the processor's cache. One thread may use it at a time.
 */
final class SmoothTransform {
    private static final int LEAST_SIZE = 1024;
    private static final int WIDTH = 128;
    /**
     * Rows are 25 lines of the processor's cache apart, which is near the golden section of a page: rows that are used together do not fall
     * on the same places.
     */
    private static final int ROW_LENGTH = 198;

    private static final int FINE = 1024;
    private static final int FINE_BITS = 10;

    private final int size;
    private final int half;
    private final int rows;
    private final int columns;
    /** From one column to the next of what lies between the two steps: an odd number of the cache's lines. */
    private final int stride;

    private final ColumnTransform down;
    private final ColumnTransform across;
    private final double[][] re;
    private final double[][] im;
    private final double[] middleRe;
    private final double[] middleIm;
    private final double[][] cosines;
    private final double[][] sines;
    private final double[] fineCosines = new double[FINE];
    private final double[] fineSines = new double[FINE];
    private final double[] coarseCosines;
    private final double[] coarseSines;

    SmoothTransform(int size) {
        this.size = size;
        half = size / 2;
        rows = divisorNearRoot(half);
        columns = half / rows;
        stride = (rows + 7) / 16 * 16 + 8;
        down = new ColumnTransform(rows);
        across = new ColumnTransform(columns);
        re = new double[columns][ROW_LENGTH];
        im = new double[columns][ROW_LENGTH];
        middleRe = new double[stride * columns];
        middleIm = new double[stride * columns];
        int width = Math.min(WIDTH, columns);
        cosines = new double[rows][width];
        sines = new double[rows][width];
        for (int k = 0; k < rows; k++) {
            for (int i = 0; i < width; i++) {
                double angle = 2 * Math.PI * ((double) k * i) / half;
                cosines[k][i] = Math.cos(angle);
                sines[k][i] = -Math.sin(angle);
            }
        }
        coarseCosines = new double[size / FINE + 1];
        coarseSines = new double[size / FINE + 1];
        fill(fineCosines, fineSines, 2 * Math.PI / size);
        fill(coarseCosines, coarseSines, 2 * Math.PI * FINE / size);
    }

    private static void fill(double[] cosines, double[] sines, double step) {
        for (int i = 0; i < cosines.length; i++) {
            cosines[i] = Math.cos(step * i);
            sines[i] = -Math.sin(step * i);
        }
    }

    int size() {
        return size;
    }

    /** Whether records of a length can be transformed this way. */
    static boolean serves(int size) {
        return size >= LEAST_SIZE && size % 2 == 0 && ColumnTransform.serves(size / 2);
    }

    /** The largest divisor that is not above the square root. */
    private static int divisorNearRoot(int number) {
        int divisor = (int) Math.sqrt(number);
        while (number % divisor != 0) {
            divisor--;
        }
        return divisor;
    }

    /** Writes the sums of x_t exp(-2 pi i k t / n) for k = 0 to n/2. */
    void forward(double[] samples, double[] real, double[] imaginary) {
        for (int from = 0; from < columns; from += WIDTH) {
            downColumns(samples, from, Math.min(WIDTH, columns - from));
        }
        for (int from = 0; from < rows; from += WIDTH) {
            int width = Math.min(WIDTH, rows - from);
            for (int j = 0; j < columns; j++) {
                System.arraycopy(middleRe, j * stride + from, re[j], 0, width);
                System.arraycopy(middleIm, j * stride + from, im[j], 0, width);
            }
            across.forward(re, im, width);
            for (int k = 0; k < columns; k++) {
                System.arraycopy(re[across.rowOf(k)], 0, real, k * rows + from, width);
                System.arraycopy(im[across.rowOf(k)], 0, imaginary, k * rows + from, width);
            }
        }
        double even = real[0];
        double odd = imaginary[0];
        real[0] = even + odd;
        imaginary[0] = 0;
        real[half] = even - odd;
        imaginary[half] = 0;
        for (int coarse = 0; coarse * FINE <= half / 2; coarse++) {
            separate(real, imaginary, coarse);
        }
    }

    private void downColumns(double[] samples, int from, int width) {
        for (int j = 0; j < rows; j++) {
            split(samples, 2 * (j * columns + from), re[j], im[j], width);
        }
        down.forward(re, im, width);
        double[] turned = new double[width];
        for (int k = 0; k < rows; k++) {
            double[] rowRe = re[down.rowOf(k)];
            double[] rowIm = im[down.rowOf(k)];
            int turn = (int) (2L * k * from % size);
            int fine = turn & (FINE - 1);
            int coarse = turn >> FINE_BITS;
            double real = coarseCosines[coarse] * fineCosines[fine] - coarseSines[coarse] * fineSines[fine];
            double imaginary = coarseCosines[coarse] * fineSines[fine] + coarseSines[coarse] * fineCosines[fine];
            Butterflies.turn(rowRe, rowIm, real, imaginary, width);
            Butterflies.turnEach(rowRe, rowIm, cosines[k], sines[k], turned, width);
            scatter(turned, middleRe, from * stride + k, stride, width);
            scatter(rowIm, middleIm, from * stride + k, stride, width);
        }
    }

    private static void split(double[] samples, int from, double[] even, double[] odd, int width) {
        for (int i = 0; i < width; i++) {
            even[i] = samples[from + 2 * i];
            odd[i] = samples[from + 2 * i + 1];
        }
    }

    private static void scatter(double[] row, double[] target, int first, int step, int width) {
        int at = first;
        for (int i = 0; i < width; i++) {
            target[at] = row[i];
            at += step;
        }
    }

    /** Makes the transform of the samples out of that of the pairs, for a stretch of k and their mirror images. */
    private void separate(double[] real, double[] imaginary, int coarse) {
        int to = Math.min(FINE, half / 2 + 1 - coarse * FINE);
        double cosine = coarseCosines[coarse];
        double sine = coarseSines[coarse];
        for (int fine = coarse == 0 ? 1 : 0; fine < to; fine++) {
            int k = coarse * FINE + fine;
            int mirror = half - k;
            double turnReal = cosine * fineCosines[fine] - sine * fineSines[fine];
            double turnImaginary = cosine * fineSines[fine] + sine * fineCosines[fine];
            double evenReal = 0.5 * (real[k] + real[mirror]);
            double evenImaginary = 0.5 * (imaginary[k] - imaginary[mirror]);
            double oddReal = 0.5 * (imaginary[k] + imaginary[mirror]);
            double oddImaginary = 0.5 * (real[mirror] - real[k]);
            double turnedReal = oddReal * turnReal - oddImaginary * turnImaginary;
            double turnedImaginary = oddReal * turnImaginary + oddImaginary * turnReal;
            real[k] = evenReal + turnedReal;
            imaginary[k] = evenImaginary + turnedImaginary;
            real[mirror] = evenReal - turnedReal;
            imaginary[mirror] = turnedImaginary - evenImaginary;
        }
    }
}
