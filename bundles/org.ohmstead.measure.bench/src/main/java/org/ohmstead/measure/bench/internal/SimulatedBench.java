// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.bench.internal;

import java.util.EnumSet;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import org.ohmstead.measure.Ability;
import org.ohmstead.measure.Acquisition;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.Feed;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.Observation;
import org.ohmstead.measure.Settings;
import org.ohmstead.measure.SoundObservation;
import org.ohmstead.measure.Subject;
import org.ohmstead.measure.bench.BenchClock;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.Mode;
import org.ohmstead.signal.Capture;
import org.ohmstead.signal.FrequencyWeighting;

/** A bench that is reckoned: supply, amplifier, load, recorder and meters. */
public final class SimulatedBench implements Bench {
    private static final double CONNECT_SECONDS = 3;
    private static final double SUPPLY_SECONDS = 1;
    private static final double FEED_SECONDS = 0.1;
    private static final double OBSERVE_SECONDS = 0.1;
    private static final double SAME_HEAT_KELVIN = 0.2;
    private static final double MUTED_UNTIL_KELVIN = 15;

    private final AmplifierTraits traits;
    private final SupplySide supply;
    private final CaseHeat heat;
    private final SimulatedMeters meters;
    private final BenchClock clock;
    private final Fault fault;
    private final int faultChannel;
    private final double faultSeconds;
    private final double sourceVoltsRms;
    private final double sampleRateHz;
    private final Random random;
    private final SimulatedSound sound;
    private Optional<Hookup> hookup = Optional.empty();
    private Feed feed = new Feed.Silence();
    private double feedForSeconds;
    private double runForSeconds;
    private double setVolts;
    private boolean muted;
    private boolean closed;
    private Optional<OperatingPoint> point = Optional.empty();
    private double pointAboveAirKelvin;
    private boolean pointFaulty;
    private volatile boolean stoodDown = true;

    /** Opens a bench of a subject. */
    public SimulatedBench(Subject subject, Settings settings, BenchClock clock) {
        this.traits = new ProjectTraits(subject, settings).traits();
        this.supply = SimulatedSurroundings.supply(subject, settings);
        this.heat = SimulatedSurroundings.heat(subject, settings);
        this.fault = Fault.of(settings.choice("fault"));
        this.meters = new SimulatedMeters(subject, settings, fault);
        this.clock = clock;
        this.faultChannel = settings.count("faultChannel");
        this.faultSeconds = settings.number("faultSeconds");
        this.sourceVoltsRms = settings.number("sourceVolts");
        this.sampleRateHz = Double.parseDouble(settings.choice("sampleRate"));
        this.random = new Random(settings.count("seed"));
        this.sound = new SimulatedSound(settings);
    }

    @Override
    public Set<Ability> abilities() {
        return EnumSet.allOf(Ability.class);
    }

    @Override
    public void connect(Mode mode, BenchLoad load) throws MeasurementException, InterruptedException {
        requireOpen();
        Hookup wanted = new Hookup(mode, load.branches());
        if (mode == Mode.BRIDGED && traits.channelCount() < 2) {
            throw Faults.of("oneChannel");
        }
        if (load.branches().size() < wanted.outputs(traits)) {
            throw Faults.of("fewResistances", load.id(), load.branches().size(), wanted.outputs(traits));
        }
        change(new Feed.Silence());
        elapse(CONNECT_SECONDS);
        hookup = Optional.of(wanted);
        point = Optional.empty();
    }

    @Override
    public void setSupplyVolts(double supplyVolts) throws MeasurementException, InterruptedException {
        requireOpen();
        if (!Double.isFinite(supplyVolts) || supplyVolts <= 0) {
            throw new IllegalArgumentException(
                    "supplyVolts is " + supplyVolts + "; it must be a finite number above 0");
        }
        if (supplyVolts > supply.highestVolts()) {
            throw Faults.of("supplyLimit", supply.highestVolts(), supplyVolts);
        }
        if (stoodDown) {
            change(new Feed.Silence());
            stoodDown = false;
        }
        setVolts = supplyVolts;
        point = Optional.empty();
        elapse(SUPPLY_SECONDS);
    }

    @Override
    public void feed(Feed newFeed) throws MeasurementException, InterruptedException {
        requireOpen();
        if (stoodDown && !(newFeed instanceof Feed.Silence)) {
            throw Faults.of("madeSafe");
        }
        if (newFeed instanceof Feed.Tone tone && tone.frequencyHz() >= sampleRateHz / 2) {
            throw Faults.of("toneTooHigh", tone.frequencyHz(), sampleRateHz);
        }
        change(newFeed);
        elapse(FEED_SECONDS);
    }

    private void change(Feed newFeed) {
        feed = newFeed;
        feedForSeconds = 0;
        point = Optional.empty();
    }

