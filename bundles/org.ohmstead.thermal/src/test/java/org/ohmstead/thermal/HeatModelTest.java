// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HeatModelTest {
    private static final double PRINTED = 1e-6;
    private static final double TIGHT = 1e-12;

    private final HeatModel body = FosterChain.of(1.2, 500).model();

    // Closed form of one body: T = T_ss + (T_0 - T_ss) e^(-t/tau) with 50 W, 1.2 K/W, 500 J/K, air at 25 °C; tau = 600
    // s.
    @ParameterizedTest
    @CsvSource({"60, 30.709755", "300, 48.608160", "600, 62.927234", "1200, 76.879883", "3000, 84.595723"})
    void warmsAsTheClosedFormOfOneBody(double seconds, double celsius) {
        double[] state = body.cold();
        body.advance(state, new double[] {50}, seconds);
        assertEquals(celsius, 25 + body.riseKelvin(0, state, new double[] {50}), PRINTED);
    }

    @Test
    void settlesAtAirPlusPowerTimesResistance() {
        assertEquals(85, body.settledCelsius(0, new double[] {50}, 25), TIGHT);
    }

    // Closed form: t = -tau ln(1 - rise/(P R)).
    @Test
    void saysWhenATemperatureIsReached() {
        ReachTime.At at =
                assertInstanceOf(ReachTime.At.class, body.heatsTo(0, body.cold(), new double[] {50}, 60 - 25));
        assertEquals(600 * Math.log(60.0 / 25), at.seconds(), PRINTED);
        ReachTime.At hard =
                assertInstanceOf(ReachTime.At.class, body.heatsTo(0, body.cold(), new double[] {100}, 90 - 25));
        assertEquals(468.095135, hard.seconds(), PRINTED);
    }

    // Closed form: from 90 to 40 °C in air of 25 °C takes tau ln(65/15).
    @Test
    void saysWhenItHasCooled() {
        ReachTime.At at =
                assertInstanceOf(ReachTime.At.class, body.coolsTo(0, new double[] {65}, new double[] {0}, 40 - 25));
        assertEquals(879.802241, at.seconds(), PRINTED);
    }

    @Test
    void saysThatATemperatureIsNeverReached() {
        ReachTime.Never never =
                assertInstanceOf(ReachTime.Never.class, body.heatsTo(0, body.cold(), new double[] {50}, 60.001));
        assertEquals(60, never.settledKelvin(), TIGHT);
        assertInstanceOf(ReachTime.Never.class, body.coolsTo(0, new double[] {65}, new double[] {50}, 59));
    }

    @Test
    void isThereAtOnceWhenAlreadyThere() {
        assertEquals(new ReachTime.At(0), body.heatsTo(0, new double[] {10}, new double[] {50}, 10));
        assertEquals(new ReachTime.At(0), body.coolsTo(0, new double[] {10}, new double[] {50}, 11));
    }

    // A body behind another is hottest after the power has stopped. Closed form for e^(-t/a) - e^(-t/b): t = ln(a/b) a
    // b/(a - b).
    @Test
    void findsTheLatePeakOfAPlaceFarFromTheSource() {
        HeatModel.Builder builder = new HeatModel.Builder();
        int source = builder.source("s");
        int slow = builder.mode(100, new int[] {source}, new double[] {1});
        int fast = builder.mode(10, new int[] {source}, new double[] {1});
        HeatModel model = builder.point(
                        new HeatPoint("far", "far place", OptionalDouble.empty()),
                        new int[] {slow, fast},
                        new double[] {1, -1},
                        new int[0],
                        new double[0])
                .build();
        HeatPeak peak = model.peak(0, new double[] {5, 5}, new double[] {0}, 1000);
        double when = Math.log(10) * 100 * 10 / 90;
        assertEquals(when, peak.afterSeconds(), 1e-6 * when);
        assertEquals(5 * (Math.exp(-when / 100) - Math.exp(-when / 10)), peak.riseKelvin(), TIGHT);
        assertEquals(
                10, model.peak(0, new double[] {5, 5}, new double[] {0}, 10).afterSeconds(), TIGHT);
    }

    // Temperatures are linear in the powers: the response to a sum is the sum of the responses.
    @Test
    void addsUpTheResponsesOfSeveralPowers() {
        HeatModel model = HeatNetworkTest.twoDevicesOnOneSink().model();
        Random random = new Random(11);
        for (int run = 0; run < 50; run++) {
            double[] first = {100 * random.nextDouble(), 100 * random.nextDouble()};
            double[] second = {100 * random.nextDouble(), 100 * random.nextDouble()};
            double[] both = {first[0] + 3 * second[0], first[1] + 3 * second[1]};
            double seconds = 1000 * random.nextDouble();
            for (int point = 0; point < model.points().size(); point++) {
                double sum = rise(model, point, first, seconds) + 3 * rise(model, point, second, seconds);
                assertEquals(sum, rise(model, point, both, seconds), 1e-11 * sum);
            }
        }
    }

    @Test
    void movesOnTheSameInOneStepAsInMany() {
        HeatModel model = HeatNetworkTest.twoDevicesOnOneSink().model();
        double[] watts = {20, 7};
        double[] once = model.cold();
        model.advance(once, watts, 500);
        double[] often = model.cold();
        for (int i = 0; i < 1000; i++) {
            model.advance(often, watts, 0.5);
        }
        for (int mode = 0; mode < once.length; mode++) {
            assertEquals(once[mode], often[mode], 1e-10 * Math.abs(once[mode]));
        }
    }

    @Test
    void refusesATimeConstantThatIsNotAboveZero() {
        HeatModel.Builder builder = new HeatModel.Builder();
        int[] from = {builder.source("s")};
        IllegalArgumentException thrown =
                assertThrows(IllegalArgumentException.class, () -> builder.mode(-1, from, new double[] {1}));
        assertTrue(thrown.getMessage().contains("tau is -1.0"), thrown.getMessage());
    }

    private static double rise(HeatModel model, int point, double[] watts, double seconds) {
        double[] state = model.cold();
        model.advance(state, watts, seconds);
        return model.riseKelvin(point, state, watts);
    }
}
