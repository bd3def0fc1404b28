// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import org.ohmstead.testlog.internal.LogDatabase;
import org.ohmstead.testlog.internal.LogFailures;
import org.ohmstead.testlog.internal.LogRefusals;

/**
 * Copies of a log as it stands at one moment, entries that still wait beside the file among them, while others go on adding. The copy
 * is one file without anything beside it.
 */
public final class LogCopy {
    private LogCopy() {}

    /**
     * Writes a copy.
     *
     * @param logFile the log; it is left as it is
     * @param target file to be made; there must be none yet
     * @throws TestLogException when the log cannot be read or the copy not be written; then there is no copy
     */
    public static void write(Path logFile, Path target) throws TestLogException {
        if (Files.exists(target)) {
            throw LogRefusals.of("copy.there", logFile, target);
        }
        boolean whole = false;
        try {
            LogFailures.guard(logFile, LogFailures.notCopiedTo(target), () -> {
                try (Connection connection = LogDatabase.openReadOnly(logFile, TestLog.BUSY_SECONDS);
                        PreparedStatement copy = connection.prepareStatement("VACUUM INTO ?")) {
                    copy.setString(1, target.toAbsolutePath().toString());
                    copy.executeUpdate();
                }
                return null;
            });
            whole = true;
        } finally {
            if (!whole) {
                LogFailures.guard(target, LogFailures.DELETE_COPY, () -> Files.deleteIfExists(target));
            }
        }
    }
}
