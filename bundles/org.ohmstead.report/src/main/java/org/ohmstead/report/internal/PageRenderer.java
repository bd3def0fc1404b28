// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.outputdevice.helper.ExternalResourceControlPriority;
import com.openhtmltopdf.pdfboxout.PDFontSupplier;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.util.XRLog;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Calendar;
import java.util.GregorianCalendar;
import java.util.List;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.FontMappers;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.ohmstead.model.SheetDesign;
import org.ohmstead.report.ResultsSheet;

/** Sets the sheet on pages and returns them as PDF. */
public final class PageRenderer {
    private static final int REGULAR = 400;
    private static final int BOLD = 700;

    private static final OwnFonts FONTS = new OwnFonts();

    static {
        XRLog.setLoggerImpl(new PageLog());
        useOwnFonts();
    }

    private PageRenderer() {}

    /** Makes the PDF library look for no fonts on the machine, also when pages are only looked at. */
    public static void useOwnFonts() {
        FontMappers.set(FONTS);
    }

    /** Returns the PDF file's content. */
    public static byte[] render(ResultsSheet sheet) throws IOException {
        if (sheet.form().design() != SheetDesign.BENCH) {
            return render(sheet, BenchRoom.ENDLESS).content();
        }
        List<BenchRoom> rooms = BenchRoom.OF_A_PAGE;
        int fits = rooms.size() - 1;
        byte[] content = new byte[0];
        int from = 0;
        // The more room a sheet asks for, the longer it is, so the first that fits is found by halving.
        while (from < fits || content.length == 0) {
            int middle = (from + fits) / 2;
            Printed printed = render(sheet, rooms.get(middle));
            if (printed.pages() == 1 || middle == rooms.size() - 1) {
                fits = middle;
                content = printed.content();
            } else {
                from = middle + 1;
            }
        }
        return content;
    }

    /** A file and how many pages it has. */
    private record Printed(byte[] content, int pages) {}

    private static Printed render(ResultsSheet sheet, BenchRoom room) throws IOException {
        ChartBook book = ChartBook.forPaper(sheet.form().paper());
        String page = SheetTemplate.paper(sheet, book, room);
        int pages;
        ByteArrayOutputStream file = new ByteArrayOutputStream();
        try (PDDocument document = new PDDocument()) {
            PdfRendererBuilder builder = new PdfRendererBuilder();
            builder.usePDDocument(document);
            builder.useFont(font(document, SheetFonts.regular()), SheetFonts.FAMILY, REGULAR, FontStyle.NORMAL, true);
            builder.useFont(font(document, SheetFonts.bold()), SheetFonts.FAMILY, BOLD, FontStyle.NORMAL, true);
            builder.useObjectDrawerFactory(
                    new PageCharts(book, sheet.form().logo(), sheet.form().language()).factory());
            // The sheet needs nothing from outside, so nothing that a text smuggles in may fetch anything.
            builder.useExternalResourceAccessControl(
                    (address, type) -> false, ExternalResourceControlPriority.RUN_BEFORE_RESOLVING_URI);
            builder.withHtmlContent(page, null);
            builder.withProducer("Ohmstead " + sheet.softwareVersion());
            try (PdfBoxRenderer renderer = builder.buildPdfRenderer()) {
                renderer.createPDFWithoutClosing();
            }
            stamp(document, sheet.producedAt());
            document.save(file);
            pages = document.getNumberOfPages();
        }
        return new Printed(file.toByteArray(), pages);
    }

    /** The file bears the sheet's own time, not that of its printing, so that the same sheet always gives the same file. */
    private static void stamp(PDDocument document, Instant producedAt) {
        Calendar time = GregorianCalendar.from(producedAt.atZone(ZoneOffset.UTC));
        document.getDocumentInformation().setCreationDate(time);
        document.getDocumentInformation().setModificationDate(time);
        document.setDocumentId(producedAt.toEpochMilli());
    }

    private static PDFontSupplier font(PDDocument document, InputStream source) throws IOException {
        try (InputStream stream = source) {
            TrueTypeFont font = new TTFParser().parse(new RandomAccessReadBuffer(stream));
            // Ligatures would come out of a search or a copy as single odd characters.
            font.setEnableGsub(false);
            return new PDFontSupplier(PDType0Font.load(document, font, true));
        }
    }
}
