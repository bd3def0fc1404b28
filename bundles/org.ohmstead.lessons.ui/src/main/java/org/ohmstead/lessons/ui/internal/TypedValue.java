// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.ui.internal;

import java.util.Locale;
import java.util.OptionalDouble;
import java.util.regex.Pattern;
import org.ohmstead.lessons.Control;
import org.ohmstead.units.Quantity;
import org.ohmstead.units.QuantityException;
import org.ohmstead.units.QuantityFormat;
import org.ohmstead.units.QuantityParser;
import org.ohmstead.units.Unit;

/**
 * What a person typed, read.
 *
 * @param value the number in the plain unit; empty when it will not do
 * @param refusal why not, in a sentence with what would do; empty when it will
 */
record TypedValue(OptionalDouble value, String refusal) {
    private static final Pattern BARE = Pattern.compile("[+-]?(?:\\d+(?:[.,]\\d*)?|[.,]\\d+)");
    private static final double ROUNDING = 1e-9;

    private static TypedValue refused(String sentence) {
        return new TypedValue(OptionalDouble.empty(), sentence);
    }

    /**
     * Reads a value for a slider. A bare number is in the unit that is shown, with its prefix: "30" where "20 ms" stands means 30 ms.
     *
     * @param shown what stands there now
     */
    static TypedValue of(String typed, Control.Slider slider, String shown, Locale locale) {
        String name = slider.label();
        String example = slider.text(slider.start(), locale);
        int space = shown.lastIndexOf(' ');
        boolean bare = space > 0 && BARE.matcher(typed.strip()).matches();
        TypedValue read = read(bare ? typed.strip() + shown.substring(space) : typed, slider.unit(), example);
        if (read.value.isEmpty()) {
            return refused(Texts.say("entry.unread", typed.strip(), name, example));
        }
        double value = read.value.getAsDouble();
        double slack = ROUNDING * (Math.abs(slider.least()) + Math.abs(slider.most()));
        if (value < slider.least() - slack || value > slider.most() + slack) {
            QuantityFormat format = QuantityFormat.localised(slider.digits(), locale);
            return refused(Texts.say(
                    "entry.range",
                    format.format(new Quantity(value, slider.unit())),
                    name,
                    slider.text(slider.least(), locale),
                    slider.text(slider.most(), locale)));
        }
        return read;
    }

    /** Reads a number predicted. */
    static TypedValue of(String typed, Unit unit, Locale locale) {
        String example = QuantityFormat.localised(2, locale).format(new Quantity(1.5, unit));
        TypedValue read = read(typed, unit, example);
        return read.value.isPresent() || typed.isBlank()
                ? read
                : refused(Texts.say("guess.unread", typed.strip(), example));
    }

    private static TypedValue read(String typed, Unit unit, String example) {
        try {
            return new TypedValue(
                    OptionalDouble.of(QuantityParser.parse(typed, unit).value()), "");
        } catch (QuantityException unread) {
            return refused(Texts.say("guess.missing", example));
        }
    }
}
