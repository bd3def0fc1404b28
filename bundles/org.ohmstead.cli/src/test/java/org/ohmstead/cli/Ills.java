// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileSystemException;
import java.nio.file.FileSystems;
import java.nio.file.Path;

/** What is wrong with a disk, and how much room it has. What it refuses it refuses as the systems do that have such faults. */
final class Ills {
    /** Everything that can be wrong. */
    enum Ill {
        /** There is room for some bytes only. */
        FULL,
        /** What was written does not arrive: forcing it to the disk fails. */
        DISK_ERROR,
        /** Nothing can be made, as on a medium that is mounted for reading. */
        READ_ONLY,
        /** Nothing can be made, as the user may not. */
        DENIED,
        /** A file that is there cannot be replaced, as another program has it open. */
        HELD,
        /** The same, but only for a moment. */
        HELD_BRIEFLY,
        /** No file can be replaced in one step. */
        NOT_AT_ONCE,
        /** The same, and the file that should take the place cannot be moved either. */
        NOT_MOVED,
        /** A folder cannot be forced to the disk. */
        NO_FOLDER_FORCE,
        /** Rights cannot be changed. */
        NO_RIGHTS
    }

    private final FaultyDisk disk = new FaultyDisk(FileSystems.getDefault(), this);
    private Ill ill;
    private long room = Long.MAX_VALUE;
    private int refusals;
    private long written;
    private int struck;

    /** Nothing is wrong any more. */
    void heal() {
        ill = null;
        room = Long.MAX_VALUE;
    }

    /** Makes the disk suffer from something. */
    void suffer(Ill newIll) {
        heal();
        ill = newIll;
        refusals = newIll == Ill.HELD_BRIEFLY ? 2 : Integer.MAX_VALUE;
        struck = 0;
    }

    /** Leaves room for so many bytes. */
    void leave(long bytes) {
        suffer(Ill.FULL);
        room = bytes;
    }

    /** Returns how many bytes were written since it was asked last. */
    long takeWritten() {
        long bytes = written;
        written = 0;
        return bytes;
    }

    /** Returns how often something was refused since the disk began to suffer. */
    int struck() {
        return struck;
    }

    /** Returns how many of some bytes find room. */
    int roomFor(int wanted) {
        return (int) Math.min(wanted, room);
    }

    void wrote(int bytes) {
        written += bytes;
        if (room != Long.MAX_VALUE) {
            room -= bytes;
        }
    }

    IOException full() {
        struck++;
        return new IOException("No space left on device");
    }

    void beforeMaking(Path path) throws IOException {
        if (ill == Ill.READ_ONLY) {
            struck++;
            throw new FileSystemException(path.toString(), null, "Read-only file system");
        }
        if (ill == Ill.DENIED) {
            struck++;
            throw new AccessDeniedException(path.toString());
        }
    }

    void beforeForce(boolean folder) throws IOException {
        if (ill == (folder ? Ill.NO_FOLDER_FORCE : Ill.DISK_ERROR)) {
            struck++;
            throw new IOException(folder ? "Invalid argument" : "Input/output error");
        }
    }

    void beforeRights(Path path) throws IOException {
        if (ill == Ill.NO_RIGHTS) {
            struck++;
            throw new FileSystemException(path.toString(), null, "Operation not permitted");
        }
    }

    /** Looks at a move of what is whole to its place. */
    void beforeMove(Path from, Path to, boolean atOnce, boolean replaces) throws IOException {
        boolean held = ill == Ill.HELD || ill == Ill.HELD_BRIEFLY;
        if (held && replaces && refusals > 0) {
            refusals--;
            struck++;
            throw new AccessDeniedException(from.toString(), to.toString(), null);
        }
        boolean notMoved = ill == Ill.NOT_MOVED;
        if ((ill == Ill.NOT_AT_ONCE || notMoved) && atOnce) {
            struck++;
            throw new AtomicMoveNotSupportedException(from.toString(), to.toString(), "Invalid cross-device link");
        }
        if (notMoved && from.getFileName().toString().endsWith(".part")) {
            struck++;
            throw new FileSystemException(from.toString(), to.toString(), "Input/output error");
        }
    }

    /** Returns a folder of the machine as one of a disk with these ills. */
    Path folder(Path real) {
        return disk.path(real);
    }
}
