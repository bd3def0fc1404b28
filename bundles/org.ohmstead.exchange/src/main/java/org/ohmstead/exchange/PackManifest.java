// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange;

import java.time.Instant;
import java.util.List;
import java.util.Objects;

/**
 * What a packed project says about itself.
 *
 * @param formatVersion version of the format, from 1
 * @param softwareVersion version of the software that packed it
 * @param packedAt when
 * @param title title of the project
 * @param headHash hash of the last entry of the log in it, 64 hexadecimal digits; zeros when it has no log or an empty one
 * @param entries entries of that log, those of joined chains among them
 * @param files everything in it but this
 */
public record PackManifest(
        int formatVersion,
        String softwareVersion,
        Instant packedAt,
        String title,
        String headHash,
        long entries,
        List<PackedFile> files) {
    /** The version of the format that is written, and the newest that is read. */
    public static final int FORMAT_VERSION = 1;

    /** Checks that nothing is missing, and copies the list. */
    public PackManifest {
        Objects.requireNonNull(softwareVersion, "softwareVersion");
        Objects.requireNonNull(packedAt, "packedAt");
        Objects.requireNonNull(title, "title");
        Objects.requireNonNull(headHash, "headHash");
        files = List.copyOf(files);
    }

    /**
     * A file of the project.
     *
     * @param name its place in the project's folder, with / between the parts
     * @param bytes its size
     * @param sha256 hash of its content, 64 hexadecimal digits
     */
    public record PackedFile(String name, long bytes, String sha256) {}
}
