// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Consumer;
import org.ohmstead.model.MeasuredFigures;
import org.ohmstead.model.Reading;
import org.ohmstead.model.json.MeasuredFiguresJson;
import org.ohmstead.model.json.ReadingJson;
import org.ohmstead.testlog.internal.EntryBodies;
import org.ohmstead.testlog.internal.EntryTable;
import org.ohmstead.testlog.internal.LogDatabase;
import org.ohmstead.testlog.internal.LogFailures;
import org.ohmstead.testlog.internal.StoredRow;
import org.ohmstead.testlog.internal.Transaction;
import org.ohmstead.testlog.internal.Verification;

/**
 * The log of a project: entries are added and never changed or deleted. Several threads and several processes may use the same file at
 * once; additions queue up, for at most {@link #BUSY_SECONDS} seconds. The file must lie on a local disk, not on a network share.
 *
 * <p>SQLite runs in write-ahead mode with {@code synchronous=FULL}: an addition returns only after the disk has confirmed it.
 */
public final class TestLog implements AutoCloseable {
    /** Name of the log inside the project's folder. */
    public static final String FILE_NAME = "log.db";

    /** How long a call waits for another program that is adding an entry, in seconds. */
    public static final int BUSY_SECONDS = 20;

    /** What stands for the hash before the first entry: 64 zeros. */
    public static final String FIRST_PREVIOUS_HASH = StoredRow.FIRST_PREVIOUS_HASH;

    private static final int PAGE = 256;

    private final Path file;
    private final Clock clock;
    private final Connection connection;
    private final EntryTable table;

    private TestLog(Path file, Clock clock, Connection connection) {
        this.file = file;
        this.clock = clock;
        this.connection = connection;
        this.table = new EntryTable(connection);
    }

    /**
     * Opens a log for reading and adding; makes it when there is no file.
     *
     * @throws TestLogException when the file is not a log, is of a newer version, is damaged or cannot be written to; then nothing was
     *     written
     */
    public static TestLog open(Path logFile) throws TestLogException {
        return open(logFile, Clock.systemUTC());
    }

    static TestLog open(Path logFile, Clock clock) throws TestLogException {
        return new TestLog(logFile, clock, LogDatabase.open(logFile, BUSY_SECONDS));
    }

    /**
     * Opens an existing log for reading only. Adding to it fails.
     *
     * @throws TestLogException when there is no such file, or it is not a log, is of a newer version or is damaged
     */
    public static TestLog openReadOnly(Path logFile) throws TestLogException {
        return new TestLog(logFile, Clock.systemUTC(), LogDatabase.openReadOnly(logFile, BUSY_SECONDS));
    }

    /** Returns the file of the log. */
    public Path file() {
        return file;
    }

    /**
     * Adds a reading. When this returns, the reading is on the disk.
     *
     * @return the entry, with the reading as it was stored: equal, except that a negative zero became zero
     * @throws TestLogException when it could not be added; then the log is as before
     */
    public LogEntry append(Reading reading) throws TestLogException {
        return add(EntryKind.READING, ReadingJson.toCanonicalText(reading), Optional.empty());
    }

    /**
     * Adds what a run of a measurement found. When this returns, it is on the disk.
     *
     * @return the entry, with the figures as they were stored
     * @throws TestLogException when it could not be added; then the log is as before
     */
    public LogEntry append(MeasuredFigures figures) throws TestLogException {
        return add(EntryKind.FIGURES, MeasuredFiguresJson.toCanonicalText(figures), Optional.empty());
    }

    /**
     * Adds a reading, and directly behind it what else the same run found: both or none. When this returns, both are on the disk.
     *
     * @return the entry of the reading and that of the figures
     * @throws TestLogException when they could not be added; then the log is as before
     */
    public synchronized List<LogEntry> append(Reading reading, MeasuredFigures figures) throws TestLogException {
        String readingText = ReadingJson.toCanonicalText(reading);
        String figuresText = MeasuredFiguresJson.toCanonicalText(figures);
        String recordedAt = now();
        return LogFailures.guard(
                file,
                "The entries were not added",
                () -> Transaction.run(
                        connection,
                        () -> List.of(
                                EntryBodies.entry(
                                        file, table.insert(EntryKind.READING, recordedAt, readingText), Map.of()),
                                EntryBodies.entry(
                                        file, table.insert(EntryKind.FIGURES, recordedAt, figuresText), Map.of()))));
    }

    /**
     * Adds a remark.
     *
     * @param text what to remark
     * @param who remarks it; may be empty
     * @throws TestLogException when the text is blank, or it could not be added; then the log is as before
     */
    public LogEntry note(String text, String who) throws TestLogException {
        if (text.isBlank()) {
            throw new TestLogException("A note needs a text. Write what is to be remembered.");
        }
        return add(EntryKind.NOTE, EntryBodies.note(text, who), Optional.empty());
    }

    /**
     * Takes an entry back: it stays in the log, but does not count any more.
     *
     * @param entryId id of a reading, of figures or of a note; small letters will do
     * @param reason why
     * @param who decided it; may be empty
     * @throws TestLogException when the reason is blank, there is no such entry, it is a void or was voided already, or it could not be
     *     added; then the log is as before
     */
    public LogEntry voidEntry(String entryId, String reason, String who) throws TestLogException {
        if (reason.isBlank()) {
            throw new TestLogException("To void an entry a reason is needed. Say what is wrong with " + entryId + ".");
        }
        String target = normalId(entryId);
        return add(EntryKind.VOID, EntryBodies.voiding(target, reason, who), Optional.of(target));
    }

