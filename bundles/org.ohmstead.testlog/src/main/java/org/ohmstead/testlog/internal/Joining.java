// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.internal;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Consumer;
import org.ohmstead.testlog.ChainInfo;
import org.ohmstead.testlog.EntryKind;
import org.ohmstead.testlog.JoinNote;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.chain.ChainedRow;
import org.ohmstead.testlog.chain.EntryReader;
import org.ohmstead.testlog.chain.RowSource;

/**
 * Takes the chains of another log into this one, as they are. What both have in common is found by the hashes: two chains that have the
 * same hash at a number are the same up to there. The caller holds the transaction.
 */
public final class Joining {
    private static final int PAGE = 1000;

    private final EntryTable table;
    private final JoinedTable joined;
    private final RowSource own;
    private final RowSource other;
    private final String name;
    private final List<JoinNote> notes = new ArrayList<>();
    private final Map<String, Long> voidedElsewhere = new TreeMap<>();

    /** Prepares to take chains from another log, of a bench with a name. */
    public Joining(EntryTable table, JoinedTable joined, RowSource own, RowSource other, String name) {
        this.table = table;
        this.joined = joined;
        this.own = own;
        this.other = other;
        this.name = name;
    }

    /** What a chain has in common with one of this log's. */
    private record Common(ChainInfo ours, long sequence) {}

    /**
     * Adds what is new of the other log's chains.
     *
     * @return for each chain that had something new what the join entry is to say
     */
    public List<JoinNote> run(String who) throws SQLException, TestLogException {
        for (ChainInfo theirs : other.chains()) {
            if (theirs.entries() > 0) {
                join(theirs, who);
            }
        }
        return List.copyOf(notes);
    }

    /** Returns the ids of this log's entries that the other log has too, and has voided. */
    public List<String> voidedInCommon() throws SQLException {
        List<String> ids = new ArrayList<>();
        for (Map.Entry<String, Long> voided : voidedElsewhere.entrySet()) {
            Optional<ChainedRow> row = table.byId(voided.getKey());
            if (row.isPresent() && row.get().sequence() <= voided.getValue()) {
                ids.add(voided.getKey());
            }
        }
        return ids;
    }

    private void join(ChainInfo theirs, String who) throws SQLException, TestLogException {
        Optional<Common> common = common(theirs);
        long after = common.map(Common::sequence).orElse(theirs.firstSequence() - 1);
        if (after >= theirs.lastSequence()) {
            return;
        }
        ChainedRow first =
                rowsOf(other, theirs, after, 1).stream().findFirst().orElseThrow(() -> endsEarly(theirs, after));
        String before = base(first, after);
        Optional<JoinedTable.Chain> grown = common.isPresent() ? grown(common.get()) : Optional.empty();
        JoinedTable.Chain target = grown.isPresent() ? grown.get() : newChain(first.hash(), name(theirs));
        String head = add(theirs, after, before, target.number(), row -> seeVoid(row, common));
        notes.add(new JoinNote(
                target.info().chain(),
                target.info().label(),
                target.info().name(),
                after,
                theirs.lastSequence(),
                head,
                who));
    }

    private static TestLogException endsEarly(ChainInfo theirs, long sequence) {
        return LogRefusals.of("join.short", sequence, theirs.lastSequence());
    }

    private String name(ChainInfo theirs) {
        return theirs.name().isEmpty() ? name : theirs.name();
    }

    /** A joined chain that the other one continues; the log's own chain grows by itself only. */
    private Optional<JoinedTable.Chain> grown(Common common) throws SQLException {
        boolean continued = !common.ours().label().isEmpty()
                && common.sequence() == common.ours().lastSequence();
        return continued ? joined.chain(common.ours().label()) : Optional.empty();
    }

    private JoinedTable.Chain newChain(String chain, String newName) throws SQLException {
        int number = joined.chains().size() + 1;
        String label = label(number);
        joined.insertChain(number, chain, label, newName);
        return new JoinedTable.Chain(number, new ChainInfo(chain, label, newName, 0, ChainedRow.FIRST_PREVIOUS_HASH));
    }

