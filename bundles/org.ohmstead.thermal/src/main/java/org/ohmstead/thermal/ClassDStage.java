// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.util.Optional;

/**
 * A switching output stage, whose loss is P_0 + k_1 I_mean + R I_rms²: what it takes idle, what each switching costs with the current, and
 * what the resistance of the path costs. In a full bridge two switches conduct at a time, so R is twice that of one switch and that of the
 * coils. Immutable.
 *
 * @param idleWatts P_0, at least 0
 * @param switchingVolts k_1 in watts per ampere of mean rectified output current, at least 0
 * @param pathOhms R of everything that the output current flows through within the stage, at least 0
 */
public record ClassDStage(double idleWatts, double switchingVolts, double pathOhms) implements OutputStage {
    private static final double SINE_MEAN = 2 * Math.sqrt(2) / Math.PI;
    private static final double GAUSS_MEAN = Math.sqrt(2 / Math.PI);

    public ClassDStage {
        Checks.notNegative(idleWatts, "idleWatts");
        Checks.notNegative(switchingVolts, "switchingVolts");
        Checks.notNegative(pathOhms, "pathOhms");
    }

    /**
     * Returns the resistance of the path of a full bridge: two switches and the coils.
     *
     * @param switchOhms of one switch that conducts, at least 0
     * @param coilsOhms of all coils in the path together, at least 0
     */
    public static double fullBridgeOhms(double switchOhms, double coilsOhms) {
        return 2 * Checks.notNegative(switchOhms, "switchOhms") + Checks.notNegative(coilsOhms, "coilsOhms");
    }

    /** Returns two such stages with one load between their outputs: the same current flows through both. */
    public ClassDStage bridgedPair() {
        return new ClassDStage(2 * idleWatts, 2 * switchingVolts, 2 * pathOhms);
    }

    @Override
    public PowerSplit steady(Drive.Steady drive, StageLoad load) {
        double ampsRms = drive.outputVoltsRms() / load.ohms();
        double meanAmps = (drive instanceof Drive.Programme ? GAUSS_MEAN : SINE_MEAN) * ampsRms;
        double loss = idleWatts + switchingVolts * meanAmps + pathOhms * ampsRms * ampsRms;
        double outputWatts = load.watts(drive.outputVoltsRms());
        return new PowerSplit(outputWatts, outputWatts + loss);
    }

    @Override
    public Optional<String> objection(Drive drive, StageLoad load) {
        return Optional.empty();
    }

    /** Returns the highest level, since the loss only rises with it. */
    @Override
    public WorstLevel worstSine(StageLoad load, double mostOutputVoltsRms) {
        Checks.positive(mostOutputVoltsRms, "mostOutputVoltsRms");
        return new WorstLevel(mostOutputVoltsRms, steady(new Drive.Sine(mostOutputVoltsRms), load));
    }
}
