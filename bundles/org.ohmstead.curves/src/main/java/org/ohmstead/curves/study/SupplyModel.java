// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.study;

import java.util.OptionalDouble;
import org.ohmstead.curves.internal.StageCurve;

/**
 * What an amplifier makes of its supply voltage, with the values found. For one channel into r ohms the peak volts are
 * those without load times r/(r + R_o); a bridged load is two channels with half of it each, so that P_bridged(R) = 2
 * P_channel(R/2).
 *
 * <p>Where only one load was read, R_o cannot be told from the rest: {@code outputOhms} is then empty, and the other
 * values hold for that load alone, with the losses in R_o within them.
 */
public sealed interface SupplyModel {

    /** Returns which kind of model this is. */
    ModelKind kind();

    /** Returns R_o in ohms, when it is known. */
    OptionalDouble outputOhms();

    /**
     * Peak volts g V - V_s.
     *
     * @param gainRatio g
     * @param saturationVolts V_s
     * @param outputOhms R_o, when it is known
     */
    record Unregulated(double gainRatio, double saturationVolts, OptionalDouble outputOhms) implements SupplyModel {
        @Override
        public ModelKind kind() {
            return ModelKind.UNREGULATED;
        }
    }

    /**
     * Peak volts g min(V, V_k) - V_s.
     *
     * @param gainRatio g
     * @param saturationVolts V_s
     * @param outputOhms R_o, when it is known
     * @param kneeVolts V_k, supply volts
     */
    record Regulated(double gainRatio, double saturationVolts, OptionalDouble outputOhms, double kneeVolts)
            implements SupplyModel {
        @Override
        public ModelKind kind() {
            return ModelKind.REGULATED;
        }
    }

    /**
     * The same peak volts at any supply voltage read.
     *
     * @param steadyPeakVolts without load
     * @param outputOhms R_o, when it is known
     */
    record RegulatedThroughout(double steadyPeakVolts, OptionalDouble outputOhms) implements SupplyModel {
        @Override
        public ModelKind kind() {
            return ModelKind.REGULATED_THROUGHOUT;
        }
    }

    /**
     * Peak volts g V - V_s, but never more than I_max r into r ohms. The bend is sharp: a limiter that cuts the wave's
     * tops off acts in full from the end point on, and a rounded bend would be one more value to find.
     *
     * @param gainRatio g
     * @param saturationVolts V_s
     * @param outputOhms R_o, when it is known
     * @param limitAmps I_max, peak amperes of one channel
     */
    record CurrentLimited(double gainRatio, double saturationVolts, OptionalDouble outputOhms, double limitAmps)
            implements SupplyModel {
        @Override
        public ModelKind kind() {
            return ModelKind.CURRENT_LIMITED;
        }
    }

    /**
     * Peak volts (g V - V_s)(1 - d x), where x is the rise of the case temperature or the number of runs before.
     *
     * @param gainRatio g, cold
     * @param saturationVolts V_s, cold
     * @param outputOhms R_o, when it is known
     * @param droopRatio d, per kelvin or per run
     * @param coldAt where x is 0: the lowest case temperature in degrees Celsius or the first run
     * @param by what x is
     */
    record Drooping(
            double gainRatio,
            double saturationVolts,
            OptionalDouble outputOhms,
            double droopRatio,
            double coldAt,
            WarmingMeasure by)
            implements SupplyModel {
        @Override
        public ModelKind kind() {
            return ModelKind.DROOPING;
        }
    }

    /**
     * Peak volts g V: power goes with the square of the supply voltage. Assumed, not found.
     *
     * @param gainRatio g
     * @param outputOhms R_o, when it is known
     */
    record Proportional(double gainRatio, OptionalDouble outputOhms) implements SupplyModel {
        @Override
        public ModelKind kind() {
            return ModelKind.PROPORTIONAL;
        }
    }

    /** What tells how warm an amplifier had become. */
    enum WarmingMeasure {
        /** The temperature of its case. */
        CASE_CELSIUS,
        /** The place in a row of readings without a rest. */
        RUN_INDEX
    }

    /** Returns the values in the order of {@link StageCurve}. */
    private double[] slots() {
        double[] slots = StageCurve.neutral();
        slots[StageCurve.OUTPUT] = outputOhms().orElse(0);
        if (this instanceof Unregulated model) {
            slots[StageCurve.GAIN] = model.gainRatio();
            slots[StageCurve.SATURATION] = model.saturationVolts();
        } else if (this instanceof Regulated model) {
            slots[StageCurve.GAIN] = model.gainRatio();
            slots[StageCurve.SATURATION] = model.saturationVolts();
            slots[StageCurve.KNEE] = model.kneeVolts();
        } else if (this instanceof RegulatedThroughout model) {
            slots[StageCurve.SATURATION] = -model.steadyPeakVolts();
        } else if (this instanceof CurrentLimited model) {
            slots[StageCurve.GAIN] = model.gainRatio();
            slots[StageCurve.SATURATION] = model.saturationVolts();
            slots[StageCurve.LIMIT] = model.limitAmps();
        } else if (this instanceof Drooping model) {
            slots[StageCurve.GAIN] = model.gainRatio();
            slots[StageCurve.SATURATION] = model.saturationVolts();
            slots[StageCurve.DROOP] = model.droopRatio();
        } else if (this instanceof Proportional model) {
            slots[StageCurve.GAIN] = model.gainRatio();
        }
        return slots;
    }

    /**
     * Returns the peak volts of one channel, cold; 0 where the line is below zero.
     *
     * @param supplyVolts at the terminals, above 0
     * @param channelOhms the load of the channel, above 0
     * @throws IllegalArgumentException if a negative R_o cancels the load
     */
    default double peakVolts(double supplyVolts, double channelOhms) {
        double peak = StageCurve.peakVolts(slots(), supplyVolts, channelOhms, 0, new double[StageCurve.SLOTS]);
        if (Double.isNaN(peak)) {
            throw new IllegalArgumentException("channelOhms is " + channelOhms + " but must be more than "
                    + -outputOhms().orElse(0) + " ohm, because the source resistance found is negative.");
        }
        return peak;
    }
}
