// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange.internal;

import java.util.Locale;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * How a workbook writes a text with characters that XML 1.0 cannot hold: each as its four hexadecimal digits between {@code _x} and
 * {@code _}; and where the text itself says such a thing, the underscore in front of it likewise (ISO/IEC 29500-1, 22.9.2.19).
 */
public final class SheetText {
    /** All that XML lacks but halves of surrogate pairs, which {@link Cell.Text} has none of. */
    private static final String NOT_IN_XML = "[\\x00-\\x08\\x0B\\x0C\\x0E-\\x1F\\uFFFE\\uFFFF]";

    /** An underscore counts where one follows that closes it, be it the first of an escape that is made only now. */
    private static final Pattern TO_ESCAPE =
            Pattern.compile(NOT_IN_XML + "|_(?=x[0-9A-Fa-f]{4}(?:_|" + NOT_IN_XML + "))");

    private static final Pattern ESCAPED = Pattern.compile("_x([0-9A-Fa-f]{4})_");

    private SheetText() {}

    /** Returns the text as it may stand in a sheet. */
    public static String escaped(String text) {
        return isPlain(text)
                ? text
                : TO_ESCAPE
                        .matcher(text)
                        .replaceAll(found -> String.format(
                                Locale.ROOT, "_x%04X_", (int) found.group().charAt(0)));
    }

    /** Nearly all texts are: they can be written as they are. */
    private static boolean isPlain(String text) {
        return text.chars().allMatch(character -> character >= ' ' && character != '_' && character < 0xFFFE);
    }

    /** Returns the text that stands in a sheet. What would be half of a surrogate pair stays as it is written: no text can hold it. */
    public static String unescaped(String written) {
        return written.indexOf("_x") < 0 ? written : ESCAPED.matcher(written).replaceAll(SheetText::character);
    }

    private static String character(MatchResult escape) {
        char character = (char) Integer.parseInt(escape.group(1), 16);
        return Matcher.quoteReplacement(Character.isSurrogate(character) ? escape.group() : String.valueOf(character));
    }
}
