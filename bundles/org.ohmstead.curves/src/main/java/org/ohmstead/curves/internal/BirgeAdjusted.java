// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.internal;

import java.util.OptionalDouble;
import org.ohmstead.curves.PowerCurve;
import org.ohmstead.metrology.Covariance;
import org.ohmstead.metrology.CovarianceBasis;
import org.ohmstead.metrology.FitException;
import org.ohmstead.metrology.FitResult;
import org.ohmstead.units.text.Messages;

/**
 * The uncertainties of a fit after comparing its scatter with the readings' uncertainties.
 *
 * @param covariance the larger of the two covariance matrices
 * @param degreesOfFreedom infinite if it comes from the readings' uncertainties, else those of the scatter
 * @param birgeRatio sqrt(chi²/(n-p)), absent if n = p
 */
public record BirgeAdjusted(Covariance covariance, double degreesOfFreedom, OptionalDouble birgeRatio) {
    private static final Messages TEXTS = Messages.of(PowerCurve.class);

    /** Returns the adjusted uncertainties of a fit. */
    public static BirgeAdjusted of(FitResult result) throws FitException {
        if (!result.converged()) {
            throw new FitException(TEXTS.text("fit.unsettled"));
        }
        Covariance given = result.covariance(CovarianceBasis.GIVEN_UNCERTAINTIES);
        if (result.degreesOfFreedom() < 1) {
            return new BirgeAdjusted(given, Double.POSITIVE_INFINITY, OptionalDouble.empty());
        }
        double ratio = result.residualStandardDeviation();
        if (ratio <= 1) {
            return new BirgeAdjusted(given, Double.POSITIVE_INFINITY, OptionalDouble.of(ratio));
        }
        return new BirgeAdjusted(given.scaled(ratio * ratio), result.degreesOfFreedom(), OptionalDouble.of(ratio));
    }
}
