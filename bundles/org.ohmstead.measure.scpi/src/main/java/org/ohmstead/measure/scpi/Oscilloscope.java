// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.scpi;

import java.time.Duration;
import java.util.Map;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.signal.Waveform;
import org.ohmstead.units.text.Messages;

/** A recorder of waveforms that is spoken to by a command set. Volts are those at its own inputs. */
public final class Oscilloscope {
    private static final Messages TEXTS = Messages.of(Oscilloscope.class);
    private final Instrument instrument;
    private int armedOn;

    /**
     * Makes an oscilloscope of a connection.
     *
     * @param connection to the instrument; closed by whoever opened it
     * @param set one for an oscilloscope
     */
    public Oscilloscope(ScpiConnection connection, CommandSet set) {
        instrument = new Instrument(connection, set, InstrumentRole.OSCILLOSCOPE, "1", Instrument.ALWAYS);
    }

    /** Checks who it is, empties its error queue, and brings it to *RST if wanted. */
    public void begin(boolean reset) throws MeasurementException, InterruptedException {
        instrument.begin(reset);
        instrument.start();
    }

    /**
     * Sets a range.
     *
     * @param channel what stands for {channel}
     * @param peakVolts the highest that must fit, above 0
     * @return the highest that fits, as far as it can be told, in volts
     */
    public double setRange(String channel, double peakVolts) throws MeasurementException, InterruptedException {
        Checks.positive(peakVolts, "peakVolts");
        double perPeak = instrument.set().key("range", "").equals("peak-to-peak") ? 2 : 1;
        instrument.run("set range", Map.of("channel", channel, "volts", Show.number(perPeak * peakVolts)));
        if (!instrument.set().has("read range")) {
            return peakVolts;
        }
        return positive(instrument.number("read range", Map.of("channel", channel)) / perPeak, "instrument.range");
    }

    /**
     * Sets how long it records.
     *
     * @param points number of samples, above 0
     * @param sampleRateHz samples per second, above 0
     */
    public void setTime(int points, double sampleRateHz) throws MeasurementException, InterruptedException {
        Checks.within(points, 1, Integer.MAX_VALUE, "points");
        Checks.positive(sampleRateHz, "sampleRateHz");
        instrument.run(
                "set time",
                Map.of(
                        "points", Integer.toString(points),
                        "seconds", Show.number(points / sampleRateHz),
                        "intervalSeconds", Show.number(1 / sampleRateHz),
                        "sampleRateHz", Show.number(sampleRateHz)));
    }

    /** Starts to record. */
    public void arm() throws MeasurementException, InterruptedException {
        armedOn = instrument.connection().powerWatch().check();
        for (String command : instrument.commands("arm", Map.of())) {
            // Without a look at the error queue, whose answer would only come when the record is there.
            instrument.connection().command(command);
        }
    }

    /** Waits until the record is there, at most for a time. */
    public void await(Duration atMost) throws MeasurementException, InterruptedException {
        instrument.run("wait", Map.of(), atMost, Instrument.ALWAYS);
        requireArmed();
    }

    /**
     * Fetches a record.
     *
     * @param channel what stands for {channel}
     * @param atMost the longest until it begins to come
     */
    public Waveform fetch(String channel, Duration atMost) throws MeasurementException, InterruptedException {
        Map<String, String> values = Map.of("channel", channel);
        double[] samples = instrument.samples("fetch", values, atMost);
        double scale = optional("scale", values, 1);
        double reference = optional("reference", values, 0);
        double zero = optional("zero", values, 0);
        if (!instrument.set().has("wait")) {
            requireArmed();
        }
        double interval = positive(instrument.number("interval", values), "instrument.interval");
        for (int i = 0; i < samples.length; i++) {
            samples[i] = (samples[i] - reference) * scale + zero;
            if (!Double.isFinite(samples[i])) {
                throw MeasurementException.of(() -> TEXTS.text(
                        "instrument.scale",
                        address(),
                        Show.said(scale),
                        instrument.set().id()));
            }
        }
        return Waveform.of(1 / interval, samples);
    }

    /** A link that was lost may have taken the command to record with it; what is there then is the record before. */
    private void requireArmed() throws MeasurementException, InterruptedException {
        if (instrument.connection().linkNumber() != armedOn) {
            throw instrument.connection().trouble().madeAnewWithin("arm");
        }
    }

    CommandSet set() {
        return instrument.set();
    }

    ScpiAddress address() {
        return instrument.connection().address();
    }

    private double optional(String action, Map<String, String> values, double otherwise)
            throws MeasurementException, InterruptedException {
        return instrument.set().has(action) ? instrument.number(action, values) : otherwise;
    }

    private double positive(double value, String complaint) throws MeasurementException {
        if (!Double.isFinite(value) || value <= 0) {
            throw MeasurementException.of(() -> TEXTS.text(
                    complaint, address(), Show.said(value), instrument.set().id()));
        }
        return value;
    }
}
