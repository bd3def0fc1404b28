// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.ohmstead.report.internal.Failures;
import org.ohmstead.report.internal.PageRenderer;

/**
 * The pages of a sheet as pictures, for looking at it before it is printed. They show exactly what {@link PdfSheet} writes. Safe for
 * use by several threads, one page at a time.
 */
public final class SheetPages implements AutoCloseable {
    /** The largest scale, in pixels for each point. */
    public static final double LARGEST_SCALE = 12;

    private final String name;
    private final PDDocument document;
    private final PDFRenderer renderer;

    private SheetPages(String name, byte[] content) throws IOException {
        this.name = name;
        PageRenderer.useOwnFonts();
        this.document = Loader.loadPDF(content);
        this.renderer = new PDFRenderer(document);
    }

    /**
     * Makes the pages of a sheet, in memory.
     *
     * @param sheet what to show
     * @throws ReportException when the pages cannot be made
     */
    public static SheetPages of(ResultsSheet sheet) throws ReportException {
        Objects.requireNonNull(sheet, "sheet");
        try {
            return new SheetPages(Failures.say("failure.thisSheet"), PageRenderer.render(sheet));
        } catch (IOException e) {
            throw new ReportException(Failures.say("failure.pages", e.getMessage()), e);
        }
    }

    /**
     * Reads the pages of a file. The file is not held open.
     *
     * @param pdf the file
     * @throws ReportException when it cannot be read or is not a PDF
     */
    public static SheetPages open(Path pdf) throws ReportException {
        byte[] content;
        try {
            content = Files.readAllBytes(pdf);
        } catch (IOException e) {
            throw new ReportException(Failures.say("failure.read", pdf), e);
        }
        try {
            return new SheetPages(pdf.toString(), content);
        } catch (IOException e) {
            throw new ReportException(Failures.say("failure.notPdf", pdf), e);
        }
    }

    /** Returns the number of pages. */
    public int pageCount() {
        return document.getNumberOfPages();
    }

    /**
     * Returns the size of a page as it is read, that is, turned if the file says so.
     *
     * @param page from 0 to {@link #pageCount()} - 1
     */
    public synchronized PageSize size(int page) {
        PDRectangle box = document.getPage(checked(page)).getCropBox();
        boolean turned = document.getPage(page).getRotation() % 180 != 0;
        return turned ? new PageSize(box.getHeight(), box.getWidth()) : new PageSize(box.getWidth(), box.getHeight());
    }

    /**
     * Returns the words of a page in their order, for those who cannot see the picture.
     *
     * @param page from 0 to {@link #pageCount()} - 1
     * @throws ReportException when the page cannot be read
     */
    public synchronized String text(int page) throws ReportException {
        PDFTextStripper stripper = new PDFTextStripper();
        stripper.setSortByPosition(true);
        stripper.setStartPage(checked(page) + 1);
        stripper.setEndPage(page + 1);
        try {
            return stripper.getText(document);
        } catch (IOException e) {
            throw failure(page, e);
        }
    }

    /**
     * Draws a page on white.
     *
     * @param page from 0 to {@link #pageCount()} - 1
     * @param scale pixels for each point of 1/72 inch, above 0 and up to {@link #LARGEST_SCALE}
     * @throws ReportException when the page cannot be drawn
     */
    public synchronized PagePicture picture(int page, double scale) throws ReportException {
        checked(page);
        if (!(scale > 0) || scale > LARGEST_SCALE) {
            throw new IllegalArgumentException(
                    "scale is " + scale + "; it must be above 0 and at most " + LARGEST_SCALE);
        }
        try {
            BufferedImage image = renderer.renderImage(page, (float) scale, ImageType.RGB);
            int[] pixels = image.getRGB(0, 0, image.getWidth(), image.getHeight(), null, 0, image.getWidth());
            for (int i = 0; i < pixels.length; i++) {
                pixels[i] &= 0xffffff;
            }
            return new PagePicture(image.getWidth(), image.getHeight(), pixels);
        } catch (IOException e) {
            throw failure(page, e);
        }
    }

    private int checked(int page) {
        if (page < 0 || page >= pageCount()) {
            throw new IllegalArgumentException("page is " + page + "; it must be from 0 to " + (pageCount() - 1));
        }
        return page;
    }

    private ReportException failure(int page, IOException cause) {
        return new ReportException(
                Failures.say("failure.page", Integer.toString(page + 1), name, cause.getMessage()), cause);
    }

    /**
     * Lets the pages go.
     *
     * @throws ReportException when the system refuses
     */
    @Override
    public synchronized void close() throws ReportException {
        try {
            document.close();
        } catch (IOException e) {
            throw new ReportException(Failures.say("failure.memory", name, e.getMessage()), e);
        }
    }
}
