// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import org.ohmstead.metrology.CoverageInterval;
import org.ohmstead.metrology.Estimate;

/**
 * A figure found from readings.
 *
 * @param value the best one
 * @param interval where it lies with 95 % confidence
 */
public record FittedFigure(double value, CoverageInterval interval) {
    private static final double CONFIDENCE = 0.95;

    public FittedFigure {
        Checks.finite(value, "value");
        Checks.present(interval, "interval");
    }

    static FittedFigure of(Estimate estimate) {
        return new FittedFigure(estimate.value(), estimate.interval(CONFIDENCE));
    }

    /** Returns the figure whose logarithm was found: its interval never reaches 0. */
    static FittedFigure ofLogarithm(Estimate logarithm) {
        CoverageInterval interval = logarithm.interval(CONFIDENCE);
        return new FittedFigure(
                Math.exp(logarithm.value()),
                new CoverageInterval(Math.exp(interval.lower()), Math.exp(interval.upper()), CONFIDENCE));
    }
}
