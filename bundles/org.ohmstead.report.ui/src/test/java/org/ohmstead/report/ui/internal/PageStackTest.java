// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.eclipse.swt.graphics.Rectangle;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.ohmstead.jobs.JobException;
import org.ohmstead.report.PageSize;

class PageStackTest {
    /** A page of 7.5 x 10 inches: 720 x 960 points of the screen, 96 to the inch. */
    private static final PageSize PAGE = new PageSize(540, 720);

    private static final List<PageSize> THREE = List.of(PAGE, PAGE, PAGE);

    @Test
    void atFullSizeAnInchOfPaperIs96PointsOfTheScreen() {
        PageStack stack = PageStack.of(THREE, new Zoom.Fixed(1), 1000, 500);
        assertEquals(new Rectangle(140, 12, 720, 960), stack.place(0));
        assertEquals(new Rectangle(140, 984, 720, 960), stack.place(1));
        assertEquals(3 * 960 + 4 * 12, stack.height());
        assertEquals(1000, stack.width());
    }

    @Test
    void fitsTheWidthBetweenTheGaps() {
        PageStack stack = PageStack.of(THREE, new Zoom.FitWidth(), 384, 500);
        assertEquals(new Rectangle(12, 12, 360, 480), stack.place(0));
        assertEquals(0.5, stack.factor(), 1e-12);
    }

    @Test
    void fitsAWholePage() {
        PageStack stack = PageStack.of(THREE, new Zoom.FitPage(), 2000, 504);
        assertEquals(480, stack.place(0).height);
        assertEquals(360, stack.place(0).width);
    }

    @Test
    void keepsWithinTheLargestAndSmallestSize() {
        assertEquals(
                Zoom.SMALLEST, PageStack.of(THREE, new Zoom.FitWidth(), 10, 10).factor());
        assertEquals(
                Zoom.LARGEST, PageStack.of(THREE, new Zoom.FitWidth(), 9000, 10).factor());
        assertThrows(IllegalArgumentException.class, () -> new Zoom.Fixed(0.1));
        assertThrows(IllegalArgumentException.class, () -> new Zoom.Fixed(Double.NaN));
    }

    @ParameterizedTest
    @CsvSource({"1, 1.25, 0.8", "1.1, 1.25, 1", "0.25, 0.262144, 0.25", "3, 3, 2.44140625"})
    void stepsOnALadderWithFullSizeAsARung(double from, double larger, double smaller) {
        assertEquals(larger, Zoom.Fixed.above(from).factor(), 1e-9);
        assertEquals(smaller, Zoom.Fixed.below(from).factor(), 1e-9);
    }

    @Test
    void tellsThePageThatIsLookedAtAndThoseNear() {
        PageStack stack = PageStack.of(THREE, new Zoom.Fixed(1), 1000, 600);
        assertEquals(0, stack.pageAt(0, 600));
        assertEquals(0, stack.pageAt(783, 600));
        assertEquals(1, stack.pageAt(784, 600));
        assertEquals(2, stack.pageAt(stack.height() - 600, 600));
        assertEquals(List.of(0), stack.near(0, 600));
        assertEquals(List.of(0, 1), stack.near(200, 600));
    }

    @Test
    void hasRoomForNoPages() {
        PageStack none = PageStack.of(List.of(), new Zoom.FitPage(), 100, 100);
        assertEquals(0, none.count());
        assertEquals(0, none.pageAt(0, 100));
        assertEquals(List.of(), none.near(0, 100));
    }

    @ParameterizedTest
    @CsvSource({"a.html, HTML", "B.HTM, HTML", "c.pdf, PDF", "d.csv, CSV", "e.json, JSON", "f.jsonl, JSON"})
    void theEndOfTheNameSaysWhatToWrite(String name, ExportForm form) throws JobException {
        assertEquals(form, ExportForm.of(Path.of("folder", name)));
    }

    @ParameterizedTest
    @ValueSource(strings = {"sheet", "sheet.docx", "pdf"})
    void otherNamesAreRefusedWithWhatWouldDo(String name) {
        String message = assertThrows(JobException.class, () -> ExportForm.of(Path.of(name)))
                .getMessage();
        assertTrue(message.contains(name) && message.contains(".pdf"), message);
    }
}
