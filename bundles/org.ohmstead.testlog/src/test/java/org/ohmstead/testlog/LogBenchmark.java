// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import org.ohmstead.model.Reading;
import org.ohmstead.testlog.search.Find;
import org.ohmstead.testlog.search.FindException;
import org.ohmstead.testlog.search.FindOrder;
import org.ohmstead.testlog.search.Found;
import org.ohmstead.testlog.search.IndexColumn;
import org.ohmstead.testlog.search.IndexProgress;
import org.ohmstead.testlog.search.LogIndex;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;

/** Measures a large log: {@code make FOLDER ENTRIES} writes and indexes it, {@code measure FOLDER} measures it in a program of its own. */
public final class LogBenchmark {
    private static final int PAGE = 100;
    private static final int APPENDS = 300;
    private static final int ROUNDS = 80;
    private static final int WARM_UP = 50;
    private static final int HASHING_ROUNDS = 5;
    private static final int HASHED = 100_000;
    private static final int VERIFICATIONS = 4;
    private static final String[] QUERIES = {
        "",
        "kind:note",
        "state:valid",
        "state:voided",
        "chain:own",
        "amplifier:\"Kestrel D5\"",
        "amplifier:*r*",
        "serial:SN00017",
        "serial:*7",
        "bench:\"bench 2\"",
        "operator:\"N. N.\"",
        "mode:stereo",
        "load:4",
        "load:4ohm",
        "step:step-1*",
        "from:2021-01-01 to:2022-12-31",
        "overdue:yes",
        "power:20..30",
        "thd:..1%",
        "supply:12..13",
        "dampingFactor:50..60",
        "sagged",
        "e",
        "zebra",
        "R0005",
        "\"12.34\"",
        "sagged warm 44 bench",
        "amplifier:Larkspur* load:4 mode:stereo power:20..80 from:2020-01-01 sagged",
        "kind:reading state:valid overdue:yes thd:..0.5% supply:11..14 serial:SN01* lead",
    };

    private final Path file;

    private LogBenchmark(Path folder) {
        this.file = folder.resolve(TestLog.FILE_NAME);
    }

    /** Runs it. */
    public static void main(String[] arguments) throws Exception {
        LogBenchmark benchmark = new LogBenchmark(Path.of(arguments[1]));
        if (arguments[0].equals("make")) {
            benchmark.make(Integer.parseInt(arguments[2]));
        } else {
            benchmark.firstPage();
            benchmark.filters();
            benchmark.verify();
            benchmark.appends(Path.of(arguments[1]));
        }
    }

    private static void print(String format, Object... values) {
        System.out.println(String.format(Locale.ROOT, format, values));
    }

    private static double secondsSince(long start) {
        return (System.nanoTime() - start) / 1e9;
    }

    private void make(int entries) throws TestLogException, SQLException, IOException {
        long start = System.nanoTime();
        LogGenerator.write(file, entries);
        print("%d entries written in %.1f s, %.2f GB", entries, secondsSince(start), Files.size(file) / 1e9);
        try (TestLog log = TestLog.openReadOnly(file)) {
            start = System.nanoTime();
            try (LogIndex index = LogIndex.open(LogIndex.beside(file), log.rows())) {
                long added = index.refresh(IndexProgress.NONE);
                double seconds = secondsSince(start);
                print("indexed from nothing in %.1f s, %.0f entries/s", seconds, added / seconds);
            }
            print("index: %.0f MB", Files.size(LogIndex.beside(file)) / 1e6);
        }
    }

