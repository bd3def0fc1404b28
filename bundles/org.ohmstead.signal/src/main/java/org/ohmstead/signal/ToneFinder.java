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
        double[] work = Arrays.copyOf(samples, padded);
        if (window != Window.RECTANGULAR) {
            double[] weights = window.centredWeights(samples.length);
            for (int i = 0; i < samples.length; i++) {
                work[i] *= weights[i];
            }
        }
        return in(RealTransform.squaredMagnitudes(work), padded, samples.length, hintRadiansPerSample);
    }

    /**
     * Looks through the spectrum of a record.
     *
     * @param squares squared magnitudes
     * @param padded samples that were transformed
     * @param size those of them that belong to the record
     * @param hintRadiansPerSample where to look, if known
     */
    static ToneFinder in(double[] squares, int padded, int size, OptionalDouble hintRadiansPerSample) {
        double binsPerLobe = (double) padded / size;
        int from = 1;
        int to = squares.length - 2;
        if (hintRadiansPerSample.isPresent()) {
            double hint = hintRadiansPerSample.getAsDouble() * padded / (2 * Math.PI);
            double reach = Math.max(HINT_SHARE * hint, 2 * binsPerLobe);
            from = (int) Math.max(1, Math.min(to, Math.floor(hint - reach)));
            to = (int) Math.max(from, Math.min(to, Math.ceil(hint + reach)));
        }
        int peak = from;
        for (int k = from; k <= to; k++) {
            if (squares[k] > squares[peak]) {
                peak = k;
            }
        }
        double position = peak + peakOffset(squares, peak);
        return new ToneFinder(2 * Math.PI * position / padded, shareNear(squares, peak, binsPerLobe));
    }

    private static double peakOffset(double[] squares, int peak) {
        if (peak < 1 || peak + 1 >= squares.length || squares[peak - 1] <= 0 || squares[peak + 1] <= 0) {
            return 0;
        }
        double left = Math.log(squares[peak - 1]);
        double centre = Math.log(squares[peak]);
        double right = Math.log(squares[peak + 1]);
        double bend = left - 2 * centre + right;
        return bend < 0 ? Math.max(-0.5, Math.min(0.5, 0.5 * (left - right) / bend)) : 0;
    }

    private static double shareNear(double[] squares, int peak, double binsPerLobe) {
        double total = 0;
        double near = 0;
        double reach = Math.max(0.2 * peak, 2 * binsPerLobe);
        for (int k = 1; k < squares.length; k++) {
            total += squares[k];
        }
        int last = (int) Math.min(squares.length - 1.0, Math.floor(peak + reach));
        for (int k = (int) Math.max(1, Math.ceil(peak - reach)); k <= last; k++) {
            near += squares[k];
        }
        return total > 0 ? near / total : 0;
    }

    double radiansPerSample() {
        return radiansPerSample;
    }

    /** Share of the alternating power within 20 % of the frequency found. */
    double powerShareNear() {
        return powerShareNear;
    }
}
