// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.zip.ZipFile;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamReader;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Specimen;
import org.ohmstead.testlog.TestLog;

class LogWorkbookTest {
    private static final LogWorkbook.About ABOUT =
            new LogWorkbook.About("Kestrel", "0.1.0", Instant.parse("2026-11-26T12:00:00Z"), "ef".repeat(32));

    @TempDir
    private Path folder;

    private Path book(Reading... readings) throws Exception {
        Path file = folder.resolve("log.xlsx");
        try (TestLog log = TestLog.open(folder.resolve("log.db"))) {
            for (Reading reading : readings) {
                log.append(reading);
            }
            log.append(Samples.figures(1));
            LogWorkbook.write(EntrySource.of(Samples.entries(log)), ABOUT, file);
        }
        return file;
    }

    private static String part(Path book, String name) throws Exception {
        try (ZipFile zip = new ZipFile(book.toFile());
                InputStream in = zip.getInputStream(zip.getEntry(name))) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    /** A cell as it stands in the sheet's XML (ISO/IEC 29500-1, 18.3.1.4). */
    private record Cell(String type, String style, String text) {}

    private static Map<String, Cell> cells(Path book, String name) throws Exception {
        Map<String, Cell> cells = new HashMap<>();
        try (ZipFile zip = new ZipFile(book.toFile());
                InputStream in = zip.getInputStream(zip.getEntry(name))) {
            XMLStreamReader xml = XMLInputFactory.newDefaultFactory().createXMLStreamReader(in);
            String place = "";
            String type = "";
            String style = "";
            StringBuilder text = new StringBuilder();
            while (xml.hasNext()) {
                int event = xml.next();
                if (event == XMLStreamConstants.START_ELEMENT
                        && xml.getLocalName().equals("c")) {
                    place = xml.getAttributeValue(null, "r");
                    type = String.valueOf(xml.getAttributeValue(null, "t"));
                    style = String.valueOf(xml.getAttributeValue(null, "s"));
                    text.setLength(0);
                } else if (event == XMLStreamConstants.CHARACTERS) {
                    text.append(xml.getText());
                } else if (event == XMLStreamConstants.END_ELEMENT
                        && xml.getLocalName().equals("c")) {
                    cells.put(place, new Cell(type, style, text.toString()));
                }
            }
        }
        return cells;
    }

    @Test
    void hasTheFourSheetsInOrder() throws Exception {
        String book = part(book(Samples.reading(1)), "xl/workbook.xml");
        List<String> names = new ArrayList<>();
        for (String sheet : book.split("<sheet ")) {
            if (sheet.startsWith("name=")) {
                names.add(sheet.split("\"")[1]);
            }
        }
        assertEquals(List.of("readings", "sweep levels", "figures", "about"), names);
    }

    @Test
    void writesNumbersAsNumbersTimesAsTimesAndTextsAsTexts() throws Exception {
        Reading reading = Samples.reading(
                1,
                Samples.provenance(Optional.of(new Specimen("=HYPERLINK(\"x\")", "0042", "bench 1"))),
                "+1+1 and <tags> & \u0001 control");
        Path book = book(reading);
        Map<String, Cell> cells = cells(book, "xl/worksheets/sheet1.xml");
        assertEquals("power_W", cells.get("S1").text());
        assertEquals("71.5", cells.get("S2").text());
        assertTrue(List.of("n", "null").contains(cells.get("S2").type()));
        assertEquals("70.25", cells.get("S3").text());
        // 2026-03-02 is day 46083 of spreadsheets (ISO/IEC 29500-1, 18.17.4.1); 09:15:05.250 of 86,400 s.
        assertEquals(
                46083 + (9 * 3600 + 15 * 60 + 5.25) / 86_400,
                Double.parseDouble(cells.get("C2").text()),
                1e-9);
        assertFalse(cells.get("C2").style().equals("null"));
        assertTrue(part(book, "xl/styles.xml").contains("yyyy-mm-dd hh:mm:ss.000"));
        Cell note = cells.get("AE2");
        assertEquals("inlineStr", note.type());
        assertEquals("+1+1 and <tags> & _x0001_ control", note.text());
        assertEquals("=HYPERLINK(\"x\")", cells.get("AL2").text());
        assertEquals("inlineStr", cells.get("AL2").type());
        assertFalse(part(book, "xl/worksheets/sheet1.xml").contains("<f>"));
    }

    @Test
    void freezesTheHeadings() throws Exception {
        String sheet = part(book(Samples.reading(1)), "xl/worksheets/sheet1.xml");
        assertTrue(sheet.contains("state=\"frozen\""), sheet.substring(0, 600));
        assertTrue(sheet.contains("ySplit=\"1\""), sheet.substring(0, 600));
    }

    @Test
    void hasLevelsFiguresAndWhatItIs() throws Exception {
        Path book = book(Samples.reading(1));
        Map<String, Cell> levels = cells(book, "xl/worksheets/sheet2.xml");
        assertEquals("drive_dB", levels.get("E1").text());
        assertEquals(-3, Double.parseDouble(levels.get("E2").text()));
        assertEquals(80, Double.parseDouble(levels.get("G3").text()));
        assertEquals("yes", levels.get("J3").text());
        Map<String, Cell> figures = cells(book, "xl/worksheets/sheet3.xml");
        assertEquals("26.1", figures.get("M2").text());
        assertEquals("dB", figures.get("O2").text());
        assertEquals(120, Double.parseDouble(figures.get("M3").text()));
        Map<String, Cell> about = cells(book, "xl/worksheets/sheet4.xml");
        assertEquals("Kestrel", about.get("B2").text());
        assertEquals("ef".repeat(32), about.get("B5").text());
    }

    @Test
    void cutsTextsThatNoCellCanHold() throws Exception {
        String text = cells(book(Samples.reading(1, "x".repeat(40_000))), "xl/worksheets/sheet1.xml")
                .get("AE2")
                .text();
        assertEquals(32_767, text.length());
        assertTrue(text.endsWith("\u2026"));
    }

    @Test
    void comesBackAsReadings() throws Exception {
        Reading reading = Samples.reading(
                1, Samples.provenance(Optional.of(new Specimen("=Larkspur", "0042", "bench 1"))), "'=note");
        ReadingImport table =
                ReadingImport.read(book(reading, Samples.reading(2)), ImportSettings.of(Samples.REVISION, "0.1.0"));
        assertEquals(List.of(), table.faults());
        assertEquals(2, table.readings().size());
        Reading back = table.readings().get(0);
        assertEquals(reading.takenAt(), back.takenAt());
        assertEquals(reading.provenance().specimen(), back.provenance().specimen());
        assertEquals("'=note", back.notes().get(2));
        assertEquals(
                reading.channels().get(1).powerWatts(), back.channels().get(1).powerWatts());
        assertEquals(reading.conditions(), back.conditions());
    }
}
