// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class HeatLimitsTest {
    private static final double PRINTED = 1e-6;
    private static final double[] OFF = {0};

    private final HeatModel body = body(90);
    private final HeatLimits limits = new HeatLimits(body, 25, 0);

    private static HeatModel body(double limitCelsius) {
        return new HeatModel.Builder()
                .chain(
                        new HeatPoint("case", "case of the amplifier", OptionalDouble.of(limitCelsius)),
                        "amplifier",
                        FosterChain.of(1.2, 500))
                .build();
    }

    // Closed form: 100 W through 1.2 K/W and 500 J/K from 25 to 90 °C takes -600 ln(1 - 65/120) s.
    @Test
    void saysHowLongAPowerMayBeOn() {
        HeatAnswer answer = limits.onTime(body.cold(), new double[] {100});
        assertEquals(468.095135, answer.value().orElseThrow(), PRINTED);
        assertEquals(
                "After 7.8 min the case of the amplifier reaches the 90.0 °C that it may reach.", answer.sentence());
    }

    @Test
    void startsFromAWarmState() {
        HeatAnswer answer = limits.onTime(new double[] {30}, new double[] {100});
        assertEquals(-600 * Math.log((120 - 65) / (120 - 30.0)), answer.value().orElseThrow(), PRINTED);
    }

    // P R of 54 W is 64.8 K and of 65/1.2 W just 65 K: never more than 90 °C.
    @ParameterizedTest
    @ValueSource(doubles = {0, 30, 54, 65 / 1.2})
    void saysUnlimitedWhereThePowerNeverReachesTheLimit(double watts) {
        HeatAnswer.Unlimited answer =
                assertInstanceOf(HeatAnswer.Unlimited.class, limits.onTime(body.cold(), new double[] {watts}));
        assertTrue(answer.sentence().startsWith("Unlimited: the case of the amplifier settles at "), answer.sentence());
        assertTrue(answer.value().isEmpty());
    }

    @Test
    void keepsTheMargin() {
        HeatLimits withMargin = new HeatLimits(body, 25, 5);
        assertEquals(
                -600 * Math.log(1 - 60 / 120.0),
                withMargin.onTime(body.cold(), new double[] {100}).value().orElseThrow(),
                PRINTED);
    }

    // Closed form: from 90 to 40 °C in air of 25 °C takes 600 ln(65/15) s.
    @Test
    void saysHowLongTheCoolDownTakes() {
        HeatAnswer answer = limits.coolDown(0, new double[] {65}, OFF, 40);
        assertEquals(879.802241, answer.value().orElseThrow(), PRINTED);
        assertTrue(answer.sentence().contains("is down to 40.0 °C"), answer.sentence());
    }

    @Test
    void saysNeverWhenTheAirIsWarmerThanAskedFor() {
        HeatAnswer.Impossible answer =
                assertInstanceOf(HeatAnswer.Impossible.class, limits.coolDown(0, new double[] {65}, OFF, 20));
        assertEquals(
                "The case of the amplifier never gets down to 20.0 °C; it settles at 25.0 °C in air of 25.0 °C.",
                answer.sentence());
        assertTrue(answer.remedy().contains("fan"), answer.remedy());
    }

    @Test
    void saysTheContinuousPower() {
        HeatAnswer answer = limits.continuousMultiple(new double[] {1}, OFF);
        assertEquals(65 / 1.2, answer.value().orElseThrow(), 1e-9);
        HeatAnswer beside = limits.continuousMultiple(new double[] {1}, new double[] {10});
        assertEquals(65 / 1.2 - 10, beside.value().orElseThrow(), 1e-9);
        assertInstanceOf(HeatAnswer.Impossible.class, limits.continuousMultiple(new double[] {1}, new double[] {60}));
        assertInstanceOf(HeatAnswer.Unlimited.class, limits.continuousMultiple(OFF, OFF));
    }

    // Closed form of one body: P R (1 - e^(-dT/tau)) / (1 - e^(-T/tau)) at the limit, solved for d.
    @ParameterizedTest
    @ValueSource(doubles = {0.1, 60, 600, 6000})
    void saysTheDutyForEver(double periodSeconds) {
        HeatAnswer answer = limits.duty(new double[] {200}, OFF, periodSeconds);
        double expected = -600 / periodSeconds * Math.log1p(65.0 / 240 * Math.expm1(-periodSeconds / 600));
        assertEquals(expected, answer.value().orElseThrow(), 1e-9);
    }

    @Test
    void saysThatTheDutyIsUnlimitedOrNone() {
        assertInstanceOf(HeatAnswer.Unlimited.class, limits.duty(new double[] {50}, OFF, 60));
        HeatAnswer.Impossible none =
                assertInstanceOf(HeatAnswer.Impossible.class, limits.duty(new double[] {200}, new double[] {60}, 60));
        assertTrue(none.sentence().contains("Even at rest"), none.sentence());
    }

    @Test
    void saysThatAirAboveTheLimitLeavesNoRoom() {
        HeatLimits hot = new HeatLimits(body, 95, 0);
        HeatAnswer.Impossible answer =
                assertInstanceOf(HeatAnswer.Impossible.class, hot.onTime(body.cold(), new double[] {1}));
        assertEquals(
                "The air is at 95.0 °C, and the case of the amplifier may reach 90.0 °C: no room for any power.",
                answer.sentence());
        assertInstanceOf(HeatAnswer.Impossible.class, hot.duty(new double[] {1}, OFF, 10));
        assertInstanceOf(HeatAnswer.Impossible.class, hot.continuousMultiple(new double[] {1}, OFF));
    }

    @Test
    void saysThatItIsTooHotAlready() {
        HeatAnswer.Impossible answer =
                assertInstanceOf(HeatAnswer.Impossible.class, limits.onTime(new double[] {70}, new double[] {10}));
        assertTrue(answer.sentence().contains("at 95.0 °C already"), answer.sentence());
    }

    @Test
    void namesThePointThatBinds() {
        HeatModel two = new HeatModel.Builder()
                .chain(new HeatPoint("a", "first", OptionalDouble.of(90)), "s", FosterChain.of(1.2, 500))
                .chain(new HeatPoint("b", "second", OptionalDouble.of(60)), "s", FosterChain.of(1.2, 500))
                .chain(new HeatPoint("c", "third", OptionalDouble.empty()), "s", FosterChain.of(9, 1))
                .build();
        HeatAnswer answer = new HeatLimits(two, 25, 0).onTime(two.cold(), new double[] {100});
        assertEquals(-600 * Math.log(1 - 35 / 120.0), answer.value().orElseThrow(), PRINTED);
        assertTrue(answer.sentence().contains("second"), answer.sentence());
    }
}
