// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

/**
 * One harmonic of an output wave.
 *
 * @param order 2 for the second harmonic, and so on; at least 2
 * @param ratioToFundamental amplitude over the fundamental's, at least 0
 */
public record HarmonicFigure(int order, double ratioToFundamental) {
    public HarmonicFigure {
        Checks.within(order, 2, 100_000, "order");
        Checks.notNegative(ratioToFundamental, "ratioToFundamental");
    }
}
