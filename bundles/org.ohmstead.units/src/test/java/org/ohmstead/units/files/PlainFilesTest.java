// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.units.files;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.InputStream;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

@Timeout(value = 20, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class PlainFilesTest {
    @TempDir
    private Path folder;

    private static void makePipe(Path pipe) throws Exception {
        assumeTrue(Files.isExecutable(Path.of("/usr/bin/mkfifo")), "this system has no named pipes");
        assertEquals(0, new ProcessBuilder("mkfifo", pipe.toString()).start().waitFor());
    }

    @Test
    void filesAndLinksToThemAreRead() throws Exception {
        Path file = Files.writeString(folder.resolve("a.txt"), "held");
        try (InputStream in = PlainFiles.open(file)) {
            assertEquals("held", new String(in.readAllBytes()));
        }
        Path link = folder.resolve("link.txt");
        try {
            Files.createSymbolicLink(link, file);
        } catch (FileSystemException | UnsupportedOperationException none) {
            assumeTrue(false, "no links here");
        }
        try (InputStream in = PlainFiles.open(link)) {
            assertEquals("held", new String(in.readAllBytes()));
        }
    }

    @Test
    void whatIsNotThereIsNotThere() {
        assertThrows(NoSuchFileException.class, () -> PlainFiles.open(folder.resolve("none")));
    }

    @Test
    void pipesAndDevicesAreNotOpened() throws Exception {
        Path pipe = folder.resolve("pipe");
        makePipe(pipe);
        Path link = Files.createSymbolicLink(folder.resolve("link"), pipe);
        for (Path wrong : new Path[] {pipe, link, Path.of("/dev/zero")}) {
            FileSystemException refused = assertThrows(FileSystemException.class, () -> PlainFiles.open(wrong));
            assertEquals("it is a pipe or a device and no file", refused.getReason());
            assertEquals(wrong.toString(), refused.getFile());
        }
    }
}
