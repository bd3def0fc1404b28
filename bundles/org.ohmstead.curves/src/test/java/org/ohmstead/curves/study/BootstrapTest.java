// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Set;
import org.junit.jupiter.api.Test;
import org.ohmstead.metrology.CoverageInterval;
import org.ohmstead.model.Mode;

class BootstrapTest {
    private static final int REFITS = 10_000;

    @Test
    void intervalsAgreeWithTheLinearOnesWhereTheModelIsNearlyLinear() {
        PowerStudy study = (PowerStudy)
                PowerStudy.of(StudyRequest.of(StudyData.sixty()).withAllowed(Set.of(ModelKind.UNREGULATED)));
        Bootstrap bootstrap = Bootstrap.of(study.fit(), REFITS, 42);
        assertEquals(REFITS, bootstrap.refits());
        assertEquals(0, bootstrap.failed());
        for (FittedParameter parameter : study.fit().parameters()) {
            assertSame(parameter.estimate().interval(0.95), bootstrap.interval(parameter.parameter(), 0.95));
        }
        PowerPrediction.Predicted there = (PowerPrediction.Predicted) study.predict(16, 2, Mode.BRIDGED);
        assertSame(there.confidenceInterval(0.95), bootstrap.powerInterval(16, 2, Mode.BRIDGED, 0.95));
        assertEquals(
                bootstrap.interval(StageParameter.GAIN, 0.95),
                Bootstrap.of(study.fit(), REFITS, 42).interval(StageParameter.GAIN, 0.95));
    }

    /** A 2.5 % quantile of 10,000 normal values scatters by about 0.027 standard deviations, 0.7 % of the width. */
    private static void assertSame(CoverageInterval linear, CoverageInterval resampled) {
        assertEquals(linear.lower(), resampled.lower(), 0.03 * linear.width());
        assertEquals(linear.upper(), resampled.upper(), 0.03 * linear.width());
    }

    @Test
    void rejectsTooFewRefitsAndForeignParameters() {
        PowerStudy study = (PowerStudy) PowerStudy.of(StudyRequest.of(StudyData.exact()));
        assertThrows(IllegalArgumentException.class, () -> Bootstrap.of(study.fit(), 99, 1));
        Bootstrap bootstrap = Bootstrap.of(study.fit(), 100, 1);
        assertThrows(IllegalArgumentException.class, () -> bootstrap.interval(StageParameter.KNEE_VOLTS, 0.95));
    }
}
