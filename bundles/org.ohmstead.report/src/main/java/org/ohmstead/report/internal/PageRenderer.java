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
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.FontMappers;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
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
        ChartBook book = ChartBook.forPaper();
        String page = SheetTemplate.paper(sheet, book);
        ByteArrayOutputStream file = new ByteArrayOutputStream();
        try (PDDocument document = new PDDocument()) {
            PdfRendererBuilder builder = new PdfRendererBuilder();
            builder.usePDDocument(document);
            builder.useFont(font(document, SheetFonts.regular()), SheetFonts.FAMILY, REGULAR, FontStyle.NORMAL, true);
            builder.useFont(font(document, SheetFonts.bold()), SheetFonts.FAMILY, BOLD, FontStyle.NORMAL, true);
            builder.useObjectDrawerFactory(new PageCharts(book).factory());
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
        }
        return file.toByteArray();
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
