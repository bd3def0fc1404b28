// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.search;

import java.time.Duration;
import java.util.List;
import java.util.OptionalDouble;
import org.ohmstead.load.Stock;

/**
 * The loads of a test plan that one set of resistors is to serve, one load after the other.
 *
 * @param stock resistors at hand
 * @param loads loads wanted, 1 to 12; the plan may take them in another order
 * @param maxPartsPerBranch most resistors in one branch, 1 to 12
 * @param ambientCelsius temperature of the air that the ratings are reduced to
 * @param timeLimit time after which the search ends with what it has, above 0
 */
public record BankPlanRequest(
        Stock stock, List<Load> loads, int maxPartsPerBranch, double ambientCelsius, Duration timeLimit) {
    private static final int MOST_LOADS = 12;
    private static final int MOST_PARTS = 12;
    private static final int MOST_BRANCHES = 8;
    private static final int USUAL_PARTS = 8;
    private static final double USUAL_AMBIENT_CELSIUS = 25;
    private static final Duration USUAL_TIME_LIMIT = Duration.ofSeconds(20);

    /**
     * One load.
     *
     * @param nominalOhms resistance of each branch in ohms, above 0
     * @param branches equal branches needed at the same time, each with terminals of its own, 1 to 8: one for each channel driven, one
     *     for a bridged pair
     * @param toleranceRatio greatest |error| of a branch, 0 to 1
     * @param powerWatts power that each branch must take for as long as one likes, above 0; empty for any
     */
    public record Load(double nominalOhms, int branches, double toleranceRatio, OptionalDouble powerWatts) {
        public Load {
            Checks.positive(nominalOhms, "nominalOhms");
            Checks.within(branches, 1, MOST_BRANCHES, "branches");
            Checks.ratio(toleranceRatio, "toleranceRatio");
            Checks.positive(powerWatts, "powerWatts");
        }
    }

    public BankPlanRequest {
        Checks.present(stock, "stock");
        loads = List.copyOf(loads);
        Checks.within(loads.size(), 1, MOST_LOADS, "number of loads");
        Checks.within(maxPartsPerBranch, 1, MOST_PARTS, "maxPartsPerBranch");
        Checks.finite(ambientCelsius, "ambientCelsius");
        Checks.present(timeLimit, "timeLimit");
        if (timeLimit.isNegative() || timeLimit.isZero()) {
            throw new IllegalArgumentException("timeLimit is " + timeLimit + "; it must be above 0");
        }
    }

    /** Asks with up to 8 resistors in a branch, at 25 °C, within 20 s. */
    public static BankPlanRequest of(Stock stock, List<Load> loads) {
        return new BankPlanRequest(stock, loads, USUAL_PARTS, USUAL_AMBIENT_CELSIUS, USUAL_TIME_LIMIT);
    }
}
