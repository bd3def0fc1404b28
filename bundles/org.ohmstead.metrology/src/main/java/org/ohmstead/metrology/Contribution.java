// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology;

import org.ohmstead.metrology.internal.Checks;

/**
 * One line of an uncertainty budget.
 *
 * @param name what contributes; unique within a budget
 * @param sensitivity the sensitivity coefficient c = dy/dx, in units of the result per unit of the input
 * @param standardUncertainty the input's standard uncertainty u(x), at least 0
 * @param degreesOfFreedom how well u(x) is known, greater than 0; {@link Double#POSITIVE_INFINITY} if taken as exactly
 *     known
 */
public record Contribution(String name, double sensitivity, double standardUncertainty, double degreesOfFreedom) {

    /** Checks the ranges given above. */
    public Contribution {
        if (name.isBlank()) {
            throw new IllegalArgumentException("name is blank but must say what contributes.");
        }
        Checks.finite("sensitivity of " + name, sensitivity);
        Checks.notNegative("standardUncertainty of " + name, standardUncertainty);
        Checks.degreesOfFreedom(degreesOfFreedom);
    }

    /** Returns the line for an input that is itself an estimate. */
    public static Contribution of(String name, double sensitivity, Estimate input) {
        return new Contribution(name, sensitivity, input.standardUncertainty(), input.degreesOfFreedom());
    }

    /** Returns c u(x) with its sign, in the unit of the result. */
    public double effect() {
        return sensitivity * standardUncertainty;
    }
}
