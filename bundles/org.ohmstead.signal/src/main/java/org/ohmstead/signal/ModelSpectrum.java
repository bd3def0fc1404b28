// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

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
    private final List<Stretch> stretches = new ArrayList<>();

    /** A complex exponential: its place in bins, its factor, and the lines on each side of it that count. */
    private record Exponential(double bins, double factorReal, double factorImaginary, int reach) {
        int nearest() {
            return (int) Math.rint(bins);
        }
    }

    /** Lines that follow one another, from one on. */
    private record Stretch(int first, double[] real, double[] imaginary) {
        static Stretch of(int first, int last) {
            return new Stretch(first, new double[last - first + 1], new double[last - first + 1]);
        }

        int end() {
            return first + real.length;
        }
    }

    private ModelSpectrum(int size, List<Exponential> all) {
        this.size = size;
        half = size / 2;
        List<Exponential> seen = all.stream()
                .filter(one -> one.nearest() + one.reach() >= 0 && one.nearest() - one.reach() <= half)
                .sorted(Comparator.comparingInt(one -> one.nearest() - one.reach()))
                .toList();
        int at = 0;
        while (at < seen.size()) {
            int next = at;
            int last = -1;
            while (next < seen.size()
                    && (last < 0 || seen.get(next).nearest() - seen.get(next).reach() <= last + 1)) {
                last = Math.max(last, seen.get(next).nearest() + seen.get(next).reach());
                next++;
            }
            int first = Math.max(0, seen.get(at).nearest() - seen.get(at).reach());
            Stretch stretch = Stretch.of(first, Math.min(half, last));
            seen.subList(at, next).forEach(one -> add(one, stretch));
            stretches.add(stretch);
            at = next;
        }
    }

    /** Sums up the fundamental and harmonics of a fit, without its direct voltage. */
    static ModelSpectrum of(HarmonicFit fit, int size) {
        double highest = 0;
        for (int n = 1; n <= fit.orders(); n++) {
            highest = Math.max(highest, fit.amplitudeVolts(n));
        }
        List<Exponential> all = new ArrayList<>();
        for (int n = 1; n <= fit.orders() && highest > 0; n++) {
            double ratio = fit.amplitudeVolts(n) / highest;
            int reach = LEAST_LINES + (int) (LINES * Math.pow(ratio, LINES_EXPONENT));
            double bins = n * fit.radiansPerSample() * size / (2 * Math.PI);
            double cosine = 0.5 * fit.cosineVolts(n);
            double sine = 0.5 * fit.sineVolts(n);
            all.add(new Exponential(bins, cosine, -sine, reach));
            // The mirror images at the negative frequency, and at the same beyond half the sample rate, where the sign
            // changes as the instants lie half way between whole numbers.
            all.add(new Exponential(-bins, cosine, sine, reach));
            all.add(new Exponential(size - bins, -cosine, -sine, reach));
        }
        return new ModelSpectrum(size, all);
    }

    /** Takes the lines from one on off others, as many as there are. */
    void takeOff(int from, int count, double[] real, double[] imaginary) {
        for (Stretch stretch : stretches) {
            int end = Math.min(from + count, stretch.end());
            for (int k = Math.max(from, stretch.first()); k < end; k++) {
                real[k - from] -= stretch.real()[k - stretch.first()];
                imaginary[k - from] -= stretch.imaginary()[k - stretch.first()];
            }
        }
    }

    private void add(Exponential one, Stretch stretch) {
        int nearest = one.nearest();
        double rest = one.bins() - nearest;
        rest = Math.abs(rest) < LEAST_REST ? LEAST_REST : rest;
        // The angle of the sine in the kernel passes half a turn from line to line, as does the middle of the record.
        double common = (nearest % 2 == 0 ? -1 : 1) * Math.sin(Math.PI * rest);
        double angle = Math.PI * (nearest + rest) / size;
        double x = common * (one.factorReal() * Math.cos(angle) - one.factorImaginary() * Math.sin(angle));
        double y = common * (one.factorReal() * Math.sin(angle) + one.factorImaginary() * Math.cos(angle));
        double[] factor = {x, y};
        walk(nearest, 1, rest, factor, Math.min(half, nearest + one.reach()), stretch);
        walk(nearest - 1, -1, rest, factor, Math.max(0, nearest - one.reach()), stretch);
    }

    /** Adds the lines from one on to the last, upwards or downwards. */
    private void walk(int first, int step, double rest, double[] factor, int last, Stretch stretch) {
        double[] real = stretch.real();
        double[] imaginary = stretch.imaginary();
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
                int place = k - stretch.first();
                double kernel = 0.5 * at - 0.25 * (before + after);
                real[place] += kernel * (factor[0] * cosine - factor[1] * sine);
                imaginary[place] += kernel * (factor[0] * sine + factor[1] * cosine);
            }
            before = at;
            at = after;
            cosine = nextCosine;
            sine = nextSine;
        }
    }
}
