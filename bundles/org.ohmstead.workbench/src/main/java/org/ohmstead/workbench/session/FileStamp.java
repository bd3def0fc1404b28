// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;

/**
 * How a file looked when it was last read or written here: first what is cheap to compare, then the hash.
 *
 * @param sizeBytes its size, or -1 when there was no file
 * @param modifiedAt when it was last changed
 * @param key what tells it from a file that took its place, where the system knows
 * @param lookedAt when this was found out
 * @param sha256 hash of its bytes; empty when there was no file or it is not known
 */
record FileStamp(long sizeBytes, FileTime modifiedAt, Optional<Object> key, Instant lookedAt, String sha256) {
    /** A file system's clock ticks this slowly at worst: a change within it may leave size and time as they were. */
    private static final Duration COARSEST_TICK = Duration.ofSeconds(2);

    private static final long NONE = -1;

    static FileStamp missing() {
        return new FileStamp(NONE, FileTime.fromMillis(0), Optional.empty(), Instant.EPOCH, "");
    }

    /** Looks at a file, whose hash is not taken from it. */
    static FileStamp of(Path file, String sha256) throws IOException {
        Instant now = Instant.now();
        BasicFileAttributes attributes = Files.readAttributes(file, BasicFileAttributes.class);
        return new FileStamp(
                attributes.size(),
                attributes.lastModifiedTime(),
                Optional.ofNullable(attributes.fileKey()),
                now,
                sha256);
    }

    /** Looks at a file that need not be there. */
    static FileStamp orMissing(Path file) {
        try {
            return of(file, "");
        } catch (IOException notThere) {
            return missing();
        }
    }

    boolean isMissing() {
        return sizeBytes == NONE;
    }

    FileStamp withSha256(String newSha256) {
        return new FileStamp(sizeBytes, modifiedAt, key, lookedAt, newSha256);
    }

    /** Returns whether a later stamp shows for certain the same content, without its hash. */
    boolean surelySameAs(FileStamp later) {
        boolean settled = lookedAt.isAfter(modifiedAt.toInstant().plus(COARSEST_TICK));
        return settled
                && !sha256.isEmpty()
                && sizeBytes == later.sizeBytes
                && modifiedAt.equals(later.modifiedAt)
                && key.equals(later.key);
    }
}
