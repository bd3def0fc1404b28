// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.internal;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Path;
import java.sql.SQLException;
import org.ohmstead.testlog.TestLogException;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/** Turns what the database reports into sentences. */
public final class LogFailures {
    private static final int PRIMARY_CODE = 0xFF;

    /** Something done with the database. */
    @FunctionalInterface
    public interface Action<T> {
        /** Does it. */
        T run() throws SQLException, IOException, TestLogException;
    }

    private LogFailures() {}

    /** Does something with the database; turns its failure into a sentence. */
    public static <T> T guard(Path file, String whatHappened, Action<T> action) throws TestLogException {
        try {
            return action.run();
        } catch (SQLException failure) {
            throw of(file, whatHappened, failure);
        } catch (IOException failure) {
            throw new TestLogException(
                    whatHappened + ": the file " + file + " cannot be read. Check that its disk is connected.",
                    failure);
        }
    }

    /** Returns the failure that a fault of the database means. */
    public static TestLogException of(Path file, String whatHappened, SQLException failure) {
        return new TestLogException(whatHappened + ": " + meaning(file, failure), failure);
    }

    /** Returns whether the database says that its file is damaged. */
    static boolean meansDamage(SQLException failure) {
        SQLiteErrorCode code = primaryCode(failure);
        return code == SQLiteErrorCode.SQLITE_CORRUPT
                || code == SQLiteErrorCode.SQLITE_NOTADB
                || code == SQLiteErrorCode.SQLITE_ERROR;
    }

    /** Returns whether another connection keeps the file busy. */
    public static boolean meansBusy(SQLException failure) {
        return primaryCode(failure) == SQLiteErrorCode.SQLITE_BUSY;
    }

    /** Returns whether a rule of the file refuses a change. */
    static boolean meansConstraint(SQLException failure) {
        return primaryCode(failure) == SQLiteErrorCode.SQLITE_CONSTRAINT;
    }

    /** Returns whether the disk, the system or another program is to blame. */
    public static boolean meansOutside(SQLException failure) {
        return switch (primaryCode(failure)) {
            case SQLITE_BUSY,
                    SQLITE_LOCKED,
                    SQLITE_READONLY,
                    SQLITE_CANTOPEN,
                    SQLITE_PERM,
                    SQLITE_AUTH,
                    SQLITE_FULL,
                    SQLITE_IOERR -> true;
            default -> false;
        };
    }

    /** Returns in a few words what the system reported. */
    public static String reason(IOException failure) {
        if (failure instanceof AccessDeniedException denied) {
            return denied.getFile() + ": access is denied";
        }
        if (failure instanceof FileAlreadyExistsException inTheWay) {
            return inTheWay.getFile() + " is no folder";
        }
        if (failure instanceof FileSystemException system && system.getReason() != null) {
            return system.getReason();
        }
        return failure.getMessage() == null ? "no reason given" : failure.getMessage();
    }

    private static SQLiteErrorCode primaryCode(SQLException failure) {
        return failure instanceof SQLiteException known
                ? SQLiteErrorCode.getErrorCode(known.getResultCode().code & PRIMARY_CODE)
                : SQLiteErrorCode.UNKNOWN_ERROR;
    }

    private static String meaning(Path file, SQLException failure) {
        return switch (primaryCode(failure)) {
            case SQLITE_BUSY, SQLITE_LOCKED -> "another program keeps the log " + file
                    + " busy. Wait until it has finished, or close it, and try again.";
            case SQLITE_READONLY -> "the log " + file
                    + " is open for reading only, or may not be written to. Open it for writing where you may write.";
            case SQLITE_CANTOPEN, SQLITE_PERM, SQLITE_AUTH -> "the log " + file
                    + " cannot be opened. Check that you may read and write its folder and that its disk is connected.";
            case SQLITE_FULL -> "the disk that holds the log " + file + " is full. Make room and try again.";
            case SQLITE_IOERR -> "the disk that holds the log " + file
                    + " reports an error. Check the disk and its connection, and make a copy of the project.";
            case SQLITE_CORRUPT, SQLITE_NOTADB -> "the log " + file
                    + " is damaged. Make a copy of it, then take it from a backup.";
            case SQLITE_CONSTRAINT -> "the log " + file + " refuses it (" + failure.getMessage()
                    + "). Verify the log; it may have been changed by other means.";
            default -> "the database of the log " + file + " reports: " + failure.getMessage()
                    + ". Verify the log; if that fails too, take it from a backup.";
        };
    }
}
