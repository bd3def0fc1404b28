// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import java.util.Optional;

/**
 * Keeps the writings of one session and its closing apart, whichever threads they happen on. Whoever writes holds this object's monitor.
 */
final class DiskGate {
    private FileStamp basedOn = FileStamp.missing();
    private Optional<FileStamp> written = Optional.empty();
    private boolean closed;
    private long lastNumber;

    /** Returns a number above all earlier ones. */
    synchronized long nextNumber() {
        lastNumber++;
        return lastNumber;
    }

    synchronized boolean closed() {
        return closed;
    }

    synchronized void close() {
        closed = true;
    }

    /** Returns how the file must look for a writing that was ordered when it looked in a certain way. */
    synchronized FileStamp expected(FileStamp known) {
        return basedOn == known ? written.orElse(known) : known;
    }

    /** Says that a writing ordered at one look of the file left it with another. */
    synchronized void wrote(FileStamp known, FileStamp now) {
        basedOn = known;
        written = Optional.of(now);
    }
}
