// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.testkit.internal;

import java.time.Duration;
import java.util.List;
import org.ohmstead.measure.Ability;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.Measurement;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.MeasurementResult;
import org.ohmstead.measure.Settings;
import org.ohmstead.measure.Subject;

/** Runs of a measurement on benches that were made ready as the engine does it. */
public final class Trial {
    private final Measurement measurement;
    private final Subject subject;
    private final Settings settings;

    public Trial(Measurement measurement, Subject subject, Settings settings) {
        this.measurement = measurement;
        this.subject = subject;
        this.settings = settings;
    }

    /** What became of a run, and what was seen of it. */
    public record Run(
            Ended<MeasurementResult> ended, WatchedBench watched, List<String> threadsLeft, double tookSeconds) {
        /** Returns how it ended, so that two runs can be compared: what was found, or how it failed. */
        public List<Object> outcome() {
            return ended.value()
                    .<List<Object>>map(
                            result -> List.of(result.figures(), result.power().map(reading -> reading.channels())))
                    .orElseGet(() -> List.of(ended.inTime(), ended.thrown().map(Object::getClass)));
        }
    }

    /** Sets load and supply, as far as the bench can. */
    public static void makeReady(Bench bench, Subject subject) throws MeasurementException, InterruptedException {
        if (bench.abilities().contains(Ability.SELECT_LOAD)) {
            bench.connect(subject.step().mode(), subject.load());
        }
        if (bench.abilities().contains(Ability.SET_SUPPLY_VOLTS)) {
            bench.setSupplyVolts(subject.step().supplyVolts());
        }
    }

    /** Begins a run; the bench is ready. */
    public Call<MeasurementResult> begin(WatchedBench watched) {
        return Call.start(() -> measurement.run(subject, settings, watched, watched));
    }

    /** Makes a run and lets the bench go. */
    public Run run(Bench bench, Gate gate, Duration limit) throws MeasurementException, InterruptedException {
        try (bench) {
            makeReady(bench, subject);
            WatchedBench watched = new WatchedBench(bench, gate);
            long start = System.nanoTime();
            Call<MeasurementResult> call = begin(watched);
            Ended<MeasurementResult> ended = call.await(limit);
            double tookSeconds = (System.nanoTime() - start) / 1e9;
            if (!ended.inTime()) {
                call.interrupt();
            }
            return new Run(ended, watched, call.threadsLeft(), tookSeconds);
        }
    }

    /** Makes a run that a gate ends, and gives it so long from then on; lets the bench go. */
    public Ended<MeasurementResult> end(Bench bench, EndingGate gate, Duration limit, Duration grace)
            throws MeasurementException, InterruptedException {
        try (bench) {
            makeReady(bench, subject);
            Call<MeasurementResult> call = begin(new WatchedBench(bench, gate));
            gate.awaitTold(limit);
            Ended<MeasurementResult> ended = call.await(grace);
            call.interrupt();
            return ended;
        }
    }
}
