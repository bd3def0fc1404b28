// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import java.io.BufferedOutputStream;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.AccessDeniedException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.UUID;
import org.ohmstead.report.ReportException;

/** Writes a file so that a reader sees the old content or the whole new one, never a part. */
public final class AtomicFile {
    /** What fills the file. */
    @FunctionalInterface
    public interface Content {
        /** Writes everything to the stream, which the caller closes. */
        void writeTo(OutputStream stream) throws IOException;
    }

    private AtomicFile() {}

    /**
     * Writes beside the target, forces it to the disk and moves it into place. A link stays a link: what it leads to is replaced. What
     * is neither a file nor a folder (standard output, a device, a named pipe) is written to as it is.
     *
     * @param target where the file shall be; its folder must exist
     * @param what what is written, to begin the message with: "The results sheet"
     * @param content fills it
     */
    public static void write(Path target, String what, Content content) throws ReportException {
        try {
            if (Files.isDirectory(target)) {
                throw new IOException(Failures.say("failure.isFolder"));
            }
            if (Files.exists(target) && !Files.isRegularFile(target)) {
                pour(target, content);
            } else {
                replace(Files.exists(target) ? target.toRealPath() : target.toAbsolutePath(), content);
            }
        } catch (IOException e) {
            throw new ReportException(Failures.say("failure.write", what, target, reason(e)), e);
        }
    }

    private static void pour(Path stream, Content content) throws IOException {
        try (OutputStream buffered = new BufferedOutputStream(new FileOutputStream(stream.toFile()))) {
            content.writeTo(buffered);
        }
    }

    private static void replace(Path whole, Content content) throws IOException {
        // Not a temporary file of the platform's making: that one would be unreadable for everybody else.
        Path part = whole.resolveSibling("." + whole.getFileName() + "." + UUID.randomUUID() + ".part");
        try {
            fill(part, content);
            moveInto(part, whole);
        } finally {
            Files.deleteIfExists(part);
        }
    }

    private static void fill(Path part, Content content) throws IOException {
        try (FileOutputStream file = new FileOutputStream(part.toFile());
                OutputStream buffered = new BufferedOutputStream(file)) {
            content.writeTo(buffered);
            buffered.flush();
            file.getFD().sync();
        }
    }

    private static void moveInto(Path part, Path whole) throws IOException {
        try {
            Files.move(part, whole, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } catch (AtomicMoveNotSupportedException e) {
            // Some network shares cannot; the file is complete by now, so a plain move is the best that is left.
            Files.move(part, whole, StandardCopyOption.REPLACE_EXISTING);
        }
    }

    private static String reason(IOException failure) {
        if (failure instanceof AccessDeniedException) {
            return Failures.say("failure.denied");
        }
        if (failure instanceof FileSystemException system && system.getReason() != null) {
            return system.getReason();
        }
        // Streams name the file before the reason, and here it would be the one that no one gave.
        String message = String.valueOf(failure.getMessage());
        return message.matches("(?s).*\\.part \\(.*\\)")
                ? message.substring(message.lastIndexOf(".part (") + ".part (".length(), message.length() - 1)
                : message;
    }
}
