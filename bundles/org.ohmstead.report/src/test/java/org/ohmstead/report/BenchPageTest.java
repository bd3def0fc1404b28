// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.ohmstead.curves.RatingResult;
import org.ohmstead.model.PaperSize;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.model.SheetDesign;
import org.ohmstead.model.SheetLayout;

/** The bench sheet is one page, whatever the project holds. */
class BenchPageTest {
    private static final String LONG =
            "A text that somebody wrote without thinking of the paper it goes on. ".repeat(20);
    private static final String UNBROKEN = "0123456789".repeat(40);

    @TempDir
    Path folder;

    private record Printed(int pages, PDRectangle size, String text) {}

    private Printed print(ResultsSheet sheet) throws Exception {
        Path file = folder.resolve("bench.pdf");
        PdfSheet.write(sheet, file);
        try (PDDocument document = Loader.loadPDF(file.toFile())) {
            return new Printed(
                    document.getNumberOfPages(),
                    document.getPage(0).getMediaBox(),
                    new PDFTextStripper().getText(document).replaceAll("[\\s\u00a0]+", " "));
        }
    }

    private static ResultsSheet in(ResultsSheet sheet, PaperSize paper) {
        return sheet.withForm(
                sheet.form().withDesign(SheetDesign.BENCH).withPaper(paper).withLanguage(Locale.ENGLISH));
    }

    /** Eight times the ratings and curves, long texts everywhere, a long head of the laboratory, many problems. */
    private static ResultsSheet crowded(String text) {
        ResultsSheet sheet = SampleSheet.plain().withTexts(text).build();
        SheetLayout layout = SheetLayout.USUAL
                .withAddress(String.join("\n", Collections.nCopies(12, text)))
                .withContact(text)
                .withAccreditation(text);
        Project project = sheet.project().withSheet(sheet.project().sheet().withLayout(layout));
        List<RatingResult> ratings =
                Stream.generate(sheet::ratings).limit(8).flatMap(List::stream).toList();
        List<Problem> problems = Collections.nCopies(30, sheet.problems().get(0));
        return new ResultsSheet(
                project,
                sheet.readings(),
                sheet.curves(),
                ratings,
                sheet.log(),
                sheet.softwareVersion(),
                sheet.producedAt(),
                problems);
    }

    @ParameterizedTest
    @EnumSource(PaperSize.class)
    void isOnePageOfThePaperChosen(PaperSize paper) throws Exception {
        Printed printed = print(in(SampleSheet.plain().build(), paper));
        assertEquals(1, printed.pages());
        // One inch has 25.4 mm and 72 points; the layout may round by a tenth of a point.
        assertEquals(paper.widthMillimetres() / 25.4 * 72, printed.size().getWidth(), 0.5);
        assertEquals(paper.heightMillimetres() / 25.4 * 72, printed.size().getHeight(), 0.5);
        for (String expected : new String[] {
            "Bench sheet", "Caution: hot load resistors", "3 of 6 ratings are met", "Tested by", SampleSheet.HEAD_HASH
        }) {
            assertTrue(printed.text().contains(expected), expected + " in " + printed.text());
        }
    }

    @ParameterizedTest
    @EnumSource(PaperSize.class)
    void aCrowdedProjectIsOnePageAndSaysWhatIsLeftOut(PaperSize paper) throws Exception {
        for (String text : List.of(LONG, UNBROKEN)) {
            Printed printed = print(in(crowded(text), paper));
            assertEquals(1, printed.pages());
            assertTrue(printed.text().contains("More in the full report: "), printed.text());
            assertTrue(printed.text().contains(" more ratings"), printed.text());
            assertTrue(printed.text().contains("Caution: hot load resistors"), printed.text());
        }
    }

    @Test
    void leavesNothingOutWithoutSayingSo() throws Exception {
        ResultsSheet small = new ResultsSheet(
                SampleSheet.plain().build().project(),
                List.of(),
                List.of(),
                List.of(),
                new LogStamp("", 0, true),
                "0.1.0",
                SampleSheet.PRODUCED,
                List.of());
        Printed printed = print(in(small, PaperSize.A4));
        assertEquals(1, printed.pages());
        assertFalse(printed.text().contains("More in the full report"), printed.text());
        assertTrue(printed.text().contains("The log is empty."), printed.text());
    }
}
