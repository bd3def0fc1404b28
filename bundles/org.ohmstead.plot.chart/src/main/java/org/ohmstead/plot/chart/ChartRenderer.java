// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.text.DecimalFormatSymbols;
import java.util.Locale;
import java.util.Objects;
import java.util.function.Consumer;
import javax.imageio.ImageIO;
import org.ohmstead.plot.Band;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.chart.internal.ChartAssembly;
import org.ohmstead.plot.chart.internal.CleanTexts;
import org.ohmstead.plot.chart.internal.PdfCanvas;
import org.ohmstead.plot.chart.internal.SeriesKey;
import org.ohmstead.plot.chart.internal.SvgCanvas;
import org.ohmstead.units.text.Language;

/**
 * Draws plots. Holds no state but its fonts and its language: one renderer serves any number of plots and threads. Control
 * characters and unpaired surrogates in a plot's texts are drawn as U+FFFD, the replacement character.
 */
public final class ChartRenderer {
    private static final double SMALLEST_POINTS = 40;
    private static final double LARGEST_PIXELS = 20_000;

    private final ChartFonts fonts;
    private final Locale language;
    private final boolean decimalComma;

    /** Makes a renderer with the fonts of {@link ChartFonts#standard()} and the language spoken now. */
    public ChartRenderer() {
        this(ChartFonts.standard());
    }

    /** Makes a renderer with the given fonts and the language spoken now. */
    public ChartRenderer(ChartFonts fonts) {
        this(fonts, Language.current());
    }

    /**
     * Makes a renderer for charts in a language.
     *
     * @param fonts its fonts
     * @param language of what a chart says by itself, and the decimal sign of the numbers along its axes; the plot's own texts are
     *     drawn as they are
     */
    public ChartRenderer(ChartFonts fonts, Locale language) {
        this(fonts, language, DecimalFormatSymbols.getInstance(language).getDecimalSeparator() == ',');
    }

    private ChartRenderer(ChartFonts fonts, Locale language, boolean decimalComma) {
        this.fonts = Objects.requireNonNull(fonts, "fonts");
        this.language = Objects.requireNonNull(language, "language");
        this.decimalComma = decimalComma;
    }

    /** Returns a renderer whose numbers along the axes have a decimal comma, or else a point, whatever its language is. */
    public ChartRenderer withDecimalComma(boolean wanted) {
        return new ChartRenderer(fonts, language, wanted);
    }

    /**
     * Draws the plot with its upper left corner at the origin of the graphics and returns where things are. The state
     * of the graphics is as before afterwards.
     *
     * @param plot what to draw
     * @param graphics where to draw; one unit of its user space is one point
     * @param widthPoints width of the whole chart, 40 or more
     * @param heightPoints height of the whole chart, 40 or more
     */
    public ChartLayout draw(Plot plot, Graphics2D graphics, double widthPoints, double heightPoints) {
        return draw(plot, graphics, widthPoints, heightPoints, ChartOptions.PAPER);
    }

    /**
     * As {@link #draw(Plot, Graphics2D, double, double)}, with other colours or without the legend.
     *
     * @param options how it is drawn
     */
    public ChartLayout draw(
            Plot plot, Graphics2D graphics, double widthPoints, double heightPoints, ChartOptions options) {
        Objects.requireNonNull(graphics, "graphics");
        Objects.requireNonNull(options, "options");
        checkSize(widthPoints, heightPoints);
        Graphics2D own = (Graphics2D) graphics.create();
        try {
            return new ChartAssembly(CleanTexts.of(plot), fonts, options, decimalComma)
                    .draw(own, new Rectangle2D.Double(0, 0, widthPoints, heightPoints));
        } finally {
            own.dispose();
        }
    }

    /**
     * As {@link #draw(Plot, Graphics2D, double, double, ChartOptions)}, with its upper left corner at that of an image,
     * all of which is painted. Lines of many points are drawn much faster so than through graphics.
     *
     * @param image of {@link BufferedImage#TYPE_INT_RGB}, and no part of another
     * @param pixelsOfPoint pixels for each point, above 0
     */
    public ChartLayout draw(
            Plot plot,
            BufferedImage image,
            double pixelsOfPoint,
            double widthPoints,
            double heightPoints,
            ChartOptions options) {
        Objects.requireNonNull(options, "options");
        checkSize(widthPoints, heightPoints);
        if (!(pixelsOfPoint > 0)) {
            throw new IllegalArgumentException("pixelsOfPoint must be above 0 but is " + pixelsOfPoint + ".");
        }
        Graphics2D graphics = image.createGraphics();
        try {
            graphics.scale(pixelsOfPoint, pixelsOfPoint);
            return new ChartAssembly(CleanTexts.of(plot), fonts, options, decimalComma)
                    .onto(image)
                    .draw(graphics, new Rectangle2D.Double(0, 0, widthPoints, heightPoints));
        } finally {
            graphics.dispose();
        }
    }

    /** Returns what the axes of the plot show when it is drawn. */
    public static ChartRanges ranges(Plot plot) {
        return ChartAssembly.ranges(plot);
    }

