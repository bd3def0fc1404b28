// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;

/** Sentences for what goes wrong with a file before its content counts. */
final class FileFailure {
    private FileFailure() {}

    /** Says why a file cannot be read and what to do. */
    static CaptureException reading(Path file, IOException failure) {
        if (failure instanceof NoSuchFileException || Files.notExists(file)) {
            return new CaptureException(Texts.say("file.missing", file), failure);
        }
        if (Files.isDirectory(file)) {
            return new CaptureException(Texts.say("file.folder", file), failure);
        }
        if (failure instanceof AccessDeniedException) {
            return new CaptureException(Texts.say("file.denied", file), failure);
        }
        return new CaptureException(Texts.say("file.unreadable", file, reason(failure)), failure);
    }

    /** Says why a file cannot be written and what to do. */
    static CaptureException writing(Path file, IOException failure) {
        Path folder = file.toAbsolutePath().getParent();
        String problem = Texts.say("file.unwritable.unknown");
        if (folder != null && Files.notExists(folder)) {
            problem = Texts.say("file.unwritable.noFolder");
        } else if (failure instanceof NotDirectoryException || (folder != null && !Files.isDirectory(folder))) {
            problem = Texts.say("file.unwritable.folderIsFile");
        } else if (Files.isDirectory(file)) {
            problem = Texts.say("file.unwritable.isFolder");
        } else if (failure instanceof AccessDeniedException) {
            problem = Texts.say("file.unwritable.denied");
        } else if (!reason(failure).isEmpty()) {
            problem = reason(failure);
        }
        return new CaptureException(Texts.say("file.unwritable", file, problem), failure);
    }

    /** What the system says, if it is more than a file name, with a colon before it. */
    private static String reason(IOException failure) {
        String text = failure instanceof FileSystemException atFile ? atFile.getReason() : failure.getMessage();
        return text == null || text.isBlank() ? "" : Texts.say("file.reason", text);
    }
}
