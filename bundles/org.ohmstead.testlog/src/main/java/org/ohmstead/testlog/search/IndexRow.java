// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.search;

import java.nio.BufferUnderflowException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.InstrumentUsed;
import org.ohmstead.model.MeasuredFigures;
import org.ohmstead.model.Provenance;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Specimen;
import org.ohmstead.model.Stimulus;
import org.ohmstead.testlog.EntryKind;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.VoidNote;
import org.ohmstead.testlog.chain.ChainedRow;
import org.ohmstead.testlog.chain.EntryReader;

/** An entry on its way into the index, or out of it to a table. */
final class IndexRow {
    private static final long NANOS = 1_000_000_000L;
    private static final IndexField[] FIELDS = IndexField.stored();
    private static final int MOST_TEXT = 200;
    private static final String CUT = "\u2026";
    private static final Pattern BLANKS = Pattern.compile("\\s+");

    private final long[] values = new long[FIELDS.length];
    private final Map<IndexField, String> words = new EnumMap<>(IndexField.class);
    private List<Figure> figures = List.of();
    private Optional<String> voids = Optional.empty();

    /** A measured figure. */
    record Figure(String id, double value) {}

    private IndexRow() {
        Arrays.fill(values, IndexField.ABSENT);
    }

    /**
     * Returns all values as bytes: a column after the other, words as their length and themselves. The text is shortened to what a table
     * shows.
     */
    byte[] line() {
        byte[][] texts = new byte[values.length][];
        int bytes = 0;
        for (IndexField field : FIELDS) {
            if (field.ofWords()) {
                String word = field == IndexField.TEXT ? shortened(word(field)) : word(field);
                texts[field.ordinal()] = word.getBytes(StandardCharsets.UTF_8);
                bytes += Integer.BYTES + texts[field.ordinal()].length;
            } else {
                bytes += Long.BYTES;
            }
        }
        ByteBuffer out = ByteBuffer.allocate(bytes);
        for (IndexField field : FIELDS) {
            if (field.ofWords()) {
                out.putInt(texts[field.ordinal()].length).put(texts[field.ordinal()]);
            } else {
                out.putLong(value(field));
            }
        }
        return out.array();
    }

    private static String shortened(String text) {
        return text.length() <= MOST_TEXT
                ? text
                : text.substring(0, text.offsetByCodePoints(0, text.codePointCount(0, MOST_TEXT))) + CUT;
    }

    /** Returns what {@link #line} made bytes of. */
    static IndexRow ofLine(byte[] line) throws BlockCode.DamagedException {
        try {
            ByteBuffer in = ByteBuffer.wrap(line);
            IndexRow row = new IndexRow();
            for (IndexField field : FIELDS) {
                if (field.ofWords()) {
                    int length = in.getInt();
                    row.word(field, new String(line, in.position(), length, StandardCharsets.UTF_8));
                    in.position(in.position() + length);
                } else {
                    row.value(field, in.getLong());
                }
            }
            return row;
        } catch (BufferUnderflowException | IndexOutOfBoundsException | IllegalArgumentException tooShort) {
            throw new BlockCode.DamagedException("a line that is too short", tooShort);
        }
    }

    /** Takes from a row what the index keeps. A row that cannot be read is kept with what is known of it. */
    static IndexRow of(ChainedRow row, String label) {
        return skimmed(row, label).orElseGet(() -> read(row, label));
    }

    private static IndexRow begun(ChainedRow row, String label) {
        IndexRow made = new IndexRow();
        made.word(IndexField.CHAIN, label);
        made.value(IndexField.SEQUENCE, row.sequence());
        return made;
    }

    /** Most entries are readings or figures that are as the log wrote them, which their hash tells; they need not be read whole. */
    private static Optional<IndexRow> skimmed(ChainedRow row, String label) {
        Optional<EntryKind> kind = EntryKind.ofWord(row.kind());
        boolean reading = kind.equals(Optional.of(EntryKind.READING));
        boolean suits = reading || kind.equals(Optional.of(EntryKind.FIGURES));
        if (!suits || !row.computedHash().equals(row.hash())) {
            return Optional.empty();
        }
        IndexRow made = begun(row, label);
        if (!BodySkim.take(row.body(), reading, made)) {
            return Optional.empty();
        }
        made.value(IndexField.NUMBER, number(row.entryId()));
        made.value(IndexField.KIND, kind.get().ordinal());
        made.value(IndexField.STATE, EntryState.VALID.ordinal());
        try {
            made.value(IndexField.RECORDED, nanos(Instant.parse(row.recordedAt())));
            return Optional.of(made);
        } catch (DateTimeException unreadable) {
            return Optional.empty();
        }
    }

    private static IndexRow read(ChainedRow row, String label) {
        IndexRow made = begun(row, label);
        try {
            made.take(EntryReader.entry("the log", row, label, Map.of()), row);
        } catch (TestLogException unreadable) {
            made.value(IndexField.KIND, EntryKind.NOTE.ordinal());
            made.value(IndexField.RECORDED, 0);
            made.value(IndexField.STATE, EntryState.UNREADABLE.ordinal());
            made.word(IndexField.TEXT, oneLine(unreadable.getMessage()));
        }
        return made;
    }

    long value(IndexField field) {
        return values[field.ordinal()];
    }

