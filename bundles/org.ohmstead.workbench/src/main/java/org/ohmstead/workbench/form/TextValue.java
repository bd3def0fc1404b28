// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.form;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.regex.Pattern;
import org.ohmstead.units.text.Messages;

/**
 * How a value is written as text and read again. Reading accepts what people write; writing gives a text that reads as the same value.
 *
 * @param <T> the value
 */
public interface TextValue<T> {
    Messages TEXTS = Messages.of(TextValue.class);

    /**
     * Reads a value.
     *
     * @throws IllegalArgumentException when the text is no such value; the message is a whole sentence that says what would be
     */
    T read(String text);

    /** Returns the text of a value. */
    String write(T value);

    /** Returns the two functions as one. */
    static <T> TextValue<T> of(Function<String, T> read, Function<T, String> write) {
        return new TextValue<>() {
            @Override
            public T read(String text) {
                return read.apply(text);
            }

            @Override
            public String write(T value) {
                return write.apply(value);
            }
        };
    }

    /** Returns any text, spaces at its ends dropped; may be empty. */
    static TextValue<String> text() {
        return of(String::strip, value -> value);
    }

    /** Returns any text but an empty one. */
    static TextValue<String> requiredText() {
        return of(
                text -> {
                    if (text.isBlank()) {
                        throw new IllegalArgumentException(TEXTS.text("value.empty"));
                    }
                    return text.strip();
                },
                value -> value);
    }

    /** Returns a quantity in its plain unit. */
    static TextValue<Double> quantity(Measure measure) {
        return of(measure::read, measure::exact);
    }

    /** Returns a quantity in its plain unit that may be left empty. */
    static TextValue<OptionalDouble> optionalQuantity(Measure measure) {
        return of(
                text -> text.isBlank() ? OptionalDouble.empty() : OptionalDouble.of(measure.read(text)),
                value -> value.isPresent() ? measure.exact(value.getAsDouble()) : "");
    }

    /** Returns a whole number between two bounds, both allowed. */
    static TextValue<Integer> integer(int lowest, int highest) {
        Pattern whole = Pattern.compile("[+-]?\\d{1,9}");
        return of(
                text -> {
                    String trimmed = text.strip();
                    boolean fits = whole.matcher(trimmed).matches()
                            && Integer.parseInt(trimmed) >= lowest
                            && Integer.parseInt(trimmed) <= highest;
                    if (!fits) {
                        throw new IllegalArgumentException(TEXTS.text(
                                "value.whole", trimmed, Integer.toString(lowest), Integer.toString(highest)));
                    }
                    return Integer.parseInt(trimmed);
                },
                value -> Integer.toString(value));
    }

    /** Returns a day as year-month-day. */
    static TextValue<LocalDate> date() {
        return of(
                text -> {
                    try {
                        return LocalDate.parse(text.strip());
                    } catch (DateTimeParseException refused) {
                        throw new IllegalArgumentException(TEXTS.text("value.day", text.strip()), refused);
                    }
                },
                LocalDate::toString);
    }

    /** Returns a day as year-month-day that may be left empty. */
    static TextValue<Optional<LocalDate>> optionalDate() {
        TextValue<LocalDate> day = date();
        return of(
                text -> text.isBlank() ? Optional.empty() : Optional.of(day.read(text)),
                value -> value.map(LocalDate::toString).orElse(""));
    }
}
