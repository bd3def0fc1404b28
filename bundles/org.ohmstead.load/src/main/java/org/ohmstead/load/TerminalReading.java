// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

/**
 * What a meter at the amplifier's terminals reads of a load behind leads, and by how much a power from it is off when the leads are
 * forgotten.
 *
 * @param loadOhms the load alone, by four wires, in ohms, above 0
 * @param leadOhms both leads together in ohms, at least 0
 */
public record TerminalReading(double loadOhms, double leadOhms) {
    public TerminalReading {
        Checks.positive(loadOhms, "loadOhms");
        Checks.notNegative(leadOhms, "leadOhms");
    }

    /** Returns the resistance in ohms that the amplifier sees; the one to divide by when the volts are read at its terminals. */
    public double terminalOhms() {
        return loadOhms + leadOhms;
    }

    /** Returns the volts at the load over the volts at the terminals, 0 to 1. */
    public double voltsRatio() {
        return loadOhms / terminalOhms();
    }

    /** Returns the power in the load over what the same terminal volts would give it without leads: (R / (R + r))^2. */
    public double loadPowerRatio() {
        return voltsRatio() * voltsRatio();
    }

    /** Returns by how much (terminal volts)^2 / R overstates the power in the load, relative to that: ((R + r) / R)^2 - 1. */
    public double loadPowerOverstatementRatio() {
        return 1 / loadPowerRatio() - 1;
    }

    /** Returns by how much (terminal volts)^2 / R overstates the power that leaves the terminals, relative to that: r / R. */
    public double terminalPowerOverstatementRatio() {
        return leadOhms / loadOhms;
    }

    /** Returns the watts that the leads turn into heat at so many watts in the load, at least 0. */
    public double leadWatts(double loadWatts) {
        return Checks.notNegative(loadWatts, "loadWatts") * leadOhms / loadOhms;
    }
}
