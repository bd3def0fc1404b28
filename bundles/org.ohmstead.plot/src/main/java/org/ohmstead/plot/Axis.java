// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot;

import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;

/**
 * One axis of a plot.
 *
 * @param label what is shown along the axis, such as "Output power"; not blank
 * @param unit the symbol of the unit, such as "W"; empty where there is none
 * @param scale linear or logarithmic
 * @param lower fixed lower end; empty to let the data decide; above zero on a log axis
 * @param upper fixed upper end, above {@code lower}; empty to let the data decide; above zero on a log axis
 * @param ticks the labelled places; empty to have them chosen at round numbers
 */
public record Axis(
        String label, String unit, Scale scale, OptionalDouble lower, OptionalDouble upper, List<Tick> ticks) {
    /** Checks the parameters and copies the ticks. */
    public Axis {
        Checks.notBlank("label", label);
        Objects.requireNonNull(unit, "unit");
        Objects.requireNonNull(scale, "scale");
        checkEnd("lower", lower, scale);
        checkEnd("upper", upper, scale);
        if (lower.isPresent() && upper.isPresent() && lower.getAsDouble() >= upper.getAsDouble()) {
            throw new IllegalArgumentException("lower must be below upper but " + lower.getAsDouble() + " is not below "
                    + upper.getAsDouble() + ".");
        }
        ticks = List.copyOf(ticks);
        for (Tick tick : ticks) {
            checkEnd("tick", OptionalDouble.of(tick.value()), scale);
        }
    }

    private static void checkEnd(String name, OptionalDouble end, Scale scale) {
        Objects.requireNonNull(end, name);
        if (end.isEmpty()) {
            return;
        }
        double value = Checks.finite(name, end.getAsDouble());
        if (scale == Scale.LOG && value <= 0) {
            throw new IllegalArgumentException(name + " must be above 0 on a log axis but is " + value + ".");
        }
    }

    /** Returns a linear axis whose range follows the data. */
    public static Axis linear(String label, String unit) {
        return new Axis(label, unit, Scale.LINEAR, OptionalDouble.empty(), OptionalDouble.empty(), List.of());
    }

    /** Returns a logarithmic axis whose range follows the data. */
    public static Axis log(String label, String unit) {
        return new Axis(label, unit, Scale.LOG, OptionalDouble.empty(), OptionalDouble.empty(), List.of());
    }

    /** Returns this axis with both ends fixed, {@code lower} below {@code upper}. */
    public Axis withRange(double lower, double upper) {
        return new Axis(label, unit, scale, OptionalDouble.of(lower), OptionalDouble.of(upper), ticks);
    }

    /** Returns this axis with the lower end fixed; the upper end stays as it is. */
    public Axis withLower(double lower) {
        return new Axis(label, unit, scale, OptionalDouble.of(lower), upper, ticks);
    }

    /** Returns this axis with the upper end fixed; the lower end stays as it is. */
    public Axis withUpper(double upper) {
        return new Axis(label, unit, scale, lower, OptionalDouble.of(upper), ticks);
    }

    /** Returns this axis with labels at the given places instead of at round numbers. */
    public Axis withTicks(List<Tick> ticks) {
        return new Axis(label, unit, scale, lower, upper, ticks);
    }

    /** Returns the label with the unit in parentheses, "Output power (W)", or the label alone without a unit. */
    public String caption() {
        return unit.isEmpty() ? label : label + " (" + unit + ")";
    }

    /** Returns whether the value has a place on this kind of axis: any finite one, on a log axis those above zero. */
    public boolean accepts(double value) {
        return Double.isFinite(value) && (scale == Scale.LINEAR || value > 0);
    }
}
