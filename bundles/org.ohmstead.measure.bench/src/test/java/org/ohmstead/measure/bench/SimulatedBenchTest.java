// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.bench;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.measure.Acquisition;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.Feed;
import org.ohmstead.measure.Observation;
import org.ohmstead.measure.Subject;
import org.ohmstead.model.AmplifierHeat;
import org.ohmstead.model.HeatData;
import org.ohmstead.model.Mode;
import org.ohmstead.model.OutputClass;
import org.ohmstead.model.Range;
import org.ohmstead.model.SupplyType;
import org.ohmstead.signal.ChannelAnalysis;

class SimulatedBenchTest {
    /** Drive over onset, THD_F up to the 19th harmonic, power over that at the onset: closed form of the hard-clipped sine. */
    @ParameterizedTest
    @CsvSource({
        "0.0872961,0.0027823,1.017868",
        "0.264565,0.0105611,1.049773",
        "0.91515,0.0421528,1.146019",
        "2.49877,0.113655,1.318578",
        "6.0206,0.232853,1.564009"
    })
    void clipsHardAsTheClosedFormSays(double overDb, double thdRatio, double powerRatio) throws Exception {
        // Gain 20 dB and a source of 4 V: the onset at 20 V peak lies at -9.0309 dB of 56.57 V peak.
        double onsetDb = 20 * Math.log10(20 / (4 * Math.sqrt(2) * 10));
        try (Bench bench = SimulatedBenches.ready(
                SimulatedBenches.STEREO, "ideal", "true", "clipVolts", "20", "gainDb", "20", "sourceVolts", "4")) {
            bench.feed(Feed.Tone.of(1000, onsetDb + overDb));
            for (int channel = 0; channel < 2; channel++) {
                ChannelAnalysis found = SimulatedBenches.analysis(bench.acquire(0.05), channel, 4);
                assertEquals(thdRatio, found.thdFRatio(), 0.002 * thdRatio);
                assertEquals(50 * powerRatio, found.powerWatts(), 0.0005 * 50 * powerRatio);
            }
        }
    }

    /** tanh(g sin): THD_F 6.706482 % at g = 1, 17.34069 % at g = 2; dead zone of 0.1 of the peak: 6.26751 % (closed forms). */
    @ParameterizedTest
    @CsvSource({"kneeRatio,1,20,1,0.06706482", "kneeRatio,1,20,2,0.1734069", "crossoverVolts,0.4,20,0.2,0.0626751"})
    void bendsAndCrossesAsTheClosedFormsSay(String id, String value, double clipVolts, double share, double thdRatio)
            throws Exception {
        double driveDb = 20 * Math.log10(share * clipVolts / (4 * Math.sqrt(2) * 10));
        String clip = Double.toString(clipVolts);
        try (Bench bench = SimulatedBenches.ready(
                SimulatedBenches.STEREO,
                "ideal",
                "true",
                "clipVolts",
                clip,
                "gainDb",
                "20",
                "sourceVolts",
                "4",
                id,
                value)) {
            bench.feed(Feed.Tone.of(1000, driveDb));
            assertEquals(
                    thdRatio,
                    SimulatedBenches.analysis(bench.acquire(0.05), 0, 4).thdFRatio(),
                    0.005 * thdRatio);
        }
    }

    /** V_pk = (g V - V_s) R / (R + R_s): 165.708792 W into 4 ohm and 315.823673 W into 2 ohm at 14.4 V (closed form; g = 2.8). */
    @ParameterizedTest
    @CsvSource({"4ohm,4,14.4,165.708792", "2ohm,2,14.4,315.823673", "8ohm,8,12.6,63.526804", "2ohm,2,11,175.247166"})
    void followsTheSupplyAndLosesVoltsToTheLoad(String loadId, double ohms, double supplyVolts, double onsetWatts)
            throws Exception {
        try (Bench bench = SimulatedBenches.open(
                SimulatedBenches.STEREO,
                "railRatio",
                "2.8",
                "saturationVolts",
                "3",
                "saturationOhms",
                "0.1",
                "railOhms",
                "0",
                "outputOhms",
                "0",
                "kneeRatio",
                "0",
                "crossoverVolts",
                "0",
                "noiseVolts",
                "0",
                "mismatchDb",
                "0",
                "separationDb",
                "200",
                "currentLimitAmps",
                "1000",
                "supplyLimitAmps",
                "1000",
                "railLossRatio",
                "0",
                "gainLossDb",
                "0",
                "meterErrors",
                "false",
                "gainDb",
                "40")) {
            bench.connect(Mode.STEREO, Subjects.load(SimulatedBenches.STEREO, loadId));
            bench.setSupplyVolts(supplyVolts);
            bench.feed(Feed.Tone.of(1000, 0));
            // Far over the onset the flat tops stand at the limit: its square over 2 R is the power at the onset.
            double peak =
                    SimulatedBenches.analysis(bench.acquire(0.05), 0, ohms).outputVoltsPeak();
            double[] samples = bench.acquire(0.02).output().channels().get(0).toArray();
            double flat = samples[quarterOfACycle(samples)];
            assertEquals(Math.sqrt(2 * ohms * onsetWatts), Math.abs(flat), 0.01 * peak);
        }
    }

