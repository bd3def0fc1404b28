// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import org.sqlite.SQLiteDataSource;

/** The log's file as any other program would see it. */
final class RawLog {
    private RawLog() {}

    static void execute(Path file, String... statements) throws SQLException {
        try (Connection connection = connect(file);
                Statement statement = connection.createStatement()) {
            for (String sql : statements) {
                statement.executeUpdate(sql);
            }
        }
    }

    static String text(Path file, String query) throws SQLException {
        try (Connection connection = connect(file);
                Statement statement = connection.createStatement();
                ResultSet result = statement.executeQuery(query)) {
            return result.getString(1);
        }
    }

    static void dropTriggers(Path file) throws SQLException {
        execute(
                file,
                "DROP TRIGGER entry_is_never_changed",
                "DROP TRIGGER entry_is_never_deleted",
                "DROP TRIGGER entry_is_only_added_at_the_end");
    }

    private static Connection connect(Path file) throws SQLException {
        SQLiteDataSource source = new SQLiteDataSource();
        source.setUrl("jdbc:sqlite:" + file);
        return source.getConnection();
    }
}
