// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.internal;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import org.ohmstead.testlog.chain.ChainedRow;

/** An entry as the bytes that it is stored as, so that a long chain is checked without making texts of them. */
public final class RawRow {
    final long sequence;
    final byte[] kind;
    final byte[] entryId;
    final byte[] recordedAt;
    final byte[] body;
    final byte[] previousHash;
    final byte[] hash;

    RawRow(long sequence, byte[]... texts) {
        this.sequence = sequence;
        this.kind = texts[0];
        this.entryId = texts[1];
        this.recordedAt = texts[2];
        this.body = texts[3];
        this.previousHash = texts[4];
        this.hash = texts[5];
    }

    /** Makes a row of its short columns in one, with the places of the line feeds between them, and its body. */
    static RawRow split(long sequence, byte[] head, int[] feeds, byte[] body) {
        return new RawRow(
                sequence,
                Arrays.copyOfRange(head, feeds[0] + 1, feeds[1]),
                Arrays.copyOfRange(head, feeds[1] + 1, feeds[2]),
                Arrays.copyOfRange(head, feeds[2] + 1, feeds[3]),
                body,
                Arrays.copyOfRange(head, 0, feeds[0]),
                Arrays.copyOfRange(head, feeds[3] + 1, head.length));
    }

    /** Makes the bytes of a row. */
    public static RawRow of(ChainedRow row) {
        return new RawRow(
                row.sequence(),
                bytes(row.kind()),
                bytes(row.entryId()),
                bytes(row.recordedAt()),
                bytes(row.body()),
                bytes(row.previousHash()),
                bytes(row.hash()));
    }

    /** Returns the row that the bytes mean. */
    public ChainedRow row() {
        return new ChainedRow(
                sequence, text(kind), text(entryId), text(recordedAt), text(body), text(previousHash), text(hash));
    }

    String hashText() {
        return text(hash);
    }

    static String text(byte[] bytes) {
        return new String(bytes, StandardCharsets.UTF_8);
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}
