// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.sound;

/** What a level should be, or how it should change, as long as nothing limits: loudspeakers do, and cabins add. */
public final class ExpectedLevel {
    private ExpectedLevel() {}

    /**
     * Returns the change of level when the power changes: 10 lg (P2 / P1). Twice the power is 3.01 dB.
     *
     * @param fromWatts above 0
     * @param toWatts above 0
     */
    public static double changeDb(double fromWatts, double toWatts) {
        Checks.positive("fromWatts", fromWatts);
        Checks.positive("toWatts", toWatts);
        return 10 * Math.log10(toWatts / fromWatts);
    }

    /**
     * Returns the power that gives a change of level.
     *
     * @param fromWatts above 0
     * @param changeDb finite
     */
    public static double wattsFor(double fromWatts, double changeDb) {
        Checks.positive("fromWatts", fromWatts);
        Checks.finite("changeDb", changeDb);
        return fromWatts * Math.pow(10, changeDb / 10);
    }

    /**
     * Returns an estimate of the level in the free field: L = S + 10 lg P - 20 lg d. No vehicle is a free field; it holds for one
     * loudspeaker far from all surfaces, at a distance large against its size.
     *
     * @param sensitivityDb level at 1 m for 1 W
     * @param watts power that the loudspeaker takes, above 0
     * @param metres distance, above 0
     */
    public static double freeFieldDb(double sensitivityDb, double watts, double metres) {
        Checks.finite("sensitivityDb", sensitivityDb);
        Checks.positive("watts", watts);
        Checks.positive("metres", metres);
        return sensitivityDb + 10 * Math.log10(watts) - 20 * Math.log10(metres);
    }

    /**
     * Returns the sensitivity for 1 W of a loudspeaker that is stated for a voltage: S - 10 lg (U^2 / R). 2.83 V at 4 ohm are 2.0022 W.
     *
     * @param sensitivityDb level at 1 m for that voltage
     * @param voltsRms above 0
     * @param nominalOhms above 0
     */
    public static double sensitivityForOneWattDb(double sensitivityDb, double voltsRms, double nominalOhms) {
        Checks.finite("sensitivityDb", sensitivityDb);
        Checks.positive("voltsRms", voltsRms);
        Checks.positive("nominalOhms", nominalOhms);
        return sensitivityDb - 10 * Math.log10(voltsRms * voltsRms / nominalOhms);
    }
}
