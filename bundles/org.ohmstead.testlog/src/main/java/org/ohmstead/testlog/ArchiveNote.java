// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog;

import java.util.List;
import java.util.Objects;

/**
 * Says that the project was put away in an archive.
 *
 * @param fileName name of the archive's file, not blank
 * @param fileSha256 hash of its content, 64 hexadecimal digits
 * @param headHash head of the log that lies in it, 64 hexadecimal digits
 * @param capturesTakenOut hashes of the captures that are in the archive only, since they were deleted from the project; may be empty
 * @param who archived it; may be empty
 */
public record ArchiveNote(
        String fileName, String fileSha256, String headHash, List<String> capturesTakenOut, String who) {
    private static final String HASH = "[0-9a-f]{64}";

    public ArchiveNote {
        if (fileName.isBlank()) {
            throw new IllegalArgumentException("fileName is blank; it needs the name of the archive");
        }
        requireHash(fileSha256, "fileSha256");
        requireHash(headHash, "headHash");
        capturesTakenOut = List.copyOf(capturesTakenOut);
        capturesTakenOut.forEach(hash -> requireHash(hash, "capturesTakenOut"));
        Objects.requireNonNull(who, "who");
    }

    private static void requireHash(String value, String name) {
        if (!value.matches(HASH)) {
            throw new IllegalArgumentException(name + " holds \"" + value + "\"; it needs 64 hexadecimal digits");
        }
    }
}
