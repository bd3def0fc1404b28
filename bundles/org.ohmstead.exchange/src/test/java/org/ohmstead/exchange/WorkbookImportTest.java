// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.model.Reading;

/** Workbooks as other programs write them, and as nobody should. */
class WorkbookImportTest {
    private static final ImportSettings PLAIN = ImportSettings.of(Samples.REVISION, "0.1.0");
    private static final String MAIN = "xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\"";
    private static final String OFFICE =
            "xmlns:r=\"http://schemas.openxmlformats.org/officeDocument/2006/relationships\"";

    private final Map<String, String> parts = new LinkedHashMap<>();

    @TempDir
    private Path folder;

    @BeforeEach
    void takeAWorkbookWithSharedTexts() {
        parts.put(
                "xl/workbook.xml",
                "<workbook " + MAIN + " " + OFFICE + "><workbookPr date1904=\"1\"/><sheets>"
                        + "<sheet name=\"notes\" sheetId=\"1\" r:id=\"a\"/>"
                        + "<sheet name=\"Readings\" sheetId=\"2\" r:id=\"b\"/></sheets></workbook>");
        parts.put(
                "xl/_rels/workbook.xml.rels",
                "<Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\">"
                        + "<Relationship Id=\"a\" Type=\"x/worksheet\" Target=\"worksheets/sheet1.xml\"/>"
                        + "<Relationship Id=\"b\" Type=\"x/worksheet\" Target=\"/xl/worksheets/sheet2.xml\"/>"
                        + "<Relationship Id=\"c\" Type=\"x/sharedStrings\" Target=\"sharedStrings.xml\"/>"
                        + "</Relationships>");
        parts.put(
                "xl/sharedStrings.xml",
                "<sst " + MAIN + "><si><t>taken_at_utc</t></si><si><r><t>mo</t></r><r><t>de</t></r></si>"
                        + "<si><t>single</t></si></sst>");
        String heads = "<c t=\"s\"><v>0</v></c><c t=\"s\"><v>1</v></c>";
        StringBuilder rest = new StringBuilder();
        for (String head : new String[] {
            "load_ohm", "frequency_Hz", "end_point", "power_W", "power_std_uncertainty_W", "thd_f_percent", "supply_V"
        }) {
            rest.append("<c t=\"inlineStr\"><is><t>").append(head).append("</t></is></c>");
        }
        // Of the calendar from 1904: 44621.5 days after 2026-03-02 less 1904-01-01 is noon of that day.
        parts.put(
                "xl/worksheets/sheet2.xml",
                "<worksheet " + MAIN + "><sheetData><row r=\"3\">" + heads + rest + "</row><row r=\"5\">"
                        + "<c r=\"A5\"><v>44621.5</v></c><c r=\"B5\" t=\"s\"><v>2</v></c><c r=\"C5\"><v>4</v></c>"
                        + "<c r=\"D5\"><v>1E3</v></c><c r=\"E5\" t=\"str\"><f>A1</f><v>clipping_onset</v></c>"
                        + "<c r=\"F5\"><f>2*44</f><v>88</v></c><c r=\"G5\"><v>0.5</v></c><c r=\"H5\"><v>1</v></c>"
                        + "<c r=\"I5\"><v>14.4</v></c></row></sheetData></worksheet>");
    }

    private Path book() throws Exception {
        Path file = folder.resolve("earlier.xlsx");
        try (OutputStream out = Files.newOutputStream(file);
                ZipOutputStream zip = new ZipOutputStream(out)) {
            for (Map.Entry<String, String> part : parts.entrySet()) {
                zip.putNextEntry(new ZipEntry(part.getKey()));
                zip.write(part.getValue().getBytes(StandardCharsets.UTF_8));
                zip.closeEntry();
            }
        }
        return file;
    }

    private String refusal() {
        return assertThrows(ExchangeException.class, () -> ReadingImport.read(book(), PLAIN))
                .getMessage();
    }