    private static int quarterOfACycle(double[] samples) {
        for (int i = 1; i < samples.length - 12; i++) {
            if (samples[i - 1] < 0 && samples[i] >= 0) {
                return i + 12;
            }
        }
        throw new AssertionError("no rising zero crossing");
    }

    /** P_in = 2 m V^2 / (pi R) of a class B stage, m = 0.5: 71.619724 W at rails of 30 V into 4 ohm (closed form). */
    @Test
    void takesTheSupplyCurrentOfAClassBStage() throws Exception {
        Subject single = Subjects.of(1, SupplyType.UNREGULATED, Mode.SINGLE);
        try (Bench bench = SimulatedBenches.ready(
                single,
                "railRatio",
                "2.5",
                "railOhms",
                "0",
                "saturationVolts",
                "0",
                "saturationOhms",
                "0",
                "efficiencyRatio",
                "1",
                "idleAmps",
                "0",
                "outputOhms",
                "0",
                "crossoverVolts",
                "0",
                "kneeRatio",
                "0",
                "lowCornerHz",
                "0",
                "highCornerHz",
                "1e9",
                "gainLossDb",
                "0",
                "railLossRatio",
                "0",
                "meterErrors",
                "false",
                "gainDb",
                "20",
                "sourceVolts",
                "2")) {
            bench.setSupplyVolts(12);
            bench.feed(Feed.Tone.of(1000, 20 * Math.log10(15 / (20 * Math.sqrt(2)))));
            Observation shown = bench.observe();
            double watts =
                    shown.supplyVolts().getAsDouble() * shown.supplyAmps().getAsDouble();
            assertEquals(71.619724, watts, 0.002 * 71.6);
        }
    }

    /** Bridged into R each channel sees R / 2, and the load both outputs: P(R) = 2 P_channel(R / 2) (closed form). */
    @Test
    void bridgesTwoChannels() throws Exception {
        String[] ideal = {"ideal", "true", "clipVolts", "20", "gainDb", "20", "sourceVolts", "2"};
        Subject bridged = Subjects.of(2, SupplyType.UNREGULATED, Mode.BRIDGED);
        try (Bench bench = SimulatedBenches.ready(bridged, ideal)) {
            bench.feed(Feed.Tone.of(1000, -6.0205999));
            Acquisition acquisition = bench.acquire(0.05);
            assertEquals(1, acquisition.output().channels().size());
            // 1 V RMS times 10, twice, into 4 ohm.
            assertEquals(100, SimulatedBenches.analysis(acquisition, 0, 4).powerWatts(), 0.01);
        }
    }

    @Test
    void givesTheSameForTheSameCallsAndAnotherForAnotherSeed() throws Exception {
        double[][] samples = new double[3][];
        String[] shown = new String[3];
        for (int run = 0; run < 3; run++) {
            try (Bench bench = SimulatedBenches.ready(SimulatedBenches.STEREO, "seed", run < 2 ? "7" : "8")) {
                bench.feed(Feed.Tone.of(1000, -20));
                Acquisition acquisition = bench.acquire(0.02);
                samples[run] = acquisition.output().channels().get(1).toArray();
                shown[run] = acquisition.during().toString();
            }
        }
        assertArrayEquals(samples[0], samples[1]);
        assertEquals(shown[0], shown[1]);
        assertFalse(java.util.Arrays.equals(samples[0], samples[2]));
    }

