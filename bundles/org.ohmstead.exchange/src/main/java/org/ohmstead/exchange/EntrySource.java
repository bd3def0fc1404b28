// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange;

import java.util.List;
import java.util.function.Consumer;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.LogQuery;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;

/** Entries to be written out, one after the other, as often as asked. */
@FunctionalInterface
public interface EntrySource {
    /** Hands over every entry in order. */
    void forEach(Consumer<LogEntry> consumer) throws TestLogException;

    /** Returns the entries of a list. */
    static EntrySource of(List<LogEntry> entries) {
        return entries::forEach;
    }

    /** Returns the entries of a log that a query wants, without holding all of them in memory. */
    static EntrySource of(TestLog log, LogQuery query) {
        return consumer -> log.forEach(query, consumer);
    }
}
