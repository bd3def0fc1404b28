// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.scpi;

import java.util.List;
import java.util.Map;
import java.util.function.BooleanSupplier;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.units.text.Messages;

/** A direct-current supply that is spoken to by a command set. */
public final class PowerSupply {
    private static final Messages TEXTS = Messages.of(PowerSupply.class);
    private final Instrument instrument;

    /**
     * Makes a supply of a connection.
     *
     * @param connection to the instrument; closed by whoever opened it
     * @param set one for a supply
     * @param channel what stands for {channel}; may be empty
     * @param allowed whether power may be given, asked at the last moment before each command that gives it
     */
    public PowerSupply(ScpiConnection connection, CommandSet set, String channel, BooleanSupplier allowed) {
        instrument = new Instrument(connection, set, InstrumentRole.SUPPLY, channel, allowed);
    }

    /** Checks who it is, empties its error queue, brings it to *RST if wanted, and leaves its output off. */
    public void begin(boolean reset) throws MeasurementException, InterruptedException {
        instrument.begin(reset);
        off();
        instrument.start();
    }

    /** Returns whether it can tell its output volts. */
    public boolean measuresVolts() {
        return instrument.set().has("measure volts");
    }

    /** Returns whether it can tell its output current. */
    public boolean measuresAmps() {
        return instrument.set().has("measure amps");
    }

    /** Sets the output in volts, above 0. */
    public void setVolts(double outputVolts) throws MeasurementException, InterruptedException {
        Checks.positive(outputVolts, "outputVolts");
        instrument.runGuarded("set volts", Map.of("volts", Show.number(outputVolts)));
    }

    /** Sets the current in amperes at which it limits, above 0. */
    public void setCurrentLimitAmps(double limitAmps) throws MeasurementException, InterruptedException {
        Checks.positive(limitAmps, "limitAmps");
        instrument.runGuarded("set current limit", Map.of("amps", Show.number(limitAmps)));
    }

    /** Switches its output on. */
    public void on() throws MeasurementException, InterruptedException {
        instrument.runGuarded("output on", Map.of());
    }

    /** Switches its output off. */
    public void off() throws MeasurementException, InterruptedException {
        instrument.run("output off", Map.of());
    }

    /** Returns its output in volts. */
    public double measureVolts() throws MeasurementException, InterruptedException {
        require("measure volts");
        return instrument.number("measure volts", Map.of());
    }

    /** Returns its output current in amperes. */
    public double measureAmps() throws MeasurementException, InterruptedException {
        require("measure amps");
        return instrument.number("measure amps", Map.of());
    }

    /** Sets limit and volts, and switches on only if both were heard on the same link. */
    void give(double outputVolts, double limitAmps) throws MeasurementException, InterruptedException {
        int link = instrument.connection().linkNumber();
        setCurrentLimitAmps(limitAmps);
        setVolts(outputVolts);
        if (instrument.connection().linkNumber() != link) {
            off();
            throw instrument.connection().trouble().madeAnewWithin("set volts");
        }
        on();
    }

    ScpiConnection connection() {
        return instrument.connection();
    }

    List<String> offCommands() {
        return instrument.commands("output off", Map.of());
    }

    private void require(String action) throws MeasurementException {
        if (!instrument.set().has(action)) {
            throw MeasurementException.of(
                    () -> TEXTS.text("set.lacks.supply", instrument.set().id(), action));
        }
    }
}
