// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart.internal;

import de.rototor.pdfbox.graphics2d.PdfBoxGraphics2D;
import de.rototor.pdfbox.graphics2d.PdfBoxGraphics2DFontTextDrawer;
import java.awt.Graphics2D;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.function.Consumer;
import org.apache.pdfbox.pdfwriter.compress.CompressParameters;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/** Makes a PDF of one page as large as the drawing: vectors, and texts that can be searched, in embedded fonts. */
public final class PdfCanvas {
    private PdfCanvas() {}

    /** Returns the file; {@code drawing} gets graphics with the origin at the upper left, in points. */
    public static byte[] page(String title, double widthPoints, double heightPoints, Consumer<Graphics2D> drawing)
            throws IOException {
        float width = (float) widthPoints;
        float height = (float) heightPoints;
        try (PDDocument document = new PDDocument();
                PdfBoxGraphics2DFontTextDrawer texts = new PdfBoxGraphics2DFontTextDrawer();
                InputStream regular = BundledFonts.openRegular();
                InputStream bold = BundledFonts.openBold()) {
            texts.registerFont(BundledFonts.regular().getFontName(), PDType0Font.load(document, regular));
            texts.registerFont(BundledFonts.bold().getFontName(), PDType0Font.load(document, bold));
            PDDocumentInformation information = new PDDocumentInformation();
            information.setTitle(title);
            information.setCreator("Ohmstead");
            document.setDocumentInformation(information);
            PDPage page = new PDPage(new PDRectangle(width, height));
            document.addPage(page);
            PdfBoxGraphics2D graphics = new PdfBoxGraphics2D(document, width, height);
            graphics.setFontTextDrawer(texts);
            drawing.accept(graphics);
            graphics.dispose();
            try (PDPageContentStream content = new PDPageContentStream(document, page)) {
                content.drawForm(graphics.getXFormObject());
            }
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            // Plain objects cost a kilobyte or two and let any tool find title and fonts.
            document.save(bytes, CompressParameters.NO_COMPRESSION);
            return bytes.toByteArray();
        }
    }
}
