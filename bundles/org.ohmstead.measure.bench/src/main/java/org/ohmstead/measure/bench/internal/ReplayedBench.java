// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.bench.internal;

import java.time.Instant;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import org.ohmstead.measure.Ability;
import org.ohmstead.measure.Acquisition;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.Feed;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.Observation;
import org.ohmstead.measure.Subject;
import org.ohmstead.measure.bench.RecordingSource.Recorded;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Stimulus;
import org.ohmstead.signal.Capture;
import org.ohmstead.signal.CaptureException;
import org.ohmstead.signal.CaptureFile;
import org.ohmstead.units.text.Said;

/** Recordings of one step in the place of a bench. A record is given as long as it is, whatever length is asked for. */
public final class ReplayedBench implements Bench {
    private static final double SAME_FREQUENCY_RATIO = 0.01;
    private static final double SAME_SUPPLY_VOLTS = 0.5;

    private final Subject subject;
    private final List<Recorded> recordings;
    private final double nearDb;
    private Optional<Recorded> fed = Optional.empty();
    private volatile boolean stoodDown;

    /** Opens the recordings of a subject's step, at least one. */
    public ReplayedBench(Subject subject, List<Recorded> recordings, double nearDb) {
        this.subject = subject;
        this.recordings = recordings.stream()
                .sorted(Comparator.comparingDouble(Recorded::driveDb))
                .toList();
        this.nearDb = nearDb;
    }

    @Override
    public Set<Ability> abilities() {
        Set<Ability> abilities = EnumSet.of(Ability.WAVEFORM, Ability.SUPPLY_VOLTS);
        abilities.add(burst() ? Ability.TONE_BURST : Ability.TONE);
        if (recordings.stream().allMatch(recording -> recording.supplyAmps().isPresent())) {
            abilities.add(Ability.SUPPLY_AMPS);
        }
        if (recordings.stream().allMatch(recording -> recording.caseCelsius().isPresent())) {
            abilities.add(Ability.CASE_CELSIUS);
        }
        if (recordings.stream().allMatch(recording -> recording.ambientCelsius().isPresent())) {
            abilities.add(Ability.AMBIENT_CELSIUS);
        }
        return abilities;
    }

    private boolean burst() {
        return subject.step().stimulus() instanceof Stimulus.ToneBurst;
    }

    @Override
    public void connect(Mode mode, BenchLoad load) throws MeasurementException {
        if (mode != subject.step().mode() || !load.id().equals(subject.step().loadId())) {
            throw Faults.of("otherLoad", subject.step().loadId(), load.id());
        }
        fed = Optional.empty();
    }

    @Override
    public void setSupplyVolts(double supplyVolts) throws MeasurementException {
        double recordedVolts =
                recordings.stream().mapToDouble(Recorded::supplyVolts).average().orElseThrow();
        if (Math.abs(recordedVolts - supplyVolts) > SAME_SUPPLY_VOLTS) {
            throw Faults.of("otherSupply", Said.number("%.2f", recordedVolts), Said.number("%.2f", supplyVolts));
        }
        fed = Optional.empty();
        stoodDown = false;
    }

    @Override
    public void feed(Feed feed) throws MeasurementException {
        if (feed instanceof Feed.Silence) {
            fed = Optional.empty();
        } else if (stoodDown) {
            throw Faults.of("madeSafe");
        } else if (feed instanceof Feed.Tone tone && tone.channel().isEmpty() && !burst()) {
            fed = Optional.of(at(tone.frequencyHz(), tone.driveDb()));
        } else if (feed instanceof Feed.Burst burst && burst()) {
            fed = Optional.of(at(burst.frequencyHz(), burst.driveDb()));
        } else {
            throw Faults.of("otherFeed", subject.step().id());
        }
    }

    private Recorded at(double frequencyHz, double driveDb) throws MeasurementException {
        double recordedHz = subject.step().stimulus().frequencyHz();
        if (Math.abs(frequencyHz - recordedHz) > SAME_FREQUENCY_RATIO * recordedHz) {
            throw Faults.of("otherFrequency", subject.step().id(), recordedHz, frequencyHz);
        }
        Recorded nearest = recordings.stream()
                .min(Comparator.comparingDouble(recording -> Math.abs(recording.driveDb() - driveDb)))
                .orElseThrow();
        if (Math.abs(nearest.driveDb() - driveDb) > nearDb) {
            throw Faults.of(
                    "otherLevel",
                    Said.number("%.2f", driveDb),
                    recordings.stream()
                            .map(recording -> Double.toString(recording.driveDb()))
                            .collect(Collectors.joining(", ")));
        }
        return nearest;
    }

    @Override
    public Acquisition acquire(double seconds) throws MeasurementException, InterruptedException {
        if (Thread.interrupted()) {
            throw new InterruptedException("The bench was interrupted.");
        }
        if (fed.isEmpty() || stoodDown) {
            throw Faults.of("noSilence");
        }
        Recorded recording = fed.get();
        double[] scales = recording.voltsPerFullScale().stream()
                .mapToDouble(Double::doubleValue)
                .toArray();
        Capture capture;
        try {
            capture = CaptureFile.read(recording.file(), scales);
        } catch (CaptureException e) {
            throw Faults.because(e, "inFile", recording.file().getFileName(), Said.by(e));
        }
        return scales.length == 1
                ? Acquisition.of(capture, scales[0], shown(recording))
                : new Acquisition(capture, Optional.empty(), recording.voltsPerFullScale(), shown(recording));
    }

    @Override
    public Observation observe() {
        return shown(fed.orElse(recordings.get(0)));
    }

    private static Observation shown(Recorded recording) {
        Instant at = recording.recordedAt();
        return new Observation(
                at,
                OptionalDouble.of(recording.supplyVolts()),
                recording.supplyAmps(),
                recording.caseCelsius(),
                recording.ambientCelsius());
    }

    @Override
    public void standDown() {
        stoodDown = true;
    }

    @Override
    public void close() {
        standDown();
    }
}
