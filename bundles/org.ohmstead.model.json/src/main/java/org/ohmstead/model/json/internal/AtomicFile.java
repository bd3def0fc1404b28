// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json.internal;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import org.ohmstead.model.json.ProjectFileException;
import org.ohmstead.units.files.WholeFiles;
import org.ohmstead.units.text.Messages;

/** Replaces a file's content in one step. */
public final class AtomicFile {
    private static final Messages TEXTS = Messages.of(AtomicFile.class);

    private AtomicFile() {}

    /** Writes a file so that after a crash at any moment either the old content is there or the new, each whole. */
    public static void write(Path file, byte[] content) throws ProjectFileException {
        String label = JsonSource.label(file);
        if (Files.isDirectory(file)) {
            throw new ProjectFileException(label, TEXTS.text("file.isFolder", file), null);
        }
        try {
            WholeFiles.writeAtOnce(file, content);
        } catch (AtomicMoveNotSupportedException unsupported) {
            throw new ProjectFileException(label, TEXTS.text("file.notAtomic", file), unsupported);
        } catch (IOException failure) {
            throw new ProjectFileException(label, TEXTS.text("file.notWritten", file, reason(failure)), failure);
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
