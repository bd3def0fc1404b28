// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.model.Mode;
import org.ohmstead.model.OutputClass;
import org.ohmstead.model.Range;
import org.ohmstead.thermal.Drive;
import org.ohmstead.thermal.StageLoad;

/**
 * One step as it is asked about.
 *
 * @param supplyVolts to which the supply is set without a load
 * @param mode how the channels meet the load
 * @param loadOhms of each load
 * @param channels how many are driven in stereo
 * @param powerWatts in each load: of the steady sine, of the loud part of a burst, of a sine that just reaches a programme's peaks
 * @param signal which of these
 * @param burstOnSeconds how long a burst is loud
 * @param burstPeriodSeconds from one loud part to the next
 * @param burstLowDb level between the loud parts
 * @param crestDb peak over RMS of a programme
 * @param seconds how long the step lasts
 * @param outputClass of the output stage
 * @param efficiencyRatio output over input of the whole amplifier, when it is known
 * @param measuredInputWatts what it was seen to take on average, when it was
 * @param airCelsius temperature of the air
 */
record StepQuestion(
        double supplyVolts,
        Mode mode,
        double loadOhms,
        int channels,
        double powerWatts,
        StepSignal signal,
        double burstOnSeconds,
        double burstPeriodSeconds,
        double burstLowDb,
        double crestDb,
        double seconds,
        OutputClass outputClass,
        Optional<Range> efficiencyRatio,
        OptionalDouble measuredInputWatts,
        double airCelsius) {

    /** Returns how many loads are driven alike. */
    int outputs() {
        return mode == Mode.STEREO ? channels : 1;
    }

    StageLoad load() {
        return StageLoad.resistor(loadOhms);
    }

    /** Returns what each output is made to put out. */
    Drive drive() {
        double voltsRms = load().voltsRms(powerWatts);
        return switch (signal) {
            case STEADY -> new Drive.Sine(voltsRms);
            case BURST ->
                new Drive.Burst(
                        voltsRms,
                        burstOnSeconds,
                        voltsRms * Math.pow(10, burstLowDb / 20),
                        burstPeriodSeconds - burstOnSeconds);
            case PROGRAMME -> Drive.Programme.ofCrest(Math.sqrt(2) * voltsRms, crestDb);
        };
    }

    /** Returns the part of the time that is loud: 1 but for bursts. */
    double dutyRatio() {
        return signal == StepSignal.BURST ? burstOnSeconds / burstPeriodSeconds : 1;
    }

    StepQuestion withPowerWatts(double newPowerWatts) {
        return new StepQuestion(
                supplyVolts,
                mode,
                loadOhms,
                channels,
                newPowerWatts,
                signal,
                burstOnSeconds,
                burstPeriodSeconds,
                burstLowDb,
                crestDb,
                seconds,
                outputClass,
                efficiencyRatio,
                measuredInputWatts,
                airCelsius);
    }
}
