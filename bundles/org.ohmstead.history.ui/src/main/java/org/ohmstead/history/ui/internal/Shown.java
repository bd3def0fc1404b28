// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.ui.internal;

import java.math.BigDecimal;
import java.math.MathContext;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import org.ohmstead.model.Mode;
import org.ohmstead.model.PowerKind;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Coverage;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.look.Stated;

/** Numbers, days and names as these views show them. */
final class Shown {
    private static final Messages TEXTS = Messages.of(Shown.class);
    private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);
    private static final MathContext DIGITS = new MathContext(6);
    private static final int UNCERTAINTY_DIGITS = 2;
    private static final int MOST_PLACES = 9;

    private Shown() {}

    /** Returns the minute of a moment where the user is. */
    static String minute(Instant moment) {
        return MINUTE.format(moment.atZone(ZoneId.systemDefault()));
    }

    /** Returns the day of a moment where the user is. */
    static LocalDate day(Instant moment) {
        return LocalDate.ofInstant(moment, ZoneId.systemDefault());
    }

    /** Returns a sentence of the calculations with the user's decimal sign, and with the sign that plain English text writes as "+-". */
    static String sentence(String sentence) {
        return Numbers.inSentence(sentence).replace(" +- ", " \u00b1 ");
    }

    /** Returns a value with up to 6 significant digits. */
    static String value(double value) {
        return Numbers.shown(value);
    }

    /** Returns a value rounded to its expanded uncertainty, such as "97.3". */
    static String rounded(double value, double standardUncertainty) {
        return stated(value, standardUncertainty).value();
    }

    /** Returns the expanded uncertainty with two digits; empty when there is none. */
    static String expanded(double value, double standardUncertainty) {
        return stated(value, standardUncertainty).expanded();
    }

    /** Returns a value with its expanded uncertainty. */
    static Stated stated(double value, double standardUncertainty) {
        return Stated.of(value, Coverage.expanded(standardUncertainty), Shown::value);
    }

    /** Returns a standard deviation with two significant digits, or 0. */
    static String deviation(double value) {
        return value > 0 ? Numbers.digits(value, UNCERTAINTY_DIGITS) : Numbers.shown(0);
    }

    /** Returns how many decimal places values need that stand below each other: as many as one of them, rounded to 6 digits. */
    static int places(double... values) {
        return Arrays.stream(values)
                .map(Math::abs)
                .mapToInt(value -> value == 0
                        ? 0
                        : new BigDecimal(value, DIGITS).stripTrailingZeros().scale())
                .map(scale -> Math.min(MOST_PLACES, Math.max(0, scale)))
                .max()
                .orElse(0);
    }

    /** Returns a number with so many decimal places. */
    static String fixed(double value, int places) {
        return Numbers.format("%." + places + "f", value);
    }

    /** Returns a number with so many decimal places and a sign, also above 0. */
    static String signed(double value, int places) {
        String text = fixed(value, places);
        boolean zero = text.chars().noneMatch(digit -> digit >= '1' && digit <= '9');
        return zero ? text.replace("-", "") : value > 0 ? "+" + text : text;
    }

    /** Returns how channels meet the load, in a word. */
    static String words(Mode mode) {
        return TEXTS.text("mode." + mode.name());
    }

    /** Returns a kind of power in a word. */
    static String words(PowerKind kind) {
        return TEXTS.text("kind." + kind.name());
    }

    /** Reads a number with a decimal point or comma; empty when it is none. */
    static Optional<Double> read(String text) {
        String plain = text.strip().replace(',', '.').replace('\u2212', '-');
        if (!plain.matches("[+-]?(\\d+(\\.\\d*)?|\\.\\d+)([eE][+-]?\\d{1,3})?")) {
            return Optional.empty();
        }
        return Optional.of(Double.valueOf(plain)).filter(value -> Double.isFinite(value));
    }

    /** Returns a number as it may stand in a field to be edited: up to 6 digits, no exponent. */
    static String editable(double value) {
        return Numbers.localised(Numbers.plain(new BigDecimal(value, DIGITS)));
    }

    /** Returns what to tell of a failure. */
    static String reason(Exception failure) {
        return failure.getMessage() == null || failure.getMessage().isBlank()
                ? failure.toString()
                : failure.getMessage();
    }
}
