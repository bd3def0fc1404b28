// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.internal;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/**
 * An entry as it stands in the table.
 *
 * @param sequence place in the log, counted from 1
 * @param kind what it is, as spelled in the file
 * @param entryId its id
 * @param recordedAt when it was added, in ISO 8601
 * @param body its content
 * @param previousHash hash of the entry before
 * @param hash its own hash
 */
public record StoredRow(
        long sequence, String kind, String entryId, String recordedAt, String body, String previousHash, String hash) {
    /** What stands for the hash before the first entry. */
    public static final String FIRST_PREVIOUS_HASH = "0".repeat(64);

    /** Returns a row with the hash that its content gives. */
    static StoredRow chained(
            long sequence, String kind, String entryId, String recordedAt, String body, String previousHash) {
        StoredRow unhashed = new StoredRow(sequence, kind, entryId, recordedAt, body, previousHash, "");
        return new StoredRow(sequence, kind, entryId, recordedAt, body, previousHash, unhashed.computedHash());
    }

    /** Returns the SHA-256 of previous hash, sequence, kind, id, time and body in UTF-8, with a line feed between them. */
    String computedHash() {
        String text = String.join("\n", previousHash, Long.toString(sequence), kind, entryId, recordedAt, body);
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(digest);
        } catch (NoSuchAlgorithmException missing) {
            throw new IllegalStateException("every Java platform must provide SHA-256", missing);
        }
    }
}
