// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

/**
 * Least-squares sine fits of IEEE Std 1057: y = A cos(w t) + B sin(w t) + C, with t = 0 at the first sample.
 *
 * @param frequencyHz frequency of the sine, given or fitted
 * @param cosineVolts A
 * @param sineVolts B
 * @param offsetVolts C
 * @param amplitudeVolts sqrt(A^2 + B^2), peak volts
 * @param phaseRadians phase of y = amplitude cos(w t + phase) + C: atan2(-B, A)
 * @param residualVoltsRms root of the mean squared difference between samples and fit
 * @param iterations number of frequency steps made; 0 for a three-parameter fit
 * @param converged true if the last frequency step was below 1e-9 of the frequency
 */
public record SineFit(
        double frequencyHz,
        double cosineVolts,
        double sineVolts,
        double offsetVolts,
        double amplitudeVolts,
        double phaseRadians,
        double residualVoltsRms,
        int iterations,
        boolean converged) {
    private static final int MAX_STEPS = 30;
    private static final double SMALLEST_STEP_RATIO = 1e-9;

    /** Checks that every number is finite. */
    public SineFit {
        double sum = frequencyHz + cosineVolts + sineVolts + offsetVolts + amplitudeVolts + phaseRadians;
        if (!Double.isFinite(sum + residualVoltsRms)) {
            throw new IllegalArgumentException("each number of a sine fit must be finite, but one is not: frequencyHz "
                    + frequencyHz + ", amplitudeVolts " + amplitudeVolts + ", offsetVolts " + offsetVolts
                    + ", residualVoltsRms " + residualVoltsRms);
        }
    }

    /**
     * Fits A, B and C at a known frequency.
     *
     * @param y samples in volts, at least 4
     * @param sampleRateHz samples per second, above zero
     * @param frequencyHz above zero and below half the sample rate
     * @throws IllegalArgumentException if an argument is outside its range, or the record is so short against the cycle
     *     that the three unknowns cannot be told apart
     */
    public static SineFit threeParameter(double[] y, double sampleRateHz, double frequencyHz) {
        requireFittable(y, 4, sampleRateHz, frequencyHz);
        return linear(y, sampleRateHz, 2 * Math.PI * frequencyHz / sampleRateHz, 0, true);
    }

    /**
     * Fits A, B, C and the frequency by Gauss-Newton steps.
     *
     * @param y samples in volts, at least 5, over at least one cycle
     * @param sampleRateHz samples per second, above zero
     * @param startFrequencyHz above zero, below half the sample rate, right to about one cycle over the record
     * @throws IllegalArgumentException if an argument is outside its range, or the record is so short against the cycle
     *     that the unknowns cannot be told apart
     */
    public static SineFit fourParameter(double[] y, double sampleRateHz, double startFrequencyHz) {
        requireFittable(y, 5, sampleRateHz, startFrequencyHz);
        double radians = 2 * Math.PI * startFrequencyHz / sampleRateHz;
        double largest = 2 * Math.PI / y.length;
        int step = 0;
        boolean settled = false;
        while (!settled && step < MAX_STEPS) {
            double change = Math.max(-largest, Math.min(largest, frequencyStep(y, radians)));
            double next = Math.max(0.1 * radians, Math.min(0.999999 * Math.PI, radians + change));
            settled = Math.abs(next - radians) < SMALLEST_STEP_RATIO * next;
            radians = next;
            step++;
        }
        return linear(y, sampleRateHz, radians, step, settled);
    }

    private static void requireFittable(double[] y, int atLeast, double sampleRateHz, double frequencyHz) {
        if (y.length < atLeast) {
            throw new IllegalArgumentException("y must hold at least " + atLeast + " samples, but holds " + y.length);
        }
        if (!Double.isFinite(sampleRateHz) || sampleRateHz <= 0) {
            throw new IllegalArgumentException("sampleRateHz must be finite and above 0, but is " + sampleRateHz);
        }
        if (!(frequencyHz > 0) || frequencyHz >= sampleRateHz / 2) {
            throw new IllegalArgumentException("frequency must be above 0 and below half the sample rate of "
                    + sampleRateHz + " Hz, but is " + frequencyHz + " Hz");
        }
        for (int i = 0; i < y.length; i++) {
            if (!Double.isFinite(y[i])) {
                throw new IllegalArgumentException("y[" + i + "] must be finite, but is " + y[i]);
            }
        }
    }

    /** One Gauss-Newton step in radians per sample: the frequency part of the four-unknown normal equations. */
    private static double frequencyStep(double[] y, double radians) {
        HarmonicBasis basis = new HarmonicBasis(y.length, radians, 1);
        HarmonicBasis.Normal normal = normalOf(basis);
        double[] factors = normal.solve(basis.project(y));
        double[] model = basis.synthesize(factors);
        double[] derivative = basis.frequencyDerivative(factors);
        double slope = 0;
        double curvature = 0;
        for (int i = 0; i < y.length; i++) {
            slope += derivative[i] * (y[i] - model[i]);
            curvature += derivative[i] * derivative[i];
        }
        double[] mixed = basis.project(derivative);
        double[] explained = normal.solve(mixed);
        for (int i = 0; i < mixed.length; i++) {
            curvature -= mixed[i] * explained[i];
        }
        return curvature > 0 ? slope / curvature : 0;
    }

    private static HarmonicBasis.Normal normalOf(HarmonicBasis basis) {
        try {
            return basis.normal(Window.RECTANGULAR);
        } catch (ArithmeticException e) {
            throw new IllegalArgumentException(
                    "y must span more of a cycle: the offset and the sine cannot be told apart", e);
        }
    }

    private static SineFit linear(double[] y, double sampleRateHz, double radians, int iterations, boolean converged) {
        HarmonicBasis basis = new HarmonicBasis(y.length, radians, 1);
        double[] factors = normalOf(basis).solve(basis.project(y));
        double[] model = basis.synthesize(factors);
        double sum = 0;
        for (int i = 0; i < y.length; i++) {
            sum += (y[i] - model[i]) * (y[i] - model[i]);
        }
        double turn = radians * 0.5 * (y.length - 1);
        double a = factors[1] * Math.cos(turn) - factors[2] * Math.sin(turn);
        double b = factors[1] * Math.sin(turn) + factors[2] * Math.cos(turn);
        return new SineFit(
                radians * sampleRateHz / (2 * Math.PI),
                a,
                b,
                factors[0],
                Math.hypot(a, b),
                Math.atan2(-b, a),
                Math.sqrt(sum / y.length),
                iterations,
                converged);
    }
}
