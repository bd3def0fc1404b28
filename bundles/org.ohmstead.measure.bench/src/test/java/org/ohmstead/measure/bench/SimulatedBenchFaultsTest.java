// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.ohmstead.measure.Acquisition;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.Feed;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.Subject;
import org.ohmstead.model.Mode;
import org.ohmstead.model.SupplyType;

class SimulatedBenchFaultsTest {
    @Test
    void showsItsFaults() throws Exception {
        double healthy = watts("none", 0);
        assertTrue(watts("clips early", 0) < 0.6 * healthy);
        assertEquals(0, watts("channel dead", 0), 1e-3);
        assertTrue(watts("channel dead", 1) > 0.9 * healthy);
        assertEquals(0, watts("thermal cut-out", 1), 1e-3);
        assertEquals(0, watts("blown fuse", 1), 1e-3);
        try (Bench bench = SimulatedBenches.ready(SimulatedBenches.STEREO, "fault", "oscillation")) {
            bench.feed(Feed.Tone.of(1000, -10));
            assertTrue(SimulatedBenches.analysis(bench.acquire(0.05), 0, 4).thdPlusNoiseRRatio() > 0.02);
        }
        double trueAmps = ampsAfterAStep("none");
        assertTrue(ampsAfterAStep("slow meter") < 0.5 * trueAmps);
        assertEquals(0.8 * trueAmps, ampsAfterAStep("lying meter"), 0.01 * trueAmps);
    }

    private static double watts(String fault, int channel) throws Exception {
        try (Bench bench = SimulatedBenches.ready(SimulatedBenches.STEREO, "fault", fault)) {
            bench.feed(Feed.Tone.of(1000, -8));
            double square = 0;
            double[] samples =
                    bench.acquire(0.05).output().channels().get(channel).toArray();
            for (double sample : samples) {
                square += sample * sample / samples.length;
            }
            return square / 4;
        }
    }

    private static double ampsAfterAStep(String fault) throws Exception {
        try (Bench bench = SimulatedBenches.ready(SimulatedBenches.STEREO, "fault", fault)) {
            bench.observe();
            bench.feed(Feed.Tone.of(1000, -10));
            return bench.observe().supplyAmps().getAsDouble();
        }
    }

    @Test
    void mutesItselfWhenHotUntilItHasCooled() throws Exception {
        try (Bench bench = SimulatedBenches.ready(
                SimulatedBenches.STEREO, "caseSeconds", "20", "cutOutCelsius", "65", "caseKelvinPerWatt", "1")) {
            bench.feed(Feed.Tone.of(1000, -9));
            double peak = 1;
            for (int i = 0; i < 20 && peak > 0.1; i++) {
                bench.observe();
                bench.acquire(2);
                peak = maximum(bench.acquire(0.02));
            }
            assertTrue(peak < 0.1);
            for (int i = 0; i < 30 && peak < 1; i++) {
                peak = maximum(bench.acquire(2));
            }
            assertTrue(peak > 1);
        }
    }

    private static double maximum(Acquisition acquisition) {
        return java.util.Arrays.stream(acquisition.output().channels().get(0).toArray())
                .map(Math::abs)
                .max()
                .orElseThrow();
    }

    @Test
    void fallsSilentAtOnceAndFeedsNothingUntilTheSupplyIsSetAnew() throws Exception {
        try (Bench bench = SimulatedBenches.ready(SimulatedBenches.STEREO)) {
            bench.feed(Feed.Tone.of(1000, -10));
            Thread other = new Thread(() -> {
                try {
                    bench.standDown();
                } catch (MeasurementException unexpected) {
                    throw new IllegalStateException(unexpected);
                }
            });
            other.start();
            other.join();
            Acquisition after = bench.acquire(0.02);
            assertEquals(0, maximum(after));
            assertEquals(0, after.during().supplyAmps().getAsDouble(), 0.03);
            assertThrows(MeasurementException.class, () -> bench.feed(Feed.Tone.of(1000, -10)));
            bench.setSupplyVolts(14.4);
            assertTrue(maximum(bench.acquire(0.02)) < 0.01);
            bench.feed(Feed.Tone.of(1000, -10));
            assertTrue(maximum(bench.acquire(0.02)) > 1);
        }
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void passesTimeAsTheSettingSays(boolean realPace) throws Exception {
        long before = System.nanoTime();
        try (Bench bench = SimulatedBenches.open(SimulatedBenches.STEREO, "realPace", Boolean.toString(realPace))) {
            Instant first = bench.observe().at();
            Instant second = bench.observe().at();
            assertEquals(first.plusMillis(100), second);
        }
        if (realPace) {
            assertTrue(System.nanoTime() - before >= 199_000_000L);
        }
    }

    @Test
    void endsAWaitWhenItsThreadIsInterrupted() throws Exception {
        try (Bench bench = SimulatedBenches.ready(SimulatedBenches.STEREO)) {
            Thread.currentThread().interrupt();
            assertThrows(InterruptedException.class, () -> bench.acquire(0.1));
        }
    }

    @Test
    void saysWhatIsMissing() throws Exception {
        try (Bench bench = SimulatedBenches.open(SimulatedBenches.STEREO)) {
            bench.setSupplyVolts(12);
            String message = assertThrows(MeasurementException.class, () -> bench.acquire(1))
                    .getMessage();
            assertTrue(message.startsWith("No load is connected."), message);
            message = assertThrows(MeasurementException.class, () -> bench.setSupplyVolts(20))
                    .getMessage();
            assertTrue(message.contains("at most 16.0 V"), message);
        }
        Subject single = Subjects.of(1, SupplyType.UNREGULATED, Mode.SINGLE);
        try (Bench bench = SimulatedBenches.open(single)) {
            assertThrows(MeasurementException.class, () -> bench.connect(Mode.BRIDGED, single.load()));
        }
    }
}
