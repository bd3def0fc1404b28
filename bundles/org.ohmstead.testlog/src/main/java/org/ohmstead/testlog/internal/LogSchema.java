// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.internal;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.ohmstead.testlog.TestLogException;

/** The tables and triggers of a log file, and how a file comes to have them. */
final class LogSchema {
    /** Marks the file as a log of Ohmstead: the letters OHMS. */
    static final int APPLICATION_ID = 0x4F484D53;

    private static final String TRIGGER = "CREATE TRIGGER ";

    private static final String NO_UPDATE = "CREATE TRIGGER entry_is_never_changed BEFORE UPDATE ON entry BEGIN"
            + " SELECT RAISE(ABORT, 'An entry of the test log is never changed; void it and add another.'); END";
    private static final String NO_DELETE = "CREATE TRIGGER entry_is_never_deleted BEFORE DELETE ON entry BEGIN"
            + " SELECT RAISE(ABORT, 'An entry of the test log is never deleted; void it with a reason.'); END";
    // Also keeps INSERT OR REPLACE out, which deletes without asking the trigger for deletions.
    private static final String ONLY_AT_END =
            "CREATE TRIGGER entry_is_only_added_at_the_end BEFORE INSERT ON entry WHEN"
                    + " NEW.seq IS NOT (SELECT coalesce(max(seq), 0) + 1 FROM entry)"
                    + " OR EXISTS (SELECT 1 FROM entry WHERE entry_id = NEW.entry_id) BEGIN"
                    + " SELECT RAISE(ABORT, 'An entry is only added at the end of the test log, with an id of its own.'); END";

    private static final String NO_JOINED_UPDATE =
            "CREATE TRIGGER joined_entry_is_never_changed BEFORE UPDATE ON joined_entry BEGIN"
                    + " SELECT RAISE(ABORT, 'A joined entry of the test log is never changed.'); END";
    private static final String NO_JOINED_DELETE =
            "CREATE TRIGGER joined_entry_is_never_deleted BEFORE DELETE ON joined_entry BEGIN"
                    + " SELECT RAISE(ABORT, 'A joined entry of the test log is never deleted.'); END";
    private static final String JOINED_ONLY_AT_END =
            "CREATE TRIGGER joined_entry_is_only_added_at_the_end BEFORE INSERT ON joined_entry WHEN"
                    + " NEW.seq IS NOT (SELECT coalesce(max(seq) + 1, NEW.seq) FROM joined_entry WHERE number = NEW.number)"
                    + " OR EXISTS (SELECT 1 FROM joined_entry WHERE number = NEW.number AND entry_id = NEW.entry_id)"
                    + " OR EXISTS (SELECT 1 FROM joined_entry WHERE place = NEW.place) BEGIN"
                    + " SELECT RAISE(ABORT, 'A joined entry is only added at the end of its chain in the test log.'); END";
    private static final String NO_CHAIN_UPDATE =
            "CREATE TRIGGER joined_chain_is_never_changed BEFORE UPDATE ON joined_chain BEGIN"
                    + " SELECT RAISE(ABORT, 'A joined chain of the test log is never changed.'); END";
    private static final String NO_CHAIN_DELETE =
            "CREATE TRIGGER joined_chain_is_never_deleted BEFORE DELETE ON joined_chain BEGIN"
                    + " SELECT RAISE(ABORT, 'A joined chain of the test log is never deleted.'); END";
    private static final String CHAIN_ONCE =
            "CREATE TRIGGER joined_chain_is_added_once BEFORE INSERT ON joined_chain WHEN EXISTS"
                    + " (SELECT 1 FROM joined_chain WHERE number = NEW.number OR chain = NEW.chain OR label = NEW.label)"
                    + " BEGIN SELECT RAISE(ABORT, 'A chain is joined to the test log but once.'); END";

