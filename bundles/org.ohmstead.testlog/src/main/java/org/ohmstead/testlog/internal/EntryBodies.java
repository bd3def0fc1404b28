// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.internal;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.ohmstead.model.MeasuredFigures;
import org.ohmstead.model.Reading;
import org.ohmstead.model.json.CanonicalJson;
import org.ohmstead.model.json.MeasuredFiguresJson;
import org.ohmstead.model.json.ProjectFileException;
import org.ohmstead.model.json.ReadingJson;
import org.ohmstead.testlog.ArchiveNote;
import org.ohmstead.testlog.EntryKind;
import org.ohmstead.testlog.JoinNote;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.LogNote;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.VoidNote;
import org.ohmstead.testlog.chain.ChainedRow;
import org.ohmstead.units.text.Messages;

/** What the bodies of entries say. */
public final class EntryBodies {
    private static final Messages TEXTS = Messages.of(EntryBodies.class);
    private static final String TARGET = "entryId";
    private static final String REASON = "reason";
    private static final String TEXT = "text";
    private static final String WHO = "who";
    private static final String CHAIN = "chain";
    private static final String LABEL = "label";
    private static final String NAME = "name";
    private static final String AFTER = "afterSequence";
    private static final String LAST = "lastSequence";
    private static final String HEAD = "headHash";
    private static final String FILE = "fileName";
    private static final String FILE_HASH = "fileSha256";
    private static final String TAKEN_OUT = "capturesTakenOut";

    private EntryBodies() {}

    /** Half of a surrogate pair, which some programs leave when they cut a text, has no form in a file. */
    private static String written(Map<String, String> texts) throws TestLogException {
        try {
            return CanonicalJson.writeTexts(texts);
        } catch (IllegalArgumentException halfOfAPair) {
            throw LogRefusals.because(halfOfAPair, "half");
        }
    }

    /** Returns the body of a note. */
    public static String note(String text, String who) throws TestLogException {
        return written(Map.of(TEXT, text.strip(), WHO, who.strip()));
    }

    /** Returns the body of a void. */
    public static String voiding(String target, String reason, String who) throws TestLogException {
        return written(Map.of(TARGET, target, REASON, reason.strip(), WHO, who.strip()));
    }

    /** Returns the body of a join. */
    public static String join(JoinNote note) throws TestLogException {
        return written(Map.of(
                CHAIN,
                note.chain(),
                LABEL,
                note.label(),
                NAME,
                note.name().strip(),
                AFTER,
                Long.toString(note.afterSequence()),
                LAST,
                Long.toString(note.lastSequence()),
                HEAD,
                note.headHash(),
                WHO,
                note.who().strip()));
    }

    /** Returns the body of an archiving. */
    public static String archive(ArchiveNote note) throws TestLogException {
        return written(Map.of(
                FILE,
                note.fileName().strip(),
                FILE_HASH,
                note.fileSha256(),
                HEAD,
                note.headHash(),
                TAKEN_OUT,
                String.join(" ", note.capturesTakenOut()),
                WHO,
                note.who().strip()));
    }

    /** Returns the id that an entry of a chain has within the log. */
    public static String idWithin(String label, String entryId) {
        return label.isEmpty() ? entryId : label + "/" + entryId;
    }

    /**
     * Returns the entry that a row holds.
     *
     * @param where the row is, such as "the log a.db"
     * @param row the row
     * @param label of its chain; empty for a log's own
     * @param voids the voids known by the id, within the log, of what they take back
     */
    public static LogEntry entry(String where, ChainedRow row, String label, Map<String, VoidNote> voids)
            throws TestLogException {
        EntryKind kind = EntryKind.ofWord(row.kind())
                .orElseThrow(() -> unreadable(where, row, LogRefusals.words("kind", row.kind()), null));
        Instant recordedAt = recordedAt(where, row);
        return entry(row, kind, recordedAt, content(row, kind, label, recordedAt), label, voids);
    }

    /** Returns the entry of a reading that was just added as a row at a moment. */
    public static LogEntry added(ChainedRow row, Instant recordedAt, Reading reading) {
        Content content = Content.NONE.withReading(reading);
        return entry(row, EntryKind.READING, recordedAt, content, "", Map.of());
    }

    /** Returns the entry of figures that were just added as a row at a moment. */
    public static LogEntry added(ChainedRow row, Instant recordedAt, MeasuredFigures figures) {
        Content content = Content.NONE.withFigures(figures);
        return entry(row, EntryKind.FIGURES, recordedAt, content, "", Map.of());
    }

    private static LogEntry entry(
            ChainedRow row,
            EntryKind kind,
            Instant recordedAt,
            Content content,
            String label,
            Map<String, VoidNote> voids) {
        String id = idWithin(label, row.entryId());
        return new LogEntry(
                row.sequence(),
                kind,
                id,
                recordedAt,
                row.body(),
                row.previousHash(),
                row.hash(),
                content.reading,
                content.note,
                content.voids,
                Optional.ofNullable(voids.get(id)),
                content.figures,
                content.join,
                content.archive,
                label);
    }

