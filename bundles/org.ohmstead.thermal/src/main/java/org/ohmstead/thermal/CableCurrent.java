// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

/** The current that a cable may carry for ever, as far as its insulation's limit goes; or why there is none. */
public sealed interface CableCurrent permits CableCurrent.Continuous, SupplyNoSolution {
    /**
     * It may carry this.
     *
     * @param ampsRms current in amperes, RMS, above 0
     * @param lossWatts what the loop then turns into heat
     */
    record Continuous(double ampsRms, double lossWatts) implements CableCurrent {
        public Continuous {
            Checks.positive(ampsRms, "ampsRms");
            Checks.positive(lossWatts, "lossWatts");
        }
    }
}
