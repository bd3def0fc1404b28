// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.shared;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.ohmstead.testlog.ChainInfo;
import org.ohmstead.testlog.chain.ChainedRow;
import org.ohmstead.testlog.chain.RowSource;

/** A bench's log in memory, with an own chain and any that were joined. */
final class BenchRows implements RowSource {
    private record Chain(String label, String name, long first, List<ChainedRow> rows) {}

    private final Map<String, Chain> chains = new LinkedHashMap<>();
    private String now = "2026-03-02T09:14:05Z";

    BenchRows() {
        chains.put("", new Chain("", "", 1, new ArrayList<>()));
    }

    /** Returns a log that begins with the same entries, as a copied project does. */
    synchronized BenchRows copy() {
        BenchRows copy = new BenchRows();
        copy.chains.get("").rows().addAll(chains.get("").rows());
        return copy;
    }

    /** Sets the clock of the bench. */
    synchronized BenchRows at(String time) {
        now = time;
        return this;
    }

    private ChainedRow next(List<ChainedRow> rows, String kind, String id, String body) {
        ChainedRow last = rows.isEmpty() ? null : rows.get(rows.size() - 1);
        long sequence = last == null ? 1 : last.sequence() + 1;
        String previous = last == null ? ChainedRow.FIRST_PREVIOUS_HASH : last.hash();
        return ChainedRow.chained(sequence, kind, id, now, body, previous);
    }

    /** Adds a note. */
    synchronized ChainedRow note(String text) {
        List<ChainedRow> rows = chains.get("").rows();
        ChainedRow row = next(
                rows,
                "note",
                String.format(Locale.ROOT, "N%04d", rows.size() + 1),
                "{\"text\":\"" + text + "\",\"who\":\"\"}");
        rows.add(row);
        return row;
    }

    /** Adds some notes. */
    BenchRows notes(String text, int count) {
        for (int number = 1; number <= count; number++) {
            note(text + " " + number);
        }
        return this;
    }

    /** Adds a void of an entry. */
    synchronized void voiding(String target) {
        List<ChainedRow> rows = chains.get("").rows();
        rows.add(next(
                rows,
                "void",
                String.format(Locale.ROOT, "V%04d", rows.size() + 1),
                "{\"entryId\":\"" + target + "\",\"reason\":\"a lead was loose\",\"who\":\"\"}"));
    }

    /** Joins another log's own chain, or what of it comes behind a number. */
    synchronized void join(BenchRows other, String label, String name, long after) {
        List<ChainedRow> rows = other.own();
        chains.put(label, new Chain(label, name, after + 1, new ArrayList<>(rows.subList((int) after, rows.size()))));
    }

    /** Puts another row in the place of one, as somebody with an editor could. */
    synchronized void replace(int index, ChainedRow row) {
        chains.get("").rows().set(index, row);
    }

    synchronized List<ChainedRow> own() {
        return List.copyOf(chains.get("").rows());
    }

    @Override
    public synchronized List<ChainInfo> chains() {
        return chains.values().stream()
                .map(chain -> {
                    List<ChainedRow> rows = chain.rows();
                    boolean empty = rows.isEmpty();
                    return new ChainInfo(
                            empty ? ChainedRow.FIRST_PREVIOUS_HASH : rows.get(0).hash(),
                            chain.label(),
                            chain.name(),
                            rows.size(),
                            empty
                                    ? ChainedRow.FIRST_PREVIOUS_HASH
                                    : rows.get(rows.size() - 1).hash(),
                            chain.first());
                })
                .toList();
    }

    @Override
    public synchronized List<ChainedRow> rows(String chain, long after, int most) {
        return chains.values().stream()
                .filter(each ->
                        !each.rows().isEmpty() && each.rows().get(0).hash().equals(chain))
                .findFirst()
                .map(each -> each.rows().stream()
                        .skip(Math.max(0, after - each.first() + 1))
                        .limit(most)
                        .toList())
                .orElse(List.of());
    }
}
