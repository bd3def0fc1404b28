// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.util.List;
import java.util.OptionalDouble;
import org.ohmstead.units.text.Messages;

/**
 * A thermal impedance as stages in series, each a resistance with a capacity beside it: Z(t) = sum R_i (1 - e^(-t/tau_i)). Its inner nodes
 * are no temperatures of anything; a chain of a device and one of a sink must not be put in a row (convert to {@link CauerLadder} first).
 *
 * @param stages at least one
 */
public record FosterChain(List<FosterStage> stages) {
    private static final Messages TEXTS = Messages.of(FosterChain.class);

    public FosterChain {
        stages = List.copyOf(stages);
        if (stages.isEmpty()) {
            throw new IllegalArgumentException("stages is empty; a chain needs at least one");
        }
    }

    /** Returns a chain of one stage: a body of one temperature. */
    public static FosterChain of(double kelvinPerWatt, double joulesPerKelvin) {
        Checks.positive(kelvinPerWatt, "kelvinPerWatt");
        Checks.positive(joulesPerKelvin, "joulesPerKelvin");
        return new FosterChain(List.of(new FosterStage(kelvinPerWatt, kelvinPerWatt * joulesPerKelvin)));
    }

    /** Returns the resistance for ever in kelvins per watt. */
    public double kelvinPerWatt() {
        return stages.stream().mapToDouble(FosterStage::kelvinPerWatt).sum();
    }

    /** Returns the thermal impedance in kelvins per watt after a power has been on for some seconds, at least 0. */
    public double kelvinPerWattAfter(double seconds) {
        Checks.notNegative(seconds, "seconds");
        return stages.stream()
                .mapToDouble(stage -> stage.kelvinPerWatt() * -Math.expm1(-seconds / stage.tauSeconds()))
                .sum();
    }

    /**
     * Returns the rise per watt at the end of a pulse, when pulses have come for ever: sum R_i (1 - e^(-on/tau_i)) / (1 - e^(-T/tau_i)).
     *
     * @param onSeconds how long a pulse lasts, above 0
     * @param periodSeconds from the start of one to the start of the next, at least {@code onSeconds}
     */
    public double pulsePeakKelvinPerWatt(double onSeconds, double periodSeconds) {
        pulses(onSeconds, periodSeconds);
        return stages.stream()
                .mapToDouble(stage -> stage.kelvinPerWatt() * steadyRatio(stage, onSeconds, periodSeconds))
                .sum();
    }

    /** Returns the rise per watt just before a pulse, when pulses have come for ever; as {@link #pulsePeakKelvinPerWatt}. */
    public double pulseTroughKelvinPerWatt(double onSeconds, double periodSeconds) {
        pulses(onSeconds, periodSeconds);
        return stages.stream()
                .mapToDouble(stage -> stage.kelvinPerWatt()
                        * steadyRatio(stage, onSeconds, periodSeconds)
                        * Math.exp((onSeconds - periodSeconds) / stage.tauSeconds()))
                .sum();
    }

    /**
     * Returns the rise per watt at the end of a pulse counted from a cold start: each term of {@link #pulsePeakKelvinPerWatt} times
     * 1 - e^(-N T/tau_i).
     *
     * @param count which pulse, 1 for the first
     */
    public double pulsePeakKelvinPerWattAfter(double onSeconds, double periodSeconds, long count) {
        pulses(onSeconds, periodSeconds);
        Checks.within(count, 1, Long.MAX_VALUE, "count");
        return stages.stream()
                .mapToDouble(stage -> stage.kelvinPerWatt()
                        * steadyRatio(stage, onSeconds, periodSeconds)
                        * -Math.expm1(-count * periodSeconds / stage.tauSeconds()))
                .sum();
    }

    /**
     * Returns the rise in kelvins at some times under powers that change step by step, from a cold start.
     *
     * @param profile with one power per step
     * @param times in seconds from 0 on, in rising order
     */
    public double[] risesKelvin(PowerProfile profile, double[] times) {
        HeatModel model = model();
        return profile.risesKelvin(model, 0, model.cold(), times);
    }

    /** Returns a model with this chain as its one point, warmed by one source. */
    public HeatModel model() {
        return new HeatModel.Builder()
                .chain(new HeatPoint("point", TEXTS.text("place.chain"), OptionalDouble.empty()), "source", this)
                .build();
    }

    private static double steadyRatio(FosterStage stage, double onSeconds, double periodSeconds) {
        return Math.expm1(-onSeconds / stage.tauSeconds()) / Math.expm1(-periodSeconds / stage.tauSeconds());
    }

    private static void pulses(double onSeconds, double periodSeconds) {
        Checks.positive(onSeconds, "onSeconds");
        Checks.positive(periodSeconds, "periodSeconds");
        if (onSeconds > periodSeconds) {
            throw new IllegalArgumentException(
                    "onSeconds is " + onSeconds + "; it must be at most periodSeconds, which is " + periodSeconds);
        }
    }
}
