// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Properties;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.ohmstead.plot.Axis;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.Style;
import org.ohmstead.plot.chart.internal.SvgCanvas;
import org.ohmstead.units.text.Language;

class ChartLanguageTest {
    private static final double WIDTH = 480;
    private static final double HEIGHT = 320;
    private static final ChartRenderer ENGLISH = new ChartRenderer(ChartFonts.bundled(), Locale.ENGLISH);
    private static final ChartRenderer GERMAN = new ChartRenderer(ChartFonts.bundled(), Locale.GERMAN);

    /** A linear axis from 0.5 to 3.0 and a logarithmic one from 0.1 to 10; the name of the series is no number. */
    private static Plot plot() {
        return Plot.of(
                        "",
                        Axis.linear("Supply", "V").withRange(0.5, 3),
                        Axis.log("Power", "W").withRange(0.1, 10))
                .withSeries(Series.of("v1.5", new double[] {1, 2}, new double[] {0.2, 2}, Style.MARKERS, 0));
    }

    private static String svg(ChartRenderer renderer) {
        return renderer.toSvg(plot(), WIDTH, HEIGHT, "a");
    }

    @Test
    void numbersAlongTheAxesHaveTheDecimalSignOfTheLanguage() {
        String english = svg(ENGLISH);
        String german = svg(GERMAN);
        for (String number : List.of(">1.5<", ">2.5<", ">0.1<")) {
            assertTrue(english.contains(number), number);
            assertFalse(german.contains(number), number);
            assertTrue(german.contains(number.replace('.', ',')), number);
        }
        assertTrue(german.contains(">v1.5<"), "the plot's own texts stay as they are");
        // Numbers in Swiss German have a point.
        String swiss = svg(new ChartRenderer(ChartFonts.bundled(), Locale.forLanguageTag("de-CH")));
        assertTrue(swiss.contains(">1.5<") && swiss.contains(" über "), swiss);
    }

    @Test
    void theDescriptionIsInTheLanguage() {
        assertTrue(svg(ENGLISH).contains("<desc id=\"a-desc\">Power (W), log over Supply (V): v1.5.</desc>"));
        assertTrue(svg(ENGLISH).contains("<title id=\"a-title\">Power over Supply</title>"));
        assertTrue(svg(GERMAN).contains("<desc id=\"a-desc\">Power (W), logarithmisch über Supply (V): v1.5.</desc>"));
    }

    @Test
    void theUsersSignGoesBeforeThatOfTheLanguage() {
        assertTrue(svg(ENGLISH.withDecimalComma(true)).contains(">1,5<"));
        assertTrue(svg(ENGLISH.withDecimalComma(true)).contains(" over "));
        assertTrue(svg(GERMAN.withDecimalComma(false)).contains(">1.5<"));
        assertEquals(svg(ENGLISH), svg(ENGLISH.withDecimalComma(true).withDecimalComma(false)));
    }

    @Test
    void picturesAndPagesFollowToo() throws IOException {
        assertArrayEquals(
                ENGLISH.toPng(plot(), WIDTH, HEIGHT, 1),
                GERMAN.withDecimalComma(false).toPng(plot(), WIDTH, HEIGHT, 1));
        assertFalse(Arrays.equals(ENGLISH.toPng(plot(), WIDTH, HEIGHT, 1), GERMAN.toPng(plot(), WIDTH, HEIGHT, 1)));
        try (PDDocument page = Loader.loadPDF(GERMAN.toPdf(plot(), WIDTH, HEIGHT))) {
            String text = new PDFTextStripper().getText(page);
            assertTrue(text.contains("2,5") && !text.contains("2.5"), text);
        }
    }

    @Test
    void withoutALanguageTheOneThatIsSpokenCounts() {
        String before = System.getProperty(Language.PROPERTY);
        try {
            System.setProperty(Language.PROPERTY, "de");
            assertEquals(svg(GERMAN), svg(new ChartRenderer(ChartFonts.bundled())));
            System.setProperty(Language.PROPERTY, "en");
            assertEquals(svg(ENGLISH), svg(new ChartRenderer(ChartFonts.bundled())));
            assertNotEquals(svg(ENGLISH), svg(GERMAN));
        } finally {
            if (before == null) {
                System.clearProperty(Language.PROPERTY);
            } else {
                System.setProperty(Language.PROPERTY, before);
            }
        }
    }

    @Test
    void tablesOfNumbersAlwaysHaveAPoint() {
        String before = System.getProperty(Language.PROPERTY);
        try {
            System.setProperty(Language.PROPERTY, "de");
            assertTrue(PlotCsv.write(plot()).contains("v1.5,1.0,0.2,,"));
        } finally {
            if (before == null) {
                System.clearProperty(Language.PROPERTY);
            } else {
                System.setProperty(Language.PROPERTY, before);
            }
        }
    }

    @Test
    void bothLanguagesHaveTheSameTextsWithTheSamePlaces() throws IOException {
        Properties english = texts("messages.properties");
        Properties german = texts("messages_de.properties");
        assertFalse(english.isEmpty());
        assertEquals(english.keySet(), german.keySet());
        english.forEach((key, text) -> {
            for (String place : List.of("{0}", "{1}", "{2}")) {
                assertEquals(
                        text.toString().contains(place),
                        german.getProperty(key.toString()).contains(place),
                        key + " " + place);
            }
        });
    }

    private static Properties texts(String name) throws IOException {
        Properties texts = new Properties();
        try (InputStream file = SvgCanvas.class.getResourceAsStream(name);
                Reader reader = new InputStreamReader(file, StandardCharsets.UTF_8)) {
            texts.load(reader);
        }
        return texts;
    }
}
