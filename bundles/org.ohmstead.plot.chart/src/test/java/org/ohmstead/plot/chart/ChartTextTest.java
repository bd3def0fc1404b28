// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.StringReader;
import java.util.List;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.ohmstead.plot.Axis;
import org.ohmstead.plot.Band;
import org.ohmstead.plot.Mark;
import org.ohmstead.plot.MarkerShape;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.Style;
import org.ohmstead.plot.Tick;
import org.w3c.dom.Document;
import org.xml.sax.InputSource;

class ChartTextTest {
    private static final ChartRenderer RENDERER = new ChartRenderer();
    private static final double WIDTH = 480;
    private static final double HEIGHT = 320;
    private static final double[] VOLTS = {11, 12, 13};
    private static final double[] WATTS = {60, 70, 82};

    @Test
    void textsThatXmlForbidsAreReplacedEverywhere() throws Exception {
        // XML 1.0, production 2 (Char): no U+0007, no surrogate on its own, no U+FFFE; a pair of surrogates is one
        // character.
        String dirty = "a\u0007b\ud800c\udc00\ufffe \ud83d\ude00";
        String clean = "a\ufffdb\ufffdc\ufffd\ufffd \ud83d\ude00";
        Axis named = Axis.linear(dirty, dirty).withTicks(List.of(new Tick(12, dirty)));
        Plot plot = Plot.of(dirty, named, Axis.linear(dirty, ""))
                .withSeries(Series.of(dirty, VOLTS, WATTS, Style.MARKERS, 0))
                .withBand(Band.of(dirty, VOLTS, WATTS, WATTS, 1))
                .withMark(Mark.vertical(12, dirty))
                .withMark(Mark.horizontal(WATTS[0], dirty))
                .withMark(Mark.point(12, WATTS[0], dirty, MarkerShape.CROSS, 1))
                .withNote(dirty);
        String svg = RENDERER.toSvg(plot, WIDTH, HEIGHT, "a");
        Document document =
                DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new InputSource(new StringReader(svg)));
        String words = document.getDocumentElement().getTextContent();
        // Heading and title, two axes, tick, series, band, three marks, note.
        assertTrue(words.split(Pattern.quote("a\ufffdb\ufffdc"), -1).length - 1 >= 11, words);
        assertEquals(clean, document.getElementsByTagName("title").item(0).getTextContent());
        assertTrue(RENDERER.toPng(plot, WIDTH, HEIGHT, 1).length > 0);
    }
}