    private static String normalId(String entryId) {
        return entryId.strip().toUpperCase(Locale.ROOT);
    }

    private synchronized LogEntry add(EntryKind kind, String body, Optional<String> target) throws TestLogException {
        String recordedAt = now();
        return LogFailures.guard(
                file,
                "The entry was not added",
                () -> Transaction.run(connection, () -> {
                    if (target.isPresent()) {
                        requireVoidable(target.get());
                    }
                    StoredRow row = table.insert(kind, recordedAt, body);
                    return EntryBodies.entry(file, row, Map.of());
                }));
    }

    private String now() {
        return clock.instant().truncatedTo(ChronoUnit.MILLIS).toString();
    }

    private void requireVoidable(String target) throws SQLException, TestLogException {
        StoredRow row = table.byId(target)
                .orElseThrow(() -> new TestLogException(
                        "There is no entry " + target + " in the log. List the log and check the id."));
        if (EntryKind.VOID.word().equals(row.kind())) {
            throw new TestLogException("The entry " + target
                    + " is a void itself and cannot be taken back. Take the reading again, or add a note.");
        }
        VoidNote already = voids().get(target);
        if (already != null) {
            throw new TestLogException("The entry " + target + " was already voided by " + already.voidId()
                    + ", for this reason: " + already.reason() + ". Nothing needs to be done.");
        }
    }

    private Map<String, VoidNote> voids() throws SQLException, TestLogException {
        Map<String, VoidNote> byTarget = new TreeMap<>();
        for (StoredRow row : table.ofKind(EntryKind.VOID)) {
            VoidNote note = EntryBodies.entry(file, row, Map.of())
                    .voids()
                    .orElseThrow(() -> new TestLogException("The entry " + row.entryId() + " of the log " + file
                            + " cannot be read, so it is not known which entry it takes back. Verify the log, and take it"
                            + " from a backup."));
            byTarget.putIfAbsent(note.targetId(), note);
        }
        return byTarget;
    }

    /** Returns the entries that a query wants, in the order of the log. */
    public List<LogEntry> entries(LogQuery query) throws TestLogException {
        List<LogEntry> entries = new ArrayList<>();
        forEach(query, entries::add);
        return List.copyOf(entries);
    }

    /**
     * Hands over one after the other the entries that a query wants, in the order of the log, without holding all of them in memory.
     * Entries that are added meanwhile do not come. The consumer may itself use the log.
     */
    public void forEach(LogQuery query, Consumer<LogEntry> consumer) throws TestLogException {
        Map<String, VoidNote> voids;
        long last;
        synchronized (this) {
            voids = read(this::voids);
            last = read(table::lastSequence);
        }
        long after = 0;
        while (after < last) {
            List<StoredRow> page = page(after, last);
            if (page.isEmpty()) {
                return;
            }
            for (StoredRow row : page) {
                LogEntry entry = EntryBodies.entry(file, row, voids);
                if (query.matches(entry)) {
                    consumer.accept(entry);
                }
            }
            after = page.get(page.size() - 1).sequence();
        }
    }

    private synchronized List<StoredRow> page(long after, long last) throws TestLogException {
        return read(() -> table.between(after, last, PAGE));
    }

    /** Returns the entry with an id, or empty; small letters will do. */
    public synchronized Optional<LogEntry> entry(String id) throws TestLogException {
        Optional<StoredRow> row = read(() -> table.byId(normalId(id)));
        return row.isPresent() ? Optional.of(EntryBodies.entry(file, row.get(), read(this::voids))) : Optional.empty();
    }

    /**
     * Returns the readings that count, in the order of the log.
     *
     * @throws TestLogException also when one of them cannot be read, because results without it would be wrong
     */
    public List<LogEntry> readings() throws TestLogException {
        List<LogEntry> readings = entries(LogQuery.validReadings());
        for (LogEntry entry : readings) {
            if (!entry.readable()) {
                throw new TestLogException("The reading " + entry.id() + " of the log " + file
                        + " cannot be read. Verify the log; take it from a backup, or void the reading with a reason.");
            }
        }
        return readings;
    }

    /** Returns the hash of the last entry, or {@link #FIRST_PREVIOUS_HASH} when there is none. It stands for the whole log. */
    public synchronized String headHash() throws TestLogException {
        return read(table::headHash);
    }

    /** Checks the whole log; see {@link #verify(Optional)}. */
    public VerifyReport verify() throws TestLogException {
        return verify(Optional.empty());
    }

    /**
     * Checks the whole log: each entry's hash, the chain, the sequence, the content, what voids refer to, the triggers and the file
     * itself. Entries cut off at the end leave no trace in the log; they are found by a head that was noted elsewhere.
     *
     * @param expectedHead hash of an entry that must be there, such as the head printed on a results sheet
     * @throws TestLogException when the file cannot be read at all, or the expected head is not a hash
     */
    public synchronized VerifyReport verify(Optional<String> expectedHead) throws TestLogException {
        Optional<String> head = expectedHead.map(hash -> hash.strip().toLowerCase(Locale.ROOT));
        if (head.isPresent() && !head.get().matches("[0-9a-f]{64}")) {
            throw new TestLogException("The expected head \"" + expectedHead.get()
                    + "\" is not a hash. Give the 64 hexadecimal digits from the results sheet.");
        }
        return new Verification(file, table, head).run();
    }

    private <T> T read(LogFailures.Action<T> action) throws TestLogException {
        return LogFailures.guard(file, "The log was not read", action);
    }

    /** Closes the log. */
    @Override
    public synchronized void close() throws TestLogException {
        LogFailures.guard(file, "The log was not closed properly", () -> {
            connection.close();
            return null;
        });
    }
}
