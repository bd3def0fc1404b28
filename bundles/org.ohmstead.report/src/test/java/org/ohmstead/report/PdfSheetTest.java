// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.font.FontMappers;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.graphics.PDXObject;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.model.EndPointOutcome;

class PdfSheetTest {
    @TempDir
    static Path folder;

    private static ResultsSheet sheet;
    private static Path file;
    private static String text;

    @BeforeAll
    static void write() throws Exception {
        sheet = SampleSheet.plain().build();
        file = folder.resolve("sheet.pdf");
        PdfSheet.write(sheet, file);
        text = textOf(file);
    }

    private static String textOf(Path path) throws IOException {
        try (PDDocument document = Loader.loadPDF(path.toFile())) {
            return new PDFTextStripper().getText(document);
        }
    }

    private static String withoutSpace(String words) {
        return words.replaceAll("[\\s\u00a0]+", "");
    }

    @Test
    void hasSeveralNumberedPagesWithTheHeadHash() throws Exception {
        try (PDDocument document = Loader.loadPDF(file.toFile())) {
            int pages = document.getNumberOfPages();
            assertTrue(pages > 1);
            PDFTextStripper stripper = new PDFTextStripper();
            for (int page = 1; page <= pages; page++) {
                stripper.setStartPage(page);
                stripper.setEndPage(page);
                String words = stripper.getText(document);
                assertTrue(withoutSpace(words).contains("Page" + page + "of" + pages), words);
                assertTrue(words.contains(SampleSheet.HEAD_HASH.substring(0, 10)), words);
            }
        }
    }

    @Test
    void holdsTheKeyTextsAsText() {
        String joined = withoutSpace(text);
        for (String expected : new String[] {
            "3 of 6 ratings are met, 1 falls short, 1 is undecided",
            "falls short",
            "undecided",
            "not tested",
            "165.7 \u00b1 2.8",
            "\u2265 165.7",
            "Voided: A probe had slipped off.",
            "OVERDUE",
            "IEEE Std 1057",
            SampleSheet.HEAD_HASH
        }) {
            assertTrue(joined.contains(withoutSpace(expected)), expected);
        }
        for (SheetReading entry : sheet.readings()) {
            assertTrue(text.contains(entry.entryId()), entry.entryId());
        }
    }

    @Test
    void isShortAndEndsOnAPageWorthTurning() throws Exception {
        try (PDDocument document = Loader.loadPDF(file.toFile())) {
            int pages = document.getNumberOfPages();
            assertTrue(pages <= 7, pages + " pages");
            PDFTextStripper stripper = new PDFTextStripper();
            stripper.setStartPage(pages);
            String last = stripper.getText(document);
            assertTrue(last.contains("Log and versions"), last);
            assertTrue(last.lines().count() >= 8, last);
        }
    }

    @Test
    void warnsAndShowsTheFirstChartOnThePageOfTheRatings() throws Exception {
        try (PDDocument document = Loader.loadPDF(file.toFile())) {
            PDFTextStripper stripper = new PDFTextStripper();
            stripper.setEndPage(1);
            String first = withoutSpace(stripper.getText(document));
            for (String expected : new String[] {
                "hot load resistors",
                "batteries",
                "Ratings and what was measured",
                "Power against supply voltage",
                "Power per channel (W)",
                "Supply at the amplifier's terminals (V)"
            }) {
                assertTrue(first.contains(withoutSpace(expected)), expected);
            }
        }
    }

    @Test
    void setsEachReadingsIdTimeAndOutcomeUnbrokenOnOneLine() {
        // The note below the table holds these words too, so each must be on the line of its own reading.
        List<String> lines =
                text.lines().map(line -> line.replace('\u00a0', ' ')).toList();
        for (SheetReading entry : sheet.readings()) {
            boolean reached = entry.reading().channels().get(0).outcome() == EndPointOutcome.REACHED;
            String time = entry.reading().takenAt().toString().substring(11, 19);
            assertTrue(
                    lines.stream()
                            .anyMatch(line -> line.startsWith(entry.entryId() + " " + time + " ")
                                    && line.contains(reached ? " reached" : " \u2265 bound")),
                    entry.entryId());
        }
    }

