// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.units;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.text.DecimalFormatSymbols;
import java.util.Locale;

/**
 * Prints quantities with a number of significant digits and a fitting SI prefix: 0.0047 ohm at 3 digits gives "4.70 mΩ".
 *
 * <p>{@link #LOCALE_FREE} always uses a point as decimal mark and is what files and machines get; {@link #localised} follows a
 * locale's decimal mark for people.
 */
public final class QuantityFormat {
    /** Up to 6 significant digits, trailing zeros dropped, decimal point. */
    public static final QuantityFormat LOCALE_FREE = new QuantityFormat(6, false, '.');

    private static final String[] PREFIXES = {"p", "n", "\u00b5", "m", "", "k", "M", "G"};
    private static final int NO_PREFIX = 4;

    private final int significantDigits;
    private final boolean keepZeros;
    private final char decimalMark;

    private QuantityFormat(int significantDigits, boolean keepZeros, char decimalMark) {
        if (significantDigits < 1 || significantDigits > 17) {
            throw new IllegalArgumentException(
                    "significantDigits is " + significantDigits + "; it must lie between 1 and 17");
        }
        this.significantDigits = significantDigits;
        this.keepZeros = keepZeros;
        this.decimalMark = decimalMark;
    }

    /** Returns a format with exactly so many significant digits, 1 to 17, and a decimal point. */
    public static QuantityFormat digits(int significantDigits) {
        return new QuantityFormat(significantDigits, true, '.');
    }

    /** Returns a format with exactly so many significant digits, 1 to 17, and the decimal mark of a locale. */
    public static QuantityFormat localised(int significantDigits, Locale locale) {
        char mark = DecimalFormatSymbols.getInstance(locale).getDecimalSeparator();
        return new QuantityFormat(significantDigits, true, mark);
    }

    /** Returns the quantity as text: number, a space, prefix and unit; no unit part for a plain number. */
    public String format(Quantity quantity) {
        BigDecimal rounded = round(quantity.value());
        int prefix = NO_PREFIX;
        if (quantity.unit().takesPrefix() && rounded.signum() != 0) {
            int exponent = rounded.precision() - rounded.scale() - 1;
            prefix = Math.max(0, Math.min(PREFIXES.length - 1, NO_PREFIX + Math.floorDiv(exponent, 3)));
        }
        String number = plain(rounded.movePointRight(-3 * (prefix - NO_PREFIX)));
        String unit = PREFIXES[prefix] + quantity.unit().symbol();
        return unit.isEmpty() ? number : number + " " + unit;
    }

    /** Returns the number alone, rounded to the significant digits, never in exponent form. */
    public String format(double value) {
        return plain(round(value));
    }

    private BigDecimal round(double value) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("value is " + value + "; it must be a finite number");
        }
        return new BigDecimal(value).round(new MathContext(significantDigits, RoundingMode.HALF_EVEN));
    }

    private String plain(BigDecimal value) {
        BigDecimal shown = value;
        if (value.signum() == 0) {
            shown = BigDecimal.ZERO.setScale(keepZeros ? significantDigits - 1 : 0);
        } else if (keepZeros) {
            int exponent = value.precision() - value.scale() - 1;
            shown = value.setScale(Math.max(0, significantDigits - 1 - exponent), RoundingMode.HALF_EVEN);
        } else {
            shown = value.stripTrailingZeros();
            shown = shown.scale() < 0 ? shown.setScale(0) : shown;
        }
        return shown.toPlainString().replace('.', decimalMark);
    }
}