    private static Instant recordedAt(String where, ChainedRow row) throws TestLogException {
        try {
            return Instant.parse(row.recordedAt());
        } catch (DateTimeParseException wrong) {
            throw unreadable(where, row, LogRefusals.words("time", row.recordedAt()), wrong);
        }
    }

    private static TestLogException unreadable(String where, ChainedRow row, String fault, Throwable cause) {
        return new TestLogException(TEXTS.text("entry.unread", row.entryId(), where, fault), cause);
    }

    private static Content content(ChainedRow row, EntryKind kind, String label, Instant recordedAt) {
        try {
            return parse(row, kind, label, recordedAt);
        } catch (ProjectFileException | IllegalArgumentException | DateTimeException unreadable) {
            return Content.NONE.withFault(unreadable.getMessage());
        }
    }

    /** Returns what is wrong with the body of a row, or empty when nothing is. */
    public static Optional<String> fault(ChainedRow row, EntryKind kind) {
        return content(row, kind, "", Instant.EPOCH).fault;
    }

    /**
     * What a body says about the chain.
     *
     * @param fault what is wrong with it; empty when nothing is
     * @param target id of the entry that it takes back, within the chain, when it is a void
     */
    record Said(Optional<String> fault, Optional<String> target) {}

    /** Returns what the body of a row says about the chain. */
    static Said said(ChainedRow row, EntryKind kind) {
        Content content = content(row, kind, "", Instant.EPOCH);
        return new Said(content.fault, content.voids.map(VoidNote::targetId));
    }

    /** Returns the id of the entry that a void takes back, within its chain. */
    static Optional<String> target(ChainedRow row) {
        return content(row, EntryKind.VOID, "", Instant.EPOCH).voids.map(VoidNote::targetId);
    }

    /** Returns what a join says, or empty when it cannot be read. */
    static Optional<JoinNote> joinNote(ChainedRow row) {
        return content(row, EntryKind.JOIN, "", Instant.EPOCH).join;
    }

    private static Content parse(ChainedRow row, EntryKind kind, String label, Instant recordedAt)
            throws ProjectFileException {
        return switch (kind) {
            case READING -> Content.NONE.withReading(ReadingJson.fromText(row.body()));
            case FIGURES -> Content.NONE.withFigures(MeasuredFiguresJson.fromText(row.body()));
            case NOTE -> {
                Map<String, String> fields = CanonicalJson.readTexts(row.body());
                yield Content.NONE.withNote(new LogNote(field(fields, TEXT), field(fields, WHO)));
            }
            case VOID -> {
                Map<String, String> fields = CanonicalJson.readTexts(row.body());
                yield Content.NONE.withVoids(new VoidNote(
                        idWithin(label, row.entryId()),
                        idWithin(label, field(fields, TARGET)),
                        field(fields, REASON),
                        field(fields, WHO),
                        recordedAt));
            }
            case JOIN -> Content.NONE.withJoin(join(CanonicalJson.readTexts(row.body())));
            case ARCHIVE -> Content.NONE.withArchive(archive(CanonicalJson.readTexts(row.body())));
        };
    }

    private static JoinNote join(Map<String, String> fields) {
        return new JoinNote(
                field(fields, CHAIN),
                field(fields, LABEL),
                field(fields, NAME),
                Long.parseLong(field(fields, AFTER)),
                Long.parseLong(field(fields, LAST)),
                field(fields, HEAD),
                field(fields, WHO));
    }

    private static ArchiveNote archive(Map<String, String> fields) {
        String takenOut = field(fields, TAKEN_OUT);
        return new ArchiveNote(
                field(fields, FILE),
                field(fields, FILE_HASH),
                field(fields, HEAD),
                takenOut.isEmpty() ? List.of() : List.of(takenOut.split(" ")),
                field(fields, WHO));
    }

    private static String field(Map<String, String> fields, String name) {
        String value = fields.get(name);
        if (value == null) {
            throw new IllegalArgumentException("the field \"" + name + "\" is missing");
        }
        return value;
    }

    private record Content(
            Optional<Reading> reading,
            Optional<LogNote> note,
            Optional<VoidNote> voids,
            Optional<MeasuredFigures> figures,
            Optional<JoinNote> join,
            Optional<ArchiveNote> archive,
            Optional<String> fault) {
        static final Content NONE = new Content(
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());

        Content withReading(Reading newReading) {
            return new Content(Optional.of(newReading), note, voids, figures, join, archive, fault);
        }

        Content withNote(LogNote newNote) {
            return new Content(reading, Optional.of(newNote), voids, figures, join, archive, fault);
        }

        Content withVoids(VoidNote newVoids) {
            return new Content(reading, note, Optional.of(newVoids), figures, join, archive, fault);
        }

        Content withFigures(MeasuredFigures newFigures) {
            return new Content(reading, note, voids, Optional.of(newFigures), join, archive, fault);
        }

        Content withJoin(JoinNote newJoin) {
            return new Content(reading, note, voids, figures, Optional.of(newJoin), archive, fault);
        }

        Content withArchive(ArchiveNote newArchive) {
            return new Content(reading, note, voids, figures, join, Optional.of(newArchive), fault);
        }

        Content withFault(String newFault) {
            return new Content(reading, note, voids, figures, join, archive, Optional.of(newFault));
        }
    }
}
