// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.nio.file.Path;
import java.util.List;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.search.Find;
import org.ohmstead.testlog.search.FindOrder;
import org.ohmstead.testlog.search.Found;
import org.ohmstead.testlog.search.IndexColumn;
import org.ohmstead.testlog.search.IndexProgress;
import org.ohmstead.testlog.search.IndexState;
import org.ohmstead.testlog.search.IndexedEntry;

/** Finds entries of a log; asked by one thread at a time, never by the user interface's. */
interface EntryFinder extends AutoCloseable {
    /** Opens the finder of a log. */
    @FunctionalInterface
    interface Opening {
        EntryFinder open(Path logFile) throws TestLogException;
    }

    /** Returns how much of the log it knows. */
    IndexState state() throws TestLogException;

    /** Learns what is new. */
    void refresh(IndexProgress progress) throws TestLogException;

    Found find(Find find, FindOrder order) throws TestLogException;

    /** Returns the entries behind some of those found, as far as they can be read, in their order; voids are not told. */
    List<LogEntry> entries(List<IndexedEntry> found) throws TestLogException;

    /** Returns what occurs in a column, in order. */
    List<String> distinct(IndexColumn column) throws TestLogException;

    @Override
    void close() throws TestLogException;
}
