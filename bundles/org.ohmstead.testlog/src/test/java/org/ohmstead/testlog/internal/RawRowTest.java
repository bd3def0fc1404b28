// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.ohmstead.testlog.chain.ChainedRow;

final class RawRowTest {
    private static final ChainedRow ROW = ChainedRow.chained(
            1_234_567, "note", "N0042", "2026-01-31T10:00:00Z", "{\"text\":\"45 °C\\n\"}", "ab".repeat(32));

    private static Optional<RawRow> split(ChainedRow row) {
        String head = String.join(
                        "\n",
                        row.hash(),
                        row.previousHash(),
                        Long.toString(row.sequence()),
                        row.kind(),
                        row.entryId(),
                        row.recordedAt())
                + "\n";
        return RawRow.split(head.getBytes(StandardCharsets.UTF_8), row.body().getBytes(StandardCharsets.UTF_8));
    }

    @Test
    void takesTheColumnsApartAgain() {
        assertEquals(ROW, split(ROW).orElseThrow().row());
        for (long sequence : new long[] {Long.MIN_VALUE, -1, 0, 1, Long.MAX_VALUE}) {
            ChainedRow row = ChainedRow.chained(sequence, "", "", "", "", "");
            assertEquals(row, split(row).orElseThrow().row());
        }
    }

    @Test
    void doesNotGuessWhereAColumnHoldsALineFeed() {
        ChainedRow moved = new ChainedRow(
                ROW.sequence(), ROW.kind() + "\n" + ROW.entryId(), "", ROW.recordedAt(), "", "", ROW.hash());
        assertEquals(Optional.empty(), split(moved));
        assertEquals(Optional.empty(), RawRow.split(new byte[] {'\n', '\n', '\n', '\n', '\n'}, new byte[0]));
        assertEquals(moved, RawRow.of(moved).row());
    }

    /** The hash is computed by {@link ChainedRow}, whose own test holds it against the system's SHA-256. */
    @Test
    void knowsWhetherTheContentGivesTheHash() {
        RowHash hash = new RowHash();
        assertTrue(hash.fits(split(ROW).orElseThrow()));
        assertTrue(hash.fits(RawRow.of(ROW)));
        ChainedRow changed = new ChainedRow(
                ROW.sequence() + 1,
                ROW.kind(),
                ROW.entryId(),
                ROW.recordedAt(),
                ROW.body(),
                ROW.previousHash(),
                ROW.hash());
        assertFalse(hash.fits(split(changed).orElseThrow()));
        assertFalse(hash.fits(RawRow.of(changed)));
    }
}
