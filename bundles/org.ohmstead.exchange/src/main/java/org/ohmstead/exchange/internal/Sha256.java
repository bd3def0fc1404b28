// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange.internal;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** Hashes as 64 hexadecimal digits. */
public final class Sha256 {
    private Sha256() {}

    /** Returns a new digest. */
    public static MessageDigest digest() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException missing) {
            throw new IllegalStateException("every Java platform must provide SHA-256", missing);
        }
    }

    /** Returns the hash of a text in UTF-8. */
    public static String hex(String text) {
        return hex(digest().digest(text.getBytes(StandardCharsets.UTF_8)));
    }

    /** Returns a hash as text. */
    public static String hex(byte[] hash) {
        return HexFormat.of().formatHex(hash);
    }
}
