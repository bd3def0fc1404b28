// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import org.ohmstead.model.Mode;

/**
 * A current drawn from the supply. The average is what a supply's meter and its power go by, the RMS what heats
 * cables and fuses.
 *
 * @param averageAmps at least 0
 * @param rmsAmps at least {@code averageAmps}
 * @param peakAmps at least {@code rmsAmps}
 */
public record SupplyCurrent(double averageAmps, double rmsAmps, double peakAmps) {
    private static final double ROUNDING = 1e-12;

    public SupplyCurrent {
        Checks.notNegative(averageAmps, "averageAmps");
        Checks.within(rmsAmps, averageAmps * (1 - ROUNDING), Double.MAX_VALUE, "rmsAmps");
        Checks.within(peakAmps, rmsAmps * (1 - ROUNDING), Double.MAX_VALUE, "peakAmps");
    }

    /** Returns the current of an average in amperes, at least 0, and a shape. */
    public static SupplyCurrent of(double averageAmps, SupplyWaveform waveform) {
        Checks.present(waveform, "waveform");
        return new SupplyCurrent(averageAmps, averageAmps * waveform.rmsRatio(), averageAmps * waveform.peakRatio());
    }

    /**
     * Returns the current for a steady sine: I = P / (efficiency V).
     *
     * @param outputWatts of all channels together, at least 0 ({@link #outputWatts})
     * @param efficiencyRatio output power over input power, above 0 and up to 1
     * @param supplyVolts at the amplifier's terminals, above 0
     * @param waveform its shape
     */
    public static SupplyCurrent steady(
            double outputWatts, double efficiencyRatio, double supplyVolts, SupplyWaveform waveform) {
        Checks.notNegative(outputWatts, "outputWatts");
        Checks.positive(efficiencyRatio, "efficiencyRatio");
        Checks.within(efficiencyRatio, 0, 1, "efficiencyRatio");
        Checks.positive(supplyVolts, "supplyVolts");
        return of(outputWatts / (efficiencyRatio * supplyVolts), waveform);
    }

    /**
     * Returns the current for bursts that come again and again, over whole periods.
     *
     * @param during the burst
     * @param between the bursts
     * @param onSeconds length of a burst, above 0
     * @param periodSeconds from one burst to the next, above {@code onSeconds}
     */
    public static SupplyCurrent bursts(
            SupplyCurrent during, SupplyCurrent between, double onSeconds, double periodSeconds) {
        Checks.present(during, "during");
        Checks.present(between, "between");
        double duty = dutyRatio(onSeconds, periodSeconds);
        double square = duty * during.rmsAmps * during.rmsAmps + (1 - duty) * between.rmsAmps * between.rmsAmps;
        return new SupplyCurrent(
                duty * during.averageAmps + (1 - duty) * between.averageAmps,
                Math.sqrt(square),
                Math.max(during.peakAmps, between.peakAmps));
    }

    /**
     * Returns this current with a steady one in amperes, at least 0, added to it, such as that of the idle amplifier.
     */
    public SupplyCurrent plusSteady(double amps) {
        Checks.notNegative(amps, "amps");
        double square = rmsAmps * rmsAmps + 2 * averageAmps * amps + amps * amps;
        return new SupplyCurrent(averageAmps + amps, Math.sqrt(square), peakAmps + amps);
    }

    /**
     * Returns the output of the whole amplifier in watts from the power that a mode speaks of: per channel when each
     * has its own load, in the one load otherwise.
     *
     * @param mode how the channels meet the load
     * @param powerWatts as the mode speaks of it, at least 0
     * @param drivenChannels how many channels are driven in {@link Mode#STEREO}, at least 1
     */
    public static double outputWatts(Mode mode, double powerWatts, int drivenChannels) {
        Checks.present(mode, "mode");
        Checks.notNegative(powerWatts, "powerWatts");
        Checks.within(drivenChannels, 1, 64, "drivenChannels");
        return mode == Mode.STEREO ? powerWatts * drivenChannels : powerWatts;
    }

    /**
     * Returns output power over input power: watts over volts times average amperes, above 0; above 1 the readings
     * contradict.
     */
    public static double efficiencyRatio(double outputWatts, double supplyVolts, double averageAmps) {
        Checks.positive(outputWatts, "outputWatts");
        return outputWatts
                / (Checks.positive(supplyVolts, "supplyVolts") * Checks.positive(averageAmps, "averageAmps"));
    }

    static double dutyRatio(double onSeconds, double periodSeconds) {
        Checks.positive(onSeconds, "onSeconds");
        if (!(periodSeconds > onSeconds) || !Double.isFinite(periodSeconds)) {
            throw new IllegalArgumentException(
                    "periodSeconds is " + periodSeconds + "; it must be above onSeconds, which is " + onSeconds);
        }
        return onSeconds / periodSeconds;
    }
}
