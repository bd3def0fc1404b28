// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.chain;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Objects;

/**
 * An entry as it is stored, wherever that is.
 *
 * @param sequence place in its chain, counted from 1
 * @param kind what it is, as spelled in the file
 * @param entryId its id within its chain, such as R0001
 * @param recordedAt when it was added, in ISO 8601
 * @param body its content: canonical JSON
 * @param previousHash hash of the entry before, 64 hexadecimal digits; zeros for the first
 * @param hash its own hash, 64 hexadecimal digits
 */
public record ChainedRow(
        long sequence, String kind, String entryId, String recordedAt, String body, String previousHash, String hash) {
    /** What stands for the hash before the first entry: 64 zeros. */
    public static final String FIRST_PREVIOUS_HASH = "0".repeat(64);

    /** Of each thread its own, since finding one takes longer than a hash. */
    private static final ThreadLocal<MessageDigest> SHA_256 = ThreadLocal.withInitial(ChainedRow::sha256);

    public ChainedRow {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(entryId, "entryId");
        Objects.requireNonNull(recordedAt, "recordedAt");
        Objects.requireNonNull(body, "body");
        Objects.requireNonNull(previousHash, "previousHash");
        Objects.requireNonNull(hash, "hash");
    }

    /** Returns a row with the hash that its content gives. */
    public static ChainedRow chained(
            long sequence, String kind, String entryId, String recordedAt, String body, String previousHash) {
        ChainedRow unhashed = new ChainedRow(sequence, kind, entryId, recordedAt, body, previousHash, "");
        return new ChainedRow(sequence, kind, entryId, recordedAt, body, previousHash, unhashed.computedHash());
    }

    /** Returns the SHA-256 of previous hash, sequence, kind, id, time and body in UTF-8, with a line feed between them. */
    public String computedHash() {
        String head = previousHash + '\n' + sequence + '\n' + kind + '\n' + entryId + '\n' + recordedAt + '\n';
        MessageDigest digest = SHA_256.get();
        digest.update(head.getBytes(StandardCharsets.UTF_8));
        return HexFormat.of().formatHex(digest.digest(body.getBytes(StandardCharsets.UTF_8)));
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException missing) {
            throw new IllegalStateException("every Java platform must provide SHA-256", missing);
        }
    }
}
