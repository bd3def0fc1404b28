// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReference;
import java.util.stream.Stream;
import org.ohmstead.measure.Measurement;
import org.ohmstead.measure.MeasurementInfo;
import org.ohmstead.units.text.Said;

/** Says whether a run is to end, and why: the first reason counts. */
final class RunToken {
    private final Plugin<Measurement, MeasurementInfo> measurement;
    private final Catalog catalog;
    private final AtomicReference<RunOutcome> end = new AtomicReference<>();
    private final AtomicInteger lateCalls = new AtomicInteger();
    private volatile Optional<Thread> worker = Optional.empty();
    private volatile boolean over;

    RunToken(Plugin<Measurement, MeasurementInfo> measurement, Catalog catalog) {
        this.measurement = measurement;
        this.catalog = catalog;
    }

    Plugin<Measurement, MeasurementInfo> measurement() {
        return measurement;
    }

    /** Ends the run, unless it was ended before. */
    boolean end(RunOutcome why) {
        boolean first = end.compareAndSet(null, why);
        worker.ifPresent(Thread::interrupt);
        return first;
    }

    Optional<RunOutcome> ended() {
        return Optional.ofNullable(end.get());
    }

    void stopIfEnded() throws InterruptedException {
        if (end.get() != null) {
            throw new InterruptedException("The run was told to end.");
        }
    }

    void workOn(Thread thread) {
        worker = Optional.of(thread);
        if (end.get() != null) {
            thread.interrupt();
        }
    }

    /** From now on every call of the plug-in is too late. */
    void close() {
        over = true;
        worker = Optional.empty();
    }

    /** Refuses what a plug-in calls when its run is over. */
    void refuseIfOver(String what) {
        if (!over) {
            return;
        }
        Said called = Sentences.of("late." + what);
        if (lateCalls.incrementAndGet() == 1) {
            String sentence = Sentences.of("late", measurement, called).shown();
            catalog.fault(measurement, sentence);
            catalog.remark(measurement, sentence);
        }
        throw new IllegalStateException("The run is over; " + called.kept() + " was refused.");
    }

    /** Returns a failure; the plug-in is the first argument of its sentence. */
    RunOutcome.Failed failure(Plugin<?, ?> culprit, boolean fault, String key, Object... further) {
        Said sentence = Sentences.of(
                key, Stream.concat(Stream.of(culprit), Arrays.stream(further)).toArray());
        return new RunOutcome.Failed(culprit.kind(), culprit.id(), fault, sentence, List.of());
    }
}
