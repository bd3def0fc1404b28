// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.testlog.VerifyFault.Kind;
import org.ohmstead.testlog.search.IndexProgress;
import org.ohmstead.testlog.search.LogIndex;
import org.sqlite.SQLiteDataSource;

/** Two thousand changes of a log behind its back, at random but the same each time: none may stay unseen. */
class TamperTest {
    private static final int BYTES = 800;
    private static final int DELETIONS = 250;
    private static final int SWAPS = 250;
    private static final int TRUNCATIONS = 250;
    private static final int RAW_BYTES = 450;

    private static final int OWN = 40;
    private static final int JOINED = 12;
    private static final String[] COLUMNS = {"kind", "entry_id", "recorded_at", "body", "previous_hash", "hash"};
    private static final String ALL = String.join(", ", COLUMNS);

    @TempDir
    Path folder;

    private Path base;
    private Path file;
    private long ownEntries;

    @BeforeEach
    void makeALog() throws Exception {
        base = folder.resolve("base.db");
        Path other = folder.resolve("other.db");
        try (TestLog log = TestLog.open(other)) {
            for (int number = 1; number < JOINED; number++) {
                log.append(LogGenerator.reading(1000 + number));
            }
            log.voidEntry("R0003", "a lead was loose", "");
        }
        try (TestLog log = TestLog.open(base);
                TestLog second = TestLog.openReadOnly(other)) {
            for (int number = 1; number <= OWN; number++) {
                log.append(LogGenerator.reading(number));
                if (number % 5 == 0) {
                    log.append(LogGenerator.figures(number));
                    log.note("Remark " + number, "N. N.");
                    log.voidEntry(String.format("R%04d", number), "a lead was loose", "N. N.");
                }
                if (number == OWN / 2) {
                    log.join(second, "Second bench", "N. N.");
                }
            }
            ownEntries = log.chains().get(0).entries();
            assertEquals(List.of(), log.verify().faults());
        }
        file = folder.resolve(TestLog.FILE_NAME);
        try (TestLog log = TestLog.openReadOnly(base);
                LogIndex index = LogIndex.open(LogIndex.beside(file), log.rows())) {
            assertEquals(ownEntries + JOINED, index.refresh(IndexProgress.NONE));
        }
    }

    private void freshCopy() throws Exception {
        for (String ending : List.of("", "-wal", "-shm")) {
            Files.deleteIfExists(folder.resolve(TestLog.FILE_NAME + ending));
        }
        Files.copy(base, file);
    }

    /** Something done to the tables. */
    private interface Change {
        void make(Connection connection) throws SQLException;
    }

    /** Changes a fresh copy with the guards out of the way; they are put back, so that they do not give the change away. */
    private void change(Change change) throws Exception {
        freshCopy();
        try (Connection connection = connect();
                Statement statement = connection.createStatement()) {
            statement.executeUpdate("PRAGMA synchronous = OFF");
            statement.executeUpdate("BEGIN");
            List<String> guards = new ArrayList<>();
            try (ResultSet triggers = statement.executeQuery(
                    "SELECT sql, name FROM sqlite_schema WHERE type = 'trigger' ORDER BY rowid")) {
                while (triggers.next()) {
                    guards.add(triggers.getString(1));
                }
            }
            for (String guard : guards) {
                statement.executeUpdate("DROP TRIGGER " + guard.split(" ")[2]);
            }
            change.make(connection);
            for (String guard : guards) {
                statement.executeUpdate(guard);
            }
            statement.executeUpdate("COMMIT");
        }
    }

    private Connection connect() throws SQLException {
        SQLiteDataSource source = new SQLiteDataSource();
        source.setUrl("jdbc:sqlite:" + file);
        return source.getConnection();
    }

    private List<VerifyFault> faults() throws TestLogException {
        try (TestLog log = TestLog.openReadOnly(file)) {
            return log.verify().faults();
        }
    }

    private void assertFirst(long sequence, String chain, String what) throws TestLogException {
        List<VerifyFault> faults = faults();
        assertFalse(faults.isEmpty(), what + " was not seen");
        VerifyFault first = faults.get(0);
        assertEquals(sequence, first.sequence(), what + ": " + first);
        assertEquals(!chain.isEmpty(), first.sentence().contains("joined chain " + chain), what + ": " + first);
        assertTrue(first.sentence().endsWith("."), first.sentence());
    }

