// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import java.util.Arrays;
import java.util.OptionalDouble;

/** Finds the strongest component of a record, as a start for a fit. */
final class ToneFinder {
    private static final double HINT_SHARE = 0.1;

    private final double radiansPerSample;
    private final double powerShareNear;

    private ToneFinder(double radiansPerSample, double powerShareNear) {
        this.radiansPerSample = radiansPerSample;
        this.powerShareNear = powerShareNear;
    }

    /**
     * Looks through a whole record.
     *
     * @param samples the record, its mean taken off
     * @param window weight of the samples; without weight a burst counts wherever it lies
     * @param hintRadiansPerSample where to look, if known
     */
    static ToneFinder of(double[] samples, Window window, OptionalDouble hintRadiansPerSample) {
        int padded = RealTransform.paddedSize(samples.length) * (samples.length <= 1 << 20 ? 2 : 1);
        double[] work = Arrays.copyOf(window.centredProducts(samples), padded);
        return in(Lines.of(RealTransform.squaredMagnitudes(work)), padded, samples.length, hintRadiansPerSample);
    }

    /**
     * Looks through the spectrum of a record.
     *
     * @param lines squared magnitudes
     * @param padded samples that were transformed
     * @param size those of them that belong to the record
     * @param hintRadiansPerSample where to look, if known
     */
    static ToneFinder in(Lines lines, int padded, int size, OptionalDouble hintRadiansPerSample) {
        double binsPerLobe = (double) padded / size;
        int from = 1;
        int to = lines.count() - 2;
        if (hintRadiansPerSample.isPresent()) {
            double hint = hintRadiansPerSample.getAsDouble() * padded / (2 * Math.PI);
            double reach = Math.max(HINT_SHARE * hint, 2 * binsPerLobe);
            from = (int) Math.max(1, Math.min(to, Math.floor(hint - reach)));
            to = (int) Math.max(from, Math.min(to, Math.ceil(hint + reach)));
        }
        double[] some = new double[Lines.TOGETHER];
        double total = 0;
        double most = -1;
        int peak = from;
        for (int first = 1; first < lines.count(); first += some.length) {
            int end = Math.min(lines.count(), first + some.length);
            lines.squares(first, end, some);
            total += Sums.of(some, 0, end - first);
            for (int k = Math.max(first, from); k < Math.min(end, to + 1); k++) {
                if (some[k - first] > most) {
                    most = some[k - first];
                    peak = k;
                }
            }
        }
        double position = peak + peakOffset(lines, peak);
        double near = near(lines, peak, Math.max(0.2 * peak, 2 * binsPerLobe), some);
        return new ToneFinder(2 * Math.PI * position / padded, total > 0 ? near / total : 0);
    }

    private static double peakOffset(Lines lines, int peak) {
        if (peak < 1 || peak + 1 >= lines.count()) {
            return 0;
        }
        double[] three = new double[3];
        lines.squares(peak - 1, peak + 2, three);
        if (three[0] <= 0 || three[2] <= 0) {
            return 0;
        }
        double left = Math.log(three[0]);
        double centre = Math.log(three[1]);
        double right = Math.log(three[2]);
        double bend = left - 2 * centre + right;
        return bend < 0 ? Math.max(-0.5, Math.min(0.5, 0.5 * (left - right) / bend)) : 0;
    }

    private static double near(Lines lines, int peak, double reach, double[] some) {
        int end = 1 + (int) Math.min(lines.count() - 1.0, Math.floor(peak + reach));
        double near = 0;
        for (int first = (int) Math.max(1, Math.ceil(peak - reach)); first < end; first += some.length) {
            int count = Math.min(end - first, some.length);
            lines.squares(first, first + count, some);
            near += Sums.of(some, 0, count);
        }
        return near;
    }

    double radiansPerSample() {
        return radiansPerSample;
    }

    /** Share of the alternating power within 20 % of the frequency found. */
    double powerShareNear() {
        return powerShareNear;
    }
}
