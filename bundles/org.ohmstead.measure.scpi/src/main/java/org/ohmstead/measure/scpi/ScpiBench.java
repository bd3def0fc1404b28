// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.scpi;

import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.locks.ReentrantLock;
import java.util.stream.Collectors;
import org.ohmstead.measure.Ability;
import org.ohmstead.measure.Acquisition;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.Feed;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.Observation;
import org.ohmstead.measure.Subject;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.Mode;
import org.ohmstead.units.text.Messages;
import org.ohmstead.units.text.Said;

/** A bench of instruments that is open. */
final class ScpiBench implements Bench {
    private static final Messages TEXTS = Messages.of(ScpiBench.class);
    private final BenchParts parts;
    private final int channelCount;
    private final Set<Ability> abilities;
    private final AtomicBoolean standing;
    private final AtomicBoolean closed = new AtomicBoolean();
    private final ReentrantLock standDown = new ReentrantLock();
    private Mode mode;
    private BenchLoad load;

    /**
     * Makes a bench.
     *
     * @param standing whether it was made safe and not set up since; asked before each command that gives power or a signal
     */
    ScpiBench(BenchParts parts, Subject subject, AtomicBoolean standing) {
        this.parts = parts;
        this.standing = standing;
        channelCount = subject.project().amplifier().channelCount();
        mode = subject.step().mode();
        load = subject.load();
        abilities = Set.copyOf(abilities(parts));
    }

    private static Set<Ability> abilities(BenchParts parts) {
        Set<Ability> can = EnumSet.noneOf(Ability.class);
        parts.supply().ifPresent(supply -> {
            can.add(Ability.SET_SUPPLY_VOLTS);
            can.add(Ability.CUT_SUPPLY);
        });
        parts.generator().ifPresent(generator -> {
            can.add(Ability.TONE);
            if (generator.makesBursts()) {
                can.add(Ability.TONE_BURST);
            }
            if (generator.outputCount() > 1) {
                can.add(Ability.SINGLE_CHANNEL);
            }
        });
        parts.recorder().ifPresent(recorder -> {
            can.add(Ability.WAVEFORM);
            if (recorder.recordsInput()) {
                can.add(Ability.INPUT_WAVEFORM);
            }
        });
        boolean supplyTellsVolts = parts.limits().remoteSense()
                && parts.supply().map(PowerSupply::measuresVolts).orElse(false);
        boolean supplyTellsAmps = parts.supply().map(PowerSupply::measuresAmps).orElse(false);
        addIf(can, Ability.SUPPLY_VOLTS, parts.voltmeter().isPresent() || supplyTellsVolts);
        addIf(can, Ability.SUPPLY_AMPS, parts.ammeter().isPresent() || supplyTellsAmps);
        addIf(can, Ability.CASE_CELSIUS, parts.caseThermometer().isPresent());
        addIf(can, Ability.AMBIENT_CELSIUS, parts.airThermometer().isPresent());
        addIf(can, Ability.SELECT_LOAD, parts.limits().loadChangedInTime());
        return can;
    }

    private static void addIf(Set<Ability> can, Ability ability, boolean has) {
        if (has) {
            can.add(ability);
        }
    }

    @Override
    public Set<Ability> abilities() {
        return abilities;
    }

    @Override
    public void connect(Mode newMode, BenchLoad newLoad) throws MeasurementException, InterruptedException {
        Checks.present(newMode, "mode");
        Checks.present(newLoad, "load");
        requireOpen();
        if (parts.generator().isPresent()) {
            silence(parts.generator().get());
        }
        boolean other = newMode != mode || !newLoad.equals(load);
        if (other && !abilities.contains(Ability.SELECT_LOAD)) {
            throw MeasurementException.of(
                    () -> TEXTS.text("bench.otherLoad", newLoad.id(), words(newMode), load.id(), words(mode)));
        }
        mode = newMode;
        load = newLoad;
    }

    private static String words(Mode mode) {
        return TEXTS.text("bench.mode." + mode.name());
    }

    @Override
    public void setSupplyVolts(double supplyVolts) throws MeasurementException, InterruptedException {
        Checks.positive(supplyVolts, "supplyVolts");
        requireOpen();
        PowerSupply supply = required(parts.supply(), "bench.noSupply");
        if (supplyVolts > parts.limits().mostVolts()) {
            throw MeasurementException.of(() -> TEXTS.text(
                    "bench.aboveLimit",
                    Show.said(supplyVolts),
                    Show.said(parts.limits().mostVolts())));
        }
        standDown.lockInterruptibly();
        standing.set(false);
        standDown.unlock();
        supply.give(supplyVolts, parts.limits().limitAmps());
        TimeUnit.NANOSECONDS.sleep(Math.round(parts.limits().settleSeconds() * 1e9));
        OptionalDouble terminalVolts = supplyVolts();
        double allowed = parts.limits().agreementVolts();
        if (terminalVolts.isPresent() && Math.abs(terminalVolts.getAsDouble() - supplyVolts) > allowed) {
            supply.off();
            throw MeasurementException.of(() ->
                    TEXTS.text("bench.disagrees", Show.said(supplyVolts), Show.said(terminalVolts.getAsDouble())));
        }
    }

