// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

import java.util.OptionalDouble;

/**
 * A figure that a measurement found.
 *
 * @param id which of the measurement's figures, such as "dampingFactor"
 * @param channel which channel, such as "A"; empty when it is about all of them
 * @param at where it holds when there are several of one kind, such as "1 kHz"; empty when there is but one
 * @param value in the unit
 * @param unit symbol of its unit, such as "W"; empty for a plain number
 * @param standardUncertainty in the same unit, at least 0; empty when it is not known
 */
public record MeasuredFigure(
        String id, String channel, String at, double value, String unit, OptionalDouble standardUncertainty) {
    public MeasuredFigure {
        Checks.named(id, "figure id");
        Checks.present(channel, "channel");
        Checks.present(at, "at");
        Checks.finite(value, "value");
        Checks.present(unit, "unit");
        Checks.present(standardUncertainty, "standardUncertainty")
                .ifPresent(present -> Checks.notNegative(present, "standardUncertainty"));
    }
}
