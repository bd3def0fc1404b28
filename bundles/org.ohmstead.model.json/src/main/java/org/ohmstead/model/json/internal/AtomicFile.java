// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json.internal;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.AccessDeniedException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.UUID;
import org.ohmstead.model.json.ProjectFileException;
import org.ohmstead.units.text.Messages;

/** Replaces a file's content in one step. */
public final class AtomicFile {
    private static final Messages TEXTS = Messages.of(AtomicFile.class);
    private static final System.Logger LOGGER = System.getLogger(AtomicFile.class.getName());

    private AtomicFile() {}

    /** Writes a file so that after a crash at any moment either the old content is there or the new, each whole. */
    public static void write(Path file, byte[] content) throws ProjectFileException {
        String label = JsonSource.label(file);
        if (Files.isDirectory(file)) {
            throw new ProjectFileException(label, TEXTS.text("file.isFolder", file), null);
        }
        try {
            // A link stays a link: what it points to is replaced.
            Path target = Files.exists(file) ? file.toRealPath() : file.toAbsolutePath();
            replace(target, content);
            forceFolder(target.getParent());
        } catch (AtomicMoveNotSupportedException unsupported) {
            throw new ProjectFileException(label, TEXTS.text("file.notAtomic", file), unsupported);
        } catch (IOException failure) {
            throw new ProjectFileException(label, TEXTS.text("file.notWritten", file, reason(failure)), failure);
        }
    }

    private static void replace(Path target, byte[] content) throws IOException {
        Path fresh = target.resolveSibling("." + target.getFileName() + "." + UUID.randomUUID() + ".tmp");
        boolean moved = false;
        try {
            try (FileChannel channel =
                    FileChannel.open(fresh, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
                ByteBuffer rest = ByteBuffer.wrap(content);
                while (rest.hasRemaining()) {
                    channel.write(rest);
                }
                channel.force(true);
            }
            if (Files.exists(target) && hasPosixRights(target)) {
                Files.setPosixFilePermissions(fresh, Files.getPosixFilePermissions(target));
            }
            Files.move(fresh, target, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
            moved = true;
        } finally {
            if (!moved) {
                Files.deleteIfExists(fresh);
            }
        }
    }

    private static boolean hasPosixRights(Path file) {
        return file.getFileSystem().supportedFileAttributeViews().contains("posix");
    }

    /** Forces the folder's entry to the disk where the system knows how; the content is already there. */
    private static void forceFolder(Path folder) {
        if (!hasPosixRights(folder)) {
            return;
        }
        try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
            channel.force(true);
        } catch (IOException unsupported) {
            LOGGER.log(
                    System.Logger.Level.WARNING,
                    "The folder " + folder
                            + " could not be forced to the disk; a power cut now may bring the old file back.",
                    unsupported);
        }
    }

    /** Returns in a few words what the system reported. */
    public static String reason(IOException failure) {
        if (failure instanceof AccessDeniedException) {
            return TEXTS.text("reason.denied");
        }
        if (failure instanceof NoSuchFileException missing) {
            return TEXTS.text("reason.missing", missing.getFile());
        }
        if (failure instanceof FileSystemException system && system.getReason() != null) {
            return system.getReason();
        }
        String message = failure.getMessage();
        return message == null ? failure.getClass().getSimpleName() : message;
    }
}
