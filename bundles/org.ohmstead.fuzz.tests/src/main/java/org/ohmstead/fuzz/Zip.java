// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.fuzz;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.zip.CRC32;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/** Makes zip files, so that what is tried reaches what is in them instead of breaking on their sums. */
final class Zip {
    private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    private final ZipOutputStream zip = new ZipOutputStream(bytes, StandardCharsets.UTF_8);

    /** Adds a file, not packed. A name that a zip cannot have twice or at all is left out. */
    Zip with(String name, byte[] content) {
        CRC32 sum = new CRC32();
        sum.update(content);
        ZipEntry entry = new ZipEntry(name);
        entry.setMethod(ZipEntry.STORED);
        entry.setSize(content.length);
        entry.setCrc(sum.getValue());
        try {
            zip.putNextEntry(entry);
            zip.write(content);
            zip.closeEntry();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return this;
    }

    byte[] made() {
        try {
            zip.close();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }

    /** Whether an input is meant as a zip file as it stands. */
    static boolean raw(byte[] input) {
        return input.length > 1 && input[0] == 'P' && input[1] == 'K';
    }
}