    /**
     * Counts what has the name of one of our tables and is none: a view, which can reckon for ever or show what was never logged, or a
     * table that something else than the file fills. Views of other names harm nobody who does not ask for them.
     */
    static final String FEIGNED = "SELECT count(*) FROM sqlite_schema WHERE"
            + " lower(name) IN ('entry', 'joined_entry', 'joined_chain')"
            + " AND (type <> 'table' OR sql LIKE 'CREATE VIRTUAL%')";

    /** The version that joined chains came with. */
    static final int WITH_JOINED_CHAINS = 3;

    /** For each version of the schema what leads to it from the one before, in order; the first makes a new log. */
    static final List<List<String>> STEPS = List.of(
            List.of(
                    "CREATE TABLE entry (seq INTEGER PRIMARY KEY, kind TEXT NOT NULL, entry_id TEXT NOT NULL UNIQUE,"
                            + " recorded_at TEXT NOT NULL, body TEXT NOT NULL, previous_hash TEXT NOT NULL,"
                            + " hash TEXT NOT NULL) STRICT",
                    "CREATE INDEX entry_by_kind ON entry (kind)",
                    NO_UPDATE,
                    NO_DELETE,
                    ONLY_AT_END,
                    "PRAGMA application_id = " + APPLICATION_ID),
            // Version 2 has the same table; its entries may be figures, which an older Ohmstead would take for damage.
            List.of(),
            // Version 3 also holds the chains of other logs, as they came.
            List.of(
                    "CREATE TABLE joined_chain (number INTEGER PRIMARY KEY, chain TEXT NOT NULL UNIQUE,"
                            + " label TEXT NOT NULL UNIQUE, name TEXT NOT NULL) STRICT",
                    "CREATE TABLE joined_entry (place INTEGER PRIMARY KEY,"
                            + " number INTEGER NOT NULL REFERENCES joined_chain (number), seq INTEGER NOT NULL,"
                            + " kind TEXT NOT NULL, entry_id TEXT NOT NULL, recorded_at TEXT NOT NULL, body TEXT NOT NULL,"
                            + " previous_hash TEXT NOT NULL, hash TEXT NOT NULL, UNIQUE (number, seq),"
                            + " UNIQUE (number, entry_id)) STRICT",
                    "CREATE INDEX joined_entry_by_kind ON joined_entry (number, kind)",
                    NO_JOINED_UPDATE,
                    NO_JOINED_DELETE,
                    JOINED_ONLY_AT_END,
                    NO_CHAIN_UPDATE,
                    NO_CHAIN_DELETE,
                    CHAIN_ONCE));

    private LogSchema() {}

    /** Returns the triggers that guard the tables of a version, by name. */
    static Map<String, String> guards(int version) {
        Map<String, String> guards = new TreeMap<>();
        for (List<String> step : STEPS.subList(0, Math.min(Math.max(version, 1), STEPS.size()))) {
            for (String sql : step) {
                if (sql.startsWith(TRIGGER)) {
                    guards.put(sql.substring(TRIGGER.length(), sql.indexOf(' ', TRIGGER.length())), sql);
                }
            }
        }
        return guards;
    }

    static int newestVersion(List<List<String>> steps) {
        return steps.size();
    }

    /** Brings a file to the newest version, in one transaction; two processes may do so at once. */
    static void migrate(Connection connection, List<List<String>> steps) throws SQLException, TestLogException {
        if (number(connection, "PRAGMA user_version") == newestVersion(steps)) {
            return;
        }
        Transaction.once(connection, () -> {
            int version = number(connection, "PRAGMA user_version");
            try (Statement statement = connection.createStatement()) {
                for (; version < steps.size(); version++) {
                    for (String sql : steps.get(version)) {
                        statement.executeUpdate(sql);
                    }
                    statement.executeUpdate("PRAGMA user_version = " + (version + 1));
                }
            }
            return version;
        });
    }

    static int number(Connection connection, String query) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet result = statement.executeQuery(query)) {
            return result.getInt(1);
        }
    }
}
