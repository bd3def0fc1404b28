// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.ohmstead.plot.Axis;
import org.ohmstead.plot.Band;
import org.ohmstead.plot.Mark;
import org.ohmstead.plot.MarkerShape;
import org.ohmstead.plot.Palette;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.Style;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.SAXException;

class ChartRendererTest {
    static final double WIDTH = 520;
    static final double HEIGHT = 340;
    /** The SVG has two decimals. */
    private static final double SVG_TOLERANCE = 0.011;

    private static final double[] VOLTS = {11, 12, 13, 14.4, 15};
    private static final double[] WATTS = {45, 54, 64, 79, 86};
    private static final double[] HALVES = {1, 1.2, 1.4, 1.7, 2};
    private static final Pattern MOVE = Pattern.compile("M(-?[0-9.]+) (-?[0-9.]+) L(-?[0-9.]+) (-?[0-9.]+)");

    private final ChartRenderer renderer = new ChartRenderer();

    static Plot power() {
        return Plot.of(
                        "Power",
                        Axis.linear("Supply", "V").withRange(10, 16),
                        Axis.linear("Power", "W").withRange(0, 100))
                .withBand(
                        Band.of("95 %", VOLTS, new double[] {43, 52, 61, 75, 80}, new double[] {47, 56, 67, 83, 92}, 0))
                .withSeries(Series.of("fit", VOLTS, WATTS, Style.LINE, 0))
                .withSeries(Series.withBars("4 ohm", VOLTS, WATTS, HALVES, Style.MARKERS, 1))
                .withMark(Mark.vertical(13, "middle"))
                .withMark(Mark.point(14.4, 75, "rated 75 W", MarkerShape.HOLLOW_DIAMOND, 0));
    }

    private static Document parsed(String svg) {
        try {
            return DocumentBuilderFactory.newDefaultNSInstance()
                    .newDocumentBuilder()
                    .parse(new ByteArrayInputStream(svg.getBytes(StandardCharsets.UTF_8)));
        } catch (ParserConfigurationException | SAXException | IOException e) {
            throw new AssertionError("not well-formed: " + svg, e);
        }
    }

    private static List<Element> elements(Document document, String name) {
        NodeList nodes = document.getElementsByTagName(name);
        List<Element> elements = new ArrayList<>();
        for (int i = 0; i < nodes.getLength(); i++) {
            elements.add((Element) nodes.item(i));
        }
        return elements;
    }

    private static List<String> texts(String svg) {
        return elements(parsed(svg), "text").stream()
                .map(Element::getTextContent)
                .toList();
    }