    private static void update(Connection connection, String sql, Object... values) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(sql)) {
            for (int at = 0; at < values.length; at++) {
                statement.setObject(at + 1, values[at]);
            }
            statement.executeUpdate();
        }
    }

    private static String text(Connection connection, String table, String column, long sequence) throws SQLException {
        try (PreparedStatement statement =
                connection.prepareStatement("SELECT " + column + " FROM " + table + " WHERE seq = ?")) {
            statement.setLong(1, sequence);
            try (ResultSet result = statement.executeQuery()) {
                return result.getString(1);
            }
        }
    }

    private record Place(String table, String chain, long sequence) {}

    private Place place(Random random) {
        return random.nextInt(4) == 0
                ? new Place("joined_entry", "B", 1 + random.nextInt(JOINED))
                : new Place("entry", "", 1 + random.nextInt((int) ownEntries));
    }

    @Test
    void everyChangedByteOfAnEntryIsSeenAndTheEntryNamed() throws Exception {
        Random random = new Random(81);
        for (int round = 0; round < BYTES; round++) {
            Place place = place(random);
            String column = COLUMNS[random.nextInt(COLUMNS.length)];
            change(connection -> {
                StringBuilder text = new StringBuilder(text(connection, place.table(), column, place.sequence()));
                int at = random.nextInt(text.length());
                char old = text.charAt(at);
                do {
                    // A control character as well as a letter: no byte that a text may hold is left out.
                    text.setCharAt(at, (char) (1 + random.nextInt(126)));
                } while (text.charAt(at) == old || isTaken(connection, place, column, text.toString()));
                update(
                        connection,
                        "UPDATE " + place.table() + " SET " + column + " = ? WHERE seq = ?",
                        text.toString(),
                        place.sequence());
            });
            assertFirst(place.sequence(), place.chain(), "round " + round + ", a byte of " + column + " in " + place);
        }
    }

    private static boolean isTaken(Connection connection, Place place, String column, String text) throws SQLException {
        if (!column.equals("entry_id")) {
            return false;
        }
        try (PreparedStatement statement =
                connection.prepareStatement("SELECT count(*) FROM " + place.table() + " WHERE entry_id = ?")) {
            statement.setString(1, text);
            try (ResultSet result = statement.executeQuery()) {
                return result.getInt(1) > 0;
            }
        }
    }

    @Test
    void everyDeletionIsSeenAndTheEntryBehindNamed() throws Exception {
        Random random = new Random(82);
        for (int round = 0; round < DELETIONS; round++) {
            Place place = place(random);
            long last = place.chain().isEmpty() ? ownEntries : JOINED;
            long first = 1 + random.nextInt((int) last - 3);
            long end = first + random.nextInt(3);
            change(connection ->
                    update(connection, "DELETE FROM " + place.table() + " WHERE seq BETWEEN ? AND ?", first, end));
            assertFirst(
                    end + 1, place.chain(), "round " + round + ", without " + first + " to " + end + " of " + place);
        }
    }

    @Test
    void everySwapIsSeenAndTheFirstPlaceNamed() throws Exception {
        Random random = new Random(83);
        for (int round = 0; round < SWAPS; round++) {
            Place place = place(random);
            long last = place.chain().isEmpty() ? ownEntries : JOINED;
            long one = 1 + random.nextInt((int) last - 1);
            long other = one + 1 + random.nextInt((int) (last - one));
            boolean whole = random.nextBoolean();
            change(connection -> swap(connection, place.table(), one, other, whole ? ALL : "body, recorded_at"));
            assertFirst(one, place.chain(), "round " + round + ", " + one + " and " + other + " of " + place);
        }
    }

    private static void swap(Connection connection, String table, long one, long other, String columns)
            throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.executeUpdate("CREATE TEMP TABLE one AS SELECT * FROM " + table + " WHERE seq = " + one);
            statement.executeUpdate("CREATE TEMP TABLE other AS SELECT * FROM " + table + " WHERE seq = " + other);
            statement.executeUpdate("UPDATE " + table + " SET entry_id = '-' WHERE seq = " + one);
            statement.executeUpdate("UPDATE " + table + " SET (" + columns + ") = (SELECT " + columns
                    + " FROM temp.one) WHERE seq = " + other);
            statement.executeUpdate("UPDATE " + table + " SET entry_id = (SELECT entry_id FROM temp.one) WHERE seq = "
                    + one + " AND '" + columns + "' NOT LIKE '%entry_id%'");
            statement.executeUpdate("UPDATE " + table + " SET (" + columns + ") = (SELECT " + columns
                    + " FROM temp.other) WHERE seq = " + one);
        }
    }

    @Test
    void everyTruncationIsSeenAndTheFirstMissingEntryNamed() throws Exception {
        Random random = new Random(84);
        for (int round = 0; round < TRUNCATIONS; round++) {
            Place place = place(random);
            long last = place.chain().isEmpty() ? ownEntries : JOINED;
            long left = last - 1 - random.nextInt((int) last);
            change(connection -> update(connection, "DELETE FROM " + place.table() + " WHERE seq > ?", left));
            List<VerifyFault> faults = faults();
            Kind kind = place.chain().isEmpty() ? Kind.CUT_OFF : Kind.JOIN_BROKEN;
            assertTrue(
                    faults.stream().anyMatch(fault -> fault.kind() == kind && fault.sequence() == left + 1),
                    "round " + round + ", " + place + " cut behind " + left + ": " + faults);
        }
    }

    /** A byte may lie where nothing is kept; then everything that can be asked for must be as before. */
    @Test
    void everyByteOfTheFileIsEitherSeenOrMeansNothing() throws Exception {
        Random random = new Random(85);
        byte[] whole = Files.readAllBytes(base);
        freshCopy();
        String before = everythingReadable();
        List<Integer> entryBytes = placesOf(whole, "\"powerWatts\":");
        int seen = 0;
        int seenInEntries = 0;
        for (int round = 0; round < RAW_BYTES; round++) {
            boolean inEntry = round % 3 == 0;
            int at = inEntry
                    ? entryBytes.get(random.nextInt(entryBytes.size())) + random.nextInt(20)
                    : random.nextInt(whole.length);
            byte[] changed = whole.clone();
            changed[at] ^= (byte) (1 + random.nextInt(255));
            freshCopy();
            Files.write(file, changed);
            boolean caught = isCaught();
            if (!caught) {
                assertEquals(before, everythingReadable(), "byte " + at + " changed something and was not seen");
            }
            seen += caught ? 1 : 0;
            seenInEntries += caught && inEntry ? 1 : 0;
        }
        assertTrue(seen > RAW_BYTES / 3, "seen: " + seen);
        assertTrue(seenInEntries > RAW_BYTES / 6, "seen in entries: " + seenInEntries);
    }

    private static List<Integer> placesOf(byte[] content, String text) {
        String letters = new String(content, StandardCharsets.ISO_8859_1);
        List<Integer> places = new ArrayList<>();
        for (int at = letters.indexOf(text); at >= 0; at = letters.indexOf(text, at + 1)) {
            places.add(at);
        }
        return places;
    }

    private boolean isCaught() {
        try {
            List<VerifyFault> faults = faults();
            assertTrue(faults.stream().allMatch(fault -> fault.sentence().endsWith(".")), faults.toString());
            return !faults.isEmpty();
        } catch (TestLogException refused) {
            assertTrue(refused.getMessage().endsWith("."), refused.getMessage());
            return true;
        }
    }

    private String everythingReadable() throws Exception {
        StringBuilder text = new StringBuilder();
        try (TestLog log = TestLog.openReadOnly(file)) {
            log.forEach(LogQuery.everything(), text::append);
            text.append(log.chains()).append(log.headHash());
            for (String id : List.of("R0001", "V0003", "B/R0003", "J0001")) {
                text.append(log.entry(id));
            }
        }
        try (Connection connection = connect();
                Statement statement = connection.createStatement()) {
            for (String query : List.of(
                    "SELECT * FROM sqlite_schema",
                    "SELECT seq, " + ALL + " FROM entry",
                    "SELECT seq, number, " + ALL + " FROM joined_entry",
                    "SELECT * FROM joined_chain",
                    "SELECT kind, seq FROM entry INDEXED BY entry_by_kind ORDER BY kind, seq",
                    "SELECT number, kind, seq FROM joined_entry ORDER BY number, kind, seq")) {
                append(text, statement, query);
            }
        }
        return text.toString();
    }

    private static void append(StringBuilder text, Statement statement, String query) throws SQLException {
        try (ResultSet result = statement.executeQuery(query)) {
            int columns = result.getMetaData().getColumnCount();
            while (result.next()) {
                for (int column = 1; column <= columns; column++) {
                    text.append(Optional.ofNullable(result.getString(column))).append('|');
                }
                text.append('\n');
            }
        }
    }
}
