// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.table;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import java.util.function.ToIntFunction;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.form.Measure;
import org.ohmstead.workbench.form.TextValue;
import org.ohmstead.workbench.look.Numbers;

/** Makes the usual columns: each from how a value is read from a row and how a row with another value is made. */
public final class Columns {
    private static final Messages TEXTS = Messages.of(Columns.class);
    private static final int NUMBER_WIDTH = 10;
    private static final int TEXT_WIDTH = 18;
    private static final int DIGITS = 4;
    private static final String EMPTY = "\u2013";

    private Columns() {}

    /** Returns a column of texts that are not changed. */
    public static <R> Column<R> shown(String id, String header, Function<R, String> shown) {
        return new Column<>(
                id,
                header,
                "",
                false,
                TEXT_WIDTH,
                shown,
                Optional.empty(),
                Comparator.comparing(shown, String.CASE_INSENSITIVE_ORDER),
                row -> Optional.empty(),
                row -> "");
    }

    /** Returns a column of quantities in the plain unit that follow from others: rounded to 4 significant digits and not changed. */
    public static <R> Column<R> shownQuantity(String id, String header, Measure measure, ToDoubleFunction<R> get) {
        return Columns.<R>number(id, header, measure.symbol(), row -> measure.rounded(get.applyAsDouble(row), DIGITS))
                .withOrder(Comparator.comparingDouble(get));
    }

    /** Returns a column of texts; they may be empty. */
    public static <R> Column<R> text(String id, String header, Function<R, String> get, BiFunction<R, String, R> with) {
        return shown(id, header, get).withEdit(typed(TextValue.text(), get, with));
    }

    /** Returns a column of texts that must not be empty. */
    public static <R> Column<R> requiredText(
            String id, String header, Function<R, String> get, BiFunction<R, String, R> with) {
        return shown(id, header, get).withEdit(typed(TextValue.requiredText(), get, with));
    }

    /** Returns a column of quantities in the plain unit. */
    public static <R> Column<R> quantity(
            String id, String header, Measure measure, ToDoubleFunction<R> get, BiFunction<R, Double, R> with) {
        return shownQuantity(id, header, measure, get)
                .withShown(row -> measure.shown(get.applyAsDouble(row)))
                .withEdit(typed(TextValue.quantity(measure), get::applyAsDouble, with));
    }

    /** Returns a column of quantities in the plain unit that may be left empty. */
    public static <R> Column<R> optionalQuantity(
            String id,
            String header,
            Measure measure,
            Function<R, OptionalDouble> get,
            BiFunction<R, OptionalDouble, R> with) {
        Function<R, String> shown =
                row -> get.apply(row).isPresent() ? measure.shown(get.apply(row).getAsDouble()) : EMPTY;
        return number(id, header, measure.symbol(), shown)
                .withOrder(Comparator.comparingDouble(row -> get.apply(row).orElse(Double.NEGATIVE_INFINITY)))
                .withEdit(typed(TextValue.optionalQuantity(measure), get, with));
    }

    /** Returns a column of ratios, shown in percent. */
    public static <R> Column<R> percent(
            String id, String header, ToDoubleFunction<R> get, BiFunction<R, Double, R> with) {
        return quantity(id, header, Measure.percentOfOne(), get, with);
    }

    /** Returns a column of whole numbers between two bounds, both allowed. */
    public static <R> Column<R> integer(
            String id, String header, int lowest, int highest, ToIntFunction<R> get, BiFunction<R, Integer, R> with) {
        return Columns.<R>number(id, header, "", row -> Integer.toString(get.applyAsInt(row)))
                .withOrder(Comparator.comparingInt(get))
                .withEdit(typed(TextValue.integer(lowest, highest), get::applyAsInt, with));
    }

    /** Returns a column of days that may be left empty. */
    public static <R> Column<R> date(
            String id,
            String header,
            Function<R, Optional<LocalDate>> get,
            BiFunction<R, Optional<LocalDate>, R> with) {
        return Columns.<R>shown(id, header, row -> get.apply(row)
                        .map(LocalDate::toString)
                        .orElse(""))
                .withOrder(Comparator.comparing(row -> get.apply(row).orElse(LocalDate.MIN)))
                .withWidth(NUMBER_WIDTH + 2)
                .withEdit(typed(TextValue.optionalDate(), get, with));
    }

    /** Returns a column of choices from a list; typed or pasted text is compared without regard to case. */
    public static <R, E> Column<R> choice(
            String id,
            String header,
            List<E> choices,
            Function<E, String> words,
            Function<R, E> get,
            BiFunction<R, E, R> with) {
        return choiceFrom(id, header, row -> choices, words, get, with);
    }

    /** Returns a column of choices that are asked for when the cell is edited. */
    public static <R, E> Column<R> choiceFrom(
            String id,
            String header,
            Function<R, List<E>> choices,
            Function<E, String> words,
            Function<R, E> get,
            BiFunction<R, E, R> with) {
        Function<R, String> shown = row -> words.apply(get.apply(row));
        CellEdit.With<R> put = (row, text) -> with.apply(row, choose(choices.apply(row), words, text));
        return shown(id, header, shown)
                .withEdit(new CellEdit<>(CellEdit.Kind.CHOICE, shown, put, row -> choices.apply(row).stream()
                        .map(words)
                        .toList()));
    }

    /** Returns a column of check marks. */
    public static <R> Column<R> check(String id, String header, Predicate<R> get, BiFunction<R, Boolean, R> with) {
        Function<R, String> shown = row -> get.test(row) ? CellEdit.yes() : CellEdit.no();
        CellEdit.With<R> put = (row, text) ->
                with.apply(row, choose(List.of(true, false), set -> set ? CellEdit.yes() : CellEdit.no(), text));
        return shown(id, header, shown)
                .withWidth(NUMBER_WIDTH)
                .withEdit(new CellEdit<>(CellEdit.Kind.CHECK, shown, put, row -> List.of()));
    }

    /** Returns how a value is typed into a cell. */
    public static <R, T> CellEdit<R> typed(TextValue<T> value, Function<R, T> get, BiFunction<R, T, R> with) {
        return new CellEdit<>(
                CellEdit.Kind.TEXT,
                row -> value.write(get.apply(row)),
                (row, text) -> with.apply(row, value.read(text)),
                row -> List.of());
    }

    private static <R> Column<R> number(String id, String header, String unit, Function<R, String> shown) {
        return new Column<>(
                id,
                header,
                unit,
                true,
                Math.max(NUMBER_WIDTH, header.length() + unit.length() + 2),
                shown,
                Optional.empty(),
                Comparator.comparing(shown),
                row -> Optional.empty(),
                row -> "");
    }

    private static <E> E choose(List<E> choices, Function<E, String> words, String text) {
        String wanted = text.strip();
        return choices.stream()
                .filter(choice -> words.apply(choice).equalsIgnoreCase(wanted)
                        || Numbers.withPoint(() -> words.apply(choice)).equalsIgnoreCase(wanted))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException(TEXTS.text(
                        "choice.none",
                        wanted,
                        choices.stream()
                                .map(words)
                                .reduce((some, next) -> TEXTS.text("choice.or", some, next))
                                .orElse(""))));
    }
}
