// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SheetPagesTest {
    /** A4 is 210 mm x 297 mm (ISO 216), an inch 25.4 mm, a point 1/72 inch. */
    private static final double A4_WIDTH_POINTS = 210 / 25.4 * 72;

    private static final double A4_HEIGHT_POINTS = 297 / 25.4 * 72;
    private static final double POINT = 1;
    private static final int WHITE = 0xffffff;

    @TempDir
    static Path folder;

    private static ResultsSheet sheet;
    private static Path file;
    private static SheetPages pages;

    @BeforeAll
    static void open() throws Exception {
        sheet = SampleSheet.plain().build();
        file = folder.resolve("sheet.pdf");
        PdfSheet.write(sheet, file);
        pages = SheetPages.open(file);
    }

    @AfterAll
    static void close() throws Exception {
        pages.close();
    }

    private static double shareOfInk(PagePicture picture) {
        return Arrays.stream(picture.rgb()).filter(pixel -> pixel != WHITE).count() / (double) picture.rgb().length;
    }

    @Test
    void everyPageIsOfA4() {
        assertTrue(pages.pageCount() > 1);
        for (int page = 0; page < pages.pageCount(); page++) {
            assertEquals(A4_WIDTH_POINTS, pages.size(page).widthPoints(), POINT);
            assertEquals(A4_HEIGHT_POINTS, pages.size(page).heightPoints(), POINT);
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.5, 1, 2.25})
    void picturesAreAsLargeAsTheScaleSaysAndNotBlank(double scale) throws Exception {
        PagePicture picture = pages.picture(0, scale);
        assertEquals(A4_WIDTH_POINTS * scale, picture.widthPixels(), 1 + scale);
        assertEquals(A4_HEIGHT_POINTS * scale, picture.heightPixels(), 1 + scale);
        double ink = shareOfInk(picture);
        assertTrue(ink > 0.02 && ink < 0.6, "share of pixels that are not white: " + ink);
        assertTrue(Arrays.stream(picture.rgb()).allMatch(pixel -> pixel >= 0 && pixel <= WHITE));
    }

    @Test
    void marginsAreWhite() throws Exception {
        PagePicture picture = pages.picture(0, 1);
        for (int x = 0; x < picture.widthPixels(); x++) {
            assertEquals(WHITE, picture.rgb()[x], "top row at " + x);
        }
    }

    @Test
    void wordsOfAPageCanBeRead() throws Exception {
        String first = pages.text(0).replace('\u00a0', ' ');
        assertTrue(first.contains("Sample 2.100"), first);
        assertTrue(first.contains("Ratings and what was measured"), first);
        assertTrue(pages.text(pages.pageCount() - 1).contains(SampleSheet.HEAD_HASH.substring(0, 10)));
    }

    @Test
    void pagesOfASheetAreThoseOfItsFile() throws Exception {
        try (SheetPages direct = SheetPages.of(sheet)) {
            assertEquals(pages.pageCount(), direct.pageCount());
            assertArrayEquals(pages.picture(1, 1).rgb(), direct.picture(1, 1).rgb());
        }
    }

    @Test
    void saysThatAFileIsNoPdf() throws Exception {
        Path other = Files.writeString(folder.resolve("note.pdf"), "not a PDF");
        String message = assertThrows(ReportException.class, () -> SheetPages.open(other))
                .getMessage();
        assertTrue(message.contains(other + " is not a PDF"), message);
        Path none = folder.resolve("none.pdf");
        String missing =
                assertThrows(ReportException.class, () -> SheetPages.open(none)).getMessage();
        assertTrue(missing.contains(none + " could not be read"), missing);
    }

    @Test
    void doesNotHoldTheFileOpen() throws Exception {
        Path copy = Files.copy(file, folder.resolve("copy.pdf"));
        try (SheetPages held = SheetPages.open(copy)) {
            Files.delete(copy);
            assertTrue(held.picture(0, 0.5).widthPixels() > 0);
        }
    }

    @Test
    void refusesPagesAndScalesOutOfRange() {
        assertThrows(IllegalArgumentException.class, () -> pages.size(-1));
        assertThrows(IllegalArgumentException.class, () -> pages.picture(pages.pageCount(), 1));
        for (double scale : new double[] {0, -1, Double.NaN, 13}) {
            assertThrows(IllegalArgumentException.class, () -> pages.picture(0, scale));
        }
    }
}
