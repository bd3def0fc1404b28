// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange.internal;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.ohmstead.units.QuantityException;
import org.ohmstead.units.QuantityParser;
import org.ohmstead.units.Unit;

/** What a column of a table of readings can be about. Its heading is the name and, of a quantity, the unit. */
enum Field {
    ENTRY("entry"),
    ENTRY_HASH("entry_hash"),
    STEP("step"),
    MODE("mode"),
    LOAD("load"),
    STIMULUS("stimulus"),
    END_POINT("end_point"),
    CHANNEL("channel"),
    OUTCOME("outcome"),
    VOIDED("voided"),
    NOTES("notes"),
    OPERATOR("operator"),
    PROCEDURE("procedure"),
    AMPLIFIER("amplifier"),
    SERIAL_NUMBER("serial_number"),
    BENCH("bench"),
    TAKEN_AT("taken_at"),
    TAKEN_AT_UTC("taken_at_utc"),
    NOMINAL_LOAD("nominal_load", Unit.OHM),
    LOAD_OHMS("load", Unit.OHM),
    FREQUENCY("frequency", Unit.HERTZ),
    BURST_ON("burst_on", Unit.SECOND),
    BURST_PERIOD("burst_period", Unit.SECOND),
    BURST_LOW_LEVEL("burst_low_level", Unit.DECIBEL),
    END_POINT_LIMIT("end_point_limit", Unit.PERCENT),
    END_POINT_DRIVE("end_point_drive", Unit.DECIBEL),
    POWER("power", Unit.WATT),
    STANDARD_UNCERTAINTY("power_std_uncertainty", Unit.WATT),
    EXPANDED_UNCERTAINTY("power_expanded_uncertainty", Unit.WATT),
    COVERAGE_FACTOR("coverage_factor", Unit.NONE),
    OUTPUT("output", Unit.VOLT),
    THD_F("thd_f", Unit.PERCENT),
    SUPPLY_VOLTS("supply", Unit.VOLT),
    SUPPLY_AMPS("supply", Unit.AMPERE),
    AMBIENT("ambient", Unit.CELSIUS),
    CASE("case", Unit.CELSIUS);

    private static final Pattern BRACKETED = Pattern.compile("(.*?)[\\s_]*[\\[(]([^\\[\\]()]*)[\\])]\\s*");
    private static final Pattern GAP = Pattern.compile("[\\s-]+");
    private static final Pattern UNIT_WORD = Pattern.compile("[a-z\u00b5\u03a9%]{1,6}");
    private static final double ICE_POINT_KELVIN = 273.15;

    private final String base;
    private final Optional<Unit> unit;

    Field(String base) {
        this.base = base;
        this.unit = Optional.empty();
    }

    Field(String base, Unit unit) {
        this.base = base;
        this.unit = Optional.of(unit);
    }

    /**
     * A column of a table.
     *
     * @param field what it is about
     * @param heading its heading as it stands in the table
     * @param factor SI value of 1 in its unit, of quantities
     * @param offset what is added then
     * @param decibels whether it is a ratio in dB
     */
    record Column(Field field, String heading, double factor, double offset, boolean decibels) {
        double si(double value) {
            return decibels ? Math.pow(10, value / 20) : value * factor + offset;
        }
    }

    /** Returns which column a heading stands for, or empty when none is known by it. */
    static Optional<Column> of(String heading) {
        String text = heading.strip();
        String name = name(text);
        Optional<Field> words = Arrays.stream(values())
                .filter(field -> field.unit.isEmpty() && field.base.equals(name))
                .findFirst();
        if (words.isPresent()) {
            return words.map(field -> new Column(field, text, 1, 0, false));
        }
        Matcher bracketed = BRACKETED.matcher(text);
        if (bracketed.matches()) {
            return quantity(text, bracketed.group(1), bracketed.group(2));
        }
        if (name.equals(COVERAGE_FACTOR.base)) {
            return quantity(text, text, "");
        }
        int end = text.lastIndexOf('_');
        return end < 0 ? Optional.empty() : quantity(text, text.substring(0, end), text.substring(end + 1));
    }

    /** Returns whether the heading is that of a quantity without a unit, or with a unit that does not fit. */
    static boolean lacksUnit(String heading) {
        String text = name(heading);
        Matcher bracketed = BRACKETED.matcher(heading.strip());
        String bare = bracketed.matches() ? name(bracketed.group(1)) : text;
        return Arrays.stream(values())
                .filter(field -> field.unit.isPresent())
                .anyMatch(field -> bare.equals(field.base) || field.isNameWithUnit(text));
    }

    private boolean isNameWithUnit(String name) {
        return name.startsWith(base + "_")
                && UNIT_WORD.matcher(name.substring(base.length() + 1)).matches();
    }

    private static Optional<Column> quantity(String heading, String base, String unitText) {
        String name = name(base);
        for (Field field : values()) {
            if (field.unit.isPresent() && field.base.equals(name)) {
                Optional<Column> column = column(field, heading, unitText.strip());
                if (column.isPresent()) {
                    return column;
                }
            }
        }
        return Optional.empty();
    }

    private static Optional<Column> column(Field field, String heading, String unitText) {
        Unit unit = field.unit.orElseThrow();
        if (unit == Unit.PERCENT) {
            return ratio(field, heading, unitText);
        }
        if (unit == Unit.CELSIUS && unitText.equals("K")) {
            return Optional.of(new Column(field, heading, 1, -ICE_POINT_KELVIN, false));
        }
        boolean effective = field == OUTPUT && unitText.endsWith("rms");
        OptionalDouble factor =
                factor(effective ? unitText.substring(0, unitText.length() - 3).strip() : unitText, unit);
        boolean named = !unitText.isEmpty() || unit == Unit.NONE;
        return named && factor.isPresent()
                ? Optional.of(new Column(field, heading, factor.getAsDouble(), 0, false))
                : Optional.empty();
    }

    private static Optional<Column> ratio(Field field, String heading, String unitText) {
        return switch (unitText) {
            case "percent", "%" -> Optional.of(new Column(field, heading, 0.01, 0, false));
            case "ratio", "1" -> Optional.of(new Column(field, heading, 1, 0, false));
            case "dB" -> Optional.of(new Column(field, heading, 1, 0, true));
            default -> Optional.empty();
        };
    }

    private static OptionalDouble factor(String unitText, Unit unit) {
        try {
            return OptionalDouble.of(QuantityParser.parse("1 " + unitText, unit).value());
        } catch (QuantityException otherUnit) {
            // That the heading names another unit is the answer; the next column of this name may fit.
            return OptionalDouble.empty();
        }
    }

    private static String name(String heading) {
        return GAP.matcher(heading.strip().toLowerCase(Locale.ROOT)).replaceAll("_");
    }

    /** Returns an example of the heading, for messages. */
    String example() {
        return unit.map(known -> base + "_"
                        + known.symbol()
                                .replace("\u03a9", "ohm")
                                .replace("\u00b0", "deg")
                                .replace("%", "percent"))
                .orElse(base);
    }

    static final List<Field> REQUIRED = List.of(MODE, FREQUENCY, END_POINT, POWER, SUPPLY_VOLTS);
}
