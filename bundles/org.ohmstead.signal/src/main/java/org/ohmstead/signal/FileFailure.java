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
            return new CaptureException(file + " does not exist. Check the name.", failure);
        }
        if (Files.isDirectory(file)) {
            return new CaptureException(file + " is a folder, not a file. Choose a file inside it.", failure);
        }
        if (failure instanceof AccessDeniedException) {
            return new CaptureException(
                    file + " may not be read. Ask its owner for permission, or for a copy.", failure);
        }
        return new CaptureException(
                file + " cannot be read" + reason(failure) + ". Check that its drive is connected, or copy it again.",
                failure);
    }

    /** Says why a file cannot be written and what to do. */
    static CaptureException writing(Path file, IOException failure) {
        Path folder = file.toAbsolutePath().getParent();
        String problem = ", for a reason the system does not tell";
        if (folder != null && Files.notExists(folder)) {
            problem = ": its folder does not exist";
        } else if (failure instanceof NotDirectoryException || (folder != null && !Files.isDirectory(folder))) {
            problem = ": what should be its folder is a file";
        } else if (Files.isDirectory(file)) {
            problem = ": a folder of that name is there";
        } else if (failure instanceof AccessDeniedException) {
            problem = ": its folder may not be written to";
        } else if (!reason(failure).isEmpty()) {
            problem = reason(failure);
        }
        return new CaptureException(
                file + " cannot be written" + problem
                        + ". Check that the folder is there, may be written to and has room.",
                failure);
    }

    /** What the system says, if it is more than a file name, with a colon before it. */
    private static String reason(IOException failure) {
        String text = failure instanceof FileSystemException atFile ? atFile.getReason() : failure.getMessage();
        return text == null || text.isBlank() ? "" : ": " + text;
    }
}
