// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.chain.ChainedRow;

class RowHashTest {
    private static final String TIME = "2026-03-02T09:30:00Z";

    private final Random random = new Random(32);

    /** More rows than lanes, of lengths as they come, among them one far longer than the others and one beyond what lanes take. */
    @Test
    void findsTheSameChangesSideBySideAsOneByOne() {
        List<ChainedRow> chain = chain(700, 2000);
        chain.set(300, row(301, "x".repeat(20_000)));
        chain.set(650, row(651, "x".repeat(70_000)));
        RowHash hash = new RowHash();
        for (int round = 0; round < 20; round++) {
            BitSet changed = new BitSet();
            for (int at = 0; at < chain.size(); at++) {
                changed.set(at, random.nextInt(20) == 0);
            }
            changed.set(300, round % 2 == 0);
            changed.set(650, round % 3 == 0);
            List<RawRow> rows = rows(chain, changed);
            assertEquals(changed, unfit(hash.fit(rows)));
            assertEquals(changed, unfit(hash.fitSideBySide(rows)));
        }
    }

    @Test
    void findsAChangeInEachLane() {
        List<ChainedRow> chain = chain(HashLanes.LANES, 300);
        RowHash hash = new RowHash();
        for (int at = 0; at < chain.size(); at++) {
            BitSet changed = new BitSet();
            changed.set(at);
            assertEquals(changed, unfit(hash.fitSideBySide(rows(chain, changed))));
        }
    }

    @Test
    void takesAnyNumberOfRows() {
        RowHash hash = new RowHash();
        for (int rows : new int[] {0, 1, 15, 16, 17, HashLanes.LANES, HashLanes.LANES + 1}) {
            List<ChainedRow> chain = chain(rows, 300);
            assertEquals(new BitSet(), unfit(hash.fitSideBySide(rows(chain, new BitSet()))), rows + " rows");
        }
    }

    /** So many that most are hashed side by side; every thousandth is changed. */
    @Test
    void findsTheChangesOfALongLog() throws TestLogException {
        List<ChainedRow> chain = chain(25_000, 100);
        BitSet changed = new BitSet();
        for (int at = 999; at < chain.size(); at += 1000) {
            changed.set(at);
        }
        BitSet found = new BitSet();
        List<Long> order = new ArrayList<>();
        try (HashingReader reader = new HashingReader((row, fits) -> {
            order.add(row.sequence);
            found.set((int) row.sequence - 1, !fits);
        })) {
            rows(chain, changed).forEach(reader::read);
            reader.finish();
        }
        assertEquals(changed, found);
        assertEquals(chain.stream().map(ChainedRow::sequence).toList(), order);
    }

    private List<ChainedRow> chain(int rows, int mostCharacters) {
        List<ChainedRow> chain = new ArrayList<>();
        for (int at = 0; at < rows; at++) {
            chain.add(row(at + 1L, "x".repeat(random.nextInt(mostCharacters))));
        }
        return chain;
    }

    private static ChainedRow row(long sequence, String note) {
        String body = "{\"note\":\"" + note + "\"}";
        return ChainedRow.chained(sequence, "note", "N" + sequence, TIME, body, ChainedRow.FIRST_PREVIOUS_HASH);
    }

    /** A changed row has another body than the one that was hashed: one character of it, anywhere. */
    private List<RawRow> rows(List<ChainedRow> chain, BitSet changed) {
        List<RawRow> rows = new ArrayList<>();
        for (int at = 0; at < chain.size(); at++) {
            ChainedRow row = chain.get(at);
            rows.add(RawRow.of(changed.get(at) ? withBody(row, altered(row.body())) : row));
        }
        return rows;
    }

    private String altered(String body) {
        StringBuilder text = new StringBuilder(body);
        int at = random.nextInt(body.length());
        text.setCharAt(at, (char) (text.charAt(at) ^ 1));
        return text.toString();
    }

    private static ChainedRow withBody(ChainedRow row, String body) {
        return new ChainedRow(
                row.sequence(), row.kind(), row.entryId(), row.recordedAt(), body, row.previousHash(), row.hash());
    }

    private static BitSet unfit(boolean[] fit) {
        BitSet unfit = new BitSet();
        for (int at = 0; at < fit.length; at++) {
            unfit.set(at, !fit[at]);
        }
        return unfit;
    }
}