    /** The very first thing in the program, so that loading the classes counts; the database's library is loaded but once. */
    private void firstPage() throws TestLogException, SQLException {
        long loading = System.nanoTime();
        SQLiteDataSource memory = new SQLiteDataSource();
        memory.setUrl("jdbc:sqlite::memory:");
        memory.getConnection().close();
        print("loading the database's library, once in a program: %.0f ms", 1e3 * secondsSince(loading));
        for (String when : List.of("first in the program", "again")) {
            long start = System.nanoTime();
            try (TestLog log = TestLog.openReadOnly(file);
                    LogIndex index = LogIndex.open(LogIndex.beside(file), log.rows())) {
                long added = index.refresh(IndexProgress.NONE);
                Found found = index.find(Find.EVERYTHING, FindOrder.NEWEST_FIRST);
                int lines = found.page(0, PAGE).size();
                double millis = 1e3 * secondsSince(start);
                print(
                        "open and first page, %s: %.0f ms (%d entries, %d lines, %d new)",
                        when, millis, found.size(), lines, added);
                if (when.startsWith("first")) {
                    print("measured log-open ours=%.6g unit=ms", millis);
                }
            }
        }
    }

    /** Each search with an index that was just opened, so that no column is in memory yet. */
    private void filters() throws TestLogException, FindException {
        List<Double> times = new ArrayList<>();
        double worst = 0;
        String which = "";
        for (String query : QUERIES) {
            for (IndexColumn column : query.isEmpty() ? IndexColumn.values() : someColumns()) {
                FindOrder order = new FindOrder(column, column.ordinal() % 2 == 1);
                try (TestLog log = TestLog.openReadOnly(file);
                        LogIndex index = LogIndex.open(LogIndex.beside(file), log.rows())) {
                    long start = System.nanoTime();
                    Found found = index.find(Find.parse(query), order);
                    int size = found.size();
                    found.page(0, PAGE);
                    double millis = 1e3 * secondsSince(start);
                    times.add(millis);
                    if (millis > worst) {
                        worst = millis;
                        which = "'" + query + "' by " + column + ", " + size + " found";
                    }
                }
            }
        }
        Collections.sort(times);
        print(
                "filters: worst %.0f ms (%s), median %.0f ms, of %d",
                worst, which, times.get(times.size() / 2), times.size());
        print("measured log-find ours=%.6g unit=ms", worst);
        between();
    }

    private static IndexColumn[] someColumns() {
        return new IndexColumn[] {
            IndexColumn.PLACE,
            IndexColumn.POWER_WATTS,
            IndexColumn.TEXT,
            IndexColumn.SERIAL_NUMBER,
            IndexColumn.TAKEN_AT
        };
    }

    /** One index that stays open, as in a window: the same searches once more. */
    private void between() throws TestLogException, FindException {
        double worst = 0;
        try (TestLog log = TestLog.openReadOnly(file);
                LogIndex index = LogIndex.open(LogIndex.beside(file), log.rows())) {
            for (int round = 0; round < 2; round++) {
                worst = 0;
                for (String query : QUERIES) {
                    for (IndexColumn column : someColumns()) {
                        long start = System.nanoTime();
                        index.find(Find.parse(query), new FindOrder(column, true))
                                .page(0, PAGE);
                        worst = Math.max(worst, 1e3 * secondsSince(start));
                    }
                }
            }
        }
        print("filters with an index that stays open: worst %.0f ms", worst);
        print("measured log-find-again ours=%.6g unit=ms", worst);
    }

    /** The first one in a program, while Java still compiles, and again as in a window that stays open. */
    private void verify() throws TestLogException, IOException, NoSuchAlgorithmException {
        List<Double> rates = new ArrayList<>();
        long entries = 1;
        for (int round = 1; round <= VERIFICATIONS; round++) {
            try (TestLog log = TestLog.openReadOnly(file)) {
                long start = System.nanoTime();
                VerifyReport report = log.verify();
                double seconds = secondsSince(start);
                print(
                        "verify, %s: %.0f entries/s (%d entries in %.2f s, faults: %d)",
                        round == 1 ? "first in the program" : "again",
                        report.entriesChecked() / seconds,
                        report.entriesChecked(),
                        seconds,
                        report.faults().size());
                rates.add(report.entriesChecked() / seconds);
                entries = report.entriesChecked();
            }
        }
        double hashing = hashing(Files.size(file) / entries);
        print("hashing as many bytes by the Java platform, one core, nothing else: %.0f entries/s", hashing);
        print("measured log-verify-first ours=%.6g reference=%.6g unit=entries/s", rates.remove(0), hashing);
        Collections.sort(rates);
        print("measured log-verify ours=%.6g reference=%.6g unit=entries/s", rates.get(rates.size() / 2), hashing);
    }