    @Test
    void bearsTheSheetsTimeAndIsTheSameEachTime() throws Exception {
        try (PDDocument document = Loader.loadPDF(file.toFile())) {
            assertEquals(
                    SampleSheet.PRODUCED,
                    document.getDocumentInformation().getCreationDate().toInstant());
        }
        Path again = folder.resolve("again.pdf");
        PdfSheet.write(sheet, again);
        assertEquals(-1, Files.mismatch(file, again));
    }

    @Test
    void keepsTheWordsOfChartsAsText() {
        String joined = withoutSpace(text);
        assertTrue(joined.contains(withoutSpace("Supply at the amplifier's terminals (V)")));
        assertTrue(joined.contains(withoutSpace("Output power (W)")));
        assertTrue(joined.contains("2\u03a9,B"), "legend of the first chart");
    }

    @Test
    void embedsEveryFontAndHoldsNoPictureOfPixels() throws Exception {
        try (PDDocument document = Loader.loadPDF(file.toFile())) {
            for (PDPage page : document.getPages()) {
                check(page.getResources());
            }
        }
    }

    private static void check(PDResources resources) throws IOException {
        for (COSName name : resources.getFontNames()) {
            PDFont font = resources.getFont(name);
            assertTrue(font.isEmbedded(), font.getName());
        }
        for (COSName name : resources.getXObjectNames()) {
            PDXObject object = resources.getXObject(name);
            assertTrue(object instanceof PDFormXObject, object.getClass().getName());
            PDResources inner = ((PDFormXObject) object).getResources();
            if (inner != null) {
                check(inner);
            }
        }
    }

    @Test
    void namesItselfAndHasBookmarks() throws Exception {
        try (PDDocument document = Loader.loadPDF(file.toFile())) {
            assertEquals(
                    "Results sheet: Sample Works Sample 2.100",
                    document.getDocumentInformation().getTitle());
            assertEquals("Sample laboratory", document.getDocumentInformation().getAuthor());
            assertTrue(document.getDocumentInformation().getSubject().contains("Sample 2.100"));
            assertNotNull(document.getDocumentCatalog().getDocumentOutline());
            assertEquals(
                    "Ratings",
                    document.getDocumentCatalog()
                            .getDocumentOutline()
                            .getFirstChild()
                            .getTitle());
        }
    }

    @Test
    void printsHostileTextsLiterally() throws Exception {
        Path hostile = folder.resolve("hostile.pdf");
        PdfSheet.write(SampleSheet.plain().withTexts(HtmlSheetTest.HOSTILE).build(), hostile);
        assertTrue(withoutSpace(textOf(hostile)).contains("SampleWorks" + HtmlSheetTest.HOSTILE));
    }

    @Test
    void printsWhatItsFontLacksWithoutFailing() throws Exception {
        Path odd = folder.resolve("odd.pdf");
        String noSpace = "0123456789".repeat(30);
        PdfSheet.write(
                SampleSheet.plain()
                        .withTexts("\u6f22 \ud83d\ude00 \u2192 \u0416 \u0007 " + noSpace)
                        .build(),
                odd);
        String words = withoutSpace(textOf(odd));
        assertTrue(words.contains("\u0416"));
        assertTrue(words.contains(noSpace));
    }

    @Test
    void printsASheetWithoutReadings() throws Exception {
        Path empty = folder.resolve("empty.pdf");
        PdfSheet.write(
                new ResultsSheet(
                        sheet.project(),
                        List.of(),
                        List.of(),
                        List.of(),
                        new LogStamp("", 0, false),
                        "0.1.0",
                        SampleSheet.PRODUCED,
                        List.of()),
                empty);
        assertTrue(textOf(empty).contains("There are no readings."));
    }

    @Test
    void looksForNoFontsOnTheMachine() throws Exception {
        // The PDF library's own mapper would search the machine and answer with whatever it found there.
        assertEquals(
                "OpenSans",
                FontMappers.instance().getFontBoxFont("Symbol", null).getFont().getName());
    }
}
