// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons;

import java.util.Locale;
import org.ohmstead.units.Quantity;
import org.ohmstead.units.QuantityFormat;
import org.ohmstead.units.Unit;

/**
 * A number that a lesson shows.
 *
 * @param id its name in files: small letters, digits and hyphens
 * @param name what it is called, in the language of the lesson
 * @param value in its unit without prefix; percent are percent (5 is 5 %)
 * @param unit its unit
 * @param digits significant digits to show, 1 to 9
 * @param revealing whether it gives the answer away, so that it is hidden until the learner has predicted
 */
public record Figure(String id, String name, double value, Unit unit, int digits, boolean revealing) {
    /** Checks the ranges given above. */
    public Figure {
        Checks.id(id, "id");
        Checks.named(name, "name");
        Checks.finite(value, "value of " + id);
        Checks.present(unit, "unit");
        Checks.digits(digits, "digits");
    }

    /** Returns the value with its unit as people read it. */
    public String text(Locale locale) {
        return QuantityFormat.localised(digits, locale).format(new Quantity(value, unit));
    }
}
