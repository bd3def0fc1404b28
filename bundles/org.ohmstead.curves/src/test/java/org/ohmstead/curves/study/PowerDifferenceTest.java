// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.metrology.Estimate;
import org.ohmstead.model.Mode;

class PowerDifferenceTest {

    @Test
    void hasItsClosedForm() {
        // 100 W against 80 W: 0.97 dB; u(dB) = 10/ln 10 sqrt(0.01² + 0.01²), 95 % interval +- 1.959964 u.
        PowerDifference found = PowerDifference.of("A", Estimate.of(100, 1), "B", Estimate.of(80, 0.8), 0.95);
        assertEquals(20, found.differenceWatts().value(), 1e-12);
        assertEquals(Math.hypot(1, 0.8), found.differenceWatts().standardUncertainty(), 1e-12);
        assertEquals(0.25, found.relative().value(), 1e-12);
        assertEquals(0.9691001, found.differenceDb().value(), 1e-7);
        double uncertainty = 10 / Math.log(10) * 0.01 * Math.sqrt(2);
        assertEquals(uncertainty, found.differenceDb().standardUncertainty(), 1e-12);
        assertEquals(0.9691001 - 1.959964 * uncertainty, found.intervalDb().lower(), 1e-6);
        assertEquals(Audibility.DIRECT_COMPARISON_AT_BEST, found.nearest());
        assertEquals(Audibility.ABOUT_THRESHOLD, found.most());
        assertTrue(found.sentence().contains("A gives 20 W more than B (+25.0 %, +0.97 dB"), found.sentence());
        assertTrue(found.sentence().contains("direct comparison"), found.sentence());
    }

    @Test
    void saysWhenThereMayBeNoDifference() {
        PowerDifference found =
                PowerDifference.of("Left", new Estimate(100, 1, 8), "right", new Estimate(100.5, 1, 8), 0.95);
        assertTrue(found.sentence().contains("do not show that there is a difference"), found.sentence());
        assertTrue(found.sentence().contains("Left gives 0.5 W less than right"), found.sentence());
        assertEquals(Audibility.NOT_HEARD, found.nearest());
        // Welch and Satterthwaite: equal parts of 8 degrees each give 16.
        assertEquals(16, found.differenceWatts().degreesOfFreedom(), 1e-9);
        assertThrows(
                IllegalArgumentException.class,
                () -> PowerDifference.of("a", Estimate.of(0, 1), "b", Estimate.of(1, 1), 0.95));
    }

    @ParameterizedTest
    @CsvSource({
        "0.29, NOT_HEARD",
        "-0.3, DIRECT_COMPARISON_AT_BEST",
        "0.99, DIRECT_COMPARISON_AT_BEST",
        "-1.0, ABOUT_THRESHOLD",
        "2.9, ABOUT_THRESHOLD",
        "3, CLEAR",
        "-10, CLEAR"
    })
    void classesOfAudibility(double differenceDb, Audibility expected) {
        assertEquals(expected, Audibility.of(differenceDb));
    }

    @Test
    void comparesTwoStudiesWhereBothSaySomething() {
        PowerStudy all = (PowerStudy) PowerStudy.of(StudyRequest.of(StudyData.exact()));
        PowerStudy one = (PowerStudy) PowerStudy.of(StudyRequest.of(StudyData.exact(4, StudyData.FOUR_OHM)));
        // Closed form: 315.823673 W into 2 ohm against 165.708792 W into 4 ohm at 14.4 V.
        PowerDifference loads = PowerDifference.of(
                        "2 ohm", all.predict(14.4, 2, Mode.STEREO), "4 ohm", all.predict(14.4, 4, Mode.STEREO), 0.95)
                .orElseThrow();
        assertEquals(
                10 * Math.log10(315.823673 / 165.708792), loads.differenceDb().value(), 1e-6);
        assertTrue(PowerDifference.of(
                        "2 ohm", all.predict(14.4, 2, Mode.STEREO), "other", one.predict(14.4, 2, Mode.STEREO), 0.95)
                .isEmpty());
        assertEquals(List.of(new PowerStudy.PlacedLoad(4, Mode.STEREO)), one.loads());
    }
}