    /**
     * Draws the sample of line and marker by which a series is known, as large as given, at the origin of the graphics.
     */
    public static void drawKey(Series series, Graphics2D graphics, ChartLook look, double width, double height) {
        drawKey(graphics, look, width, height, key -> key.draw(series));
    }

    /** Draws the sample of the tint by which a band is known, as large as given, at the origin of the graphics. */
    public static void drawKey(Band band, Graphics2D graphics, ChartLook look, double width, double height) {
        drawKey(graphics, look, width, height, key -> key.draw(band));
    }

    private static void drawKey(
            Graphics2D graphics, ChartLook look, double width, double height, Consumer<SeriesKey> drawing) {
        Graphics2D own = (Graphics2D) graphics.create();
        try {
            drawing.accept(new SeriesKey(own, look, width, height));
        } finally {
            own.dispose();
        }
    }

    /** Returns the plot as an {@code <svg>} element of fixed size, its ids derived from the content. */
    public String toSvg(Plot plot, double widthPoints, double heightPoints) {
        return toSvg(plot, widthPoints, heightPoints, SvgOptions.fixedSize());
    }

    /**
     * Returns the plot as an {@code <svg>} element of fixed size.
     *
     * @param idPrefix begins every id in the element; see {@link SvgOptions}
     */
    public String toSvg(Plot plot, double widthPoints, double heightPoints, String idPrefix) {
        return toSvg(plot, widthPoints, heightPoints, SvgOptions.fixedSize(idPrefix));
    }

    /**
     * Returns the plot as one {@code <svg>} element without XML prolog, to be set into a web page as it is. Texts are
     * {@code <text>}, and a title and a description are there for those who cannot see the picture.
     *
     * @param plot what to draw
     * @param widthPoints width of the view box, 40 or more
     * @param heightPoints height of the view box, 40 or more
     * @param options ids and size
     */
    public String toSvg(Plot plot, double widthPoints, double heightPoints, SvgOptions options) {
        Objects.requireNonNull(options, "options");
        checkSize(widthPoints, heightPoints);
        SvgCanvas canvas = new SvgCanvas(widthPoints, heightPoints);
        draw(plot, canvas.graphics(), widthPoints, heightPoints);
        return canvas.toElement(CleanTexts.of(plot), fonts, options, language);
    }

    /**
     * Returns the plot as a PNG file on a white ground.
     *
     * @param plot what to draw
     * @param widthPoints width of the chart in points, 40 or more
     * @param heightPoints height of the chart in points, 40 or more
     * @param scale pixels for each point, above 0; 2 suits screens of high density, 300.0 / 72 print
     */
    public byte[] toPng(Plot plot, double widthPoints, double heightPoints, double scale) {
        checkSize(widthPoints, heightPoints);
        double largest = Math.max(widthPoints, heightPoints) * scale;
        if (!(scale > 0) || !(largest <= LARGEST_PIXELS)) {
            throw new IllegalArgumentException("scale must be above 0 and give at most " + (int) LARGEST_PIXELS
                    + " pixels a side but is " + scale + ".");
        }
        int widthPixels = Math.max(1, (int) Math.round(widthPoints * scale));
        int heightPixels = Math.max(1, (int) Math.round(heightPoints * scale));
        BufferedImage image = new BufferedImage(widthPixels, heightPixels, BufferedImage.TYPE_INT_RGB);
        draw(plot, image, scale, widthPoints, heightPoints, ChartOptions.PAPER);
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try {
            if (!ImageIO.write(image, "png", bytes)) {
                throw new IllegalStateException("This Java runtime has no writer for PNG pictures.");
            }
        } catch (IOException e) {
            throw new UncheckedIOException("The PNG picture could not be encoded in memory.", e);
        }
        return bytes.toByteArray();
    }

    /**
     * Returns the plot as a PDF file of one page as large as the chart. Its texts can be searched; they are set in the
     * fonts of {@link ChartFonts#bundled()}, whatever those of this renderer are, since the file must carry them.
     *
     * @param plot what to draw
     * @param widthPoints width of the page, 40 or more
     * @param heightPoints height of the page, 40 or more
     */
    public byte[] toPdf(Plot plot, double widthPoints, double heightPoints) {
        checkSize(widthPoints, heightPoints);
        ChartRenderer embedding =
                new ChartRenderer(ChartFonts.bundled().withSize(fonts.regular().getSize2D()), language, decimalComma);
        try {
            return PdfCanvas.page(
                    CleanTexts.of(plot).title(),
                    widthPoints,
                    heightPoints,
                    graphics -> embedding.draw(plot, graphics, widthPoints, heightPoints));
        } catch (IOException e) {
            throw new UncheckedIOException("The PDF of the chart could not be written in memory.", e);
        }
    }

    private static void checkSize(double widthPoints, double heightPoints) {
        checkSide("widthPoints", widthPoints);
        checkSide("heightPoints", heightPoints);
    }

    private static void checkSide(String name, double points) {
        if (!(points >= SMALLEST_POINTS) || !(points <= LARGEST_PIXELS)) {
            throw new IllegalArgumentException(name + " must be from " + (int) SMALLEST_POINTS + " to "
                    + (int) LARGEST_PIXELS + " but is " + points + ".");
        }
    }
}