    /** Returns how many entries of a length can be hashed in a second, to see how fast the machine is at the moment. */
    private static double hashing(long entryBytes) throws NoSuchAlgorithmException {
        MessageDigest digest = MessageDigest.getInstance("SHA-256");
        byte[] entry = new byte[Math.toIntExact(entryBytes)];
        double best = 0;
        for (int round = 0; round < HASHING_ROUNDS; round++) {
            long start = System.nanoTime();
            for (int number = 0; number < HASHED; number++) {
                digest.digest(entry);
            }
            best = Math.max(best, HASHED / secondsSince(start));
        }
        return best;
    }

    /** The same rows, each with a durable commit, by the log and by the driver alone, in turns. */
    private void appends(Path folder) throws TestLogException, SQLException, IOException {
        List<Double> ratios = new ArrayList<>();
        List<Double> rates = new ArrayList<>();
        Path ours = folder.resolve("append.db");
        Path bare = folder.resolve("bare.db");
        for (Path old : List.of(ours, bare)) {
            Files.deleteIfExists(old);
        }
        try (TestLog log = TestLog.open(ours);
                Connection connection = bareConnection(bare);
                PreparedStatement insert =
                        connection.prepareStatement("INSERT INTO entry VALUES (?, ?, ?, ?, ?, ?, ?)")) {
            for (int round = 0; round < ROUNDS; round++) {
                List<Reading> readings = new ArrayList<>();
                for (int number = 0; number < APPENDS; number++) {
                    readings.add(LogGenerator.reading(round * APPENDS + number));
                }
                long start = System.nanoTime();
                List<LogEntry> entries = new ArrayList<>();
                for (Reading reading : readings) {
                    entries.add(log.append(reading));
                }
                double byLog = secondsSince(start);
                start = System.nanoTime();
                for (LogEntry entry : entries) {
                    insert(insert, entry);
                }
                double byDriver = secondsSince(start);
                if (round >= WARM_UP) {
                    ratios.add(byDriver / byLog);
                    rates.add(APPENDS / byLog);
                }
            }
        }
        Collections.sort(ratios);
        Collections.sort(rates);
        print(
                "appends with durable commit: %.0f %% of the bare driver (median of %d rounds of %d; %.0f entries/s)",
                100 * ratios.get(ratios.size() / 2), ratios.size(), APPENDS, rates.get(rates.size() / 2));
        double seconds = 1 / rates.get(rates.size() / 2);
        print("measured log-append ours=%.6g reference=%.6g unit=s", seconds, seconds * ratios.get(ratios.size() / 2));
    }

    private static Connection bareConnection(Path file) throws SQLException {
        SQLiteConfig config = new SQLiteConfig();
        config.setJournalMode(SQLiteConfig.JournalMode.WAL);
        config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
        SQLiteDataSource source = new SQLiteDataSource(config);
        source.setUrl("jdbc:sqlite:" + file);
        Connection connection = source.getConnection();
        try (Statement statement = connection.createStatement()) {
            statement.executeUpdate("CREATE TABLE entry (seq INTEGER PRIMARY KEY, kind TEXT NOT NULL,"
                    + " entry_id TEXT NOT NULL UNIQUE, recorded_at TEXT NOT NULL, body TEXT NOT NULL,"
                    + " previous_hash TEXT NOT NULL, hash TEXT NOT NULL) STRICT");
            statement.executeUpdate("CREATE INDEX entry_by_kind ON entry (kind)");
        }
        return connection;
    }

    private static void insert(PreparedStatement insert, LogEntry entry) throws SQLException {
        insert.setLong(1, entry.sequence());
        insert.setString(2, entry.kind().word());
        insert.setString(3, entry.id());
        insert.setString(4, entry.recordedAt().toString());
        insert.setString(5, entry.bodyText());
        insert.setString(6, entry.previousHash());
        insert.setString(7, entry.hash());
        insert.executeUpdate();
    }
}
