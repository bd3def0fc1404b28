// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

/**
 * The spectrum of a sum of sines under a Hann window about the middle of a record, in closed form. A sine counts near its own line only, as
 * far as its lines matter, which fall with the third power of the distance: what is left out is 170 dB below the strongest.
 */
final class ModelSpectrum {
    private static final double LINES = 1000;
    private static final double LINES_EXPONENT = 0.4;
    private static final int LEAST_LINES = 8;
    /** A sine that falls on a line is taken this little beside it, so that no quotient becomes zero by zero. */
    private static final double LEAST_REST = 1e-10;

    private final int size;
    private final int half;
    private final double[] real;
    private final double[] imaginary;

    private ModelSpectrum(int size) {
        this.size = size;
        half = size / 2;
        real = new double[half + 1];
        imaginary = new double[half + 1];
    }

    /** Sums up the fundamental and harmonics of a fit, without its direct voltage. */
    static ModelSpectrum of(HarmonicFit fit, int size) {
        ModelSpectrum spectrum = new ModelSpectrum(size);
        double highest = 0;
        for (int n = 1; n <= fit.orders(); n++) {
            highest = Math.max(highest, fit.amplitudeVolts(n));
        }
        for (int n = 1; n <= fit.orders() && highest > 0; n++) {
            double ratio = fit.amplitudeVolts(n) / highest;
            int reach = LEAST_LINES + (int) (LINES * Math.pow(ratio, LINES_EXPONENT));
            double bins = n * fit.radiansPerSample() * size / (2 * Math.PI);
            double cosine = 0.5 * fit.cosineVolts(n);
            double sine = 0.5 * fit.sineVolts(n);
            spectrum.add(bins, cosine, -sine, reach);
            // The mirror images at the negative frequency, and at the same beyond half the sample rate, where the sign
            // changes as the
            // instants lie half way between whole numbers.
            spectrum.add(-bins, cosine, sine, reach);
            spectrum.add(size - bins, -cosine, -sine, reach);
        }
        return spectrum;
    }

    double[] real() {
        return real;
    }

    double[] imaginary() {
        return imaginary;
    }

    /** Adds a complex exponential at a place in bins, with its factor and the lines on each side of it that count. */
    private void add(double bins, double factorReal, double factorImaginary, int reach) {
        int nearest = (int) Math.rint(bins);
        if (nearest + reach < 0 || nearest - reach > half) {
            return;
        }
        double rest = bins - nearest;
        rest = Math.abs(rest) < LEAST_REST ? LEAST_REST : rest;
        // The angle of the sine in the kernel passes half a turn from line to line, as does the middle of the record.
        double common = (nearest % 2 == 0 ? -1 : 1) * Math.sin(Math.PI * rest);
        double angle = Math.PI * (nearest + rest) / size;
        double x = common * (factorReal * Math.cos(angle) - factorImaginary * Math.sin(angle));
        double y = common * (factorReal * Math.sin(angle) + factorImaginary * Math.cos(angle));
        walk(nearest, 1, rest, new double[] {x, y}, Math.min(half, nearest + reach));
        walk(nearest - 1, -1, rest, new double[] {x, y}, Math.max(0, nearest - reach));
    }

    /** Adds the lines from one on to the last, upwards or downwards. */
    private void walk(int first, int step, double rest, double[] factor, int last) {
        double unit = Math.PI / size;
        // Of the line at the middle, which may be very near zero, the sine must come from the rest itself.
        double before = 1 / Math.sin(unit * ((step > 0 ? -1 : 0) - rest));
        double start = unit * ((step > 0 ? 0 : -1) - rest);
        double cosine = Math.cos(start);
        double sine = Math.sin(start);
        double at = 1 / sine;
        double turnCosine = Math.cos(unit);
        double turnSine = step * Math.sin(unit);
        for (int k = first; step > 0 ? k <= last : k >= last; k += step) {
            double nextCosine = cosine * turnCosine - sine * turnSine;
            double nextSine = sine * turnCosine + cosine * turnSine;
            double after = 1 / nextSine;
            if (k >= 0 && k <= half) {
                double kernel = 0.5 * at - 0.25 * (before + after);
                real[k] += kernel * (factor[0] * cosine - factor[1] * sine);
                imaginary[k] += kernel * (factor[0] * sine + factor[1] * cosine);
            }
            before = at;
            at = after;
            cosine = nextCosine;
            sine = nextSine;
        }
    }
}