    String word(IndexField field) {
        return words.getOrDefault(field, "");
    }

    List<Figure> figures() {
        return figures;
    }

    /** Returns the id, within the log, of the entry that this one voids. */
    Optional<String> voids() {
        return voids;
    }

    void figures(List<Figure> measured) {
        figures = List.copyOf(measured);
    }

    void value(IndexField field, long value) {
        values[field.ordinal()] = value;
    }

    private void figure(IndexField field, double value) {
        value(field, IndexField.ofDouble(value));
    }

    void word(IndexField field, String word) {
        words.put(field, word);
    }

    private void take(LogEntry entry, ChainedRow row) {
        value(IndexField.NUMBER, number(row.entryId()));
        value(IndexField.KIND, entry.kind().ordinal());
        value(IndexField.RECORDED, nanos(entry.recordedAt()));
        value(IndexField.STATE, state(entry).ordinal());
        entry.reading().ifPresent(this::take);
        entry.figures().ifPresent(this::take);
        entry.note().ifPresent(note -> said(note.who(), note.text()));
        entry.voids().ifPresent(note -> said(note.who(), "Voids " + note.targetId() + ": " + note.reason()));
        entry.join().ifPresent(note -> said(note.who(), "Joins " + note.label() + ": " + note.name()));
        entry.archive().ifPresent(note -> said(note.who(), "Archived in " + note.fileName()));
        voids = entry.voids().map(VoidNote::targetId);
    }

    private static EntryState state(LogEntry entry) {
        if (!entry.readable()) {
            return EntryState.UNREADABLE;
        }
        return switch (entry.kind()) {
            case READING, FIGURES -> EntryState.VALID;
            case NOTE -> EntryState.NOTE;
            case VOID, JOIN, ARCHIVE -> EntryState.ABOUT;
        };
    }

    private void said(String who, String text) {
        word(IndexField.OPERATOR, who);
        word(IndexField.TEXT, oneLine(text));
    }

    private void take(Reading reading) {
        value(IndexField.TAKEN, nanos(reading.takenAt()));
        value(IndexField.MODE, reading.mode().ordinal());
        word(IndexField.LOAD, reading.loadId());
        figure(IndexField.LOAD_OHMS, reading.nominalLoadOhms());
        word(IndexField.STEP, reading.stepId());
        word(
                IndexField.STIMULUS,
                stimulus(
                        reading.stimulus() instanceof Stimulus.ToneBurst,
                        reading.stimulus().frequencyHz()));
        ChannelReading weakest = reading.weakestChannel();
        figure(IndexField.SUPPLY, weakest.supplyVolts());
        figure(IndexField.POWER, weakest.powerWatts());
        figure(IndexField.UNCERTAINTY, weakest.standardUncertaintyWatts());
        figure(IndexField.THD, weakest.thdFRatio());
        value(IndexField.OUTCOME, weakest.outcome().ordinal());
        take(reading.provenance(), reading.notes());
    }

    private void take(MeasuredFigures measured) {
        value(IndexField.TAKEN, nanos(measured.takenAt()));
        value(IndexField.MODE, measured.mode().ordinal());
        word(IndexField.LOAD, measured.loadId());
        word(IndexField.STEP, measured.stepId());
        figure(IndexField.SUPPLY, measured.supplyVolts());
        figures = measured.figures().stream()
                .map(figure -> new Figure(figure.id(), figure.value()))
                .toList();
        take(measured.provenance(), measured.notes());
    }

    private void take(Provenance provenance, List<String> notes) {
        word(IndexField.MEASUREMENT, provenance.procedureId());
        word(IndexField.OPERATOR, provenance.operator());
        word(
                IndexField.AMPLIFIER,
                provenance.specimen().map(Specimen::amplifier).orElse(""));
        word(
                IndexField.SERIAL,
                provenance.specimen().map(Specimen::serialNumber).orElse(""));
        word(IndexField.BENCH, provenance.specimen().map(Specimen::bench).orElse(""));
        value(IndexField.OVERDUE, provenance.instruments().stream().anyMatch(InstrumentUsed::overdue) ? 1 : 0);
        word(IndexField.TEXT, oneLine(String.join(" ", notes)));
    }

    static String stimulus(boolean burst, double frequencyHz) {
        String frequency = Double.toString(frequencyHz);
        String hertz = frequency.endsWith(".0") ? frequency.substring(0, frequency.length() - 2) : frequency;
        return (burst ? "burst " : "sine ") + hertz + " Hz";
    }

    static String oneLine(String text) {
        return text.isEmpty() ? text : BLANKS.matcher(text).replaceAll(" ").strip();
    }

    private static long number(String entryId) {
        return entryId.matches("[A-Z][0-9]{1,15}") ? Long.parseLong(entryId.substring(1)) : IndexField.ABSENT;
    }

    /** Nanoseconds since 1970, as far as they go: the years 1678 to 2261. */
    static long nanos(Instant moment) {
        long most = Long.MAX_VALUE / NANOS - 1;
        long seconds = Math.max(-most, Math.min(most, moment.getEpochSecond()));
        return seconds * NANOS + (seconds == moment.getEpochSecond() ? moment.getNano() : 0);
    }

    static Instant moment(long nanos) {
        return Instant.ofEpochSecond(Math.floorDiv(nanos, NANOS), Math.floorMod(nanos, NANOS));
    }
}
