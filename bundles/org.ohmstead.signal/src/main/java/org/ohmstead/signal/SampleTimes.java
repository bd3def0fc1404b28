// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import java.util.Arrays;
import java.util.OptionalInt;

/**
 * The times of a table as they are written, with the digits that are lost in writing: how far they may be trusted,
 * whether they are even, and which sample rate they stand for.
 */
final class SampleTimes {
    private static final double UNIFORM_STEP_TOLERANCE = 0.01;
    private static final double MOST_ROUNDING_STEPS = 0.25;
    /** Up to this many steps of rounding a missing sample shows. */
    private static final double GAP_SHOWS_STEPS = 0.5;
    /** Rounding beyond that makes uneven steps again and again, a gap in even times does not. */
    private static final int LEAST_UNEVEN_STEPS = 5;

    private static final double EXACT_STEP_RATIO = 1e-6;
    private static final double EXACT_RATE_RATIO = 1e-9;
    private static final int[] ROUND_RATES_HZ = {1000, 100, 50, 25, 10, 5, 1};

    private final double[] times;
    private final double lastDecimal;
    private final int mostDigits;
    private final double meanStep;
    private final double typicalStep;

    /**
     * Takes times over.
     *
     * @param times the times in seconds, at least two
     * @param lastDecimal value of a one in the finest digit that any time is written with
     * @param mostDigits most significant digits that any time is written with
     */
    SampleTimes(double[] times, double lastDecimal, int mostDigits) {
        this.times = times;
        this.lastDecimal = lastDecimal;
        this.mostDigits = mostDigits;
        this.meanStep = spanSeconds() / (times.length - 1);
        this.typicalStep = typicalStep(times);
    }

    private double spanSeconds() {
        return times[times.length - 1] - times[0];
    }

    private static double typicalStep(double[] times) {
        double[] steps = new double[times.length - 1];
        for (int i = 0; i < steps.length; i++) {
            steps[i] = times[i + 1] - times[i];
        }
        Arrays.sort(steps);
        // Rounded times alternate between two steps; the mean of the middle half is the true one.
        int from = steps.length / 4;
        int to = steps.length - from;
        double sum = 0;
        for (int i = from; i < to; i++) {
            sum += steps[i];
        }
        return sum / (to - from);
    }

    boolean rise() {
        return meanStep > 0;
    }

    double meanStepSeconds() {
        return meanStep;
    }

    /** The typical step, not the mean one: a single gap must be named where it is, not where the sum goes wrong. */
    double typicalStepSeconds() {
        return typicalStep;
    }

    double stepSeconds(int index) {
        return times[index] - times[index - 1];
    }

    /** Value of a one in the last digit of a time: either the decimals are fixed or the significant digits are. */
    private double roundingSeconds(int index) {
        double size = Math.abs(times[index]);
        double significant = size > 0 ? Math.pow(10, Math.floor(Math.log10(size)) + 1 - mostDigits) : 0;
        return Math.max(lastDecimal, significant);
    }

    private double allowedSeconds() {
        return UNIFORM_STEP_TOLERANCE * typicalStep + Math.min(lastDecimal, MOST_ROUNDING_STEPS * typicalStep);
    }

    /** Where the times are uneven, if neither the tolerance nor the digits they are written with explain it. */
    OptionalInt unevenIndex() {
        OptionalInt uneven = firstUneven();
        if (uneven.isEmpty() || isRounded()) {
            return OptionalInt.empty();
        }
        int worst = 0;
        double most = 1;
        for (int i = 1; i < times.length; i++) {
            double allowed = UNIFORM_STEP_TOLERANCE * Math.abs(typicalStep) + roundingOfStep(i);
            double excess = Math.abs(stepSeconds(i) - typicalStep) / allowed;
            if (excess > most) {
                most = excess;
                worst = i;
            }
        }
        return worst > 0 ? OptionalInt.of(worst) : uneven;
    }

    private double roundingOfStep(int index) {
        return 0.5 * (roundingSeconds(index) + roundingSeconds(index - 1));
    }

    private OptionalInt firstUneven() {
        double allowed = allowedSeconds();
        for (int i = 1; i < times.length; i++) {
            if (!(Math.abs(stepSeconds(i) - typicalStep) <= allowed)) {
                return OptionalInt.of(i);
            }
        }
        for (int i = 1; i < times.length; i++) {
            if (Math.abs(times[i] - times[0] - i * meanStep) > allowed) {
                return OptionalInt.of(i);
            }
        }
        return OptionalInt.empty();
    }

    /** Whether the times are those of an even clock, each rounded to the digits it is written with. */
    private boolean isRounded() {
        int last = times.length - 1;
        double tolerance = UNIFORM_STEP_TOLERANCE * meanStep;
        double allowed = allowedSeconds();
        double atEnds = Math.max(roundingSeconds(0), roundingSeconds(last));
        double coarsest = 0;
        int uneven = 0;
        for (int i = 1; i <= last; i++) {
            double rounding = roundingSeconds(i);
            coarsest = Math.max(coarsest, rounding);
            uneven += Math.abs(stepSeconds(i) - typicalStep) > allowed ? 1 : 0;
            boolean onLine = Math.abs(times[i] - times[0] - i * meanStep) <= tolerance + 0.5 * (rounding + atEnds);
            boolean even = Math.abs(stepSeconds(i) - meanStep) <= tolerance + roundingOfStep(i);
            if (!onLine || !even) {
                return false;
            }
        }
        return coarsest <= GAP_SHOWS_STEPS * meanStep || uneven >= LEAST_UNEVEN_STEPS;
    }

    private boolean isExact() {
        for (int i = 1; i < times.length; i++) {
            if (Math.abs(stepSeconds(i) - meanStep) > EXACT_STEP_RATIO * meanStep) {
                return false;
            }
        }
        return true;
    }

    /** How far the sample rate may be off, as a ratio, because of the digits of the first and the last time. */
    double rateUncertaintyRatio() {
        double lost = isExact() ? 0 : roundingSeconds(0) + roundingSeconds(times.length - 1);
        return Math.max(EXACT_RATE_RATIO, 0.5 * lost / spanSeconds());
    }

    /** The sample rate: clocks run at round numbers of hertz, so the roundest is taken of those that fit. */
    double sampleRateHz() {
        double rate = 1 / meanStep;
        double reach = rate * rateUncertaintyRatio();
        for (int round : ROUND_RATES_HZ) {
            double near = round * Math.rint(rate / round);
            if (near > 0 && Math.abs(rate - near) <= reach) {
                return near;
            }
        }
        return rate;
    }
}
