// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import java.text.DecimalFormatSymbols;
import java.util.Arrays;
import java.util.Locale;
import java.util.regex.Pattern;
import org.ohmstead.units.text.Messages;
import org.ohmstead.units.text.Said;

/** What is said of captures and tones, in the language spoken now. */
final class Texts {
    private static final Messages TEXTS = Messages.of(Texts.class);
    private static final Pattern NUMBER = Pattern.compile("-?\\d+\\.\\d+(?:[eE][-+]?\\d+)?");

    private Texts() {}

    /** Returns a text; whole numbers stand in it without grouping, and texts that are numbers get the language's decimal mark. */
    static String say(String key, Object... arguments) {
        char mark = DecimalFormatSymbols.getInstance(TEXTS.locale()).getDecimalSeparator();
        return TEXTS.text(
                key,
                Arrays.stream(arguments).map(argument -> shown(argument, mark)).toArray());
    }

    /** Returns a text that a log may keep in English too. */
    static Said said(String key, Object... arguments) {
        return Said.of(() -> say(key, arguments));
    }

    /** Returns the text for one, or that for any other count. */
    static String counted(String key, int count, Object... arguments) {
        return say(key + (count == 1 ? ".one" : ".many"), arguments);
    }

    /** Returns a number with four significant digits, as {@link String#format} gives them. */
    static String four(double value) {
        return String.format(Locale.ROOT, "%.4g", value);
    }

    private static String shown(Object argument, char mark) {
        String text = String.valueOf(argument);
        return argument instanceof String && NUMBER.matcher(text).matches() ? text.replace('.', mark) : text;
    }
}
