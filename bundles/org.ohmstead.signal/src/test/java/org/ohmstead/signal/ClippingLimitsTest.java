// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The limits are known because the wave is made by cutting a sine there. */
class ClippingLimitsTest {
    /** Sampling a cut sine folds its highest harmonics back, which moves the fitted limits a little. */
    private static final double RELATIVE_TOLERANCE = 2e-3;

    private static ChannelAnalysis analyze(double upper, double lower, double offset) throws CaptureException {
        double[] samples = Waves.sampled(
                24_000, 997, 0.3, phase -> offset + Math.max(lower, Math.min(upper, 20 * Math.sin(phase))));
        return WaveformAnalyzer.analyze(Waveform.of(Waves.RATE_HZ, samples), AnalysisSettings.forResistance(4));
    }

    @ParameterizedTest
    @CsvSource({"16,-16,0", "12,-17,0", "18,-10,0.5", "8,-8,-1.5"})
    void findsWhereTheSineWasCut(double upper, double lower, double offset) throws CaptureException {
        ClippingLimits limits = ClippingLimits.of(analyze(upper, lower, offset)).orElseThrow();
        assertEquals(upper + offset, limits.upperVolts().orElseThrow(), 20 * RELATIVE_TOLERANCE);
        assertEquals(lower + offset, limits.lowerVolts().orElseThrow(), 20 * RELATIVE_TOLERANCE);
        assertEquals(20, limits.uncutVoltsPeak(), 20 * RELATIVE_TOLERANCE);
        assertEquals(Math.acos(upper / 20), limits.upperHalfAngleRadians(), 0.01);
        assertEquals(Math.acos(-lower / 20), limits.lowerHalfAngleRadians(), 0.01);
    }

    @Test
    void leavesTheSideThatIsNotCutWithoutALimit() throws CaptureException {
        ClippingLimits limits = ClippingLimits.of(analyze(14, -30, 0)).orElseThrow();
        assertEquals(14, limits.upperVolts().orElseThrow(), 20 * RELATIVE_TOLERANCE);
        assertTrue(limits.lowerVolts().isEmpty() || limits.lowerVolts().getAsDouble() < -19.8);
    }

    @Test
    void hasNoLimitsForACleanSine() throws CaptureException {
        assertTrue(ClippingLimits.of(analyze(30, -30, 0)).isEmpty());
    }
}
