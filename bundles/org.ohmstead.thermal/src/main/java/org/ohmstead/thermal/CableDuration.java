// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

/** How long a cable may carry a current before its insulation is at its limit. */
public sealed interface CableDuration permits CableDuration.Reaches, CableDuration.Unlimited, SupplyNoSolution {
    /**
     * It reaches the limit.
     *
     * @param seconds from the start, above 0
     */
    record Reaches(double seconds) implements CableDuration {
        public Reaches {
            Checks.positive(seconds, "seconds");
        }
    }

    /**
     * It never reaches the limit.
     *
     * @param settledCelsius temperature of the wire in the end
     */
    record Unlimited(double settledCelsius) implements CableDuration {
        public Unlimited {
            Checks.finite(settledCelsius, "settledCelsius");
        }
    }
}
