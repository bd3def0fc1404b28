// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.gain;

/**
 * The end point that a set-up aims for: so much power of a sine in so much load.
 *
 * @param powerWatts in the load, above 0
 * @param loadOhms the load, above 0
 * @param bridged whether the load lies between two channels that are driven in opposite phase
 */
public record GainTarget(double powerWatts, double loadOhms, boolean bridged) {
    private static final double CHANNELS_OF_BRIDGE = 2;

    /** Checks that power and load are finite and above 0. */
    public GainTarget {
        Checks.positive(powerWatts, "powerWatts");
        Checks.positive(loadOhms, "loadOhms");
    }

    /** Returns the volts RMS at the load: sqrt(P R). */
    public double outputVoltsRms() {
        return Math.sqrt(powerWatts * loadOhms);
    }

    /** Returns the peak volts at the load, of a sine. */
    public double outputVoltsPeak() {
        return Math.sqrt(2) * outputVoltsRms();
    }

    /** Returns the amperes RMS through the load: sqrt(P / R). */
    public double outputAmpsRms() {
        return Math.sqrt(powerWatts / loadOhms);
    }

    /** Returns how many channels feed the load: 2 when bridged, else 1. */
    public int channelsAtLoad() {
        return bridged ? (int) CHANNELS_OF_BRIDGE : 1;
    }

    /** Returns the load in ohms that each channel sees: half of it when bridged, because each gives half of the volts at all the current. */
    public double channelLoadOhms() {
        return loadOhms / channelsAtLoad();
    }

    /** Returns the volts RMS between a channel's output and ground. */
    public double channelVoltsRms() {
        return outputVoltsRms() / channelsAtLoad();
    }

    /** Returns the watts that each channel gives. */
    public double channelPowerWatts() {
        return powerWatts / channelsAtLoad();
    }

    /** Returns the power in watts of a sine of so many volts RMS, at least 0, at the load. */
    public double wattsAt(double voltsRms) {
        return Checks.within(voltsRms, 0, Double.MAX_VALUE, "voltsRms") * voltsRms / loadOhms;
    }
}