    @Override
    public Acquisition acquire(double seconds) throws MeasurementException, InterruptedException {
        requireOpen();
        if (!Double.isFinite(seconds) || seconds <= 0) {
            throw new IllegalArgumentException("seconds is " + seconds + "; it must be a finite number above 0");
        }
        Hookup connected = hookup.orElseThrow(() -> Faults.of("noLoad"));
        OperatingPoint now = operatingPoint();
        int count = (int) Math.min(1 << 24, Math.ceil(seconds * sampleRateHz));
        double peakVolts = now.highestVolts() * (connected.mode() == Mode.BRIDGED ? 2 : 1);
        Recorder recorder = new Recorder(sampleRateHz, peakVolts, off() ? 0 : traits.noiseVoltsRms(), random);
        Drive drive = drive();
        Capture output;
        if (off() || muted()) {
            output = recorder.silence(connected.outputs(traits), count, meters.outputRatio());
        } else {
            Circuit circuit = circuit(connected, drive, now.terminalVolts());
            output = recorder.record(
                    circuit,
                    connected.outputs(traits),
                    drive,
                    feedForSeconds,
                    6 * traits.railSeconds(),
                    count,
                    meters.outputRatio());
        }
        Capture input = Recorder.input(drive, connected.outputs(traits), feedForSeconds, count, sampleRateHz);
        elapse(count / sampleRateHz);
        return Acquisition.of(output, recorder.voltsPerFullScale(), shown()).withInput(input);
    }

    @Override
    public Observation observe() throws MeasurementException, InterruptedException {
        requireOpen();
        elapse(OBSERVE_SECONDS);
        return shown();
    }

    @Override
    public SoundObservation observeSound(FrequencyWeighting weighting, String position, double seconds)
            throws MeasurementException, InterruptedException {
        requireOpen();
        if (!Double.isFinite(seconds) || seconds <= 0) {
            throw new IllegalArgumentException("seconds is " + seconds + "; it must be a finite number above 0");
        }
        double outputWatts = off() || muted() ? 0 : operatingPoint().outputWatts();
        elapse(seconds);
        return sound.heard(clock.now(), weighting, drive(), outputWatts);
    }

    @Override
    public void standDown() {
        stoodDown = true;
    }

    @Override
    public void close() {
        standDown();
        closed = true;
    }

    private void requireOpen() throws MeasurementException {
        if (closed) {
            throw Faults.of("closed");
        }
    }

    private boolean faulty() {
        return runForSeconds >= faultSeconds;
    }

    /** Whether no current reaches the amplifier. */
    private boolean off() {
        return stoodDown || fault == Fault.BLOWN_FUSE && faulty();
    }

    private boolean muted() {
        return muted || fault == Fault.THERMAL_CUT_OUT && faulty();
    }

    private Drive drive() {
        Feed fed = stoodDown ? new Feed.Silence() : feed;
        return Drive.of(fed, traits.channelCount(), sourceVoltsRms);
    }

    private Circuit circuit(Hookup connected, Drive drive, double terminalVolts) {
        return new Circuit(
                traits,
                connected,
                drive,
                terminalVolts,
                heat.aboveAirKelvin(),
                faulty() ? fault : Fault.NONE,
                faultChannel);
    }

    private OperatingPoint operatingPoint() {
        if (off()) {
            return new OperatingPoint(stoodDown ? 0 : setVolts, 0, 0, 0);
        }
        boolean stale = point.isEmpty()
                || pointFaulty != faulty()
                || Math.abs(pointAboveAirKelvin - heat.aboveAirKelvin()) > SAME_HEAT_KELVIN;
        if (stale) {
            point = Optional.of(supply.solve(setVolts, this::averaged));
            pointFaulty = faulty();
            pointAboveAirKelvin = heat.aboveAirKelvin();
        }
        return point.get();
    }

    /** Runs the feed until the rails have settled, then over a whole stretch of it. */
    private OperatingPoint averaged(double terminalVolts) {
        Drive drive = drive();
        if (hookup.isEmpty() || drive.silent() || muted()) {
            return new OperatingPoint(terminalVolts, traits.idleAmps(), 0, 0);
        }
        Circuit circuit = circuit(hookup.get(), drive, terminalVolts);
        double[] unused = new double[hookup.get().outputs(traits)];
        int perRepeat = (int) Math.ceil(drive.repeatSeconds() * Math.max(96_000, 64 * drive.frequencyHz()));
        double stepSeconds = drive.repeatSeconds() / perRepeat;
        int settling = drive.inBursts() ? perRepeat : (int) Math.ceil(6 * traits.railSeconds() / stepSeconds);
        for (int i = 0; i < settling + perRepeat; i++) {
            if (i == settling) {
                circuit.restartAverages();
            }
            circuit.step(i * stepSeconds, stepSeconds, unused);
        }
        return new OperatingPoint(
                terminalVolts,
                circuit.meanSupplyAmps(terminalVolts),
                circuit.meanOutputWatts(),
                circuit.highestVolts());
    }

    private void elapse(double seconds) throws InterruptedException {
        heat.pass(seconds, operatingPoint().heatWatts());
        boolean wasMuted = muted;
        muted = heat.caseCelsius() >= traits.cutOutCelsius()
                || muted && heat.caseCelsius() > traits.cutOutCelsius() - MUTED_UNTIL_KELVIN;
        if (muted != wasMuted) {
            point = Optional.empty();
        }
        feedForSeconds += seconds;
        runForSeconds += seconds;
        clock.pass(seconds);
    }

    private Observation shown() {
        OperatingPoint now = operatingPoint();
        return new Observation(
                clock.now(),
                OptionalDouble.of(meters.supplyVolts(now.terminalVolts(), runForSeconds, faulty())),
                OptionalDouble.of(meters.supplyAmps(now.supplyAmps(), runForSeconds, faulty())),
                OptionalDouble.of(meters.caseCelsius(heat.caseCelsius(), runForSeconds, faulty())),
                OptionalDouble.of(meters.airCelsius(heat.airCelsius())));
    }
}
