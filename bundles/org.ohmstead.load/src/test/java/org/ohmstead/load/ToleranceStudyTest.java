// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class ToleranceStudyTest {
    @Test
    void agreesWithTheRectangularDistributionOfASingleResistor() throws NotationException {
        ToleranceStudy study = ToleranceStudy.of(NetworkNotation.parse("10J", Stock.EMPTY), 200_000, 1);
        // A rectangular distribution from 9.5 to 10.5: standard deviation 1 / sqrt(12), 95 % within +-0.475.
        assertEquals(1 / Math.sqrt(12), study.standardDeviationOhms(), 0.002);
        assertEquals(10, study.meanOhms(), 0.003);
        assertEquals(9.525, study.intervalOhms(0.95).lower(), 0.005);
        assertEquals(10.475, study.intervalOhms(0.95).upper(), 0.005);
        assertEquals(0.5, study.probabilityWithin(10, 0.025), 0.005);
        assertEquals(1, study.probabilityWithin(10, 0.05), 0);
        assertEquals(0, study.probabilityWithin(11, 0.01), 0);
        assertEquals(10, study.nominalOhms(), 1e-12);
    }

    @Test
    void agreesWithTheTriangularDistributionOfTwoInSeries() throws NotationException {
        ToleranceStudy study = ToleranceStudy.of(NetworkNotation.parse("10J+10J", Stock.EMPTY), 200_000, 2);
        // The sum of two equal rectangular ones is triangular: within half of its half-width lie 3/4.
        assertEquals(0.75, study.probabilityWithin(20, 0.025), 0.005);
        assertEquals(1 / Math.sqrt(6), study.standardDeviationOhms(), 0.003);
    }

    @Test
    void agreesWithTheSharesToFirstOrder() throws NotationException {
        Network network = NetworkNotation.parse("3R9F||(6R8F+10F)", Stock.EMPTY);
        ToleranceStudy study = ToleranceStudy.of(network, 200_000, 3);
        NetworkAnalysis analysis = NetworkAnalysis.of(network, 25);
        // 0.475071 % by the shares and tolerance / sqrt(3).
        assertEquals(0.00475071, study.standardDeviationOhms() / network.ohms(), 0.00475071 * 0.01);
        assertTrue(study.intervalOhms(0.999).lower() >= analysis.worstCaseLowOhms());
        assertTrue(study.intervalOhms(0.999).upper() <= analysis.worstCaseHighOhms());
    }
}
