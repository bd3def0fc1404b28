// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.shared;

import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.ohmstead.testlog.ChainInfo;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.chain.ChainedRow;
import org.ohmstead.testlog.chain.RowSource;
import org.ohmstead.testlog.shared.internal.ChainTable;
import org.ohmstead.units.text.Messages;

/** The hand-over of one chain. */
final class ChainHandOver {
    private static final Messages TEXTS = Messages.of(ChainHandOver.class);
    private static final int BATCH_ROWS = 500;
    private static final long BATCH_CHARACTERS = 8_000_000;

    /** How often somebody else may have handed over the same entries in between before it counts as a jam. */
    private static final int MOST_SEARCHES = 50;

    /** What the server says when somebody else handed over the same in between: a trigger's and PostgreSQL's own code. */
    private static final Set<String> BEATEN = Set.of("OHM06", "23505");

    private final SharedLab lab;
    private final RowSource log;
    private final ChainInfo info;
    private final ChainOrigin origin;
    private final HandOver.Confirmation confirmation;
    private final ChainSearch search;
    private long handedOver;
    private long last;
    private String lastHash = ChainedRow.FIRST_PREVIOUS_HASH;
    private String sharedChain = "";
    private long partedAfter;

    ChainHandOver(
            SharedLab lab, RowSource log, ChainInfo info, ChainOrigin origin, HandOver.Confirmation confirmation) {
        this.lab = lab;
        this.log = log;
        this.info = info;
        this.origin = origin;
        this.confirmation = confirmation;
        this.search = new ChainSearch(lab, log, info);
    }

    HandOverReport.Part run() throws SharedLabException, TestLogException {
        last = info.firstSequence() - 1;
        int searches = 0;
        boolean found = false;
        List<ChainedRow> batch = List.of();
        do {
            if (!found) {
                searches++;
                requirePatience(searches);
                find();
            }
            batch = batch();
            found = batch.isEmpty() || add(batch);
            if (found && !batch.isEmpty()) {
                searches = 0;
            }
        } while (!found || !batch.isEmpty());
        return new HandOverReport.Part(
                info.chain(),
                info.label(),
                sharedChain,
                handedOver,
                last - info.firstSequence() + 1 - handedOver,
                sentence());
    }

    private void requirePatience(int searches) throws SharedLabException {
        if (searches > MOST_SEARCHES) {
            throw new SharedLabException(SharedLabException.Reason.BUSY, TEXTS.text("handed.gaveWay"));
        }
    }

    /** Finds how far the shared log has the chain, and which of its chains goes on from there. */
    private void find() throws SharedLabException, TestLogException {
        last = search.lastThere();
        lastHash = last == 0 ? ChainedRow.FIRST_PREVIOUS_HASH : hashOf(last);
        sharedChain = "";
        partedAfter = 0;
        String next = nextHash();
        Optional<ChainTable.Place> place = lab.work(TEXTS.text("failed.place"), table -> table.place(lastHash, next));
        if (place.isEmpty()) {
            // Nothing is there of a chain that begins by itself, or that parts from one that must be handed over first.
            return;
        }
        if (next.isEmpty() || place.get().headHash().equals(lastHash)) {
            sharedChain = place.get().chain();
        } else if (!place.get().nextThere()) {
            partedAfter = last;
        }
        if (last >= info.firstSequence()) {
            confirmation.kept(info.chain(), last);
        }
    }

    private String hashOf(long sequence) throws SharedLabException, TestLogException {
        if (sequence >= info.firstSequence()) {
            return search.row(sequence).hash();
        }
        return search.row(info.firstSequence()).previousHash();
    }

    private String nextHash() throws TestLogException {
        List<ChainedRow> next = log.rows(info.chain(), last, 1);
        return next.isEmpty() ? "" : next.get(0).hash();
    }

    /** Returns the next rows of the bench's log, after a look whether they are as they were written. */
    private List<ChainedRow> batch() throws SharedLabException, TestLogException {
        List<ChainedRow> rows = log.rows(info.chain(), last, BATCH_ROWS);
        String previous = lastHash;
        long sequence = last;
        long characters = 0;
        for (int index = 0; index < rows.size(); index++) {
            ChainedRow row = rows.get(index);
            sequence++;
            if (row.sequence() != sequence || !row.previousHash().equals(previous)) {
                throw search.damaged(TEXTS.text("damaged.broken", row.sequence()));
            }
            if (!row.computedHash().equals(row.hash())) {
                throw search.damaged(TEXTS.text("damaged.content", row.sequence()));
            }
            previous = row.hash();
            characters += row.body().length();
            if (characters > BATCH_CHARACTERS) {
                return rows.subList(0, index + 1);
            }
        }
        return rows;
    }

    /** Adds rows in one transaction; returns whether they were added, and not somebody else's instead. */
    private boolean add(List<ChainedRow> batch) throws SharedLabException {
        String chain = sharedChain.isEmpty() ? batch.get(0).hash() : sharedChain;
        String head = lastHash;
        boolean begins = sharedChain.isEmpty();
        boolean added = added(chain, head, begins, batch);
        if (added) {
            ChainedRow end = batch.get(batch.size() - 1);
            sharedChain = chain;
            handedOver += batch.size();
            last = end.sequence();
            lastHash = end.hash();
            confirmation.kept(info.chain(), last);
        }
        return added;
    }

    private boolean added(String chain, String head, boolean begins, List<ChainedRow> batch) throws SharedLabException {
        try {
            return lab.work(TEXTS.text("failed.handOver"), table -> added(table, chain, head, begins, batch));
        } catch (SharedLabException failure) {
            if (failure.getCause() instanceof SQLException cause && BEATEN.contains(cause.getSQLState())) {
                return false;
            }
            throw failure;
        }
    }

    private boolean added(ChainTable table, String chain, String head, boolean begins, List<ChainedRow> batch)
            throws SQLException {
        if (begins) {
            if (table.there(List.of(batch.get(0).hash())).size() == 1) {
                return false;
            }
            table.begin(batch.get(0), origin);
        }
        boolean free = table.lock(chain).filter(head::equals).isPresent();
        if (free) {
            table.add(chain, batch);
        }
        return free;
    }

    private String sentence() {
        long already = last - info.firstSequence() + 1 - handedOver;
        String counts = TEXTS.text(
                info.label().isEmpty() ? "handed.own" : "handed.joined",
                handedOver,
                already,
                info.label(),
                info.name());
        return partedAfter == 0 ? counts : counts + " " + TEXTS.text("handed.parted", partedAfter);
    }
}
