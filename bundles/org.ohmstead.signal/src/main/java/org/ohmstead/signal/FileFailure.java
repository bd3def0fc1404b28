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
import org.ohmstead.units.text.Said;

/** Sentences for what goes wrong with a file before its content counts. */
final class FileFailure {
    private FileFailure() {}

    /** Says why a file cannot be read and what to do. */
    static CaptureException reading(Path file, IOException failure) {
        if (failure instanceof NoSuchFileException || Files.notExists(file)) {
            return new CaptureException(Texts.said("file.missing", file), failure);
        }
        if (Files.isDirectory(file)) {
            return new CaptureException(Texts.said("file.folder", file), failure);
        }
        if (failure instanceof AccessDeniedException) {
            return new CaptureException(Texts.said("file.denied", file), failure);
        }
        return new CaptureException(Said.of(() -> Texts.say("file.unreadable", file, reason(failure))), failure);
    }

    /** Says why a file cannot be written and what to do. */
    static CaptureException writing(Path file, IOException failure) {
        return new CaptureException(Said.of(() -> Texts.say("file.unwritable", file, problem(file, failure))), failure);
    }

    private static String problem(Path file, IOException failure) {
        Path folder = file.toAbsolutePath().getParent();
        if (folder != null && Files.notExists(folder)) {
            return Texts.say("file.unwritable.noFolder");
        }
        if (failure instanceof NotDirectoryException || (folder != null && !Files.isDirectory(folder))) {
            return Texts.say("file.unwritable.folderIsFile");
        }
        if (Files.isDirectory(file)) {
            return Texts.say("file.unwritable.isFolder");
        }
        if (failure instanceof AccessDeniedException) {
            return Texts.say("file.unwritable.denied");
        }
        if (!reason(failure).isEmpty()) {
            return reason(failure);
        }
        return Texts.say("file.unwritable.unknown");
    }

    /** What the system says, if it is more than a file name, with a colon before it. */
    private static String reason(IOException failure) {
        String text = failure instanceof FileSystemException atFile ? atFile.getReason() : failure.getMessage();
        return text == null || text.isBlank() ? "" : Texts.say("file.reason", text);
    }
}
