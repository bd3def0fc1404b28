// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.internal;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;

/** Computes the hashes of rows, one after the other. */
public final class RowHash {
    private static final int HASH_BYTES = 32;

    private final MessageDigest digest;

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
        return isText(row.computedHash(digest), row.hash);
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
