// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.StringReader;
import java.util.OptionalDouble;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.ohmstead.load.Network;
import org.ohmstead.load.Resistor;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.xml.sax.InputSource;

class NetworkSvgTest {
    private static final String SVG = "http://www.w3.org/2000/svg";

    private static Document parsed(String text) throws Exception {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setNamespaceAware(true);
        factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
        return factory.newDocumentBuilder().parse(new InputSource(new StringReader(text)));
    }

    @ParameterizedTest
    @EnumSource
    void isWellFormedAndHoldsTheWholeDrawing(NetworkSvg.Look look) throws Exception {
        NetworkDrawing drawing =
                NetworkDrawing.of(DrawnNetworks.read("(8R2||8R2||15)+(3R3||0R47)"), OptionalDouble.of(50));
        Document svg = parsed(NetworkSvg.write(drawing, look));
        Element root = svg.getDocumentElement();
        assertEquals(SVG, root.getNamespaceURI());
        assertEquals("0 0 " + drawing.width() + " " + drawing.height(), root.getAttribute("viewBox"));
        assertEquals("img", root.getAttribute("role"));
        assertEquals("title desc", root.getAttribute("aria-labelledby"));
        assertEquals(
                drawing.runs().size(),
                svg.getElementsByTagNameNS(SVG, "polyline").getLength());
        assertEquals(
                drawing.labels().size(), svg.getElementsByTagNameNS(SVG, "text").getLength());
        // The ground, and for each resistor its ground, its bar and its frame.
        assertEquals(
                1 + 3 * drawing.bodies().size(),
                svg.getElementsByTagNameNS(SVG, "rect").getLength());
        assertEquals(
                2 + drawing.dots().size(),
                svg.getElementsByTagNameNS(SVG, "circle").getLength());
        assertEquals(
                "Load network of 5 resistors",
                svg.getElementsByTagNameNS(SVG, "title").item(0).getTextContent());
        assertEquals("sans-serif", root.getAttribute("font-family"));
    }

    @Test
    void anIdCannotBreakThePicture() throws Exception {
        String id = "<R&\"1\">\u0001";
        String text = NetworkSvg.write(NetworkDrawing.of(Network.of(Resistor.of(id, 8, 0.05))), NetworkSvg.Look.LIGHT);
        Document svg = parsed(text);
        boolean found = false;
        for (int i = 0; i < svg.getElementsByTagNameNS(SVG, "text").getLength(); i++) {
            found |= svg.getElementsByTagNameNS(SVG, "text")
                    .item(i)
                    .getTextContent()
                    .equals("<R&\"1\"> ");
        }
        assertTrue(found, text);
    }

    @Test
    void theTwoLooksDiffer() {
        NetworkDrawing drawing = NetworkDrawing.of(DrawnNetworks.read("8R2"));
        assertFalse(NetworkSvg.write(drawing, NetworkSvg.Look.LIGHT)
                .equals(NetworkSvg.write(drawing, NetworkSvg.Look.DARK)));
    }
}
