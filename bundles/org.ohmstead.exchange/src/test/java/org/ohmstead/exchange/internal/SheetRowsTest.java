// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.zip.ZipFile;
import org.dhatim.fastexcel.Workbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SheetRowsTest {
    @Test
    void goesOnInAFurtherSheetWhenOneIsFull(@TempDir Path folder) throws Exception {
        Path file = folder.resolve("many.xlsx");
        try (OutputStream out = Files.newOutputStream(file);
                Workbook book = new Workbook(out, "Ohmstead", "0.1")) {
            try (SheetRows rows = new SheetRows(book, "readings", List.of("number"), 1001)) {
                for (int number = 1; number <= 2500; number++) {
                    rows.addOrStop(List.of(Cell.of(number)));
                }
            }
        }
        try (ZipFile zip = new ZipFile(file.toFile())) {
            assertEquals(1001, rows(zip, "xl/worksheets/sheet1.xml"));
            assertEquals(1001, rows(zip, "xl/worksheets/sheet2.xml"));
            assertEquals(501, rows(zip, "xl/worksheets/sheet3.xml"));
            String names = text(zip, "xl/workbook.xml");
            assertTrue(names.contains("\"readings 2\"") && names.contains("\"readings 3\""), names);
            assertTrue(text(zip, "xl/worksheets/sheet3.xml").contains("<v>2500.0</v>"));
        }
    }

    private static int rows(ZipFile zip, String part) throws Exception {
        return text(zip, part).split("<row ").length - 1;
    }

    private static String text(ZipFile zip, String part) throws Exception {
        try (InputStream in = zip.getInputStream(zip.getEntry(part))) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }
}
