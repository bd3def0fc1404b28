// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.util.List;
import org.ohmstead.metrology.Estimate;
import org.ohmstead.metrology.FitException;
import org.ohmstead.metrology.LinearFit;
import org.ohmstead.units.text.Messages;

/**
 * A switching stage found from measured powers by linear least squares: the loss is linear in P_0, k_1 and R, since the output power into a
 * known load tells the current. A figure that comes out below 0 is no figure of a stage: {@link #stage} then sets it to 0.
 *
 * @param idleWatts P_0
 * @param switchingVolts k_1
 * @param pathOhms R
 */
public record ClassDFit(Estimate idleWatts, Estimate switchingVolts, Estimate pathOhms) {
    private static final Messages TEXTS = Messages.of(ClassDFit.class);

    /** As many readings as leave one over for the scatter. */
    private static final int FEWEST = 4;

    private static final double SINE_MEAN = 2 * Math.sqrt(2) / Math.PI;

    /**
     * Returns the fit to sine powers into a resistor.
     *
     * @param readings at least four, at different powers
     * @param loadOhms the resistor, above 0
     * @throws FitException if the powers differ too little to tell the three figures apart, or are too few
     */
    public static ClassDFit of(List<PowerSplit> readings, double loadOhms) throws FitException {
        Checks.positive(loadOhms, "loadOhms");
        if (readings.size() < FEWEST) {
            throw new FitException(
                    TEXTS.text("stage.fewReadings", Integer.toString(readings.size()), Integer.toString(FEWEST)));
        }
        double[][] design = new double[readings.size()][];
        double[] losses = new double[readings.size()];
        for (int i = 0; i < losses.length; i++) {
            double squareAmps = Checks.notNegative(readings.get(i).outputWatts(), "readings.outputWatts") / loadOhms;
            design[i] = new double[] {1, SINE_MEAN * Math.sqrt(squareAmps), squareAmps};
            losses[i] = readings.get(i).lossWatts();
        }
        LinearFit fit = LinearFit.of(design, losses);
        return new ClassDFit(fit.estimate(0), fit.estimate(1), fit.estimate(2));
    }

    /** Returns the stage with these figures, none below 0. */
    public ClassDStage stage() {
        return new ClassDStage(
                Math.max(0, idleWatts.value()), Math.max(0, switchingVolts.value()), Math.max(0, pathOhms.value()));
    }
}
