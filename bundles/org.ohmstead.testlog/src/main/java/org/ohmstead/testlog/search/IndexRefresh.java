// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.search;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.ohmstead.testlog.ChainInfo;
import org.ohmstead.testlog.EntryKind;
import org.ohmstead.testlog.JoinNote;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.chain.ChainedRow;
import org.ohmstead.testlog.chain.EntryReader;
import org.ohmstead.testlog.chain.RowSource;
import org.ohmstead.testlog.internal.Witness;

/** One catching up of an index with its log. */
final class IndexRefresh {
    private static final int PAGE = 1024;
    private static final int BATCH = 4 * IndexColumns.SEGMENT;

    private final Object lock;
    private final IndexFile file;
    private final RowSource source;
    private final IndexProgress progress;
    private final Map<String, IndexFile.Reached> reached = new TreeMap<>();
    private final List<IndexRow> batch = new ArrayList<>();
    private IndexFile.Content content;
    private IndexWriter writer;
    private long added;
    private long total;

    /** Another process has changed the index meanwhile. */
    private static final class OvertakenException extends Exception {
        private static final long serialVersionUID = 1L;
    }

    IndexRefresh(Object lock, IndexFile file, RowSource source, IndexProgress progress) {
        this.lock = lock;
        this.file = file;
        this.source = source;
        this.progress = progress;
    }

    /** Returns how many rows were taken in. */
    long run() throws SQLException, BlockCode.DamagedException, TestLogException {
        while (true) {
            try {
                List<ChainInfo> chains = source.chains();
                begin(chains);
                takeAll(chains);
                commit();
                synchronized (lock) {
                    Optional<Witness> seen = seen(chains);
                    if (seen.isPresent() && isFurther(seen.get())) {
                        changing(() -> witness(seen.get()));
                    }
                }
                if (added > 0 && !progress.cancelled()) {
                    rankTexts();
                }
                return added;
            } catch (OvertakenException again) {
                writer = null;
            }
        }
    }

    /** Looks where the index stands; when the log is another one than the index knows, the index begins again. */
    private void begin(List<ChainInfo> chains)
            throws SQLException, BlockCode.DamagedException, TestLogException, OvertakenException {
        batch.clear();
        reached.clear();
        synchronized (lock) {
            content = file.content();
            reached.putAll(content.reached());
            if (!continues(chains)) {
                changing(file::clear);
                content = file.content();
                reached.clear();
            }
        }
        total = chains.stream().mapToLong(ChainInfo::entries).sum();
    }

    private boolean continues(List<ChainInfo> chains) throws TestLogException {
        for (Map.Entry<String, IndexFile.Reached> known : reached.entrySet()) {
            boolean there = chains.stream().anyMatch(chain -> chain.chain().equals(known.getKey()));
            if (!there || !holds(known.getKey(), known.getValue())) {
                return false;
            }
        }
        return true;
    }

    private boolean holds(String chain, IndexFile.Reached place) throws TestLogException {
        List<ChainedRow> row = source.rows(chain, place.sequence() - 1, 1);
        return !row.isEmpty()
                && row.get(0).sequence() == place.sequence()
                && row.get(0).hash().equals(place.hash());
    }

    private void takeAll(List<ChainInfo> chains)
            throws SQLException, BlockCode.DamagedException, TestLogException, OvertakenException {
        boolean hasOwn = chains.stream().anyMatch(chain -> chain.label().isEmpty());
        for (ChainInfo chain : chains) {
            // The others come with the join entries of the source's own chain.
            if (!hasOwn || chain.label().isEmpty()) {
                take(chains, chain, chain.lastSequence());
            }
        }
    }

    private void take(List<ChainInfo> chains, ChainInfo chain, long last)
            throws SQLException, BlockCode.DamagedException, TestLogException, OvertakenException {
        IndexFile.Reached from = reached.get(chain.chain());
        long after = from == null ? chain.firstSequence() - 1 : from.sequence();
        while (after < last && !progress.cancelled()) {
            List<ChainedRow> rows = source.rows(chain.chain(), after, (int) Math.min(PAGE, last - after));
            if (rows.isEmpty()) {
                return;
            }
            take(chains, chain, rows);
            after = rows.get(rows.size() - 1).sequence();
        }
    }

