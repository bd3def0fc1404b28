// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.scpi;

import java.util.Map;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.units.text.Messages;

/** A meter of direct volts, direct amperes or temperature that is spoken to by a command set. */
public final class Multimeter {
    private static final Messages TEXTS = Messages.of(Multimeter.class);
    private final Instrument instrument;

    /**
     * Makes a meter of a connection.
     *
     * @param connection to the instrument; closed by whoever opened it
     * @param set one for a multimeter
     * @param channel what stands for {channel}; may be empty
     */
    public Multimeter(ScpiConnection connection, CommandSet set, String channel) {
        instrument = new Instrument(connection, set, InstrumentRole.MULTIMETER, channel, Instrument.ALWAYS);
    }

    /** Checks who it is, empties its error queue, and brings it to *RST if wanted. */
    public void begin(boolean reset) throws MeasurementException, InterruptedException {
        instrument.begin(reset);
        instrument.start();
    }

    /** Returns direct volts. */
    public double measureVolts() throws MeasurementException, InterruptedException {
        return number("measure volts");
    }

    /** Returns direct amperes. */
    public double measureAmps() throws MeasurementException, InterruptedException {
        return number("measure amps");
    }

    /** Returns a temperature in degrees Celsius. */
    public double measureCelsius() throws MeasurementException, InterruptedException {
        return number("measure temperature");
    }

    /** Makes sure that its command set says how to do something. */
    void require(String action) throws MeasurementException {
        if (!instrument.set().has(action)) {
            throw MeasurementException.of(
                    () -> TEXTS.text("set.lacks", instrument.set().id(), action));
        }
    }

    private double number(String action) throws MeasurementException, InterruptedException {
        require(action);
        return instrument.number(action, Map.of());
    }
}
