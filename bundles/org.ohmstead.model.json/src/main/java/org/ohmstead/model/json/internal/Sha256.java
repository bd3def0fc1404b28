// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json.internal;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** The hash of FIPS 180-4. */
public final class Sha256 {
    private Sha256() {}

    /** Returns the SHA-256 of some bytes as 64 hexadecimal digits in lower case. */
    public static String hex(byte[] content) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(content));
        } catch (NoSuchAlgorithmException missing) {
            throw new IllegalStateException("every Java platform must provide SHA-256", missing);
        }
    }
}