    private ChartLayout layout(Plot plot) {
        BufferedImage image = new BufferedImage((int) WIDTH, (int) HEIGHT, BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = image.createGraphics();
        try {
            return renderer.draw(plot, graphics, WIDTH, HEIGHT);
        } finally {
            graphics.dispose();
        }
    }

    private BufferedImage image(Plot plot, double scale) throws IOException {
        return ImageIO.read(new ByteArrayInputStream(renderer.toPng(plot, WIDTH, HEIGHT, scale)));
    }

    private static int count(BufferedImage image, int colour) {
        int count = 0;
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                count += (image.getRGB(x, y) & 0xFFFFFF) == colour ? 1 : 0;
            }
        }
        return count;
    }

    @Test
    void svgIsOneElementWithViewBoxAndTexts() {
        String svg = renderer.toSvg(power(), WIDTH, HEIGHT, "a");
        assertTrue(svg.startsWith("<svg "), svg.substring(0, 60));
        Element root = parsed(svg).getDocumentElement();
        assertEquals("0 0 520 340", root.getAttribute("viewBox"));
        assertEquals("520", root.getAttribute("width"));
        assertEquals("img", root.getAttribute("role"));
        assertTrue(root.getAttribute("font-family").endsWith("sans-serif"));
        List<String> texts = texts(svg);
        for (String wanted :
                List.of("Power", "Supply (V)", "Power (W)", "fit", "4 ohm", "95 %", "middle", "rated 75 W", "13")) {
            assertTrue(texts.contains(wanted), wanted + " is missing in " + texts);
        }
    }

    @Test
    void responsiveSvgFillsItsContainer() {
        Element root = parsed(renderer.toSvg(power(), WIDTH, HEIGHT, SvgOptions.responsive("r")))
                .getDocumentElement();
        assertEquals("100%", root.getAttribute("width"));
        assertFalse(root.hasAttribute("height"));
    }

    @Test
    void titlesAreEscaped() {
        Plot plot = Plot.of("<b>&\"x\"", Axis.linear("a<b", "&"), Axis.linear("y", ""))
                .withSeries(Series.of("<script>", VOLTS, WATTS, Style.LINE, 0));
        String svg = renderer.toSvg(plot, WIDTH, HEIGHT, "a");
        assertFalse(svg.contains("<b>") || svg.contains("<script>"));
        assertTrue(texts(svg).containsAll(List.of("<b>&\"x\"", "a<b (&)", "<script>")));
        Document document = parsed(svg);
        assertEquals("<b>&\"x\"", elements(document, "title").get(0).getTextContent());
        assertTrue(elements(document, "desc").get(0).getTextContent().contains("<script>"));
    }

    @Test
    void everyIdHasThePrefixAndEveryReferenceItsTarget() {
        String svg = renderer.toSvg(power(), WIDTH, HEIGHT, "left") + renderer.toSvg(power(), WIDTH, HEIGHT, "right");
        Set<String> ids = new HashSet<>();
        Matcher id = Pattern.compile(" id=\"([^\"]*)\"").matcher(svg);
        while (id.find()) {
            assertTrue(ids.add(id.group(1)), id.group(1) + " is there twice");
            assertTrue(id.group(1).startsWith("left-") || id.group(1).startsWith("right-"), id.group(1));
        }
        Matcher reference = Pattern.compile("url\\(#([^)]*)\\)").matcher(svg);
        int references = 0;
        while (reference.find()) {
            references++;
            assertTrue(ids.contains(reference.group(1)), reference.group(1));
        }
        assertTrue(references > 0);
        Matcher label = Pattern.compile("aria-labelledby=\"(\\S+) (\\S+)\"").matcher(svg);
        assertTrue(label.find());
        assertTrue(ids.containsAll(List.of(label.group(1), label.group(2))));
    }

    @Test
    void prefixFromContentIsRepeatableAndDiffersBetweenCharts() {
        assertEquals(renderer.toSvg(power(), WIDTH, HEIGHT), renderer.toSvg(power(), WIDTH, HEIGHT));
        Pattern first = Pattern.compile(" id=\"([^\"]*)\"");
        Matcher one = first.matcher(renderer.toSvg(power(), WIDTH, HEIGHT));
        Matcher other = first.matcher(renderer.toSvg(power().withTitle("Other"), WIDTH, HEIGHT));
        assertTrue(one.find() && other.find());
        assertNotEquals(one.group(1), other.group(1));
    }

    @Test
    void markInTheMiddleOfTheAxisIsDrawnInTheMiddleOfTheArea() {
        Document document = parsed(renderer.toSvg(power(), WIDTH, HEIGHT, "a"));
        double[] edges = leftAndRight(document);
        double middle = (edges[0] + edges[1]) / 2;
        List<Double> dashed = elements(document, "line").stream()
                .filter(line -> isDashed(line) && line.getAttribute("x1").equals(line.getAttribute("x2")))
                .map(line -> Double.parseDouble(line.getAttribute("x1")))
                .toList();
        assertEquals(1, dashed.size());
        assertEquals(middle, dashed.get(0), SVG_TOLERANCE);
    }

    /** From the clip of the area between the axes, the only one that does not cover the whole chart. */
    private static double[] leftAndRight(Document document) {
        for (Element clip : elements(document, "clipPath")) {
            Matcher corner = Pattern.compile("[ML](-?[0-9.]+) -?[0-9.]+")
                    .matcher(clip.getElementsByTagName("path")
                            .item(0)
                            .getAttributes()
                            .getNamedItem("d")
                            .getNodeValue());
            double left = Double.POSITIVE_INFINITY;
            double right = Double.NEGATIVE_INFINITY;
            while (corner.find()) {
                left = Math.min(left, Double.parseDouble(corner.group(1)));
                right = Math.max(right, Double.parseDouble(corner.group(1)));
            }
            if (left > 0 && right < WIDTH) {
                return new double[] {left, right};
            }
        }
        throw new AssertionError("no clip for the area between the axes");
    }

    private static boolean isDashed(Element element) {
        String own = element.getAttribute("stroke-dasharray");
        String around = ((Element) element.getParentNode()).getAttribute("stroke-dasharray");
        return !own.isEmpty() && !"none".equals(own) || own.isEmpty() && !around.isEmpty() && !"none".equals(around);
    }

    @Test
    void everyPointHasItsUncertaintyBarOfTheRightLength() {
        Plot plot = power();
        double pointsPerWatt = layout(plot).height() / 100;
        Document document = parsed(renderer.toSvg(plot, WIDTH, HEIGHT, "a"));
        double[] edges = leftAndRight(document);
        String bars = elements(document, "path").stream()
                .map(path -> path.getAttribute("d"))
                .filter(d -> d.chars().filter(c -> c == 'M').count() == 3L * VOLTS.length)
                .findFirst()
                .orElseThrow();
        Matcher stroke = MOVE.matcher(bars);
        for (int i = 0; i < VOLTS.length; i++) {
            assertTrue(stroke.find());
            double length = Double.parseDouble(stroke.group(4)) - Double.parseDouble(stroke.group(2));
            double expectedX = edges[0] + (VOLTS[i] - 10) / 6 * (edges[1] - edges[0]);
            assertEquals(expectedX, Double.parseDouble(stroke.group(1)), SVG_TOLERANCE);
            assertEquals(2 * HALVES[i] * pointsPerWatt, length, 0.1);
            assertTrue(stroke.find() && stroke.find(), "both caps");
        }
    }

    @Test
    void layoutMapsTheEndsOfTheAxesToTheEdgesOfTheArea() {
        ChartLayout layout = layout(power());
        assertEquals(layout.left(), layout.x().toPosition(10), 1e-9);
        assertEquals(layout.left() + layout.width(), layout.x().toPosition(16), 1e-9);
        assertEquals(layout.top() + layout.height(), layout.y().toPosition(0), 1e-9);
        assertEquals(layout.top(), layout.y().toPosition(100), 1e-9);
        assertTrue(
                layout.plotArea().getWidth() > 0.8 * WIDTH && layout.plotArea().getHeight() > 0.6 * HEIGHT);
    }

    @Test
    void markerIsWhereTheLayoutSays() throws IOException {
        Plot plot = Plot.of(
                        "",
                        Axis.log("Frequency", "Hz").withRange(20, 20_000),
                        Axis.log("THD", "%").withRange(0.01, 10))
                .withSeries(Series.of("", new double[] {1000}, new double[] {0.1}, Style.MARKERS, 1));
        // One decade above the lower end of three: a third of the height; log10(1000/20)/3 of the width.
        ChartLayout layout = layout(plot);
        double x = layout.left() + layout.width() * Math.log10(50) / 3;
        double y = layout.top() + layout.height() * 2 / 3;
        int colour = image(plot, 4).getRGB((int) (x * 4), (int) (y * 4)) & 0xFFFFFF;
        assertEquals(Palette.colour(1), colour);
    }

    @Test
    void logAxesAreLabelledPlainly() {
        Plot plot = Plot.of(
                "",
                Axis.log("Power", "W").withRange(0.1, 100),
                Axis.log("THD", "%").withRange(0.001, 10));
        List<String> texts = texts(renderer.toSvg(plot, WIDTH, HEIGHT, "a"));
        assertTrue(texts.containsAll(List.of("0.001", "0.01", "0.1", "1", "10", "100", "20", "50")), texts.toString());
        assertTrue(texts.stream().noneMatch(text -> text.matches(".*[0-9]E-?[0-9].*")), texts.toString());
    }

    @Test
    void numbersDoNotFollowTheLocaleOfTheMachine() {
        Locale before = Locale.getDefault();
        String english = renderer.toSvg(power(), WIDTH, HEIGHT, "a");
        try {
            Locale.setDefault(Locale.GERMANY);
            assertEquals(english, renderer.toSvg(power(), WIDTH, HEIGHT, "a"));
        } finally {
            Locale.setDefault(before);
        }
    }

    @ParameterizedTest
    @EnumSource
    void pngShowsEveryStyleInTheColourOfItsTone(Style style) throws IOException {
        Plot bare = Plot.of("", Axis.linear("x", ""), Axis.linear("y", "").withRange(0, 100));
        int tone = style.ordinal() % Palette.TONES;
        assertEquals(0, count(image(bare, 2), Palette.colour(tone)));
        BufferedImage drawn = image(bare.withSeries(Series.of("", VOLTS, WATTS, style, tone)), 2);
        assertEquals(1040, drawn.getWidth());
        assertTrue(count(drawn, Palette.colour(tone)) > 40, style.toString());
        assertTrue(count(drawn, 0xFFFFFF) > drawn.getWidth() * drawn.getHeight() / 4);
    }

    @ParameterizedTest
    @EnumSource
    void everyMarkerShapeIsDrawn(MarkerShape shape) throws IOException {
        Plot plot = Plot.of(
                        "",
                        Axis.linear("x", "").withRange(0, 2),
                        Axis.linear("y", "").withRange(0, 2))
                .withMark(Mark.point(1, 1, "", shape, 0));
        assertTrue(count(image(plot, 3), Palette.colour(0)) > 20);
    }

    @Test
    void textsOfMarksStayInsideTheAreaAndOffOneAnother() {
        Plot plot = power();
        for (int i = 0; i < 4; i++) {
            plot = plot.withMark(Mark.vertical(15.8 + i * 0.05, "mark number " + i));
        }
        plot = plot.withMark(Mark.horizontal(99.5, "upper limit"))
                .withMark(Mark.point(10, 0, "corner", MarkerShape.PLUS));
        ChartLayout layout = layout(plot);
        List<double[]> places = new ArrayList<>();
        Set<String> wanted = Set.of(
                "mark number 0", "mark number 1", "mark number 2", "mark number 3", "upper limit", "corner", "middle");
        for (Element text : elements(parsed(renderer.toSvg(plot, WIDTH, HEIGHT, "a")), "text")) {
            if (wanted.contains(text.getTextContent())) {
                double x = Double.parseDouble(text.getAttribute("x"));
                double y = Double.parseDouble(text.getAttribute("y"));
                places.add(new double[] {x, y});
                assertTrue(x >= layout.left() && y <= layout.top() + layout.height(), text.getTextContent());
                // A character is at least 3 points wide in the font used, a line 7 points high above its foot.
                assertTrue(x + 3 * text.getTextContent().length() <= layout.left() + layout.width());
                assertTrue(y - 7 >= layout.top(), text.getTextContent());
            }
        }
        assertEquals(wanted.size(), places.size());
        for (int i = 0; i < places.size(); i++) {
            for (int k = 0; k < i; k++) {
                double across = Math.abs(places.get(i)[0] - places.get(k)[0]);
                double down = Math.abs(places.get(i)[1] - places.get(k)[1]);
                assertTrue(across >= 18 || down >= 7, "texts " + k + " and " + i + " lie on one another");
            }
        }
    }

    @Test
    void longRecordsStaySmallAndKeepTheirPeaks() throws IOException {
        Random random = new Random(7);
        double[] x = new double[192_000];
        double[] y = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            x[i] = i / 192.0;
            y[i] = random.nextGaussian();
        }
        y[77_777] = 50;
        Plot plot = Plot.of(
                        "Noise",
                        Axis.linear("Time", "ms"),
                        Axis.linear("Voltage", "V").withRange(-100, 100))
                .withSeries(Series.of("", x, y, Style.LINE, 0));
        assertTrue(renderer.toSvg(plot, WIDTH, HEIGHT, "a").length() < 60_000);
        assertTrue(renderer.toSvg(power(), WIDTH, HEIGHT, "a").length() < 40_000);
        ChartLayout layout = layout(plot);
        BufferedImage image = image(plot, 4);
        double peakX = layout.x().toPosition(x[77_777]);
        double nearPeakY = layout.y().toPosition(49);
        int red = image.getRGB((int) (peakX * 4), (int) (nearPeakY * 4)) >> 16 & 0xFF;
        assertTrue(red < 128, "the peak is not drawn, red is " + red);
    }
}
