// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology;

import java.util.Arrays;
import org.ohmstead.metrology.internal.Checks;

/** One observed value y at known conditions x, with the standard uncertainty of y. Immutable. */
public final class Observation {

    private final double[] conditions;
    private final double value;
    private final double standardUncertainty;

    private Observation(double[] conditions, double value, double standardUncertainty) {
        for (double condition : conditions) {
            Checks.finite("condition", condition);
        }
        this.conditions = conditions;
        this.value = Checks.finite("value", value);
        this.standardUncertainty = Checks.positive("standardUncertainty", standardUncertainty);
    }

    /**
     * Returns an observation y at one condition x with unit weight; judge its fit by {@link
     * CovarianceBasis#RESIDUAL_SCATTER}.
     */
    public static Observation of(double condition, double value) {
        return new Observation(new double[] {condition}, value, 1);
    }

    /** Returns an observation y at one condition x with the standard uncertainty of y (greater than 0). */
    public static Observation of(double condition, double value, double standardUncertainty) {
        return new Observation(new double[] {condition}, value, standardUncertainty);
    }

    /** Returns an observation y at several conditions with the standard uncertainty of y (greater than 0). */
    public static Observation of(double[] conditions, double value, double standardUncertainty) {
        return new Observation(conditions.clone(), value, standardUncertainty);
    }

    /** Returns a copy of the conditions x. */
    public double[] conditions() {
        return conditions.clone();
    }

    /** Returns the observed value y. */
    public double value() {
        return value;
    }

    /** Returns the standard uncertainty of y; 1 if none was given. */
    public double standardUncertainty() {
        return standardUncertainty;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Observation observation
                && Arrays.equals(conditions, observation.conditions)
                && Double.compare(value, observation.value) == 0
                && Double.compare(standardUncertainty, observation.standardUncertainty) == 0;
    }

    @Override
    public int hashCode() {
        return 31 * Arrays.hashCode(conditions) + Double.hashCode(value) + 7 * Double.hashCode(standardUncertainty);
    }

    @Override
    public String toString() {
        return "Observation[" + Arrays.toString(conditions) + " -> " + value + ", u=" + standardUncertainty + "]";
    }
}