    @Test
    void drivesOneChannelAndLeavesTheOtherAtItsSeparation() throws Exception {
        try (Bench bench = SimulatedBenches.ready(SimulatedBenches.STEREO, "ideal", "true", "separationDb", "50")) {
            bench.feed(new Feed.Tone(1000, -20, OptionalInt.of(1)));
            Acquisition acquisition = bench.acquire(0.05);
            double ratio = SimulatedBenches.analysis(acquisition, 0, 4).outputVoltsRms()
                    / SimulatedBenches.analysis(acquisition, 1, 4).outputVoltsRms();
            assertEquals(-50, 20 * Math.log10(ratio), 0.01);
        }
    }

    /** A short burst meets rails that have not sagged yet: it has more power than a steady tone of the same drive. */
    @Test
    void givesABurstMorePowerThanASteadyTone() throws Exception {
        try (Bench bench = SimulatedBenches.ready(
                SimulatedBenches.STEREO,
                "railOhms",
                "0.5",
                "railSeconds",
                "0.2",
                "noiseVolts",
                "0",
                "meterErrors",
                "false")) {
            bench.feed(Feed.Tone.of(1000, -4));
            bench.acquire(1.5);
            double steadyWatts =
                    SimulatedBenches.analysis(bench.acquire(0.1), 0, 4).powerWatts();
            bench.feed(new Feed.Burst(1000, -4, 0.02, 0.5, -20));
            ChannelAnalysis burst = SimulatedBenches.analysis(bench.acquire(1.1), 0, 4);
            assertEquals(0.02, burst.burst().orElseThrow().onSeconds(), 0.001);
            assertTrue(burst.burst().orElseThrow().powerWatts() > 1.1 * steadyWatts, burst + " " + steadyWatts);
        }
    }

    /** After one time constant 63.2 % of the rise P R_th is there (closed form of one lump of heat). */
    @Test
    void warmsUpAndLosesVoltsByIt() throws Exception {
        try (Bench bench = SimulatedBenches.ready(
                SimulatedBenches.STEREO,
                "caseKelvinPerWatt",
                "0.5",
                "caseSeconds",
                "50",
                "railLossRatio",
                "0",
                "gainLossDb",
                "0.1",
                "meterErrors",
                "false",
                "noiseVolts",
                "0")) {
            bench.feed(Feed.Tone.of(1000, -12));
            Acquisition cold = bench.acquire(0.05);
            double heatWatts = cold.during().supplyVolts().getAsDouble()
                            * cold.during().supplyAmps().getAsDouble()
                    - SimulatedBenches.analysis(cold, 0, 4).powerWatts()
                    - SimulatedBenches.analysis(cold, 1, 4).powerWatts();
            double coldCelsius = cold.during().caseCelsius().getAsDouble();
            Acquisition warm = cold;
            for (int i = 0; i < 10; i++) {
                warm = bench.acquire(5);
            }
            warm = bench.acquire(0.05);
            double rise = warm.during().caseCelsius().getAsDouble() - 22.5;
            double expected = heatWatts * 0.5 + (coldCelsius - 22.5 - heatWatts * 0.5) * Math.exp(-50 / 50.0);
            assertEquals(expected, rise, 0.03 * expected);
            double lossDb = 20
                    * Math.log10(SimulatedBenches.analysis(cold, 0, 4).outputVoltsRms()
                            / SimulatedBenches.analysis(warm, 0, 4).outputVoltsRms());
            assertEquals(0.1 * (rise - coldCelsius + 22.5) / 10, lossDb, 0.02 * lossDb + 0.004);
        }
    }

    @Test
    void dropsInTheCableAndStopsAtTheSuppliesLimit() throws Exception {
        String[] sockets = {"remoteSensing", "false", "meterErrors", "false", "cableOhms", "0.02"};
        try (Bench bench = SimulatedBenches.ready(SimulatedBenches.STEREO, sockets)) {
            bench.feed(Feed.Tone.of(1000, -9));
            Observation shown = bench.observe();
            double drop = 0.02 * shown.supplyAmps().getAsDouble();
            assertEquals(14.4 - drop, shown.supplyVolts().getAsDouble(), 0.01);
        }
        try (Bench bench =
                SimulatedBenches.ready(SimulatedBenches.STEREO, "supplyLimitAmps", "10", "meterErrors", "false")) {
            bench.feed(Feed.Tone.of(1000, -6));
            Observation shown = bench.observe();
            assertEquals(10, shown.supplyAmps().getAsDouble(), 0.05);
            assertTrue(shown.supplyVolts().getAsDouble() < 14, shown.toString());
        }
    }

