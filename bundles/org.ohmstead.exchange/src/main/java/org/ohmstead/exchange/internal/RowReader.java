// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange.internal;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.exchange.ImportFault;
import org.ohmstead.exchange.internal.Field.Column;
import org.ohmstead.exchange.internal.RawRow.RawCell;
import org.ohmstead.units.text.Messages;

/** Reads the cells of one row, and collects what is wrong with them. */
final class RowReader {
    private static final Messages TEXTS = Messages.of(RowReader.class);
    private static final int LONGEST_SHOWN = 40;
    private static final String WITH_POINT = "[+-]?(\\d{1,40}(\\.\\d{0,40})?|\\.\\d{1,40})([eE][+-]?\\d{1,3})?";
    private static final String WITH_COMMA = WITH_POINT.replace("\\.", ",");
    private static final double LATEST_SERIAL = 2_958_465;

    private final RawRow row;
    private final RawTable table;
    private final Map<Field, Integer> places;
    private final List<Column> columns;
    private final List<ImportFault> faults;

    RowReader(RawRow row, RawTable table, Map<Field, Integer> places, List<Column> columns, List<ImportFault> faults) {
        this.row = row;
        this.table = table;
        this.places = places;
        this.columns = columns;
        this.faults = faults;
    }

    private Optional<RawCell> cell(Field field) {
        Integer place = places.get(field);
        return place == null
                ? Optional.empty()
                : Optional.of(row.cell(place)).filter(cell -> !cell.text().isBlank());
    }

    /** Returns the text of a cell; empty when there is none. */
    String text(Field field) {
        return cell(field)
                .map(cell -> table.guarded() ? FormulaGuard.unguarded(cell.text()) : cell.text())
                .map(String::strip)
                .orElse("");
    }

    /** Returns the text of a cell, or what is meant when it is empty. */
    String text(Field field, String otherwise) {
        String text = text(field);
        return text.isEmpty() ? otherwise : text;
    }

    /** Returns a number in SI units; empty when there is none or it is no number, which is then a fault. */
    OptionalDouble number(Field field) {
        Optional<RawCell> cell = cell(field);
        if (cell.isEmpty()) {
            return OptionalDouble.empty();
        }
        String text = cell.get().text().strip();
        boolean comma = table.decimalMark() == ',' && !cell.get().number();
        if (!text.matches(comma ? WITH_COMMA : WITH_POINT)) {
            fault(field, TEXTS.text(comma ? "row.numberWithComma" : "row.numberWithPoint", shown(text)));
            return OptionalDouble.empty();
        }
        double value = columns.get(places.get(field)).si(Double.parseDouble(text.replace(',', '.')));
        if (!Double.isFinite(value)) {
            faultTooLarge(field);
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(value);
    }

    /** Returns a number that must be there; when it is not, that is a fault. */
    OptionalDouble needed(Field field) {
        if (cell(field).isEmpty()) {
            fault(field, TEXTS.text("row.noNumber"));
            return OptionalDouble.empty();
        }
        return number(field);
    }

    /** Returns a number that must be above 0; when it is not, that is a fault. */
    OptionalDouble positive(Field field, boolean needed) {
        return inRange(field, needed ? needed(field) : number(field), Double.MIN_VALUE, "row.notAbove0");
    }

    /** Returns a number that must be at least 0; when it is not, that is a fault. */
    OptionalDouble notNegative(Field field, boolean needed) {
        return inRange(field, needed ? needed(field) : number(field), 0, "row.below0");
    }

    private OptionalDouble inRange(Field field, OptionalDouble value, double least, String refusal) {
        if (value.isPresent() && value.getAsDouble() < least) {
            fault(
                    field,
                    TEXTS.text(refusal, shown(cell(field).map(RawCell::text).orElse(""))));
            return OptionalDouble.empty();
        }
        return value;
    }

    /** Returns one of the words of an enum; when it is none, that is a fault. */
    <E extends Enum<E>> Optional<E> word(Field field, E[] words, Optional<E> otherwise) {
        String text = text(field).toLowerCase(Locale.ROOT).replaceAll("[\\s-]+", "_");
        if (text.isEmpty() && otherwise.isPresent()) {
            return otherwise;
        }
        for (E word : words) {
            if (word.name().toLowerCase(Locale.ROOT).equals(text)) {
                return Optional.of(word);
            }
        }
        fault(
                field,
                TEXTS.text("row.noWord", shown(text), List.of(words).toString().toLowerCase(Locale.ROOT)));
        return Optional.empty();
    }

    /** Returns when the reading was taken; when that is not to be found, that is a fault. */
    Optional<Instant> takenAt() {
        Field field = places.containsKey(Field.TAKEN_AT_UTC) ? Field.TAKEN_AT_UTC : Field.TAKEN_AT;
        Optional<RawCell> cell = cell(field);
        if (cell.isEmpty()) {
            fault(field, TEXTS.text("row.noTime"));
            return Optional.empty();
        }
        String text = cell.get().text().strip();
        Optional<Instant> moment = cell.get().number() ? serial(text) : written(text, field == Field.TAKEN_AT_UTC);
        if (moment.isEmpty()) {
            fault(field, TEXTS.text(field == Field.TAKEN_AT ? "row.notATimeWithZone" : "row.notATime", shown(text)));
        }
        return moment;
    }

    private static Optional<Instant> written(String text, boolean utc) {
        String joined = text.replaceFirst("^(\\d{4}-\\d\\d-\\d\\d) ", "$1T");
        try {
            return Optional.of(OffsetDateTime.parse(joined).toInstant());
        } catch (DateTimeException withoutZone) {
            return utc ? withoutZone(joined) : Optional.empty();
        }
    }

    private static Optional<Instant> withoutZone(String text) {
        try {
            return Optional.of(LocalDateTime.parse(text).toInstant(ZoneOffset.UTC));
        } catch (DateTimeException noTime) {
            // The caller says so at the cell.
            return Optional.empty();
        }
    }

    /** Days since the end of 1899, or since the beginning of 1904 (ISO/IEC 29500-1, 18.17.4); never on days before March 1900. */
    private Optional<Instant> serial(String text) {
        if (!text.matches(WITH_POINT)) {
            return Optional.empty();
        }
        double days = Double.parseDouble(text);
        if (!(days >= 61 && days <= LATEST_SERIAL)) {
            return Optional.empty();
        }
        LocalDateTime first =
                table.firstYear() == 1904 ? LocalDateTime.of(1904, 1, 1, 0, 0) : LocalDateTime.of(1899, 12, 30, 0, 0);
        return Optional.of(
                first.plus(Math.round(days * 86_400_000), ChronoUnit.MILLIS).toInstant(ZoneOffset.UTC));
    }

    void fault(Field field, String sentence) {
        Integer place = places.get(field);
        faults.add(new ImportFault(
                row.line(), place == null ? field.example() : columns.get(place).heading(), sentence));
    }

    /** Says of a number that it, or what follows from it, is larger than can be reckoned with. */
    void faultTooLarge(Field field) {
        fault(
                field,
                TEXTS.text(
                        "row.tooLarge",
                        shown(cell(field).map(RawCell::text).orElse("").strip())));
    }

    void fault(String sentence) {
        faults.add(new ImportFault(row.line(), "", sentence));
    }

    private static String shown(String text) {
        return text.length() > LONGEST_SHOWN ? text.substring(0, LONGEST_SHOWN) + "\u2026" : text;
    }
}
