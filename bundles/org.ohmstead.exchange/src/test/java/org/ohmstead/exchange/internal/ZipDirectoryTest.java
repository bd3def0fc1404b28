// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.BufferedOutputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.exchange.ExchangeException;

/** Against zip files that the platform writes. */
class ZipDirectoryTest {
    @TempDir
    private Path folder;

    private Path zip(int files, String comment) throws Exception {
        Path file = folder.resolve(files + ".zip");
        try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file));
                ZipOutputStream zip = new ZipOutputStream(out)) {
            zip.setComment(comment);
            for (int number = 0; number < files; number++) {
                zip.putNextEntry(new ZipEntry("sheets/" + number + "\u00e4.html"));
                zip.closeEntry();
            }
        }
        return file;
    }

    @Test
    void readsMoreFilesThanTheFirstFormatCouldCount() throws Exception {
        // More than 65,535 need the end record of 64 bits (APPNOTE.TXT 6.3, 4.3.14).
        List<ZipDirectory.Item> items = ZipDirectory.read(zip(66_000, ""));
        assertEquals(66_000, items.size());
        assertEquals(new ZipDirectory.Item("sheets/65999\u00e4.html", false, false), items.get(65_999));
    }

    @Test
    void passesOverAComment() throws Exception {
        assertEquals(3, ZipDirectory.read(zip(3, "PK\u0005\u0006 is no end")).size());
    }

    @Test
    void refusesEveryTruncation() throws Exception {
        byte[] whole = Files.readAllBytes(zip(2, ""));
        for (int length = 0; length < whole.length; length++) {
            Path cut = Files.write(folder.resolve("cut.zip"), Arrays.copyOf(whole, length));
            assertThrows(ExchangeException.class, () -> ZipDirectory.read(cut));
        }
    }
}
