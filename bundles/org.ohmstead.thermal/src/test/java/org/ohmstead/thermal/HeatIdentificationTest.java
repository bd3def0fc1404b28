// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class HeatIdentificationTest {
    private static final double AIR = 22.4;
    private static final double RESISTANCE = 1.2;
    private static final double CAPACITY = 500;
    private static final double TAU = RESISTANCE * CAPACITY;
    private static final double WATTS = 40;
    private static final int RECORDS = 500;

    private static List<HeatReading> readings(
            DoubleUnaryOperator celsius, double spacing, int count, double noise, Random random) {
        List<HeatReading> readings = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            double seconds = i * spacing;
            readings.add(new HeatReading(seconds, celsius.applyAsDouble(seconds) + noise * random.nextGaussian()));
        }
        return readings;
    }

    private static double warming(double seconds) {
        return AIR + WATTS * RESISTANCE * -Math.expm1(-seconds / TAU);
    }

    private static double cooling(double seconds) {
        return AIR + 50 * Math.exp(-seconds / TAU);
    }

    /** Of 500 records some 475 hold the truth; 92 to 98 % is three standard deviations of that. */
    private static void assertCovers(int hits, String what) {
        assertTrue(hits >= 0.92 * RECORDS && hits <= 0.98 * RECORDS, what + ": " + hits + " of " + RECORDS);
    }

    // The closed form with independent normal noise: 95 % intervals hold the truth 95 times in 100.
    @Test
    void intervalsOfWarmUpsHoldTheTruthAsOftenAsTheySay() {
        Random random = new Random(2024);
        int resistance = 0;
        int capacity = 0;
        int tau = 0;
        int air = 0;
        for (int record = 0; record < RECORDS; record++) {
            HeatFit.Found found = assertInstanceOf(
                    HeatFit.Found.class,
                    HeatIdentification.identify(
                            HeatRecord.warmUp(readings(HeatIdentificationTest::warming, 30, 60, 0.3, random), WATTS)));
            HeatFit.Stage stage = found.stages().get(found.stages().size() - 1);
            resistance += holds(found.kelvinPerWatt().orElseThrow(), RESISTANCE);
            capacity += holds(stage.joulesPerKelvin().orElseThrow(), CAPACITY);
            tau += holds(stage.tauSeconds(), TAU);
            air += holds(found.airCelsius().orElseThrow(), AIR);
        }
        assertCovers(resistance, "resistance");
        assertCovers(capacity, "capacity");
        assertCovers(tau, "tau");
        assertCovers(air, "air");
    }

    @Test
    void intervalsOfCoolDownsHoldTheTruthAsOftenAsTheySay() {
        Random random = new Random(2025);
        int tau = 0;
        int air = 0;
        for (int record = 0; record < RECORDS; record++) {
            HeatFit.Found found = assertInstanceOf(
                    HeatFit.Found.class,
                    HeatIdentification.identify(
                            HeatRecord.coolDown(readings(HeatIdentificationTest::cooling, 30, 60, 0.3, random))));
            tau += holds(found.stages().get(found.stages().size() - 1).tauSeconds(), TAU);
            air += holds(found.airCelsius().orElseThrow(), AIR);
            assertTrue(found.kelvinPerWatt().isEmpty());
        }
        assertCovers(tau, "tau");
        assertCovers(air, "air");
    }

    // One record of a warm-up and the cool-down after it, begun at an unknown temperature: the powers tell resistance
    // and air apart.
    @Test
    void intervalsOfWarmUpAndCoolDownTogetherHoldTheTruthAsOftenAsTheySay() {
        PowerProfile powers = new PowerProfile(List.of(new PowerStep(900, WATTS), new PowerStep(900, 0)));
        HeatModel model = FosterChain.of(RESISTANCE, CAPACITY).model();
        Random random = new Random(2026);
        int resistance = 0;
        int capacity = 0;
        for (int record = 0; record < RECORDS; record++) {
            List<HeatReading> readings = readings(
                    t -> AIR + powers.risesKelvin(model, 0, new double[] {7}, new double[] {t})[0],
                    30,
                    60,
                    0.3,
                    random);
            HeatFit.Found found = assertInstanceOf(
                    HeatFit.Found.class,
                    HeatIdentification.identify(new HeatRecord(readings, powers, false, OptionalDouble.empty())));
            HeatFit.Stage stage = found.stages().get(found.stages().size() - 1);
            resistance += holds(found.kelvinPerWatt().orElseThrow(), RESISTANCE);
            capacity += holds(stage.joulesPerKelvin().orElseThrow(), CAPACITY);
        }
        assertCovers(resistance, "resistance");
        assertCovers(capacity, "capacity");
    }

    private static int holds(FittedFigure figure, double truth) {
        return figure.interval().contains(truth) ? 1 : 0;
    }

    @Test
    void returnsTheTruthFromExactReadings() {
        HeatFit.Found found = assertInstanceOf(
                HeatFit.Found.class,
                HeatIdentification.identify(HeatRecord.warmUp(
                        readings(HeatIdentificationTest::warming, 20, 100, 0, new Random(1)), WATTS)));
        assertEquals(1, found.stages().size());
        assertEquals(RESISTANCE, found.kelvinPerWatt().orElseThrow().value(), 1e-8);
        assertEquals(TAU, found.stages().get(0).tauSeconds().value(), 1e-5);
        assertEquals(AIR, found.airCelsius().orElseThrow().value(), 1e-7);
        assertEquals(
                CAPACITY, found.stages().get(0).joulesPerKelvin().orElseThrow().value(), 1e-5);
        assertEquals(RESISTANCE, found.chain().orElseThrow().kelvinPerWatt(), 1e-8);
    }

    @Test
    void findsTwoTimeConstantsWhereThereAreTwo() {
        FosterChain chain = new FosterChain(List.of(new FosterStage(0.5, 40), new FosterStage(1, 900)));
        HeatFit.Found found = assertInstanceOf(
                HeatFit.Found.class,
                HeatIdentification.identify(HeatRecord.warmUp(
                        readings(t -> AIR + WATTS * chain.kelvinPerWattAfter(t), 10, 360, 0.2, new Random(4)), WATTS)));
        assertEquals(2, found.stages().size());
        assertTrue(found.stages().get(0).tauSeconds().interval().contains(40));
        assertTrue(found.stages().get(1).tauSeconds().interval().contains(900));
        assertTrue(
                found.stages().get(0).kelvinPerWatt().orElseThrow().interval().contains(0.5));
        assertTrue(found.kelvinPerWatt().orElseThrow().interval().contains(1.5));
    }

    @Test
    void seldomSeesTwoTimeConstantsWhereThereIsOne() {
        Random random = new Random(7);
        int two = 0;
        for (int record = 0; record < 100; record++) {
            HeatFit.Found found = assertInstanceOf(
                    HeatFit.Found.class,
                    HeatIdentification.identify(
                            HeatRecord.warmUp(readings(HeatIdentificationTest::warming, 30, 60, 0.3, random), WATTS)));
            two += found.stages().size() - 1;
        }
        assertTrue(two <= 5, two + " of 100");
    }

    @Test
    void estimatesTheNoiseAndGivesTheResiduals() {
        HeatFit.Found found = assertInstanceOf(
                HeatFit.Found.class,
                HeatIdentification.identify(HeatRecord.warmUp(
                        readings(HeatIdentificationTest::warming, 5, 400, 0.25, new Random(12)), WATTS)));
        // The standard deviation of 400 readings is known to about 3.5 %.
        assertEquals(0.25, found.noiseKelvin(), 3 * 0.035 * 0.25);
        assertEquals(400, found.residuals().size());
        double mean = found.residuals().stream()
                .mapToDouble(HeatFit.Residual::kelvin)
                .average()
                .orElseThrow();
        assertEquals(0, mean, 1e-6);
    }

    @Test
    void warnsOfDriftingAir() {
        HeatFit.Found found = assertInstanceOf(
                HeatFit.Found.class,
                HeatIdentification.identify(HeatRecord.warmUp(
                        readings(t -> warming(t) + Math.sin(t / 40), 10, 240, 0.1, new Random(13)), WATTS)));
        assertTrue(
                found.remarks().stream().anyMatch(remark -> remark.contains("too narrow")),
                found.remarks().toString());
    }

    @Test
    void doesNotMindWhenTheClockBegan() {
        List<HeatReading> late = new ArrayList<>();
        for (HeatReading reading : readings(HeatIdentificationTest::cooling, 30, 60, 0.1, new Random(3))) {
            late.add(new HeatReading(reading.seconds() + 1e6, reading.celsius()));
        }
        HeatFit.Found found =
                assertInstanceOf(HeatFit.Found.class, HeatIdentification.identify(HeatRecord.coolDown(late)));
        assertEquals(TAU, found.stages().get(0).tauSeconds().value(), 20);
    }

    @ParameterizedTest
    @ValueSource(ints = {15, 20, 25})
    void refusesARecordThatIsTooShort(int count) {
        HeatFit.Refused refused = assertInstanceOf(
                HeatFit.Refused.class,
                HeatIdentification.identify(HeatRecord.warmUp(
                        readings(HeatIdentificationTest::warming, 20, count, 0.02, new Random(1)), WATTS)));
        assertTrue(refused.reason().contains("The record lasts"), refused.reason());
        assertTrue(refused.remedy().startsWith("Log for at least"), refused.remedy());
    }

    @Test
    void refusesWhatTellsNothing() {
        Random random = new Random(1);
        assertRefused(HeatRecord.warmUp(readings(t -> warming(t), 300, 9, 0.1, random), WATTS), "at least 10");
        assertRefused(HeatRecord.warmUp(readings(t -> AIR, 30, 60, 0.1, random), WATTS), "");
        List<HeatReading> twice = new ArrayList<>(readings(t -> warming(t), 30, 60, 0.1, random));
        twice.add(twice.get(59));
        assertRefused(HeatRecord.warmUp(twice, WATTS), "not after the one before");
        List<HeatReading> warm = readings(t -> warming(t), 30, 60, 0.1, random);
        assertRefused(
                new HeatRecord(warm, PowerProfile.constant(WATTS), false, OptionalDouble.empty()),
                "cannot be told apart");
        assertRefused(new HeatRecord(warm, PowerProfile.constant(0), true, OptionalDouble.empty()), "nothing to see");
        assertRefused(HeatRecord.coolDown(readings(t -> cooling(t), 6000, 20, 0.1, random)), "");
    }

    @Test
    void usesTheAirThatWasMeasured() {
        List<HeatReading> warm = readings(t -> warming(t) + 5 * Math.exp(-t / TAU), 30, 60, 0.1, new Random(8));
        HeatFit.Found found = assertInstanceOf(
                HeatFit.Found.class,
                HeatIdentification.identify(
                        new HeatRecord(warm, PowerProfile.constant(WATTS), false, OptionalDouble.of(AIR))));
        assertTrue(found.airCelsius().isEmpty());
        assertEquals(RESISTANCE, found.kelvinPerWatt().orElseThrow().value(), 0.02);
    }

    private static void assertRefused(HeatRecord record, String part) {
        HeatFit.Refused refused = assertInstanceOf(HeatFit.Refused.class, HeatIdentification.identify(record));
        assertTrue(refused.reason().contains(part), refused.reason());
    }
}
