// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import java.io.BufferedOutputStream;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.AtomicMoveNotSupportedException;
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
     * Writes beside the target, forces it to the disk and moves it into place.
     *
     * @param target where the file shall be; its folder must exist
     * @param what what is written, to begin the message with: "The results sheet"
     * @param content fills it
     */
    public static void write(Path target, String what, Content content) throws ReportException {
        Path whole = target.toAbsolutePath();
        // Not a temporary file of the platform's making: that one would be unreadable for everybody else.
        Path part = whole.resolveSibling("." + whole.getFileName() + "." + UUID.randomUUID() + ".part");
        try {
            try {
                fill(part, content);
                moveInto(part, whole);
            } finally {
                Files.deleteIfExists(part);
            }
        } catch (IOException e) {
            throw new ReportException(
                    what + " could not be written to " + target + ": " + reason(e)
                            + ". Check that the folder exists, may be written to and has space left.",
                    e);
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
        String message = failure.getMessage();
        return failure.getClass().getSimpleName() + (message == null ? "" : " (" + message + ")");
    }
}
