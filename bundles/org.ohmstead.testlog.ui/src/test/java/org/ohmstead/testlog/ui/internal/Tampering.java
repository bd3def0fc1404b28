// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;

/** Changes a log behind its back. */
final class Tampering {
    private Tampering() {}

    /** Changes the content of the third of {@link Samples#six}, the guards put back in place. */
    static void changeThird(Path logFile) throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + logFile);
                Statement statement = connection.createStatement()) {
            String guard;
            try (ResultSet result =
                    statement.executeQuery("SELECT sql FROM sqlite_master WHERE name = 'entry_is_never_changed'")) {
                guard = result.getString(1);
            }
            statement.executeUpdate("DROP TRIGGER entry_is_never_changed");
            statement.executeUpdate("UPDATE entry SET body = replace(body, '120', '150') WHERE seq = 3");
            statement.executeUpdate(guard);
        }
    }
}
