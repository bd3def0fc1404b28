// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.look;

import java.math.BigDecimal;
import java.text.DecimalFormatSymbols;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.regex.Pattern;
import org.ohmstead.units.Quantity;
import org.ohmstead.units.QuantityFormat;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Language;

/**
 * Numbers as text for people: no more digits than help, with the decimal sign that the user chose, else with that of the language. That
 * sign is the same for the whole process, because there is one user before one screen; the desk sets it. What leaves the screen, such as
 * copies for a spreadsheet, is made {@linkplain #withPoint with a point} as everywhere in the project's files.
 */
public final class Numbers {
    private static final QuantityFormat SHOWN = QuantityFormat.LOCALE_FREE;
    /** Has a decimal comma and else prints as the root locale does when no grouping is asked for. */
    private static final Locale COMMA = Locale.GERMANY;

    private static final Pattern POINT_IN_NUMBER = Pattern.compile("(?<=\\d)\\.(?=\\d)");
    private static final ThreadLocal<Boolean> POINT_WANTED = ThreadLocal.withInitial(() -> false);
    private static volatile Optional<Boolean> commaChosen = Optional.empty();

    private Numbers() {}

    /** Returns whether numbers are shown with a decimal comma instead of a point. */
    public static boolean decimalComma() {
        return commaChosen.orElseGet(Numbers::languageHasComma);
    }

    /** Returns whether the language that is spoken writes numbers with a decimal comma: what holds until something else is chosen. */
    public static boolean languageHasComma() {
        return DecimalFormatSymbols.getInstance(Language.current()).getDecimalSeparator() == ',';
    }

    /** Sets whether numbers are shown with a decimal comma. Texts that are there already do not change by themselves. */
    public static void useDecimalComma(boolean wanted) {
        commaChosen = Optional.of(wanted);
    }

    /** Has numbers follow the language again, as if nothing was ever chosen. */
    public static void useLanguagesSign() {
        commaChosen = Optional.empty();
    }

    /** Returns what is made with a decimal point in all numbers, whatever the user chose: for copies and files. */
    public static <T> T withPoint(Supplier<T> made) {
        boolean before = POINT_WANTED.get();
        POINT_WANTED.set(true);
        try {
            return made.get();
        } finally {
            POINT_WANTED.set(before);
        }
    }

    private static boolean commaNow() {
        return !POINT_WANTED.get() && decimalComma();
    }

    /** Returns a text that is a number with a decimal point, perhaps with its unit, with the user's decimal sign. */
    public static String localised(String number) {
        return commaNow() ? number.replace('.', ',') : number;
    }

    /**
     * Returns a sentence with the user's decimal sign, for one that was made with a point where the user's choice is not known. It must hold
     * no names, dates or versions: every point between two digits is taken for a decimal one.
     */
    public static String inSentence(String sentence) {
        return commaNow() ? POINT_IN_NUMBER.matcher(sentence).replaceAll(",") : sentence;
    }

    /** Returns a text as {@link String#format} makes it, the user's decimal sign in all its numbers: "%.2f V". */
    public static String format(String format, Object... values) {
        return String.format(commaNow() ? COMMA : Locale.ROOT, format, values);
    }

    /** Returns a number with up to 6 significant digits, trailing zeros dropped: "13.8". */
    public static String shown(double value) {
        return localised(SHOWN.format(value));
    }

    /** Returns a quantity with up to 6 significant digits and a fitting prefix: "4.7 mΩ". */
    public static String shown(double value, Unit unit) {
        return localised(SHOWN.format(new Quantity(value, unit)));
    }

    /** Returns a number with exactly so many significant digits, 1 to 17: 90 at 3 digits gives "90.0". */
    public static String digits(double value, int significantDigits) {
        return localised(QuantityFormat.digits(significantDigits).format(value));
    }

    /** Returns a quantity with exactly so many significant digits, 1 to 17, and a fitting prefix: "4.70 mΩ". */
    public static String digits(double value, Unit unit, int significantDigits) {
        return localised(QuantityFormat.digits(significantDigits).format(new Quantity(value, unit)));
    }

    /** Returns a ratio in percent with up to 6 significant digits: 0.01 gives "1 %". */
    public static String percent(double ratio) {
        return shown(BigDecimal.valueOf(ratio).movePointRight(2).doubleValue()) + " %";
    }

    /** Returns the shortest text that reads back as exactly this number, never in exponent form, always with a point. */
    public static String exact(double value) {
        return plain(BigDecimal.valueOf(value));
    }

    /** Returns a decimal number as plain text without trailing zeros, always with a point. */
    public static String plain(BigDecimal value) {
        return value.signum() == 0 ? "0" : value.stripTrailingZeros().toPlainString();
    }
}
