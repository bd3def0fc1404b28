// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.internal;

/**
 * The one formula behind all supply models, for one channel: V_peak = min((g min(V, V_k) - V_s)(1 - d x) r/(r + R_o),
 * I_max r), where V is the supply voltage, r the load per channel and x the progress of warming up. Slots that a model
 * does not use hold the value at which they do nothing.
 */
public final class StageCurve {
    /** Slot of g, peak output volts per supply volt without load. */
    public static final int GAIN = 0;
    /** Slot of V_s, peak volts lost without load. */
    public static final int SATURATION = 1;
    /** Slot of R_o, source resistance of a channel in ohms. */
    public static final int OUTPUT = 2;
    /** Slot of V_k, supply volts from which on the output stage's supply rises no further. */
    public static final int KNEE = 3;
    /** Slot of I_max, the peak current of a channel in amperes. */
    public static final int LIMIT = 4;
    /** Slot of d, the share of the peak volts lost per unit of progress. */
    public static final int DROOP = 5;
    /** Number of slots. */
    public static final int SLOTS = 6;

    private StageCurve() {}

    /** Returns the values at which no slot does anything. */
    public static double[] neutral() {
        return new double[] {0, 0, 0, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, 0};
    }

    /**
     * Returns the peak volts of one channel and their derivatives by every slot; not a number where a negative source
     * resistance cancels the load.
     *
     * @param slots the six values
     * @param supplyVolts V
     * @param channelOhms r
     * @param progress x
     * @param gradient filled with the six derivatives
     */
    public static double peakVolts(
            double[] slots, double supplyVolts, double channelOhms, double progress, double[] gradient) {
        double totalOhms = channelOhms + slots[OUTPUT];
        if (!(totalOhms > 0)) {
            return Double.NaN;
        }
        boolean belowKnee = supplyVolts < slots[KNEE];
        double usedVolts = belowKnee ? supplyVolts : slots[KNEE];
        double openVolts = slots[GAIN] * usedVolts - slots[SATURATION];
        double inverseOhms = 1 / totalOhms;
        double share = channelOhms * inverseOhms;
        double factor = share * (1 - slots[DROOP] * progress);
        double peakVolts = openVolts * factor;
        double limitVolts = slots[LIMIT] * channelOhms;
        gradient[LIMIT] = 0;
        if (peakVolts <= 0 || peakVolts > limitVolts) {
            boolean limited = peakVolts > 0;
            gradient[GAIN] = 0;
            gradient[SATURATION] = 0;
            gradient[OUTPUT] = 0;
            gradient[KNEE] = 0;
            gradient[DROOP] = 0;
            gradient[LIMIT] = limited ? channelOhms : 0;
            return limited ? limitVolts : 0;
        }
        gradient[GAIN] = usedVolts * factor;
        gradient[SATURATION] = -factor;
        gradient[OUTPUT] = -peakVolts * inverseOhms;
        gradient[KNEE] = belowKnee ? 0 : slots[GAIN] * factor;
        gradient[DROOP] = -progress * openVolts * share;
        return peakVolts;
    }
}
