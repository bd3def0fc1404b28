// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.internal;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.ohmstead.testlog.ChainInfo;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.chain.ChainedRow;
import org.ohmstead.testlog.chain.EntryReader;
import org.ohmstead.testlog.chain.RowSource;
import org.ohmstead.testlog.search.Found;
import org.ohmstead.testlog.search.IndexedEntry;
import org.ohmstead.units.text.Messages;

/** Fetches whole entries that an index has found. */
public final class WholeEntries {
    private static final Messages TEXTS = Messages.of(WholeEntries.class);
    private static final int PAGE = 512;
    private static final int AHEAD = 16;

    private final String where;
    private final RowSource rows;
    private final Map<String, String> hashes = new HashMap<>();
    private String chain = "";
    private List<ChainedRow> read = List.of();

    /**
     * Makes it.
     *
     * @param where the rows are, for the sentence of a failure, such as "the log kestrel"
     * @param rows where they come from
     */
    public WholeEntries(String where, RowSource rows) throws TestLogException {
        this.where = where;
        this.rows = rows;
        for (ChainInfo info : rows.chains()) {
            hashes.put(info.label(), info.chain());
        }
    }

    /** Returns all that was found, in that order; whether an entry was voided the index knows, so no voided one must be among them. */
    public List<LogEntry> all(Found found) throws TestLogException {
        List<LogEntry> entries = new ArrayList<>();
        for (int from = 0; from < found.size(); from += PAGE) {
            for (IndexedEntry each : found.page(from, PAGE)) {
                entries.add(EntryReader.entry(where, row(each), each.chain(), Map.of()));
            }
        }
        return entries;
    }

    /** What was found often lies close together, so a few more are read each time. */
    private ChainedRow row(IndexedEntry wanted) throws TestLogException {
        String hash = hashes.getOrDefault(wanted.chain(), "");
        if (!hash.equals(chain) || !holds(wanted.sequence())) {
            chain = hash;
            read = rows.rows(hash, wanted.sequence() - 1, AHEAD);
        }
        if (!holds(wanted.sequence())) {
            throw new TestLogException(TEXTS.text("log.lost", wanted.id(), where));
        }
        return read.get((int) (wanted.sequence() - read.get(0).sequence()));
    }

    private boolean holds(long sequence) {
        return !read.isEmpty()
                && sequence >= read.get(0).sequence()
                && sequence < read.get(0).sequence() + read.size();
    }
}