    @Test
    void readsSharedTextsFormulasValuesAndTheOtherCalendar() throws Exception {
        ReadingImport table = ReadingImport.read(book(), PLAIN);
        assertEquals(List.of(), table.faults());
        Reading reading = table.readings().get(0);
        assertEquals(Instant.parse("2026-03-02T12:00:00Z"), reading.takenAt());
        assertEquals(88, reading.channels().get(0).powerWatts());
        assertEquals(1000, reading.stimulus().frequencyHz());
        assertTrue(reading.notes().get(0).endsWith("line 5."));
    }

    @Test
    void namesTheRowOfWhatIsWrong() throws Exception {
        parts.compute("xl/worksheets/sheet2.xml", (name, xml) -> xml.replace("<v>14.4</v>", "<v>-14.4</v>"));
        ImportFault fault = ReadingImport.read(book(), PLAIN).faults().get(0);
        assertEquals("Line 5, column \"supply_V\": \"-14.4\" must be above 0.", fault.text());
    }

    @Test
    void refusesDocumentTypesAndEntities() throws Exception {
        String bomb = "<!DOCTYPE x [<!ENTITY a \"aaaaaaaaaa\"><!ENTITY b \"&a;&a;&a;&a;\">]>";
        parts.compute("xl/worksheets/sheet2.xml", (name, xml) -> bomb + xml.replace("<v>88</v>", "<v>&b;</v>"));
        assertTrue(refusal().contains("document type"), refusal());
        Path secret = Files.writeString(folder.resolve("secret.txt"), "secret");
        parts.compute(
                "xl/worksheets/sheet2.xml",
                (name, xml) -> xml.replace(bomb, "<!DOCTYPE x [<!ENTITY b SYSTEM \"" + secret.toUri() + "\">]>"));
        assertTrue(refusal().contains("document type"), refusal());
    }

    @Test
    void refusesWhatUnfoldsToTooMuch() throws Exception {
        parts.compute(
                "xl/worksheets/sheet2.xml",
                (name, xml) -> xml.replace("<sheetData>", "<sheetData>" + "<row></row>".repeat(1_000_000)));
        assertTrue(refusal().contains("times its size"), refusal());
    }

    @Test
    void refusesTextsThatGoOnWithoutEnd() throws Exception {
        parts.compute(
                "xl/worksheets/sheet2.xml",
                (name, xml) -> xml.replace("<v>88</v>", "<v x=\"" + "a".repeat(2 << 20) + "\">88</v>"));
        assertTrue(refusal().contains("without a tag"), refusal());
        parts.compute(
                "xl/worksheets/sheet2.xml",
                (name, xml) -> xml.replaceAll("<v x=\"a+\">88</v>", "<v>" + "1".repeat(40_000) + "</v>"));
        assertTrue(refusal().contains("more than 32767"), refusal());
    }

    @Test
    void refusesMoreSharedTextThanAllowed() throws Exception {
        parts.compute(
                "xl/sharedStrings.xml",
                (name, xml) ->
                        xml.replace("</sst>", ("<si><t>" + "x".repeat(30_000) + "</t></si>").repeat(40) + "</sst>"));
        TableLimits few = new TableLimits(1 << 20, 1 << 30, 10_000, 10, 50, 32_767, 1_000_000);
        ImportSettings settings = new ImportSettings(
                CsvDialect.COMMA, Optional.empty(), "", OptionalDouble.empty(), Samples.REVISION, "0.1.0", few);
        ExchangeException refused = assertThrows(ExchangeException.class, () -> ReadingImport.read(book(), settings));
        assertTrue(refused.getMessage().contains("more text"), refused.getMessage());
    }

    @Test
    void saysWhatIsDamaged() throws Exception {
        parts.compute("xl/worksheets/sheet2.xml", (name, xml) -> xml.replace("t=\"s\"><v>2<", "t=\"s\"><v>9<"));
        assertTrue(refusal().contains("a text that is not there"), refusal());
        parts.compute("xl/worksheets/sheet2.xml", (name, xml) -> xml.substring(0, 400));
        assertTrue(refusal().contains("no proper XML"), refusal());
        parts.remove("xl/worksheets/sheet2.xml");
        assertTrue(refusal().contains("its part xl/worksheets/sheet2.xml is missing"), refusal());
        parts.remove("xl/workbook.xml");
        assertTrue(refusal().contains("is missing"), refusal());
    }
}
