// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;

/**
 * How the files of a test log looked: entries just added lie in a file beside it.
 *
 * @param main the log
 * @param pending what lies beside it; nothing and an empty file are the same
 */
record LogStamp(String main, String pending) {
    static LogStamp of(Path logFile) {
        return new LogStamp(look(logFile), look(logFile.resolveSibling(logFile.getFileName() + "-wal")));
    }

    private static String look(Path file) {
        try {
            BasicFileAttributes attributes = Files.readAttributes(file, BasicFileAttributes.class);
            return attributes.size() == 0
                    ? ""
                    : attributes.size() + " " + attributes.lastModifiedTime() + " " + attributes.fileKey();
        } catch (IOException notThere) {
            return "";
        }
    }
}
