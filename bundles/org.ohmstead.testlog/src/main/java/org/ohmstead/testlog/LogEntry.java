// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog;

import java.time.Instant;
import java.util.Objects;
import java.util.Optional;
import org.ohmstead.model.MeasuredFigures;
import org.ohmstead.model.Reading;

/**
 * One entry of the log. Exactly one of {@code reading}, {@code note}, {@code voids}, {@code figures}, {@code join} and {@code archive} is
 * there, unless the stored text cannot be read.
 *
 * @param sequence place in its chain, counted from 1
 * @param kind what it is
 * @param id short name, unique in the log, such as {@code R0001}; {@code B/R0001} when it came with the joined chain B
 * @param recordedAt when it was added
 * @param bodyText its content as stored: canonical JSON
 * @param previousHash hash of the entry before, 64 hexadecimal digits; zeros for the first
 * @param hash its own hash, 64 hexadecimal digits, as stored
 * @param reading its content, of a reading
 * @param note its content, of a note
 * @param voids its content, of a void: which entry it takes back
 * @param voidedBy why this entry does not count, when it was voided
 * @param figures its content, of what a measurement found
 * @param join its content, of a join: whose entries came
 * @param archive its content, of an archiving
 * @param chain label of the joined chain that it came with; empty for the log's own entries
 */
public record LogEntry(
        long sequence,
        EntryKind kind,
        String id,
        Instant recordedAt,
        String bodyText,
        String previousHash,
        String hash,
        Optional<Reading> reading,
        Optional<LogNote> note,
        Optional<VoidNote> voids,
        Optional<VoidNote> voidedBy,
        Optional<MeasuredFigures> figures,
        Optional<JoinNote> join,
        Optional<ArchiveNote> archive,
        String chain) {
    public LogEntry {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(id, "id");
        Objects.requireNonNull(recordedAt, "recordedAt");
        Objects.requireNonNull(bodyText, "bodyText");
        Objects.requireNonNull(previousHash, "previousHash");
        Objects.requireNonNull(hash, "hash");
        Objects.requireNonNull(reading, "reading");
        Objects.requireNonNull(note, "note");
        Objects.requireNonNull(voids, "voids");
        Objects.requireNonNull(voidedBy, "voidedBy");
        Objects.requireNonNull(figures, "figures");
        Objects.requireNonNull(join, "join");
        Objects.requireNonNull(archive, "archive");
        Objects.requireNonNull(chain, "chain");
    }

    /** Makes an entry of the log's own that is neither a join nor an archiving. */
    public LogEntry(
            long sequence,
            EntryKind kind,
            String id,
            Instant recordedAt,
            String bodyText,
            String previousHash,
            String hash,
            Optional<Reading> reading,
            Optional<LogNote> note,
            Optional<VoidNote> voids,
            Optional<VoidNote> voidedBy,
            Optional<MeasuredFigures> figures) {
        this(
                sequence,
                kind,
                id,
                recordedAt,
                bodyText,
                previousHash,
                hash,
                reading,
                note,
                voids,
                voidedBy,
                figures,
                Optional.empty(),
                Optional.empty(),
                "");
    }

    /** Makes an entry that does not hold figures. */
    public LogEntry(
            long sequence,
            EntryKind kind,
            String id,
            Instant recordedAt,
            String bodyText,
            String previousHash,
            String hash,
            Optional<Reading> reading,
            Optional<LogNote> note,
            Optional<VoidNote> voids,
            Optional<VoidNote> voidedBy) {
        this(
                sequence,
                kind,
                id,
                recordedAt,
                bodyText,
                previousHash,
                hash,
                reading,
                note,
                voids,
                voidedBy,
                Optional.empty());
    }

    /** Returns whether the entry was voided, so that it does not count. */
    public boolean voided() {
        return voidedBy.isPresent();
    }

    /** Returns whether the entry came with another log's chain. */
    public boolean joined() {
        return !chain.isEmpty();
    }

    /** Returns whether the stored text could be read; {@link TestLog#verify} says what is wrong when it could not. */
    public boolean readable() {
        return reading.isPresent()
                || note.isPresent()
                || voids.isPresent()
                || figures.isPresent()
                || join.isPresent()
                || archive.isPresent();
    }
}
