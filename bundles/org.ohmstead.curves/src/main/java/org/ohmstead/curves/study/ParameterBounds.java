// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.study;

/**
 * Where a parameter may lie.
 *
 * @param parameter which one
 * @param lower the lower bound, may be minus infinity
 * @param upper the upper bound, above the lower one, may be infinity
 */
public record ParameterBounds(StageParameter parameter, double lower, double upper) {

    /** Checks the order. */
    public ParameterBounds {
        if (!(lower < upper)) {
            throw new IllegalArgumentException("lower is " + lower + " but must be below upper, " + upper + ".");
        }
    }
}
