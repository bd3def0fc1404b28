// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange.internal;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import org.ohmstead.exchange.ExchangeException;
import org.ohmstead.units.files.WholeFiles;
import org.ohmstead.units.text.Messages;

/** Writes a file so that a reader sees the old content or the whole new one, never a part. */
public final class WholeFile {
    private static final Messages TEXTS = Messages.of(WholeFile.class);
    /** What fills the file. */
    @FunctionalInterface
    public interface Content {
        /** Writes everything to the stream, which the caller closes. */
        void writeTo(OutputStream stream) throws IOException, ExchangeException;
    }

    private WholeFile() {}

    /**
     * Writes beside the target, forces it to the disk and moves it into place. A link stays a link: what it leads to is replaced. What
     * is neither a file nor a folder (standard output, a device, a named pipe) is written to as it is.
     *
     * @param what what is written, to begin the message with: "The table of the log"
     */
    public static void write(Path target, String what, Content content) throws ExchangeException {
        try {
            if (Files.isDirectory(target)) {
                throw new IOException(TEXTS.text("write.folder"));
            }
            WholeFiles.<ExchangeException>write(target, content::writeTo);
        } catch (IOException failure) {
            throw ExchangeException.failed(TEXTS.text("write.failed", what, target, reason(failure)), failure);
        }
    }

    /** Returns in a few words what the system reported. */
    public static String reason(IOException failure) {
        if (failure instanceof AccessDeniedException denied) {
            return TEXTS.text("reason.denied", denied.getFile());
        }
        if (failure instanceof NoSuchFileException missing) {
            return TEXTS.text("reason.missing", missing.getFile());
        }
        if (failure instanceof FileAlreadyExistsException there) {
            return TEXTS.text("reason.there", there.getFile());
        }
        if (failure instanceof FileSystemException system && system.getReason() != null) {
            return system.getReason();
        }
        return String.valueOf(failure.getMessage());
    }
}
