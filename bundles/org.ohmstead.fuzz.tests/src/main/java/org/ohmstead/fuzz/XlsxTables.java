// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.fuzz;

import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.exchange.CsvDialect;

/**
 * Readings as a workbook. An input that begins as a zip file is read as it is; of any other, the parts of a workbook are made, which stand
 * in it one after the other with a form feed between them: the sheet, the shared texts, the list of sheets, the list of parts. Those that
 * are missing are put in as they usually are.
 */
public final class XlsxTables {
    private static final String SEPARATOR = "\f";
    private static final String BOOK =
            "<workbook xmlns:r=\"r\"><sheets><sheet name=\"readings\" r:id=\"a\"/></sheets></workbook>";
    private static final String RELATIONS = "<Relationships><Relationship Id=\"a\" Target=\"worksheets/sheet1.xml\"/>"
            + "<Relationship Id=\"b\" Type=\"x/sharedStrings\" Target=\"sharedStrings.xml\"/></Relationships>";

    private XlsxTables() {}

    /** Reads any bytes as a workbook. */
    public static void fuzzerTestOneInput(byte[] input) {
        Bounds.hold(() -> read(input));
    }

    private static void read(byte[] input) {
        byte[] workbook = Zip.raw(input) ? input : made(new String(input, StandardCharsets.ISO_8859_1));
        Imports.read(Desk.file("readings.xlsx", workbook), CsvDialect.COMMA, Optional.empty(), OptionalDouble.of(0.01));
    }

    private static byte[] made(String input) {
        String[] parts = input.split(SEPARATOR, 4);
        return new Zip()
                .with("xl/workbook.xml", part(parts, 2, BOOK))
                .with("xl/_rels/workbook.xml.rels", part(parts, 3, RELATIONS))
                .with("xl/sharedStrings.xml", part(parts, 1, "<sst/>"))
                .with("xl/worksheets/sheet1.xml", part(parts, 0, ""))
                .made();
    }

    private static byte[] part(String[] parts, int index, String usual) {
        return (index < parts.length ? parts[index] : usual).getBytes(StandardCharsets.ISO_8859_1);
    }
}
