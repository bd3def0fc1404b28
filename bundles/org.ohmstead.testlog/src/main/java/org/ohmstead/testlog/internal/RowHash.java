// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.internal;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;

/** Computes the hashes of rows, one after the other. */
public final class RowHash {
    private static final int HASH_BYTES = 32;
    private static final byte LINE_FEED = '\n';
    private static final int USUAL_HEADER_BYTES = 256;

    private final MessageDigest digest;
    private byte[] header = new byte[USUAL_HEADER_BYTES];

    /** Prepares for rows. */
    public RowHash() {
        try {
            digest = MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException missing) {
            throw new IllegalStateException("every Java platform must provide SHA-256", missing);
        }
    }

    /** Returns whether the content of a row gives the hash that is stored with it. */
    public boolean fits(RawRow row) {
        byte[] number = Long.toString(row.sequence).getBytes(StandardCharsets.US_ASCII);
        int needed = row.previousHash.length
                + number.length
                + row.kind.length
                + row.entryId.length
                + row.recordedAt.length
                + 5;
        if (header.length < needed) {
            header = new byte[2 * needed];
        }
        int length = put(row.previousHash, 0);
        length = put(number, length);
        length = put(row.kind, length);
        length = put(row.entryId, length);
        length = put(row.recordedAt, length);
        digest.update(header, 0, length);
        return isText(digest.digest(row.body), row.hash);
    }

    private int put(byte[] bytes, int at) {
        System.arraycopy(bytes, 0, header, at, bytes.length);
        header[at + bytes.length] = LINE_FEED;
        return at + bytes.length + 1;
    }

    private static boolean isText(byte[] hash, byte[] text) {
        if (text.length != 2 * HASH_BYTES) {
            return false;
        }
        for (int at = 0; at < HASH_BYTES; at++) {
            int value = hash[at] & 0xFF;
            if (text[2 * at] != digit(value >> 4) || text[2 * at + 1] != digit(value & 0xF)) {
                return false;
            }
        }
        return true;
    }

    private static int digit(int value) {
        return value < 10 ? '0' + value : 'a' + value - 10;
    }
}
