// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart.internal;

import java.awt.Dimension;
import java.awt.Graphics2D;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Objects;
import java.util.zip.CRC32;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import javax.xml.transform.OutputKeys;
import javax.xml.transform.Transformer;
import javax.xml.transform.TransformerException;
import javax.xml.transform.TransformerFactory;
import javax.xml.transform.dom.DOMSource;
import javax.xml.transform.stream.StreamResult;
import org.apache.batik.svggen.SVGGeneratorContext;
import org.apache.batik.svggen.SVGGraphics2D;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.chart.ChartFonts;
import org.ohmstead.plot.chart.SvgOptions;
import org.ohmstead.units.text.Messages;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/** A surface for drawing that becomes an SVG element. */
public final class SvgCanvas {
    private static final String SVG = "http://www.w3.org/2000/svg";
    private static final int DECIMALS = 2;

    private final double widthPoints;
    private final double heightPoints;
    private final SVGGraphics2D graphics;

    /** Makes an empty surface. */
    public SvgCanvas(double widthPoints, double heightPoints) {
        this.widthPoints = widthPoints;
        this.heightPoints = heightPoints;
        try {
            Document document = DocumentBuilderFactory.newDefaultInstance()
                    .newDocumentBuilder()
                    .getDOMImplementation()
                    .createDocument(SVG, "svg", null);
            SVGGeneratorContext context = SVGGeneratorContext.createDefault(document);
            context.setPrecision(DECIMALS);
            context.setComment(null);
            graphics = new SVGGraphics2D(context, false);
        } catch (ParserConfigurationException e) {
            throw new IllegalStateException("The XML classes of this Java runtime do not work.", e);
        }
        graphics.setSVGCanvasSize(new Dimension((int) Math.ceil(widthPoints), (int) Math.ceil(heightPoints)));
    }

    /** Returns what to draw on. */
    public Graphics2D graphics() {
        return graphics;
    }

    /** Returns the element for what was drawn, without XML prolog, described in a language. To be called once. */
    public String toElement(Plot plot, ChartFonts fonts, SvgOptions options, Locale language) {
        Objects.requireNonNull(plot, "plot");
        SvgTidying tidying = new SvgTidying(graphics.getRoot(), fonts);
        Element root = tidying.tidied();
        root.setAttribute("viewBox", "0 0 " + SvgTidying.number(widthPoints) + " " + SvgTidying.number(heightPoints));
        if (options.responsive()) {
            root.setAttribute("width", "100%");
            root.removeAttribute("height");
        } else {
            root.setAttribute("width", SvgTidying.number(widthPoints));
            root.setAttribute("height", SvgTidying.number(heightPoints));
        }
        tidying.describe(plot, Messages.of(SvgCanvas.class, language));
        String prefix = options.idPrefix().orElseGet(() -> "plot-" + fingerprint(written(root)));
        tidying.prefixIds(prefix);
        return written(root);
    }

    private static String fingerprint(String text) {
        CRC32 crc = new CRC32();
        crc.update(text.getBytes(StandardCharsets.UTF_8));
        return Long.toHexString(crc.getValue());
    }

    private static String written(Element root) {
        try {
            Transformer transformer = TransformerFactory.newDefaultInstance().newTransformer();
            transformer.setOutputProperty(OutputKeys.OMIT_XML_DECLARATION, "yes");
            transformer.setOutputProperty(OutputKeys.ENCODING, "UTF-8");
            StringWriter writer = new StringWriter();
            transformer.transform(new DOMSource(root), new StreamResult(writer));
            return writer.toString();
        } catch (TransformerException e) {
            throw new IllegalStateException("The SVG of the chart could not be written in memory.", e);
        }
    }
}
