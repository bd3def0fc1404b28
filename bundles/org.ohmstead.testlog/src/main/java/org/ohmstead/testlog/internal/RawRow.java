// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.internal;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.Arrays;
import java.util.Optional;
import org.ohmstead.testlog.chain.ChainedRow;

/** An entry as the bytes that it is stored as, so that a long chain is checked without making texts of them. */
public final class RawRow implements HashLanes.Message {
    private static final int HEAD_COLUMNS = 6;
    private static final byte LINE_FEED = '\n';

    final long sequence;
    final byte[] kind;
    final byte[] entryId;
    final byte[] recordedAt;
    final byte[] body;
    final byte[] previousHash;
    final byte[] hash;

    /** From {@link #hashedFrom} on, what is hashed before the body. */
    private final byte[] head;

    private final int hashedFrom;

    /** Makes a row of its columns: kind, id, time, body, previous hash, hash. */
    RawRow(long sequence, byte[]... columns) {
        this.sequence = sequence;
        this.kind = columns[0];
        this.entryId = columns[1];
        this.recordedAt = columns[2];
        this.body = columns[3];
        this.previousHash = columns[4];
        this.hash = columns[5];
        ByteArrayOutputStream hashed = new ByteArrayOutputStream();
        for (byte[] column : new byte[][] {previousHash, bytes(Long.toString(sequence)), kind, entryId, recordedAt}) {
            hashed.writeBytes(column);
            hashed.write(LINE_FEED);
        }
        this.head = hashed.toByteArray();
        this.hashedFrom = 0;
    }

    private RawRow(byte[] head, int[] feeds, byte[] body) {
        this.head = head;
        this.body = body;
        this.hash = Arrays.copyOf(head, feeds[0]);
        this.previousHash = column(feeds, 1);
        this.sequence = number(head, feeds[1] + 1, feeds[2]);
        this.kind = column(feeds, 3);
        this.entryId = column(feeds, 4);
        this.recordedAt = column(feeds, 5);
        this.hashedFrom = feeds[0] + 1;
    }

    private byte[] column(int[] feeds, int column) {
        return Arrays.copyOfRange(head, feeds[column - 1] + 1, feeds[column]);
    }

    /**
     * Makes a row of its short columns in one, each with a line feed behind it, and its body.
     *
     * @param head the hash and what is hashed before the body; not copied
     * @return empty when there are line feeds within the columns, so that they cannot be told apart
     */
    static Optional<RawRow> split(byte[] head, byte[] body) {
        int[] feeds = new int[HEAD_COLUMNS];
        int found = 0;
        for (int at = 0; at < head.length; at++) {
            if (head[at] == LINE_FEED) {
                if (found == HEAD_COLUMNS) {
                    return Optional.empty();
                }
                feeds[found++] = at;
            }
        }
        return found == HEAD_COLUMNS ? Optional.of(new RawRow(head, feeds, body)) : Optional.empty();
    }

    /** Returns a whole number that the database wrote. */
    private static long number(byte[] text, int from, int to) {
        boolean negative = text[from] == '-';
        long number = 0;
        for (int at = negative ? from + 1 : from; at < to; at++) {
            number = 10 * number - (text[at] - '0');
        }
        return negative ? number : -number;
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

    /** Returns the hash that the content gives. */
    byte[] computedHash(MessageDigest digest) {
        digest.update(head, hashedFrom, head.length - hashedFrom);
        return digest.digest(body);
    }

    /** Returns the length of what is hashed in bytes. */
    @Override
    public int length() {
        return head.length - hashedFrom + body.length;
    }

    @Override
    public void copyTo(byte[] target, int at) {
        int headLength = head.length - hashedFrom;
        System.arraycopy(head, hashedFrom, target, at, headLength);
        System.arraycopy(body, 0, target, at + headLength, body.length);
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
