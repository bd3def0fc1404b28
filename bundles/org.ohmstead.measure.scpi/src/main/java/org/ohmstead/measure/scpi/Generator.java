// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.scpi;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BooleanSupplier;
import org.ohmstead.measure.Feed;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.units.text.Messages;

/** A source of sines and tone bursts that is spoken to by a command set. Levels are volts RMS of a steady sine at its output. */
public final class Generator {
    private static final Messages TEXTS = Messages.of(Generator.class);
    private static final double ROUNDING = 1e-9;

    /** What is silent for one who wanted a lower level between bursts; 60 dB below is beyond what the eye sees in a waveform. */
    private static final double SILENT_DB = -60;

    private final Instrument instrument;
    private final List<String> outputs;
    private final double limitVoltsRms;

    /**
     * Makes a generator of a connection.
     *
     * @param connection to the instrument; closed by whoever opened it
     * @param set one for a generator
     * @param outputs what stands for {channel} of each output, at least one
     * @param limitVoltsRms the most that is ever set, above 0
     * @param allowed whether a signal may be given, asked at the last moment before each command that gives it
     */
    public Generator(
            ScpiConnection connection,
            CommandSet set,
            List<String> outputs,
            double limitVoltsRms,
            BooleanSupplier allowed) {
        this.outputs = List.copyOf(outputs);
        if (this.outputs.isEmpty()) {
            throw new IllegalArgumentException("outputs is empty; a generator has at least one");
        }
        this.limitVoltsRms = Checks.positive(limitVoltsRms, "limitVoltsRms");
        instrument = new Instrument(connection, set, InstrumentRole.GENERATOR, this.outputs.get(0), allowed);
        if (this.outputs.size() > 1 && !set.fills("output on", "channel")) {
            throw new IllegalArgumentException("outputs is " + outputs + ", but the command set has only one");
        }
    }

    /** Checks who it is, empties its error queue, brings it to *RST if wanted, leaves its outputs off and limits them. */
    public void begin(boolean reset) throws MeasurementException, InterruptedException {
        instrument.begin(reset);
        for (int i = 0; i < outputs.size(); i++) {
            off(i);
            instrument.run("start", channel(i, Map.of()));
            instrument.run("set limit", channel(i, Map.of("amplitude", amplitude(limitVoltsRms))));
        }
    }

    /** Returns the number of its outputs. */
    public int outputCount() {
        return outputs.size();
    }

    /** Returns whether it can make bursts. */
    public boolean makesBursts() {
        return instrument.set().has("set burst");
    }

    /**
     * Sets a steady sine.
     *
     * @param output which output, from 0
     * @param frequencyHz above 0
     * @param outputVoltsRms above 0, at most the limit
     */
    public void setSine(int output, double frequencyHz, double outputVoltsRms)
            throws MeasurementException, InterruptedException {
        Checks.positive(frequencyHz, "frequencyHz");
        requireBelowLimit(outputVoltsRms);
        instrument.runGuarded(
                "set sine",
                channel(
                        output,
                        Map.of("frequencyHz", Show.number(frequencyHz), "amplitude", amplitude(outputVoltsRms))));
    }

    /**
     * Sets tone bursts.
     *
     * @param output which output, from 0
     * @param burst frequency, times and the level between the bursts; its own level is left out
     * @param outputVoltsRms of the loud part, above 0, at most the limit
     */
    public void setBurst(int output, Feed.Burst burst, double outputVoltsRms)
            throws MeasurementException, InterruptedException {
        requireBelowLimit(outputVoltsRms);
        if (!makesBursts()) {
            throw MeasurementException.of(
                    () -> TEXTS.text("set.lacks", instrument.set().id(), "set burst"));
        }
        if (!instrument.set().fills("set burst", "lowAmplitude") && burst.lowLevelDb() > SILENT_DB) {
            throw MeasurementException.of(() -> TEXTS.text(
                    "set.silentBursts", instrument.set().id(), Show.said(burst.lowLevelDb()), Show.said(SILENT_DB)));
        }
        instrument.runGuarded(
                "set burst",
                channel(
                        output,
                        Map.of(
                                "frequencyHz", Show.number(burst.frequencyHz()),
                                "amplitude", amplitude(outputVoltsRms),
                                "lowAmplitude", amplitude(outputVoltsRms * Math.pow(10, burst.lowLevelDb() / 20)),
                                "onSeconds", Show.number(burst.onSeconds()),
                                "offSeconds", Show.number(burst.periodSeconds() - burst.onSeconds()),
                                "periodSeconds", Show.number(burst.periodSeconds()),
                                "onCycles", Long.toString(Math.round(burst.onSeconds() * burst.frequencyHz())))));
    }

    /** Switches an output on. */
    public void on(int output) throws MeasurementException, InterruptedException {
        instrument.runGuarded("output on", channel(output, Map.of()));
    }

    /** Makes an output silent, in the way of the command set: still connected if it says how. */
    public void silence(int output) throws MeasurementException, InterruptedException {
        if (instrument.set().has("silence")) {
            instrument.runGuarded("silence", channel(output, Map.of()));
        } else {
            off(output);
        }
    }

    /** Switches an output off. */
    public void off(int output) throws MeasurementException, InterruptedException {
        instrument.run("output off", channel(output, Map.of()));
    }

    ScpiConnection connection() {
        return instrument.connection();
    }

    List<String> offCommands() {
        List<String> commands = new ArrayList<>();
        for (int i = 0; i < outputs.size(); i++) {
            commands.addAll(instrument.commands("output off", channel(i, Map.of())));
        }
        return commands;
    }

    private void requireBelowLimit(double outputVoltsRms) throws MeasurementException {
        Checks.positive(outputVoltsRms, "outputVoltsRms");
        if (outputVoltsRms > limitVoltsRms * (1 + ROUNDING)) {
            throw MeasurementException.of(
                    () -> TEXTS.text("generator.aboveLimit", Show.said(outputVoltsRms), Show.said(limitVoltsRms)));
        }
    }

    private String amplitude(double voltsRms) {
        double factor =
                switch (instrument.set().key("amplitude", "")) {
                    case "peak" -> Math.sqrt(2);
                    case "peak-to-peak" -> 2 * Math.sqrt(2);
                    default -> 1;
                };
        return Show.number(voltsRms * factor);
    }

    private Map<String, String> channel(int output, Map<String, String> values) {
        Map<String, String> all = new HashMap<>(values);
        all.put("channel", outputs.get(output));
        return all;
    }
}
