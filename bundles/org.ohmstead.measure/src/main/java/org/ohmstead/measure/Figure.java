// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure;

import java.util.OptionalDouble;
import org.ohmstead.units.Unit;

/**
 * A figure that was found.
 *
 * @param id which of the measurement's figures
 * @param channel which channel, such as "A"; empty when it is about all of them
 * @param at where it holds when there are several of one kind, such as "1 kHz"; empty when there is but one
 * @param value in the unit
 * @param unit the figure's unit
 * @param standardUncertainty in the same unit, at least 0; empty when it is not known
 */
public record Figure(
        String id, String channel, String at, double value, Unit unit, OptionalDouble standardUncertainty) {
    public Figure {
        Checks.named(id, "id");
        Checks.present(channel, "channel");
        Checks.present(at, "at");
        Checks.finite(value, "value");
        Checks.present(unit, "unit");
        Checks.present(standardUncertainty, "standardUncertainty")
                .ifPresent(u -> Checks.notNegative(u, "standardUncertainty"));
    }

    /** Returns a figure about all channels, of which no uncertainty is known. */
    public static Figure of(FigureInfo info, double value) {
        return new Figure(info.id(), "", "", value, info.unit(), OptionalDouble.empty());
    }

    /** Returns this figure for a channel. */
    public Figure ofChannel(String newChannel) {
        return new Figure(id, newChannel, at, value, unit, standardUncertainty);
    }

    /** Returns this figure at a place of its own among several. */
    public Figure at(String newAt) {
        return new Figure(id, channel, newAt, value, unit, standardUncertainty);
    }

    /** Returns this figure with a standard uncertainty. */
    public Figure withStandardUncertainty(double newStandardUncertainty) {
        return new Figure(id, channel, at, value, unit, OptionalDouble.of(newStandardUncertainty));
    }
}