    private void take(List<ChainInfo> chains, ChainInfo chain, List<ChainedRow> rows)
            throws SQLException, BlockCode.DamagedException, TestLogException, OvertakenException {
        List<IndexRow> made = rows.parallelStream()
                .map(row -> IndexRow.of(row, chain.label()))
                .toList();
        for (int at = 0; at < rows.size(); at++) {
            ChainedRow row = rows.get(at);
            if (chain.label().isEmpty() && EntryKind.JOIN.word().equals(row.kind())) {
                takeJoined(chains, row);
                if (progress.cancelled()) {
                    return;
                }
            }
            batch.add(made.get(at));
            reached.put(chain.chain(), new IndexFile.Reached(row.sequence(), row.hash()));
            if (batch.size() == BATCH) {
                commit();
            }
        }
    }

    private void takeJoined(List<ChainInfo> chains, ChainedRow row)
            throws SQLException, BlockCode.DamagedException, TestLogException, OvertakenException {
        Optional<JoinNote> note =
                EntryReader.entry("the log", row, "", Map.of()).join();
        for (ChainInfo chain : chains) {
            if (note.isPresent()
                    && chain.chain().equals(note.get().chain())
                    && !chain.label().isEmpty()) {
                take(chains, chain, note.get().lastSequence());
            }
        }
    }

    /** Something done in a transaction. */
    private interface Work {
        void run() throws SQLException, BlockCode.DamagedException, TestLogException, OvertakenException;
    }

    private void commit() throws SQLException, BlockCode.DamagedException, TestLogException, OvertakenException {
        if (batch.isEmpty()) {
            return;
        }
        synchronized (lock) {
            changing(() -> {
                if (!file.content().equals(content)) {
                    throw new OvertakenException();
                }
                if (writer == null) {
                    writer = new IndexWriter(file, new IndexColumns(file, content));
                }
                content = writer.append(batch, reached);
            });
        }
        added += batch.size();
        batch.clear();
        progress.indexed(content.rows(), Math.max(total, content.rows()));
    }

    private void changing(Work work)
            throws SQLException, BlockCode.DamagedException, TestLogException, OvertakenException {
        file.begin();
        boolean done = false;
        try {
            work.run();
            file.commit();
            done = true;
        } finally {
            if (!done) {
                file.rollBack();
            }
        }
    }

    /** Works the order of the texts out when many have come; the index may be searched meanwhile. */
    private void rankTexts() throws SQLException, BlockCode.DamagedException, TestLogException, OvertakenException {
        List<Words> words = new ArrayList<>();
        synchronized (lock) {
            if (!TextRanks.wanted(file, content)) {
                return;
            }
            IndexColumns columns = new IndexColumns(file, content);
            for (int segment = 0; segment < content.rows() / IndexColumns.SEGMENT; segment++) {
                words.add(columns.words(IndexField.TEXT, segment));
            }
        }
        List<byte[]> blocks = TextRanks.blocks(words.toArray(Words[]::new));
        synchronized (lock) {
            changing(() -> {
                if (!file.content().equals(content)) {
                    throw new OvertakenException();
                }
                for (int segment = 0; segment < blocks.size(); segment++) {
                    file.write(content, TextRanks.SLOT, segment, blocks.get(segment));
                }
            });
        }
    }

    /** Returns how far the log's own chain is known, or empty when it is not. */
    private Optional<Witness> seen(List<ChainInfo> chains) {
        return chains.stream()
                .filter(chain -> chain.label().isEmpty() && chain.entries() > 0)
                .map(ChainInfo::chain)
                .filter(reached::containsKey)
                .map(chain -> new Witness(
                        chain, reached.get(chain).sequence(), reached.get(chain).hash()))
                .findFirst();
    }

    /** Remembers how far the log's own chain went, unless somebody has meanwhile seen it go further; the caller holds the transaction. */
    private void witness(Witness seen) throws SQLException, TestLogException {
        if (isFurther(seen)) {
            file.setWitness(seen);
        }
    }

    /** A place that is remembered but not in the log any more stays remembered. */
    private boolean isFurther(Witness seen) throws SQLException, TestLogException {
        Optional<Witness> known = file.witness();
        boolean sameChain = known.isPresent() && known.get().chain().equals(seen.chain());
        return !sameChain
                || seen.sequence() > known.get().sequence()
                        && holds(
                                seen.chain(),
                                new IndexFile.Reached(
                                        known.get().sequence(), known.get().hash()));
    }
}
