// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Reading;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.look.Stated;

/**
 * One entry of the log as a row of the table.
 *
 * @param entry the entry
 * @param state what became of it
 * @param cells the texts, one for each of {@link LogColumn}
 * @param searched what the free text is looked for in, small letters
 */
record LogRow(LogEntry entry, RowState state, List<String> cells, String searched) {
    /** Sorts entries without a figure before all others. */
    private static final double WITHOUT = Double.NEGATIVE_INFINITY;

    static LogRow of(LogEntry entry) {
        RowState state = stateOf(entry);
        List<String> cells = cells(entry, state);
        String voided = entry.voidedBy()
                .map(note -> " " + note.reason() + " " + note.who() + " " + note.voidId())
                .orElse("");
        String load = entry.reading().map(reading -> " " + reading.loadId()).orElse("");
        // Numbers are found by either decimal sign.
        String pointed =
                Numbers.decimalComma() ? " " + String.join(" ", Numbers.withPoint(() -> cells(entry, state))) : "";
        String searched = (String.join(" ", cells) + pointed + load + voided).toLowerCase(Locale.ROOT);
        return new LogRow(entry, state, cells, searched);
    }

    /** Returns the texts of an entry as numbers are shown now, one for each of {@link LogColumn}. */
    static List<String> cells(LogEntry entry, RowState state) {
        Map<LogColumn, String> texts = new EnumMap<>(LogColumn.class);
        texts.put(LogColumn.NUMBER, entry.id());
        texts.put(LogColumn.STATE, state.word());
        texts.put(LogColumn.TIME, Figures.minute(timeOf(entry)));
        if (entry.reading().isPresent()) {
            addReading(texts, entry.reading().get());
        } else {
            addRemark(texts, entry);
        }
        return Arrays.stream(LogColumn.values())
                .map(column -> texts.getOrDefault(column, ""))
                .toList();
    }

    private static void addReading(Map<LogColumn, String> texts, Reading reading) {
        ChannelReading channel = reading.weakestChannel();
        Stated power = Figures.stated(channel.powerWatts(), channel.standardUncertaintyWatts());
        texts.put(LogColumn.STEP, reading.stepId());
        texts.put(LogColumn.MODE, Words.of(reading.mode()));
        texts.put(LogColumn.LOAD, Numbers.shown(reading.nominalLoadOhms()));
        texts.put(LogColumn.SUPPLY, Figures.fixed(channel.supplyVolts(), 2));
        texts.put(LogColumn.CHANNEL, channel.channel());
        texts.put(LogColumn.POWER, Words.bound(channel.outcome()) + power.value());
        texts.put(LogColumn.UNCERTAINTY, power.expanded());
        texts.put(LogColumn.DISTORTION, Figures.percent(channel.thdFRatio()));
        texts.put(LogColumn.END_POINT, Words.of(reading.endPoint()));
        texts.put(LogColumn.OUTCOME, Words.of(channel.outcome()));
        texts.put(LogColumn.OPERATOR, reading.provenance().operator());
    }

    private static void addRemark(Map<LogColumn, String> texts, LogEntry entry) {
        entry.figures().ifPresent(figures -> {
            texts.put(LogColumn.STEP, figures.stepId());
            texts.put(LogColumn.MODE, Words.of(figures.mode()));
            texts.put(LogColumn.SUPPLY, Figures.fixed(figures.supplyVolts(), 2));
            texts.put(LogColumn.OPERATOR, figures.provenance().operator());
        });
        entry.note().ifPresent(note -> {
            texts.put(LogColumn.STEP, note.text());
            texts.put(LogColumn.OPERATOR, note.who());
        });
        entry.voids().ifPresent(note -> {
            texts.put(LogColumn.STEP, note.targetId() + ": " + note.reason());
            texts.put(LogColumn.OPERATOR, note.who());
        });
    }

    private static RowState stateOf(LogEntry entry) {
        if (!entry.readable()) {
            return RowState.UNREADABLE;
        }
        if (entry.voided()) {
            return RowState.VOIDED;
        }
        return switch (entry.kind()) {
            case READING, FIGURES -> RowState.VALID;
            case NOTE -> RowState.NOTE;
            case VOID -> RowState.VOIDING;
        };
    }

    private static Instant timeOf(LogEntry entry) {
        return entry.reading().map(Reading::takenAt).orElse(entry.recordedAt());
    }

    Instant time() {
        return timeOf(entry);
    }

    String cell(LogColumn column) {
        return cells.get(column.ordinal());
    }

    Optional<Mode> mode() {
        return entry.reading().map(Reading::mode);
    }

    double loadOhms() {
        return entry.reading().map(Reading::nominalLoadOhms).orElse(WITHOUT);
    }

    double supplyVolts() {
        return weakest(ChannelReading::supplyVolts);
    }

    double powerWatts() {
        return weakest(ChannelReading::powerWatts);
    }

    double uncertaintyWatts() {
        return weakest(ChannelReading::standardUncertaintyWatts);
    }

    double thdFRatio() {
        return weakest(ChannelReading::thdFRatio);
    }

    private double weakest(ToDoubleFunction<ChannelReading> figure) {
        return entry.reading()
                .map(reading -> figure.applyAsDouble(reading.weakestChannel()))
                .orElse(WITHOUT);
    }

    /** Returns whether the log allows to take the entry back. */
    boolean voidable() {
        return state == RowState.VALID || state == RowState.NOTE;
    }

    /** Returns what to show when the pointer rests on a cell; empty for nothing. */
    String hover(LogColumn column) {
        return switch (column) {
            case STATE, NUMBER -> entry.voidedBy()
                    .map(note -> "Voided by " + note.voidId() + " on " + Figures.time(note.recordedAt()) + " UTC"
                            + (note.who().isEmpty() ? "" : " (" + note.who() + ")") + ": " + note.reason())
                    .orElse(state.explanation());
            case POWER, UNCERTAINTY, CHANNEL -> entry.reading()
                    .map(LogRow::powers)
                    .orElse("");
            case OUTCOME -> entry.reading()
                    .map(reading -> Words.explain(reading.weakestChannel().outcome()))
                    .orElse("");
            case LOAD -> entry.reading()
                    .map(reading -> reading.loadId() + ": "
                            + Numbers.digits(reading.weakestChannel().loadOhms(), 4) + " \u03a9 as measured")
                    .orElse("");
            case TIME -> Figures.time(time()) + " UTC; recorded in the log " + Figures.time(entry.recordedAt())
                    + " UTC";
            case STEP -> cell(column);
            default -> "";
        };
    }

    private static String powers(Reading reading) {
        List<String> lines = new ArrayList<>();
        for (ChannelReading channel : reading.channels()) {
            lines.add(channel.channel() + ": " + EntryDetails.powerHover(channel));
        }
        return String.join("\n", lines);
    }
}