    /** Returns the label of the joined chain with a number: B to Z, then AA, AB and so on. */
    static String label(int number) {
        StringBuilder label = new StringBuilder();
        for (int rest = number + 1; rest > 0; rest = (rest - 1) / 26) {
            label.insert(0, (char) ('A' + (rest - 1) % 26));
        }
        return label.toString();
    }

    private Optional<Common> common(ChainInfo theirs) throws TestLogException {
        Common most = null;
        for (ChainInfo ours : own.chains()) {
            long first = Math.max(ours.firstSequence(), theirs.firstSequence());
            long last = Math.min(ours.lastSequence(), theirs.lastSequence());
            if (ours.entries() > 0 && first <= last && same(ours, theirs, first)) {
                long sequence = lastSame(ours, theirs, first, last);
                if (most == null || sequence > most.sequence()) {
                    most = new Common(ours, sequence);
                }
            }
        }
        return Optional.ofNullable(most);
    }

    private long lastSame(ChainInfo ours, ChainInfo theirs, long first, long last) throws TestLogException {
        long same = first;
        long end = last;
        while (same < end) {
            long middle = same + (end - same + 1) / 2;
            if (same(ours, theirs, middle)) {
                same = middle;
            } else {
                end = middle - 1;
            }
        }
        return same;
    }

    private boolean same(ChainInfo ours, ChainInfo theirs, long sequence) throws TestLogException {
        List<ChainedRow> here = rowsOf(own, ours, sequence - 1, 1);
        List<ChainedRow> there = rowsOf(other, theirs, sequence - 1, 1);
        return !here.isEmpty()
                && !there.isEmpty()
                && here.get(0).hash().equals(there.get(0).hash());
    }

    private static List<ChainedRow> rowsOf(RowSource source, ChainInfo chain, long after, int most)
            throws TestLogException {
        return source.rows(chain.chain(), after, most);
    }

    /** Returns the hash of the entry that the first new one continues; when there is one, it must be here. */
    private String base(ChainedRow first, long after) throws TestLogException {
        if (after == 0) {
            return ChainedRow.FIRST_PREVIOUS_HASH;
        }
        for (ChainInfo ours : own.chains()) {
            List<ChainedRow> row = rowsOf(own, ours, after - 1, 1);
            if (!row.isEmpty()
                    && row.get(0).sequence() == after
                    && row.get(0).hash().equals(first.previousHash())) {
                return first.previousHash();
            }
        }
        throw LogRefusals.of("join.neither", first.entryId());
    }

    /** Adds the rows behind a number, each checked once more, because the other log may have been changed since it was verified. */
    private String add(ChainInfo theirs, long after, String before, long number, Consumer<ChainedRow> seen)
            throws SQLException, TestLogException {
        long at = after;
        String head = before;
        while (at < theirs.lastSequence()) {
            List<ChainedRow> rows = rowsOf(other, theirs, at, (int) Math.min(PAGE, theirs.lastSequence() - at));
            if (rows.isEmpty()) {
                throw endsEarly(theirs, at);
            }
            for (ChainedRow row : rows) {
                requireWhole(row, at, head);
                at = row.sequence();
                head = row.hash();
                seen.accept(row);
            }
            joined.insert(number, rows);
        }
        return head;
    }

    private static void requireWhole(ChainedRow row, long before, String head) throws TestLogException {
        boolean continues = row.sequence() == before + 1 && row.previousHash().equals(head);
        Optional<String> fault = continues && row.computedHash().equals(row.hash())
                ? EntryReader.fault(row)
                : Optional.of(LogRefusals.words("broken"));
        if (fault.isPresent()) {
            throw LogRefusals.of("join.entry", row.entryId(), row.sequence(), fault.get());
        }
    }

    private void seeVoid(ChainedRow row, Optional<Common> common) {
        if (EntryKind.VOID.word().equals(row.kind())
                && common.isPresent()
                && common.get().ours().label().isEmpty()) {
            EntryBodies.target(row)
                    .ifPresent(
                            target -> voidedElsewhere.put(target, common.get().sequence()));
        }
    }
}
