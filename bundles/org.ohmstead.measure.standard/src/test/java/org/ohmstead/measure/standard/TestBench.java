// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.measure.Acquisition;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.Figure;
import org.ohmstead.measure.Measurement;
import org.ohmstead.measure.MeasurementResult;
import org.ohmstead.measure.Progress;
import org.ohmstead.measure.Settings;
import org.ohmstead.measure.Subject;
import org.ohmstead.measure.bench.SimulatedBenchDriver;
import org.ohmstead.model.Accuracy;
import org.ohmstead.model.Amplifier;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.Cable;
import org.ohmstead.model.DistortionMeasure;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.LoadBranch;
import org.ohmstead.model.Meter;
import org.ohmstead.model.MeterQuantity;
import org.ohmstead.model.Mode;
import org.ohmstead.model.PowerKind;
import org.ohmstead.model.Project;
import org.ohmstead.model.Rating;
import org.ohmstead.model.SheetSettings;
import org.ohmstead.model.Step;
import org.ohmstead.model.Stimulus;
import org.ohmstead.model.Supply;
import org.ohmstead.model.SupplyType;

/** A made-up amplifier on the simulated bench, and a progress that counts. */
final class TestBench {
    private TestBench() {}

    /** What a measurement said while it ran. */
    static final class Heard implements Progress {
        final List<Acquisition> recorded = new ArrayList<>();
        int checkpoints;
        int endAtCheckpoint = Integer.MAX_VALUE;

        @Override
        public void at(double doneRatio, String what) {
            if (!(doneRatio >= 0 && doneRatio <= 1) || what.isBlank()) {
                throw new IllegalArgumentException("doneRatio is " + doneRatio + "; it must lie between 0 and 1");
            }
        }

        @Override
        public void live(Figure figure) {
            if (!Double.isFinite(figure.value())) {
                throw new IllegalArgumentException("figure is " + figure);
            }
        }

        @Override
        public void recorded(Acquisition acquisition) {
            recorded.add(acquisition);
        }

        @Override
        public void checkpoint() throws InterruptedException {
            checkpoints++;
            if (checkpoints >= endAtCheckpoint) {
                throw new InterruptedException("a stop limit was passed");
            }
        }
    }

    static EndPoint thd(double ratio) {
        return new EndPoint.DistortionLimit(ratio, DistortionMeasure.THD_F);
    }

    static Rating rating(double loadOhms, double powerWatts) {
        return new Rating(
                "r" + loadOhms, PowerKind.CONTINUOUS, Mode.STEREO, loadOhms, powerWatts, 14.4, 0.01, 1000, "");
    }

    static Subject subject(Mode mode, EndPoint endPoint, Rating... ratings) {
        return subject(mode, new Stimulus.ContinuousSine(1000), endPoint, ratings);
    }

    static Subject subject(Mode mode, Stimulus stimulus, EndPoint endPoint, Rating... ratings) {
        Step step = new Step("s", mode, "4ohm", 14.4, stimulus, endPoint, false);
        Optional<LocalDate> day = Optional.of(LocalDate.of(2026, 1, 15));
        Amplifier amplifier = new Amplifier(
                "",
                "M-1",
                "",
                2,
                SupplyType.UNREGULATED,
                List.of(),
                List.of(),
                OptionalDouble.empty(),
                List.of(ratings),
                "");
        org.ohmstead.model.Bench bench = new org.ohmstead.model.Bench(
                "",
                new Supply("Supply", 0, 16, 200),
                new Cable(35, 3, OptionalDouble.of(0.005)),
                List.of(
                        new Meter(
                                "v",
                                MeterQuantity.OUTPUT_VOLTS,
                                "Recorder",
                                "",
                                new Accuracy(0.004, 0.005, 0, 0),
                                day,
                                day,
                                ""),
                        new Meter(
                                "s",
                                MeterQuantity.SUPPLY_VOLTS,
                                "Volts",
                                "",
                                new Accuracy(0.0003, 0.002, 0.001, 0),
                                day,
                                day,
                                "")),
                List.of(),
                OptionalDouble.of(22.5));
        List<BenchLoad> loads = List.of(load("8ohm", 8), load("4ohm", 4), load("2ohm", 2));
        return new Subject(
                new Project("Made up", amplifier, bench, loads, List.of(step), new SheetSettings("", "", 0.95, "")),
                step);
    }

    private static BenchLoad load(String id, double ohms) {
        return new BenchLoad(id, ohms, Collections.nCopies(2, new LoadBranch(ohms, 0.001 * ohms, 0, "")), 800);
    }

    /** Opens a bench that is ready for a step. */
    static Bench open(Subject subject, String... settings) throws Exception {
        SimulatedBenchDriver driver =
                new SimulatedBenchDriver(Clock.fixed(Instant.parse("2026-03-02T09:00:00Z"), ZoneOffset.UTC));
        Bench bench = driver.open(subject, Settings.of(driver.info().settings(), map(settings)));
        bench.connect(subject.step().mode(), subject.load());
        bench.setSupplyVolts(subject.step().supplyVolts());
        return bench;
    }

    /** Makes a measurement with its usual settings but for some. */
    static MeasurementResult run(Measurement measurement, Subject subject, Bench bench, Heard heard, String... settings)
            throws Exception {
        return measurement.run(subject, Settings.of(measurement.info().settings(), map(settings)), bench, heard);
    }

    static double figure(MeasurementResult result, String id, String channel, String at) {
        return result.figures().stream()
                .filter(figure -> figure.id().equals(id)
                        && figure.channel().equals(channel)
                        && figure.at().equals(at))
                .findFirst()
                .orElseThrow(
                        () -> new AssertionError(id + " " + channel + " " + at + " is not among " + result.figures()))
                .value();
    }

    static String[] with(String[] settings, String... more) {
        List<String> all = new ArrayList<>(List.of(settings));
        all.addAll(List.of(more));
        return all.toArray(String[]::new);
    }

    private static Map<String, String> map(String... settings) {
        Map<String, String> given = new HashMap<>();
        for (int i = 0; i < settings.length; i += 2) {
            given.put(settings[i], settings[i + 1]);
        }
        return given;
    }
}