    @Override
    public void feed(Feed feed) throws MeasurementException, InterruptedException {
        Checks.present(feed, "feed");
        requireOpen();
        if (feed instanceof Feed.Silence) {
            if (parts.generator().isPresent()) {
                silence(parts.generator().get());
            }
            return;
        }
        Generator generator = required(parts.generator(), "bench.noGenerator");
        if (standing.get()) {
            throw MeasurementException.of(
                    () -> TEXTS.text(parts.supply().isPresent() ? "bench.safe.supply" : "bench.safe"));
        }
        if (feed instanceof Feed.Tone tone) {
            tone(generator, tone);
        } else if (feed instanceof Feed.Burst burst) {
            for (int output = 0; output < generator.outputCount(); output++) {
                generator.setBurst(output, burst, voltsRms(burst.driveDb()));
                generator.on(output);
            }
        }
    }

    private void tone(Generator generator, Feed.Tone tone) throws MeasurementException, InterruptedException {
        OptionalInt only = tone.channel();
        if (only.isPresent() && (generator.outputCount() < 2 || only.getAsInt() >= generator.outputCount())) {
            throw MeasurementException.of(() -> TEXTS.text(
                    "bench.fewOutputs", String.valueOf(generator.outputCount()), String.valueOf(only.getAsInt() + 1)));
        }
        for (int output = 0; output < generator.outputCount(); output++) {
            if (only.isPresent() && only.getAsInt() != output) {
                generator.silence(output);
            }
        }
        for (int output = 0; output < generator.outputCount(); output++) {
            if (only.isEmpty() || only.getAsInt() == output) {
                generator.setSine(output, tone.frequencyHz(), voltsRms(tone.driveDb()));
                generator.on(output);
            }
        }
    }

    private double voltsRms(double driveDb) {
        return parts.limits().fullOutputVoltsRms() * Math.pow(10, driveDb / 20);
    }

    private void silence(Generator generator) throws MeasurementException, InterruptedException {
        for (int output = 0; output < generator.outputCount(); output++) {
            if (standing.get()) {
                generator.off(output);
            } else {
                generator.silence(output);
            }
        }
    }

    @Override
    public Acquisition acquire(double seconds) throws MeasurementException, InterruptedException {
        Checks.positive(seconds, "seconds");
        requireOpen();
        return required(parts.recorder(), "bench.noOscilloscope").record(seconds, mode, channelCount, this::observe);
    }

    @Override
    public Observation observe() throws MeasurementException, InterruptedException {
        requireOpen();
        return new Observation(
                Instant.now(),
                supplyVolts(),
                supplyAmps(),
                celsius(parts.caseThermometer()),
                celsius(parts.airThermometer()));
    }

    private OptionalDouble supplyVolts() throws MeasurementException, InterruptedException {
        if (!abilities.contains(Ability.SUPPLY_VOLTS)) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(
                parts.voltmeter().isPresent()
                        ? parts.voltmeter().get().measureVolts()
                        : parts.supply().orElseThrow().measureVolts());
    }

    private OptionalDouble supplyAmps() throws MeasurementException, InterruptedException {
        if (!abilities.contains(Ability.SUPPLY_AMPS)) {
            return OptionalDouble.empty();
        }
        if (parts.ammeter().isEmpty()) {
            return OptionalDouble.of(parts.supply().orElseThrow().measureAmps());
        }
        Multimeter ammeter = parts.ammeter().get();
        return OptionalDouble.of(
                parts.ammeterOhms() > 0 ? ammeter.measureVolts() / parts.ammeterOhms() : ammeter.measureAmps());
    }

    private static OptionalDouble celsius(Optional<Multimeter> thermometer)
            throws MeasurementException, InterruptedException {
        return thermometer.isEmpty()
                ? OptionalDouble.empty()
                : OptionalDouble.of(thermometer.get().measureCelsius());
    }

    @Override
    public void standDown() throws MeasurementException {
        standing.set(true);
        if (closed.get()) {
            return;
        }
        List<Said> failures = switchOff();
        if (!failures.isEmpty()) {
            throw failed(failures);
        }
    }

    private static MeasurementException failed(List<Said> failures) {
        return MeasurementException.of(() -> failures.stream().map(Said::text).collect(Collectors.joining(" ")));
    }

    private List<Said> switchOff() {
        List<SafeState.Target> targets = new ArrayList<>();
        parts.generator()
                .ifPresent(generator -> targets.add(
                        new SafeState.Target("off.generator", generator.connection(), generator.offCommands())));
        parts.supply()
                .ifPresent(supply ->
                        targets.add(new SafeState.Target("off.supply", supply.connection(), supply.offCommands())));
        standDown.lock();
        try {
            standing.set(true);
            return SafeState.switchOff(targets, parts.options());
        } finally {
            standDown.unlock();
        }
    }

    @Override
    public void close() throws MeasurementException {
        if (closed.getAndSet(true)) {
            return;
        }
        standing.set(true);
        List<Said> failures = new ArrayList<>(switchOff());
        for (ScpiConnection connection : parts.connections()) {
            try {
                connection.close();
            } catch (MeasurementException failed) {
                failures.add(Said.by(failed));
            }
        }
        if (!failures.isEmpty()) {
            throw failed(failures);
        }
    }

    private void requireOpen() throws MeasurementException {
        if (closed.get()) {
            throw MeasurementException.of(() -> TEXTS.text("bench.closed"));
        }
    }

    private static <T> T required(Optional<T> part, String complaint) throws MeasurementException {
        return part.orElseThrow(() -> MeasurementException.of(() -> TEXTS.text(complaint)));
    }
}
