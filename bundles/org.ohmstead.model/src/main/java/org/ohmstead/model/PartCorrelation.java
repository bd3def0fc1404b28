// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

/**
 * That the inputs behind two parts of a budget move together (GUM 5.2): the coefficient is that between the inputs themselves, such as
 * output volts and supply volts, not between what they do to the power. {@link CombinedParts} brings in the signs of the effects.
 *
 * @param first source of the one part, not blank
 * @param second source of the other part, not blank and not the first
 * @param coefficient correlation coefficient of the two inputs, -1 to 1
 */
public record PartCorrelation(String first, String second, double coefficient) {
    public PartCorrelation {
        Checks.named(first, "first");
        Checks.named(second, "second");
        if (first.equals(second)) {
            throw new IllegalArgumentException(
                    "second is \"" + second + "\", the same as first; a correlation is between two different parts");
        }
        Checks.within(coefficient, -1, 1, "coefficient");
    }
}
