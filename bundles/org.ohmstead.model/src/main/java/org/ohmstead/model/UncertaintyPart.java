// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One row of a reading's uncertainty budget.
 *
 * @param source where it comes from, for example "output volts meter"
 * @param standardUncertaintyWatts its share of the power's standard uncertainty in watts, at least 0
 * @param shared whether other readings with the same instruments and load have the same error, so that it does not average out
 * @param shape how its values are distributed
 * @param degreesOfFreedom how well its standard uncertainty is known, at least 1 (GUM G.4); empty when it is known exactly
 * @param input which input of the power it is about; empty when that was not recorded
 */
public record UncertaintyPart(
        String source,
        double standardUncertaintyWatts,
        boolean shared,
        PartShape shape,
        OptionalDouble degreesOfFreedom,
        Optional<BudgetInput> input) {
    public UncertaintyPart {
        Checks.named(source, "source");
        Checks.notNegative(standardUncertaintyWatts, "standardUncertaintyWatts");
        Checks.present(shape, "shape");
        Checks.present(degreesOfFreedom, "degreesOfFreedom");
        degreesOfFreedom.ifPresent(value -> Checks.atLeast(value, 1, "degreesOfFreedom"));
        Checks.present(input, "input");
    }

    /** Makes a part that is normally distributed and exactly known, of which no input was recorded. */
    public UncertaintyPart(String source, double standardUncertaintyWatts, boolean shared) {
        this(source, standardUncertaintyWatts, shared, PartShape.NORMAL, OptionalDouble.empty(), Optional.empty());
    }
}
