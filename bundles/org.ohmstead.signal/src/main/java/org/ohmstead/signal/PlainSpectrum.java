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
        squares(window, 0, squares.length, squares);
        return squares;
    }

    /** The same, some at a time. */
    Lines lines(Window window) {
        return new Lines() {
            @Override
            public int count() {
                return half + 1;
            }

            @Override
            public void squares(int from, int to, double[] target) {
                PlainSpectrum.this.squares(window, from, to, target);
            }
        };
    }

    private void squares(Window window, int from, int to, double[] target) {
        double[] taps = new double[REACH + 1];
        double[] terms = window.coefficients();
        taps[0] = terms[0];
        for (int j = 1; j < terms.length; j++) {
            taps[j] = j % 2 == 0 ? 0.5 * terms[j] : -0.5 * terms[j];
        }
        int first = Math.max(from, Math.min(to, REACH));
        int last = Math.max(first, Math.min(to, half - REACH + 1));
        if (window == Window.RECTANGULAR) {
            own(first, last, target, first - from);
        } else if (window == Window.HANN) {
            narrow(first, last, target, first - from, taps);
        } else {
            wide(first, last, target, first - from, taps);
        }
        for (int k = from; k < first; k++) {
            target[k - from] = square(k, taps);
        }
        for (int k = last; k < to; k++) {
            target[k - from] = square(k, taps);
        }
    }

    /** Writes lines from one (included) to another (excluded) from a place on, as the two after this do. */
    private void own(int first, int last, double[] squares, int place) {
        double[] re = real;
        double[] im = imaginary;
        int shift = place - first;
        for (int k = first; k < last; k++) {
            squares[k + shift] = re[k] * re[k] + im[k] * im[k];
        }
    }

    private void narrow(int first, int last, double[] squares, int place, double[] taps) {
        double own = taps[0];
        double next = taps[1];
        double[] re = real;
        double[] im = imaginary;
        int shift = place - first;
        for (int k = first; k < last; k++) {
            double x = own * re[k] + next * (re[k - 1] + re[k + 1]);
            double y = own * im[k] + next * (im[k - 1] + im[k + 1]);
            squares[k + shift] = x * x + y * y;
        }
    }

    private void wide(int first, int last, double[] squares, int place, double[] taps) {
        double a = taps[0];
        double b = taps[1];
        double c = taps[2];
        double d = taps[3];
        double e = taps[4];
        double[] re = real;
        double[] im = imaginary;
        int shift = place - first;
        for (int k = first; k < last; k++) {
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
            squares[k + shift] = x * x + y * y;
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
     * @param model the spectrum of all else that is taken off, weighted
     */
    Lines rest(double direct, ModelSpectrum model) {
        return new Rest(sum - size * direct, model);
    }

    /** Lines of what is left, some at a time. */
    private final class Rest implements Lines {
        private final double direct;
        private final ModelSpectrum model;
        // The window lies half a sample beside the periodic one, which turns the neighbours a little.
        private final double cosine = 0.25 * Math.cos(Math.PI / size);
        private final double sine = 0.25 * Math.sin(Math.PI / size);
        private final double[] restReal = new double[TOGETHER];
        private final double[] restImaginary = new double[TOGETHER];

        /** @param direct the line at zero */
        Rest(double direct, ModelSpectrum model) {
            this.direct = direct;
            this.model = model;
        }

        @Override
        public int count() {
            return half + 1;
        }

        @Override
        public void squares(int from, int to, double[] target) {
            for (int first = from; first < to; first += TOGETHER) {
                int end = Math.min(to, first + TOGETHER);
                weigh(first, end);
                model.takeOff(first, end - first, restReal, restImaginary);
                square(end - first, target, first - from);
            }
        }

        private void square(int count, double[] target, int place) {
            double[] x = restReal;
            double[] y = restImaginary;
            for (int i = 0; i < count; i++) {
                target[place + i] = x[i] * x[i] + y[i] * y[i];
            }
        }

        private void weigh(int from, int to) {
            int first = Math.max(1, from);
            weighInner(first, Math.min(half, to), first - from);
            if (from == 0) {
                restReal[0] = 0.5 * direct - 2 * (cosine * real[1] + sine * imaginary[1]);
                restImaginary[0] = 0;
            }
            if (from <= 1 && to > 1) {
                restReal[1 - from] -= cosine * direct;
                restImaginary[1 - from] -= sine * direct;
            }
            if (to == half + 1) {
                restReal[half - from] = 0.5 * real[half] - 2 * (cosine * real[half - 1] - sine * imaginary[half - 1]);
                restImaginary[half - from] = 0;
            }
        }

        private void weighInner(int first, int end, int place) {
            double[] re = real;
            double[] im = imaginary;
            double[] x = restReal;
            double[] y = restImaginary;
            int shift = place - first;
            double c = cosine;
            double s = sine;
            for (int k = first; k < end; k++) {
                x[k + shift] = 0.5 * re[k] - c * (re[k - 1] + re[k + 1]) + s * (im[k - 1] - im[k + 1]);
                y[k + shift] = 0.5 * im[k] - c * (im[k - 1] + im[k + 1]) - s * (re[k - 1] - re[k + 1]);
            }
        }
    }
}
