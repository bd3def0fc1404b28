// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.internal;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.function.Supplier;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.units.text.Messages;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/** Turns what the database reports into sentences. */
public final class LogFailures {
    private static final Messages TEXTS = Messages.of(LogFailures.class);

    /** What failed: the check of the whole log. */
    public static final Supplier<String> VERIFY = () -> TEXTS.text("failed.verify");

    /** What failed: opening the log. */
    public static final Supplier<String> OPEN = () -> TEXTS.text("failed.open");

    /** What failed: reading it. */
    public static final Supplier<String> READ = () -> TEXTS.text("failed.read");

    /** What failed: closing it. */
    public static final Supplier<String> CLOSE = () -> TEXTS.text("failed.close");

    /** What failed: adding an entry. */
    public static final Supplier<String> ADD = () -> TEXTS.text("failed.add");

    /** What failed: adding several. */
    public static final Supplier<String> ADD_MANY = () -> TEXTS.text("failed.addMany");

    /** What failed: making a log. */
    public static final Supplier<String> MAKE = () -> TEXTS.text("failed.make");

    /** What failed: deleting what there is of one. */
    public static final Supplier<String> DELETE = () -> TEXTS.text("failed.delete");

    /** What failed: deleting what there is of a copy. */
    public static final Supplier<String> DELETE_COPY = () -> TEXTS.text("failed.deleteCopy");

    /** What failed: joining another log. */
    public static final Supplier<String> JOIN = () -> TEXTS.text("failed.join");

    private static final int PRIMARY_CODE = 0xFF;

    /** Something done with the database. */
    @FunctionalInterface
    public interface Action<T> {
        /** Does it. */
        T run() throws SQLException, IOException, TestLogException;
    }

    private LogFailures() {}

    /**
     * Does something with the database; turns its failure into a sentence.
     *
     * @param whatHappened begins the sentence, such as {@link #READ}; asked only when it fails
     */
    public static <T> T guard(Path file, Supplier<String> whatHappened, Action<T> action) throws TestLogException {
        try {
            return action.run();
        } catch (SQLException failure) {
            throw of(file, whatHappened, failure);
        } catch (IOException failure) {
            throw new TestLogException(failed(whatHappened, TEXTS.text("meaning.unread", file.toString())), failure);
        }
    }

    /** Returns the failure that a fault of the database means. */
    public static TestLogException of(Path file, Supplier<String> whatHappened, SQLException failure) {
        return new TestLogException(failed(whatHappened, meaning(file, failure)), failure);
    }

    private static String failed(Supplier<String> whatHappened, String meaning) {
        return TEXTS.text("failed", whatHappened.get(), meaning);
    }

    /** Returns how a sentence begins when the log was not copied to a file. */
    public static Supplier<String> notCopiedTo(Path target) {
        return () -> TEXTS.text("failed.copy", target.toString());
    }

    /** Returns what a log is called in the sentences about its entries. */
    public static String named(Path file) {
        return TEXTS.text("entry.where", file.toString());
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
            return TEXTS.text("reason.denied", denied.getFile());
        }
        if (failure instanceof FileAlreadyExistsException inTheWay) {
            return TEXTS.text("reason.noFolder", inTheWay.getFile());
        }
        if (failure instanceof FileSystemException system && system.getReason() != null) {
            return system.getReason();
        }
        return failure.getMessage() == null ? TEXTS.text("reason.none") : failure.getMessage();
    }

    private static SQLiteErrorCode primaryCode(SQLException failure) {
        return failure instanceof SQLiteException known
                ? SQLiteErrorCode.getErrorCode(known.getResultCode().code & PRIMARY_CODE)
                : SQLiteErrorCode.UNKNOWN_ERROR;
    }

    private static String meaning(Path file, SQLException failure) {
        String key =
                switch (primaryCode(failure)) {
                    case SQLITE_BUSY, SQLITE_LOCKED -> "meaning.busy";
                    case SQLITE_READONLY -> "meaning.readOnly";
                    case SQLITE_CANTOPEN, SQLITE_PERM, SQLITE_AUTH -> "meaning.cannotOpen";
                    case SQLITE_FULL -> "meaning.full";
                    case SQLITE_IOERR -> "meaning.disk";
                    case SQLITE_CORRUPT, SQLITE_NOTADB -> "meaning.damaged";
                    case SQLITE_CONSTRAINT -> "meaning.refused";
                    default -> "meaning.other";
                };
        return TEXTS.text(key, file.toString(), String.valueOf(failure.getMessage()));
    }
}
