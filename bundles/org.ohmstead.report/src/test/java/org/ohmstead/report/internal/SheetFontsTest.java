// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class SheetFontsTest {
    private static final Path HANDLES = Path.of("/proc/self/fd");
    private static final int SHEETS = 20;

    private static long openFontFiles() throws IOException {
        long count = 0;
        try (Stream<Path> handles = Files.list(HANDLES)) {
            for (Path handle : handles.toList()) {
                try {
                    count += Files.readSymbolicLink(handle).toString().contains("+~JF") ? 1 : 0;
                } catch (IOException closedMeanwhile) {
                    continue;
                }
            }
        }
        return count;
    }

    @Test
    void aFaceIsReadOnceForAllSheets() throws IOException {
        assumeTrue(Files.isDirectory(HANDLES), "the system does not say which files are open");
        SheetFonts.forCharts();
        long first = openFontFiles();
        for (int sheet = 0; sheet < SHEETS; sheet++) {
            SheetFonts.forCharts();
        }
        assertEquals(first, openFontFiles(), "each sheet leaves an open copy of the type face behind");
    }
}
