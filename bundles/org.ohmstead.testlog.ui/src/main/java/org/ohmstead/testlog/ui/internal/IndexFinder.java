// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.ohmstead.testlog.ChainInfo;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.chain.ChainedRow;
import org.ohmstead.testlog.chain.EntryReader;
import org.ohmstead.testlog.chain.RowSource;
import org.ohmstead.testlog.search.Find;
import org.ohmstead.testlog.search.FindOrder;
import org.ohmstead.testlog.search.Found;
import org.ohmstead.testlog.search.IndexColumn;
import org.ohmstead.testlog.search.IndexProgress;
import org.ohmstead.testlog.search.IndexState;
import org.ohmstead.testlog.search.IndexedEntry;
import org.ohmstead.testlog.search.LogIndex;
import org.ohmstead.units.text.Messages;

/** Finds by the index that lies beside the log. The log itself is open only while something is read from it. */
final class IndexFinder implements EntryFinder, RowSource {
    private static final Messages TEXTS = Messages.of(IndexFinder.class);
    private final Path logFile;
    private final LogIndex index;
    private Optional<TestLog> open = Optional.empty();

    IndexFinder(Path logFile) throws TestLogException {
        this.logFile = logFile;
        this.index = LogIndex.open(LogIndex.beside(logFile), this);
    }

    @Override
    public IndexState state() throws TestLogException {
        return withLog(index::state);
    }

    @Override
    public void refresh(IndexProgress progress) throws TestLogException {
        withLog(() -> index.refresh(progress));
    }

    @Override
    public Found find(Find find, FindOrder order) throws TestLogException {
        return index.find(find, order);
    }

    @Override
    public List<LogEntry> entries(List<IndexedEntry> found) throws TestLogException {
        return withLog(() -> {
            Map<String, String> chains = new HashMap<>();
            for (ChainInfo chain : chains()) {
                chains.put(chain.label(), chain.chain());
            }
            List<LogEntry> entries = new ArrayList<>();
            for (IndexedEntry each : found) {
                String chain = chains.get(each.chain());
                if (chain != null) {
                    for (ChainedRow row : rows(chain, each.sequence() - 1, 1)) {
                        entries.add(EntryReader.entry(TEXTS.text("index.file", logFile), row, each.chain(), Map.of()));
                    }
                }
            }
            return entries;
        });
    }

    @Override
    public List<String> distinct(IndexColumn column) throws TestLogException {
        return index.distinct(column);
    }

    @Override
    public List<ChainInfo> chains() throws TestLogException {
        return withLog(() -> open.orElseThrow().rows().chains());
    }

    @Override
    public List<ChainedRow> rows(String chain, long after, int most) throws TestLogException {
        return withLog(() -> open.orElseThrow().rows().rows(chain, after, most));
    }

    /** Something that reads the log. */
    @FunctionalInterface
    private interface Reads<T> {
        T read() throws TestLogException;
    }

    private <T> T withLog(Reads<T> reads) throws TestLogException {
        if (open.isPresent()) {
            return reads.read();
        }
        try (TestLog log = TestLog.openReadOnly(logFile)) {
            open = Optional.of(log);
            return reads.read();
        } finally {
            open = Optional.empty();
        }
    }

    @Override
    public void close() throws TestLogException {
        index.close();
    }
}
