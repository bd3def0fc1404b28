// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.units.files;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.ohmstead.units.text.Messages;

/**
 * Reads files that lie where the program looks by itself, such as in a project's folder, which may come from anybody: a named pipe there
 * would keep whoever opens it waiting for ever, and a device may have no end.
 */
public final class PlainFiles {
    private PlainFiles() {}

    /**
     * Opens a file for reading, at once or not at all.
     *
     * @param file the file, or a link to one
     * @throws IOException when there is none, it cannot be read, or it is a pipe or a device, which is then not opened
     */
    public static InputStream open(Path file) throws IOException {
        require(file);
        return Files.newInputStream(file);
    }

    /**
     * Refuses pipes, devices and the like.
     *
     * @param file the file, or a link to one; there need be none, and a folder is left to who opens it
     * @throws FileSystemException when it is none of these; its reason says so in a few words
     */
    public static void require(Path file) throws FileSystemException {
        if (Files.exists(file) && !Files.isRegularFile(file) && !Files.isDirectory(file)) {
            throw new FileSystemException(
                    file.toString(), null, Messages.of(PlainFiles.class).text("read.noFile"));
        }
    }
}
