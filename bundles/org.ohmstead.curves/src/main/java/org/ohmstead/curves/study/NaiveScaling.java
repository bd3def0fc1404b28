// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.study;

import java.util.Optional;
import org.ohmstead.model.Mode;
import org.ohmstead.units.Decibels;

/**
 * What the square law (V_to/V_from)² would make of the power at one voltage, beside what the study says. The law holds
 * only for an unregulated amplifier without losses; with losses it gives too little upward.
 *
 * @param fromVolts where the power is taken as known
 * @param toVolts where it is asked for
 * @param naiveWatts by the square law
 * @param studyWatts by the study
 * @param naiveAboveStudyDb the square law's figure over the study's, in dB
 */
public record NaiveScaling(
        double fromVolts, double toVolts, double naiveWatts, double studyWatts, double naiveAboveStudyDb) {

    /** Returns the comparison, or nothing where the study gives no power. */
    public static Optional<NaiveScaling> of(
            PowerStudy study, double fromVolts, double toVolts, double loadOhms, Mode mode) {
        if (study.predict(fromVolts, loadOhms, mode) instanceof PowerPrediction.Predicted from
                && study.predict(toVolts, loadOhms, mode) instanceof PowerPrediction.Predicted to
                && from.powerWatts() > 0
                && to.powerWatts() > 0) {
            double ratio = toVolts / fromVolts;
            double naive = from.powerWatts() * ratio * ratio;
            return Optional.of(new NaiveScaling(
                    fromVolts, toVolts, naive, to.powerWatts(), Decibels.ofPowerRatio(naive / to.powerWatts())));
        }
        return Optional.empty();
    }
}
