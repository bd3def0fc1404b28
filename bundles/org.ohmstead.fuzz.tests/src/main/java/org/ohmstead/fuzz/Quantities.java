// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.fuzz;

import org.ohmstead.units.Quantity;
import org.ohmstead.units.QuantityException;
import org.ohmstead.units.QuantityFormat;
import org.ohmstead.units.QuantityParser;
import org.ohmstead.units.Unit;

/** A quantity as a person writes it. What was read and is printed must be read as the same again. */
public final class Quantities {
    private static final QuantityFormat EXACT = QuantityFormat.digits(17);
    /** Beyond these a prefix cannot bring the number into a form of its own, and 17 digits with their zeros say nothing new. */
    private static final double PRINTED_RATIO = 5e-6;

    private static final double EXACT_RATIO = 1e-15;
    private static final double SMALLEST_NORMAL = 1e-290;

    private Quantities() {}

    /** Reads any bytes as a quantity of each unit. */
    public static void fuzzerTestOneInput(byte[] input) {
        Bounds.hold(() -> read(input));
    }

    private static void read(byte[] input) {
        String text = Demand.text(input);
        for (Unit unit : Unit.values()) {
            read(text, unit);
        }
    }

    private static void read(String text, Unit unit) {
        try {
            Quantity quantity = QuantityParser.parse(text, unit);
            Demand.that(quantity.unit() == unit, "the unit is " + quantity.unit());
            if (Math.abs(quantity.value()) > SMALLEST_NORMAL && Math.abs(quantity.value()) < 1 / SMALLEST_NORMAL
                    || quantity.value() == 0) {
                again(quantity);
            }
        } catch (QuantityException e) {
            Demand.said(e);
            Demand.that(e.position() >= 0 && e.position() <= text.length(), "the position is " + e.position());
        }
    }

    private static void again(Quantity quantity) {
        String exact = EXACT.format(quantity);
        String shorter = QuantityFormat.LOCALE_FREE.format(quantity);
        try {
            Demand.close(QuantityParser.parse(exact, quantity.unit()).value(), quantity.value(), EXACT_RATIO, exact);
            Quantity rounded = QuantityParser.parse(shorter, quantity.unit());
            Demand.close(rounded.value(), quantity.value(), PRINTED_RATIO, shorter);
            Demand.that(QuantityFormat.LOCALE_FREE.format(rounded).equals(shorter), shorter + " is not printed again");
        } catch (QuantityException e) {
            throw new AssertionError("What was printed as \"" + exact + "\" and \"" + shorter + "\" is refused", e);
        }
    }
}