    /** The powers that the project's ratings claim come out within a fifth, whatever the amplifier. */
    @ParameterizedTest
    @CsvSource({"UNREGULATED,90,165", "REGULATED,500,900", "DIRECT,18,30", "UNKNOWN,45,80"})
    void givesAboutTheRatedPowerOfAnyProject(SupplyType type, double fourOhmWatts, double twoOhmWatts)
            throws Exception {
        Subject subject =
                Subjects.of(2, type, Mode.STEREO, Subjects.rating(4, fourOhmWatts), Subjects.rating(2, twoOhmWatts));
        for (String loadId : new String[] {"4ohm", "2ohm"}) {
            try (Bench bench = SimulatedBenches.open(subject, "supplyLimitAmps", "1000")) {
                double ohms = loadId.equals("4ohm") ? 4 : 2;
                bench.connect(Mode.STEREO, Subjects.load(subject, loadId));
                bench.setSupplyVolts(14.4);
                double best = 0;
                for (double driveDb = -12; driveDb <= -4; driveDb += 0.25) {
                    bench.feed(Feed.Tone.of(1000, driveDb));
                    ChannelAnalysis found = SimulatedBenches.analysis(bench.acquire(0.02), 0, ohms);
                    best = found.thdFRatio() < 0.01 ? found.powerWatts() : best;
                }
                double rated = ohms == 4 ? fourOhmWatts : twoOhmWatts;
                assertEquals(rated, best, 0.2 * rated);
            }
        }
    }

    /** Nothing known: (some 20 V peak)^2 / 8 ohm is 50 W, within a half. */
    @Test
    void givesSomeFiftyWattsWhereNothingIsKnown() throws Exception {
        Subject unknown = Subjects.of(2, SupplyType.UNKNOWN, Mode.STEREO);
        try (Bench bench = SimulatedBenches.ready(unknown)) {
            double best = 0;
            for (double driveDb = -12; driveDb <= -4; driveDb += 0.5) {
                bench.feed(Feed.Tone.of(1000, driveDb));
                ChannelAnalysis found = SimulatedBenches.analysis(bench.acquire(0.02), 0, 4);
                best = found.thdFRatio() < 0.01 ? found.powerWatts() : best;
            }
            assertEquals(50, best, 25);
        }
    }

    /** A switching stage takes the power that it gives: with a lossless converter and no idle current, efficiency is 1. */
    @Test
    void takesOnlyTheOutputPowerWhenItSwitches() throws Exception {
        Subject known = SimulatedBenches.STEREO;
        AmplifierHeat none = AmplifierHeat.NONE;
        HeatData heat = HeatData.NONE.withAmplifier(new AmplifierHeat(
                OutputClass.CLASS_D,
                none.railVolts(),
                none.railSupplyVolts(),
                Optional.of(Range.of(1)),
                Optional.of(Range.of(0)),
                none.caseKelvinPerWatt(),
                none.caseJoulesPerKelvin(),
                none.deviceKelvinPerWatt(),
                none.deviceLimitCelsius(),
                none.caseLimitCelsius(),
                none.sinkSize()));
        Subject switching = new Subject(known.project().withHeat(heat), known.step());
        try (Bench bench =
                SimulatedBenches.ready(switching, "railOhms", "0", "meterErrors", "false", "noiseVolts", "0")) {
            bench.feed(Feed.Tone.of(1000, -15));
            Acquisition acquisition = bench.acquire(0.05);
            double outputWatts = SimulatedBenches.analysis(acquisition, 0, 4).powerWatts()
                    + SimulatedBenches.analysis(acquisition, 1, 4).powerWatts();
            double supplyWatts = acquisition.during().supplyVolts().orElseThrow()
                    * acquisition.during().supplyAmps().orElseThrow();
            assertEquals(outputWatts, supplyWatts, 0.001 * outputWatts);
        }
    }
}
