// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.form;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.regex.Pattern;
import org.ohmstead.units.QuantityException;
import org.ohmstead.units.QuantityParser;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Numbers;

/**
 * The unit in which a field or column shows a quantity: what a bare number means there. Inside, the quantity stays in the plain SI unit,
 * a ratio from 0 to 1 for {@link #percentOfOne()}.
 *
 * @param unit the plain unit
 * @param exponent the power of ten of one shown unit in the plain one: -3 for milliohms
 * @param symbol the shown unit's symbol: "mΩ"; empty for a plain number
 */
public record Measure(Unit unit, int exponent, String symbol) {
    private static final Messages TEXTS = Messages.of(Measure.class);
    private static final Pattern BARE = Pattern.compile("[+-]?(?:\\d+(?:[.,]\\d*)?|[.,]\\d+)(?:[eE][+-]?\\d{1,3})?");
    private static final String PREFIXES = "pn\u00b5m kMG";

    /** Returns the plain unit. */
    public static Measure of(Unit unit) {
        return new Measure(unit, 0, unit.symbol());
    }

    /** Returns a thousandth of the unit. */
    public static Measure milli(Unit unit) {
        return prefixed(unit, -3);
    }

    /** Returns a millionth of the unit. */
    public static Measure micro(Unit unit) {
        return prefixed(unit, -6);
    }

    /** Returns a thousand of the unit. */
    public static Measure kilo(Unit unit) {
        return prefixed(unit, 3);
    }

    /** Returns the measure of ratios: shown and written in percent, 0.01 inside being "1". */
    public static Measure percentOfOne() {
        return new Measure(Unit.PERCENT, -2, Unit.PERCENT.symbol());
    }

    /** Returns a measure whose unit is a mere name behind a number, such as "mm²". */
    public static Measure named(String symbol) {
        return new Measure(Unit.NONE, 0, symbol);
    }

    private static Measure prefixed(Unit unit, int exponent) {
        return new Measure(unit, exponent, PREFIXES.charAt(4 + exponent / 3) + unit.symbol());
    }

    /**
     * Reads what a person wrote: "4R7", "13.8 V", "13,8"; a bare number is in the shown unit.
     *
     * @return the value in the plain unit
     * @throws IllegalArgumentException when it cannot be read; the message says why and gives an example
     */
    public double read(String text) {
        String trimmed = text.strip();
        String number = !symbol.isEmpty() && trimmed.endsWith(symbol)
                ? trimmed.substring(0, trimmed.length() - symbol.length()).strip()
                : trimmed;
        if (BARE.matcher(number).matches()) {
            double value = new BigDecimal(number.replace(',', '.'))
                    .scaleByPowerOfTen(exponent)
                    .doubleValue();
            if (!Double.isFinite(value)) {
                throw new IllegalArgumentException(TEXTS.text("value.large", trimmed));
            }
            return value;
        }
        try {
            return QuantityParser.parse(text, unit).value();
        } catch (QuantityException refused) {
            throw new IllegalArgumentException(refused.getMessage(), refused);
        }
    }

    /** Returns the shortest number in the shown unit that {@link #read} turns into exactly this value; no unit, always a point. */
    public String exact(double value) {
        return Numbers.plain(BigDecimal.valueOf(value).scaleByPowerOfTen(-exponent));
    }

    /** Returns the number in the shown unit with up to 6 significant digits; no unit. */
    public String shown(double value) {
        return Numbers.shown(
                BigDecimal.valueOf(value).scaleByPowerOfTen(-exponent).doubleValue());
    }

    /** Returns the number in the shown unit, rounded to so many significant digits, 1 to 17, trailing zeros dropped; no unit. */
    public String rounded(double value, int significantDigits) {
        MathContext rounding = new MathContext(significantDigits, RoundingMode.HALF_EVEN);
        return Numbers.localised(Numbers.plain(
                BigDecimal.valueOf(value).scaleByPowerOfTen(-exponent).round(rounding)));
    }

    /** Returns the number in the shown unit with up to 6 significant digits, and the unit: "4.7 mΩ". */
    public String shownWithUnit(double value) {
        return symbol.isEmpty() ? shown(value) : shown(value) + " " + symbol;
    }
}
