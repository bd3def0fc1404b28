// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

/**
 * One row of a reading's uncertainty budget.
 *
 * @param source where it comes from, for example "output volts meter"
 * @param standardUncertaintyWatts its share of the power's standard uncertainty in watts, at least 0
 * @param shared whether other readings with the same instruments and load have the same error, so that it does not average out
 */
public record UncertaintyPart(String source, double standardUncertaintyWatts, boolean shared) {
    public UncertaintyPart {
        Checks.named(source, "source");
        Checks.notNegative(standardUncertaintyWatts, "standardUncertaintyWatts");
    }
}
