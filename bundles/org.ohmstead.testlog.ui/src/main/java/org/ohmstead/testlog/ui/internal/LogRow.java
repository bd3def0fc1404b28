// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.Reading;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.search.IndexedEntry;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.look.Stated;

/**
 * One entry of the log as a row of the table.
 *
 * @param entry what the index knows of it
 * @param full the entry itself; empty when it could not be read
 * @param state what became of it
 * @param cells the texts, one for each of {@link LogColumn}
 */
record LogRow(IndexedEntry entry, Optional<LogEntry> full, RowState state, List<String> cells) {
    private static final Messages TEXTS = Messages.of(LogRow.class);

    static LogRow of(IndexedEntry entry, Optional<LogEntry> full) {
        RowState state = RowState.of(entry);
        return new LogRow(entry, full, state, cells(entry, full, state));
    }

    /** Returns the texts as numbers are shown now, one for each of {@link LogColumn}. */
    List<String> cellsAnew() {
        return cells(entry, full, state);
    }

    private static List<String> cells(IndexedEntry entry, Optional<LogEntry> full, RowState state) {
        Map<LogColumn, String> texts = new EnumMap<>(LogColumn.class);
        texts.put(LogColumn.NUMBER, entry.id());
        texts.put(LogColumn.STATE, state.word());
        texts.put(LogColumn.TIME, Figures.minute(time(entry)));
        texts.put(LogColumn.INSTRUMENTS, entry.overdue() ? TEXTS.text("row.overdue") : "");
        texts.put(LogColumn.AMPLIFIER, entry.amplifier());
        texts.put(LogColumn.SERIAL, entry.serialNumber());
        texts.put(LogColumn.BENCH, entry.bench());
        texts.put(LogColumn.OPERATOR, entry.operator());
        texts.put(LogColumn.STEP, entry.stepId().isEmpty() ? entry.text() : entry.stepId());
        entry.mode().ifPresent(mode -> texts.put(LogColumn.MODE, Words.of(mode)));
        entry.nominalLoadOhms().ifPresent(ohms -> texts.put(LogColumn.LOAD, Numbers.shown(ohms)));
        entry.supplyVolts().ifPresent(volts -> texts.put(LogColumn.SUPPLY, Figures.fixed(volts, 2)));
        entry.thdFRatio().ifPresent(ratio -> texts.put(LogColumn.DISTORTION, Figures.percent(ratio)));
        entry.outcome().ifPresent(outcome -> texts.put(LogColumn.OUTCOME, Words.of(outcome)));
        entry.powerWatts().ifPresent(watts -> {
            Stated power =
                    Figures.stated(watts, entry.standardUncertaintyWatts().orElse(0));
            texts.put(LogColumn.POWER, entry.outcome().map(Words::bound).orElse("") + power.value());
            texts.put(LogColumn.UNCERTAINTY, power.expanded());
        });
        full.ifPresent(each -> addFull(texts, each));
        return Arrays.stream(LogColumn.values())
                .map(column -> texts.getOrDefault(column, ""))
                .toList();
    }

    /** What the index does not know. */
    private static void addFull(Map<LogColumn, String> texts, LogEntry entry) {
        entry.reading().ifPresent(reading -> {
            texts.put(LogColumn.CHANNEL, reading.weakestChannel().channel());
            texts.put(LogColumn.END_POINT, Words.of(reading.endPoint()));
        });
        entry.note().ifPresent(note -> texts.put(LogColumn.STEP, note.text()));
        entry.voids().ifPresent(note -> texts.put(LogColumn.STEP, note.targetId() + ": " + note.reason()));
        entry.join()
                .ifPresent(note -> texts.put(
                        LogColumn.STEP,
                        TEXTS.text(
                                "row.joining",
                                note.label(),
                                note.name(),
                                Long.toString(note.afterSequence() + 1),
                                Long.toString(note.lastSequence()))));
        entry.archive().ifPresent(note -> texts.put(LogColumn.STEP, note.fileName()));
    }

    private static Instant time(IndexedEntry entry) {
        return entry.takenAt().orElse(entry.recordedAt());
    }

    String id() {
        return entry.id();
    }

    String cell(LogColumn column) {
        return cells.get(column.ordinal());
    }

    /** Returns whether the log allows to take the entry back: joined entries are taken back on their own bench. */
    boolean voidable() {
        return entry.chain().isEmpty() && (state == RowState.VALID || state == RowState.NOTE);
    }

    /** Returns whether it is a reading of power. */
    boolean reading() {
        return entry.powerWatts().isPresent();
    }

    /**
     * Returns what to show when the pointer rests on a cell; empty for nothing.
     *
     * @param known the entry with what became of it, when the desk has it
     */
    String hover(LogColumn column, Optional<LogEntry> known) {
        return switch (column) {
            case STATE ->
                known.flatMap(LogEntry::voidedBy).map(EntryDetails::voidedBy).orElse(state.explanation());
            case NUMBER ->
                entry.chain().isEmpty()
                        ? state.explanation()
                        : TEXTS.text("row.joined", Long.toString(entry.sequence()), entry.chain(), state.explanation());
            case POWER, UNCERTAINTY, CHANNEL ->
                reading(known).map(LogRow::powers).orElse("");
            case OUTCOME -> entry.outcome().map(Words::explain).orElse("");
            case LOAD ->
                reading(known)
                        .map(reading -> TEXTS.text(
                                "row.load",
                                reading.loadId(),
                                Numbers.digits(reading.weakestChannel().loadOhms(), 4)))
                        .orElse(entry.loadId());
            case TIME -> TEXTS.text("row.time", Figures.time(time(entry)), Figures.time(entry.recordedAt()));
            case INSTRUMENTS -> entry.overdue() ? TEXTS.text("row.overdue.why") : "";
            case STEP, AMPLIFIER, SERIAL, BENCH -> cell(column);
            default -> "";
        };
    }

    private Optional<Reading> reading(Optional<LogEntry> known) {
        return known.or(() -> full).flatMap(LogEntry::reading);
    }

    private static String powers(Reading reading) {
        List<String> lines = new ArrayList<>();
        for (ChannelReading channel : reading.channels()) {
            lines.add(channel.channel() + ": " + EntryDetails.powerHover(channel));
        }
        return String.join("\n", lines);
    }
}
