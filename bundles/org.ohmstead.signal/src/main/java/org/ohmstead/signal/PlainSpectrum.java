// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

/**
 * The transform of a whole record as it is, without a weight. A window of cosines makes each line of its spectrum out of a few neighbouring
 * ones of this, so one transform serves every window.
 */
final class PlainSpectrum {
    /** Neighbours on each side that a window may reach. */
    private static final int REACH = 4;

    private final int size;
    private final int half;
    private final double sum;
    private final double[] real;
    private final double[] imaginary;

    private PlainSpectrum(double[] samples) {
        size = samples.length;
        half = size / 2;
        real = new double[half + 1];
        imaginary = new double[half + 1];
        RealTransform.forward(samples, real, imaginary);
        sum = real[0];
        // The mean is always taken off.
        real[0] = 0;
    }

    /** Transforms samples, as many as {@link SmoothTransform} serves. */
    static PlainSpectrum of(double[] samples) {
        return new PlainSpectrum(samples);
    }

    /** Returns the number of samples. */
    int size() {
        return size;
    }

    /** Returns |X_k|^2 for k = 0 to n/2 of the samples, their mean taken off, times the {@linkplain Window#weights(int) window}. */
    double[] squares(Window window) {
        double[] squares = new double[half + 1];
        squares(window, squares);
        return squares;
    }

    /** Writes the same to a place. */
    void squares(Window window, double[] squares) {
        double[] taps = new double[REACH + 1];
        double[] terms = window.coefficients();
        taps[0] = terms[0];
        for (int j = 1; j < terms.length; j++) {
            taps[j] = j % 2 == 0 ? 0.5 * terms[j] : -0.5 * terms[j];
        }
        if (window == Window.RECTANGULAR || window == Window.HANN) {
            narrow(squares, taps[0], taps[1]);
        } else {
            wide(squares, taps);
        }
        for (int k = 0; k < REACH; k++) {
            squares[k] = square(k, taps);
            squares[half - k] = square(half - k, taps);
        }
    }

    private void narrow(double[] squares, double own, double next) {
        double[] re = real;
        double[] im = imaginary;
        for (int k = REACH; k <= half - REACH; k++) {
            double x = own * re[k] + next * (re[k - 1] + re[k + 1]);
            double y = own * im[k] + next * (im[k - 1] + im[k + 1]);
            squares[k] = x * x + y * y;
        }
    }

    private void wide(double[] squares, double[] taps) {
        double a = taps[0];
        double b = taps[1];
        double c = taps[2];
        double d = taps[3];
        double e = taps[4];
        double[] re = real;
        double[] im = imaginary;
        for (int k = REACH; k <= half - REACH; k++) {
            double x = a * re[k]
                    + b * (re[k - 1] + re[k + 1])
                    + c * (re[k - 2] + re[k + 2])
                    + d * (re[k - 3] + re[k + 3])
                    + e * (re[k - 4] + re[k + 4]);
            double y = a * im[k]
                    + b * (im[k - 1] + im[k + 1])
                    + c * (im[k - 2] + im[k + 2])
                    + d * (im[k - 3] + im[k + 3])
                    + e * (im[k - 4] + im[k + 4]);
            squares[k] = x * x + y * y;
        }
    }

    /** A line near either end, where neighbours are mirror images. */
    private double square(int k, double[] taps) {
        double x = taps[0] * real[k];
        double y = taps[0] * imaginary[k];
        for (int j = 1; j <= REACH; j++) {
            x += taps[j] * (realAt(k - j) + realAt(k + j));
            y += taps[j] * (imaginaryAt(k - j) + imaginaryAt(k + j));
        }
        return x * x + y * y;
    }

    private double realAt(int k) {
        return real[k < 0 ? -k : k > half ? size - k : k];
    }

    private double imaginaryAt(int k) {
        return k < 0 ? -imaginary[-k] : k > half ? -imaginary[size - k] : imaginary[k];
    }

    /**
     * Returns |R_k|^2 for k = 0 to n/2 of what is left of the samples, times a Hann window about the middle of the record.
     *
     * @param direct what is taken off each sample
     * @param modelReal real parts of the transform of all else that is taken off, weighted; the results take their place
     * @param modelImaginary their imaginary parts
     */
    double[] restSquares(double direct, double[] modelReal, double[] modelImaginary) {
        double[] squares = modelReal;
        double rest = sum - size * direct;
        double cosine = 0.25 * Math.cos(Math.PI / size);
        double sine = 0.25 * Math.sin(Math.PI / size);
        for (int k = 1; k < half; k++) {
            // The window lies half a sample beside the periodic one, which turns the neighbours a little.
            double realSum = real[k - 1] + real[k + 1];
            double realDifference = real[k - 1] - real[k + 1];
            double imaginarySum = imaginary[k - 1] + imaginary[k + 1];
            double imaginaryDifference = imaginary[k - 1] - imaginary[k + 1];
            double x = 0.5 * real[k] - cosine * realSum + sine * imaginaryDifference - modelReal[k];
            double y = 0.5 * imaginary[k] - cosine * imaginarySum - sine * realDifference - modelImaginary[k];
            if (k == 1) {
                x -= cosine * rest;
                y -= sine * rest;
            }
            squares[k] = x * x + y * y;
        }
        double first = 0.5 * rest - 2 * (cosine * real[1] + sine * imaginary[1]) - modelReal[0];
        squares[0] = first * first;
        double last = 0.5 * real[half] - 2 * (cosine * real[half - 1] - sine * imaginary[half - 1]) - modelReal[half];
        squares[half] = last * last;
        return squares;
    }
}
