// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.ohmstead.model.MeasuredFigures;
import org.ohmstead.model.Reading;
import org.ohmstead.model.json.MeasuredFiguresJson;
import org.ohmstead.model.json.ReadingJson;
import org.ohmstead.testlog.chain.ChainedRow;
import org.ohmstead.testlog.chain.RowSource;
import org.ohmstead.testlog.internal.EntryBodies;
import org.ohmstead.testlog.internal.EntryTable;
import org.ohmstead.testlog.internal.JoinSentences;
import org.ohmstead.testlog.internal.JoinedTable;
import org.ohmstead.testlog.internal.Joining;
import org.ohmstead.testlog.internal.LogDatabase;
import org.ohmstead.testlog.internal.LogFailures;
import org.ohmstead.testlog.internal.LogRefusals;
import org.ohmstead.testlog.internal.LogRows;
import org.ohmstead.testlog.internal.LogWalk;
import org.ohmstead.testlog.internal.Transaction;
import org.ohmstead.testlog.internal.Verification;
import org.ohmstead.testlog.internal.VoidLedger;

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
    public static final String FIRST_PREVIOUS_HASH = ChainedRow.FIRST_PREVIOUS_HASH;

    private final Path file;
    private final Clock clock;
    private final Connection connection;
    private final EntryTable table;
    private final JoinedTable joined;
    private final Transaction transaction;
    private final VoidLedger voids;
    private final RowSource rows;
    private volatile Consumer<String> clockHearer = sentence -> {};

    private TestLog(Path file, Clock clock, Connection connection) {
        this.file = file;
        this.clock = clock;
        this.connection = connection;
        this.table = new EntryTable(connection);
        this.joined = new JoinedTable(connection);
        this.transaction = new Transaction(connection);
        this.voids = new VoidLedger(file, table, joined);
        this.rows = new LogRows(this, file, table, joined);
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

    /** Has somebody told, in whole sentences, whenever an entry added here says an earlier time than the one ahead of it. */
    public void whenClockWentBack(Consumer<String> told) {
        clockHearer = told;
    }

    /** Returns the file of the log. */
    public Path file() {
        return file;
    }

    /**
     * Adds a reading. When this returns, the reading is on the disk.
     *
     * @return the entry, with the reading that was given; when it is read again it is equal, except that a negative zero became zero
     * @throws TestLogException when it could not be added; then the log is as before
     */
    public LogEntry append(Reading reading) throws TestLogException {
        String body = ReadingJson.toCanonicalText(reading);
        return insert(EntryKind.READING, body, (row, recordedAt) -> EntryBodies.added(row, recordedAt, reading));
    }

    /**
     * Adds what a run of a measurement found. When this returns, it is on the disk.
     *
     * @return the entry, with the figures that were given; when they are read again they are equal, except that a negative zero became
     *     zero
     * @throws TestLogException when it could not be added; then the log is as before
     */
    public LogEntry append(MeasuredFigures figures) throws TestLogException {
        String body = MeasuredFiguresJson.toCanonicalText(figures);
        return insert(EntryKind.FIGURES, body, (row, recordedAt) -> EntryBodies.added(row, recordedAt, figures));
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
        String recordedAt = now().toString();
        return change(
                LogFailures.ADD_MANY,
                () -> List.of(
                        entry(table.insert(EntryKind.READING, recordedAt, readingText)),
                        entry(table.insert(EntryKind.FIGURES, recordedAt, figuresText))));
    }

    /**
     * Adds a remark.
     *
     * @param text what to remark
     * @param who remarks it; may be empty
     * @throws TestLogException when the text is blank or holds half of a surrogate pair, or it could not be added; then the log is as
     *     before
     */
    public LogEntry note(String text, String who) throws TestLogException {
        if (text.isBlank()) {
            throw LogRefusals.of("note.blank");
        }
        return add(EntryKind.NOTE, EntryBodies.note(text, who), Optional.empty());
    }

    /**
     * Takes an entry back: it stays in the log, but does not count any more.
     *
     * @param entryId id of a reading, of figures or of a note; small letters will do
     * @param reason why
     * @param who decided it; may be empty
     * @throws TestLogException when the reason is blank or holds half of a surrogate pair, there is no such entry, it is a void or was
     *     voided already, or it could not be added; then the log is as before
     */
    public LogEntry voidEntry(String entryId, String reason, String who) throws TestLogException {
        if (reason.isBlank()) {
            throw LogRefusals.of("void.blank", entryId);
        }
        String target = normalId(entryId);
        return add(EntryKind.VOID, EntryBodies.voiding(target, reason, who), Optional.of(target));
    }

    /**
     * Says that the project was put away in an archive.
     *
     * @throws TestLogException when it could not be added; then the log is as before
     */
    public LogEntry archive(ArchiveNote note) throws TestLogException {
        return add(EntryKind.ARCHIVE, EntryBodies.archive(note), Optional.empty());
    }

    /**
     * Takes the entries of another log into this one, as they are and with their chain; a further entry holds that chain's head. What
     * this log has already, from an earlier joining or because one is a copy of the other, is not taken again. Chains that were joined
     * to the other log come along. The other log is only read.
     *
     * @param other the other log
     * @param name what the other bench is called, not blank
     * @param who joins it; may be empty
     * @throws TestLogException when the name is blank, the other log is not whole, or it could not be joined; then the log is as before
     */
    public JoinReport join(TestLog other, String name, String who) throws TestLogException {
        if (name.isBlank()) {
            throw LogRefusals.of("join.blank");
        }
        VerifyReport report = other.verify();
        if (!report.intact()) {
            throw LogRefusals.of(
                    "join.notWhole", other.file(), report.faults().get(0).sentence());
        }
        return joinWhole(other, name.strip(), who);
    }

    private synchronized JoinReport joinWhole(TestLog other, String name, String who) throws TestLogException {
        String recordedAt = now().toString();
        return change(LogFailures.JOIN, () -> {
            Joining joining = new Joining(table, joined, rows, other.rows(), name);
            List<LogEntry> joins = new ArrayList<>();
            for (JoinNote note : joining.run(who)) {
                joins.add(entry(table.insert(EntryKind.JOIN, recordedAt, EntryBodies.join(note))));
            }
            List<String> voided = new ArrayList<>(joining.voidedInCommon());
            voided.removeAll(voids.upToDate().keySet());
            return JoinSentences.report(joins, other.file(), name, voided);
        });
    }

    /** Returns the log's own chain, and behind it those that were joined, in the order they came. */
    public List<ChainInfo> chains() throws TestLogException {
        return rows.chains();
    }

    /** Returns the rows of all chains as they are stored. */
    public RowSource rows() {
        return rows;
    }

    private static String normalId(String entryId) {
        return entryId.strip().toUpperCase(Locale.ROOT);
    }

    private synchronized LogEntry add(EntryKind kind, String body, Optional<String> target) throws TestLogException {
        String recordedAt = now().toString();
        return change(LogFailures.ADD, () -> {
            if (target.isPresent()) {
                voids.requireVoidable(target.get());
            }
            return entry(table.insert(kind, recordedAt, body));
        });
    }

    private synchronized LogEntry insert(EntryKind kind, String body, BiFunction<ChainedRow, Instant, LogEntry> added)
            throws TestLogException {
        Instant moment = now();
        String recordedAt = moment.toString();
        Optional<ChainedRow> row = guard(LogFailures.ADD, () -> table.insertAtOnce(kind, recordedAt, body));
        return added.apply(
                row.isPresent() ? row.get() : change(LogFailures.ADD, () -> table.insert(kind, recordedAt, body)),
                moment);
    }

    private <T> T change(Supplier<String> whatHappened, Transaction.Work<T> work) throws TestLogException {
        return guard(whatHappened, () -> transaction.run(work));
    }

    private <T> T guard(Supplier<String> whatHappened, LogFailures.Action<T> action) throws TestLogException {
        boolean done = false;
        try {
            T result = LogFailures.guard(file, whatHappened, action);
            done = true;
            table.clockSaid().ifPresent(clockHearer);
            return result;
        } finally {
            if (!done) {
                table.forgetTail();
            }
        }
    }

    private LogEntry entry(ChainedRow row) throws TestLogException {
        return EntryBodies.entry(where(), row, "", Map.of());
    }

    private String where() {
        return LogFailures.named(file);
    }

    private Instant now() {
        return clock.instant().truncatedTo(ChronoUnit.MILLIS);
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
        Map<String, VoidNote> known;
        String own;
        long last;
        synchronized (this) {
            known = read(voids::upToDate);
            own = read(table::firstHash);
            last = read(table::lastSequence);
        }
        LogWalk walk = new LogWalk(where(), rows, known, query.includeJoined());
        walk.forEach(own, last, entry -> {
            if (query.matches(entry)) {
                consumer.accept(entry);
            }
        });
    }

    /** Returns the entry with an id, such as R0001 or B/R0001, or empty; small letters will do. */
    public synchronized Optional<LogEntry> entry(String id) throws TestLogException {
        String wanted = normalId(id);
        int slash = wanted.indexOf('/');
        String label = slash < 0 ? "" : wanted.substring(0, slash);
        Optional<ChainedRow> row =
                read(() -> slash < 0 ? table.byId(wanted) : joinedRow(label, wanted.substring(slash + 1)));
        return row.isPresent()
                ? Optional.of(EntryBodies.entry(where(), row.get(), label, read(voids::upToDate)))
                : Optional.empty();
    }

    private Optional<ChainedRow> joinedRow(String label, String id) throws SQLException {
        Optional<JoinedTable.Chain> chain = joined.chain(label);
        return chain.isPresent() ? joined.byId(chain.get().number(), id) : Optional.empty();
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
                throw LogRefusals.of("reading.unread", entry.id(), file);
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
     * Checks the whole log: each entry's hash, the chain, the sequence, what voids refer to, the chains that were joined against the
     * entries that say so, the triggers and the file itself. A content that gives its hash is as the log wrote it and is not looked
     * through again. Entries cut off at the end leave no trace in the log; they are found by the index beside it when that has seen
     * them, and by a head that was noted elsewhere.
     *
     * @param expectedHead hash of an entry that must be there, such as the head printed on a results sheet
     * @throws TestLogException when the file cannot be read at all, or the expected head is not a hash
     */
    public synchronized VerifyReport verify(Optional<String> expectedHead) throws TestLogException {
        Optional<String> head = expectedHead.map(hash -> hash.strip().toLowerCase(Locale.ROOT));
        if (head.isPresent() && !head.get().matches("[0-9a-f]{64}")) {
            throw LogRefusals.of("head.noHash", expectedHead.get());
        }
        return new Verification(file, table, joined, head).run();
    }

    private <T> T read(LogFailures.Action<T> action) throws TestLogException {
        return LogFailures.guard(file, LogFailures.READ, action);
    }

    /** Closes the log. */
    @Override
    public synchronized void close() throws TestLogException {
        LogFailures.guard(file, LogFailures.CLOSE, () -> {
            transaction.close();
            table.close();
            connection.close();
            return null;
        });
    }
}
