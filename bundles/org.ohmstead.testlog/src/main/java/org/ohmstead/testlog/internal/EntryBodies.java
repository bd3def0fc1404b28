// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.internal;

import java.nio.file.Path;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.Map;
import java.util.Optional;
import org.ohmstead.model.MeasuredFigures;
import org.ohmstead.model.Reading;
import org.ohmstead.model.json.CanonicalJson;
import org.ohmstead.model.json.MeasuredFiguresJson;
import org.ohmstead.model.json.ProjectFileException;
import org.ohmstead.model.json.ReadingJson;
import org.ohmstead.testlog.EntryKind;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.LogNote;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.VoidNote;

/** What the bodies of entries say. */
public final class EntryBodies {
    private static final String TARGET = "entryId";
    private static final String REASON = "reason";
    private static final String TEXT = "text";
    private static final String WHO = "who";

    private EntryBodies() {}

    /** Returns the body of a note. */
    public static String note(String text, String who) {
        return CanonicalJson.writeTexts(Map.of(TEXT, text.strip(), WHO, who.strip()));
    }

    /** Returns the body of a void. */
    public static String voiding(String target, String reason, String who) {
        return CanonicalJson.writeTexts(Map.of(TARGET, target, REASON, reason.strip(), WHO, who.strip()));
    }

    /** Returns the entry that a row holds, with the voids known by the id of what they take back. */
    public static LogEntry entry(Path file, StoredRow row, Map<String, VoidNote> voids) throws TestLogException {
        EntryKind kind = EntryKind.ofWord(row.kind())
                .orElseThrow(() -> unreadable(file, row, "its kind \"" + row.kind() + "\" is not known", null));
        Instant recordedAt = recordedAt(file, row);
        Content content = content(row, kind, recordedAt);
        return new LogEntry(
                row.sequence(),
                kind,
                row.entryId(),
                recordedAt,
                row.body(),
                row.previousHash(),
                row.hash(),
                content.reading,
                content.note,
                content.voids,
                Optional.ofNullable(voids.get(row.entryId())),
                content.figures);
    }

    private static Instant recordedAt(Path file, StoredRow row) throws TestLogException {
        try {
            return Instant.parse(row.recordedAt());
        } catch (DateTimeParseException wrong) {
            throw unreadable(file, row, "its time \"" + row.recordedAt() + "\" is not one", wrong);
        }
    }

    private static TestLogException unreadable(Path file, StoredRow row, String fault, Throwable cause) {
        return new TestLogException(
                "The entry " + row.entryId() + " of the log " + file + " cannot be read: " + fault
                        + ". Verify the log, and take it from a backup.",
                cause);
    }

    private static Content content(StoredRow row, EntryKind kind, Instant recordedAt) {
        try {
            return parse(row, kind, recordedAt);
        } catch (ProjectFileException | IllegalArgumentException unreadable) {
            return Content.NONE.withFault(unreadable.getMessage());
        }
    }

    /** Returns what is wrong with the body of a row, or empty when nothing is. */
    static Optional<String> fault(StoredRow row, EntryKind kind) {
        return content(row, kind, Instant.EPOCH).fault;
    }

    /** Returns the id of the entry that a void takes back. */
    static Optional<String> target(StoredRow row) {
        return content(row, EntryKind.VOID, Instant.EPOCH).voids.map(VoidNote::targetId);
    }

    private static Content parse(StoredRow row, EntryKind kind, Instant recordedAt) throws ProjectFileException {
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
                        row.entryId(), field(fields, TARGET), field(fields, REASON), field(fields, WHO), recordedAt));
            }
        };
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
            Optional<String> fault) {
        static final Content NONE =
                new Content(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());

        Content withReading(Reading newReading) {
            return new Content(Optional.of(newReading), note, voids, figures, fault);
        }

        Content withNote(LogNote newNote) {
            return new Content(reading, Optional.of(newNote), voids, figures, fault);
        }

        Content withVoids(VoidNote newVoids) {
            return new Content(reading, note, Optional.of(newVoids), figures, fault);
        }

        Content withFigures(MeasuredFigures newFigures) {
            return new Content(reading, note, voids, Optional.of(newFigures), fault);
        }

        Content withFault(String newFault) {
            return new Content(reading, note, voids, figures, Optional.of(newFault));
        }
    }
}
