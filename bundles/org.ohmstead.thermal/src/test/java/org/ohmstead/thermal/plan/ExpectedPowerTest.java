// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.ohmstead.model.Mode;
import org.ohmstead.model.PowerKind;
import org.ohmstead.model.Project;
import org.ohmstead.model.Rating;
import org.ohmstead.model.Step;
import org.ohmstead.model.Stimulus;
import org.ohmstead.model.SupplyType;

class ExpectedPowerTest {
    private static final double EXACT = 1e-9;

    private static ExpectedPower of(Project project, Step step) {
        return ExpectedPower.of(project, step, Optional.empty());
    }

    private static Project rated(Rating... ratings) {
        Project project = TestProject.sound();
        return project.withAmplifier(project.amplifier().withRatings(List.of(ratings)));
    }

    @Test
    void takesTheRatingOfTheSameLoadAndVolts() {
        ExpectedPower power = of(TestProject.sound(), TestProject.step("s", Mode.STEREO, "4ohm", 14.4));
        assertEquals(90, power.watts().orElseThrow(), EXACT);
        assertEquals(ExpectedPower.Basis.RATING, power.basis());
    }

    @Test
    void scalesWithTheSquareOfTheSupplyVolts() {
        // 14.4 to 12.6 V: 1 / 1.306122 (closed form (12.6 / 14.4)^2).
        ExpectedPower power = of(TestProject.sound(), TestProject.step("s", Mode.STEREO, "4ohm", 12.6));
        assertEquals(90 / 1.306122449, power.watts().orElseThrow(), 1e-6);
        assertEquals(ExpectedPower.Basis.SCALED, power.basis());
    }

    @Test
    void doesNotScaleWhenAConverterHoldsTheRails() {
        Project project = TestProject.sound();
        Project held = project.withAmplifier(project.amplifier().withSupplyType(SupplyType.REGULATED));
        assertEquals(
                90,
                of(held, TestProject.step("s", Mode.STEREO, "4ohm", 12.6))
                        .watts()
                        .orElseThrow(),
                EXACT);
    }

    @Test
    void takesABridgedAmplifierAsTwoChannelsOfHalfTheLoad() {
        // P_bridged(R) = 2 P_channel(R / 2), exact for channels that are alike.
        ExpectedPower power = of(TestProject.sound(), TestProject.step("s", Mode.BRIDGED, "8ohm", 14.4));
        assertEquals(180, power.watts().orElseThrow(), EXACT);
        assertTrue(power.sentence().contains("another mode"), power.sentence());
    }

    @Test
    void prefersTheRatingOfTheNearestVoltsAndOfTheSameKind() {
        Project project = rated(
                TestProject.rating("low", Mode.STEREO, 4, 75, 12.6),
                TestProject.rating("high", Mode.STEREO, 4, 90, 14.4),
                new Rating("burst", PowerKind.BURST, Mode.STEREO, 4, 100, 14.4, 0.01, 1000, ""));
        Step low = TestProject.step("s", Mode.STEREO, "4ohm", 12.6);
        assertEquals(75, of(project, low).watts().orElseThrow(), EXACT);
        Step burst = low.withSupplyVolts(14.4).withStimulus(new Stimulus.ToneBurst(1000, 0.02, 0.5, -20));
        assertEquals(100, of(project, burst).watts().orElseThrow(), EXACT);
    }

    @Test
    void estimatesFromTheNextHigherLoadWithTheSameVolts() {
        Project project = rated(
                TestProject.rating("r8", Mode.STEREO, 8, 50, 14.4), TestProject.rating("r4", Mode.STEREO, 4, 90, 14.4));
        ExpectedPower power = of(project, TestProject.step("s", Mode.STEREO, "2ohm", 14.4));
        assertEquals(180, power.watts().orElseThrow(), EXACT);
        assertEquals(ExpectedPower.Basis.OTHER_LOAD, power.basis());
        assertTrue(power.sentence().contains("rather too much"), power.sentence());
        Project onlyLow = rated(TestProject.rating("r2", Mode.STEREO, 2, 150, 14.4));
        ExpectedPower higher = of(onlyLow, TestProject.step("s", Mode.STEREO, "8ohm", 14.4));
        assertEquals(37.5, higher.watts().orElseThrow(), EXACT);
        assertTrue(higher.sentence().contains("too little"), higher.sentence());
    }

    @Test
    void saysWhenNothingTells() {
        ExpectedPower power = of(rated(), TestProject.step("s", Mode.STEREO, "4ohm", 14.4));
        assertTrue(power.watts().isEmpty());
        assertEquals(ExpectedPower.Basis.UNKNOWN, power.basis());
    }

    @Test
    void believesReadingsMost() {
        ExpectedPower power = ExpectedPower.of(
                TestProject.sound(),
                TestProject.step("s", Mode.STEREO, "4ohm", 14.4),
                Optional.of(new KnownPower(87, OptionalDouble.empty())));
        assertEquals(87, power.watts().orElseThrow(), EXACT);
        assertEquals(ExpectedPower.Basis.READING, power.basis());
    }
}
