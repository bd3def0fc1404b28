// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.units.files;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.UUID;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.ohmstead.units.text.Messages;

/** Puts a file that is whole in the place of another. */
final class Placing {
    private static final System.Logger LOGGER = System.getLogger(Placing.class.getName());

    /** How often it is tried where another program, such as one that looks for viruses, holds a file for a moment. */
    private static final int TRIES = 4;

    private static final long FIRST_WAIT_NANOS = TimeUnit.MILLISECONDS.toNanos(40);

    private Placing() {}

    /** Gives the new file the rights of the old one. */
    static void likeBefore(Path part, Path whole) {
        if (!Files.exists(whole) || !hasPosixRights(whole)) {
            return;
        }
        try {
            Files.setPosixFilePermissions(part, Files.getPosixFilePermissions(whole));
        } catch (IOException unsupported) {
            // Many network drives name rights but let no one change them; the content counts more.
            LOGGER.log(System.Logger.Level.DEBUG, "The rights of " + whole + " could not be kept.", unsupported);
        }
    }

    static void place(Path part, Path whole, boolean atOnce) throws IOException {
        long wait = FIRST_WAIT_NANOS;
        for (int left = TRIES; ; left--) {
            try {
                once(part, whole, atOnce);
                forceFolder(whole.toAbsolutePath().getParent());
                return;
            } catch (NoSuchFileException | AtomicMoveNotSupportedException hopeless) {
                throw hopeless;
            } catch (FileSystemException held) {
                if (left == 1 || !Files.exists(part) || Files.isDirectory(whole)) {
                    throw named(held, whole);
                }
                LockSupport.parkNanos(wait);
                wait *= 2;
            }
        }
    }

    private static FileSystemException named(FileSystemException failure, Path whole) {
        FileSystemException plain = new FileSystemException(
                whole.toString(),
                null,
                failure.getReason() == null ? Messages.of(Placing.class).text("place.held") : failure.getReason());
        plain.initCause(failure);
        return plain;
    }

    private static void once(Path part, Path whole, boolean atOnce) throws IOException {
        try {
            Files.move(part, whole, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } catch (AtomicMoveNotSupportedException onSomeShares) {
            if (atOnce) {
                throw onSomeShares;
            }
            if (Files.exists(whole)) {
                swap(part, whole);
            } else {
                Files.move(part, whole);
            }
        }
    }

    /** A plain move that replaces would first delete what is there, and then might fail. */
    private static void swap(Path part, Path whole) throws IOException {
        // Under a name that no tidying takes away, as a crash could come in between.
        Path aside = whole.resolveSibling(whole.getFileName() + "." + UUID.randomUUID() + ".old");
        Files.move(whole, aside);
        boolean moved = false;
        try {
            Files.move(part, whole);
            moved = true;
        } finally {
            if (!moved) {
                putBack(aside, whole);
            }
        }
        Leftovers.drop(aside);
    }

    private static void putBack(Path aside, Path whole) throws IOException {
        try {
            Files.move(aside, whole);
        } catch (IOException failure) {
            FileSystemException told = new FileSystemException(
                    whole.toString(), null, Messages.of(Placing.class).text("place.aside", aside));
            told.initCause(failure);
            throw told;
        }
    }

    private static boolean hasPosixRights(Path file) {
        return file.getFileSystem().supportedFileAttributeViews().contains("posix");
    }

    static void forceFolder(Path folder) {
        if (!hasPosixRights(folder)) {
            return;
        }
        try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
            channel.force(true);
        } catch (IOException unsupported) {
            LOGGER.log(
                    System.Logger.Level.WARNING,
                    "The folder " + folder + " could not be forced to the disk (" + unsupported
                            + "); a power cut now may bring the old file back.");
        }
    }
}
