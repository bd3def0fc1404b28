// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilder;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import javax.xml.transform.OutputKeys;
import javax.xml.transform.Transformer;
import javax.xml.transform.TransformerException;
import javax.xml.transform.TransformerFactory;
import javax.xml.transform.dom.DOMSource;
import javax.xml.transform.stream.StreamResult;
import org.ohmstead.report.ReportException;
import org.w3c.dom.Attr;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NamedNodeMap;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;
import org.xml.sax.helpers.DefaultHandler;

/**
 * Leaves of an SVG drawing (SVG 1.1, chapters 5, 7, 9, 11, 13) only named elements and attributes: shapes, groups, gradients, and references
 * within the drawing. What is not named goes, be it script, link, animation or something yet unheard of. What would be missed when it
 * goes (letters, pictures, filters) is refused instead.
 */
final class SafeDrawing {
    private static final String SVG = "http://www.w3.org/2000/svg";
    private static final String XLINK = "http://www.w3.org/1999/xlink";
    private static final int MOST_ELEMENTS = 5000;
    private static final int MOST_DEPTH = 40;

    private static final Set<String> ELEMENTS = Set.of(
            "svg",
            "g",
            "defs",
            "symbol",
            "use",
            "path",
            "rect",
            "circle",
            "ellipse",
            "line",
            "polyline",
            "polygon",
            "linearGradient",
            "radialGradient",
            "stop",
            "clipPath",
            "title",
            "desc",
            "style");

    private static final Set<String> SHAPES =
            Set.of("path", "rect", "circle", "ellipse", "line", "polyline", "polygon", "use");

    /** Elements that draw something that pages cannot show as it was meant. */
    private static final Set<String> MISSED =
            Set.of("text", "tspan", "textPath", "image", "foreignObject", "filter", "mask", "pattern", "switch");

    private static final Set<String> ATTRIBUTES = Set.of(
            "id",
            "class",
            "style",
            "transform",
            "d",
            "x",
            "y",
            "width",
            "height",
            "rx",
            "ry",
            "cx",
            "cy",
            "r",
            "x1",
            "y1",
            "x2",
            "y2",
            "fx",
            "fy",
            "points",
            "viewBox",
            "preserveAspectRatio",
            "fill",
            "fill-opacity",
            "fill-rule",
            "stroke",
            "stroke-width",
            "stroke-opacity",
            "stroke-linecap",
            "stroke-linejoin",
            "stroke-miterlimit",
            "stroke-dasharray",
            "stroke-dashoffset",
            "opacity",
            "color",
            "display",
            "visibility",
            "offset",
            "stop-color",
            "stop-opacity",
            "gradientUnits",
            "gradientTransform",
            "spreadMethod",
            "clip-path",
            "clip-rule",
            "clipPathUnits",
            "version",
            "href");

    /** A reference that does not stay within the drawing, or the beginning of something that could become one. */
    private static final Pattern OUTWARD = Pattern.compile(
            "url\\s*\\(\\s*[\"']?\\s*[^\"'#\\s]|@|\\\\|javascript:|expression\\s*\\(|<|/\\*", Pattern.CASE_INSENSITIVE);

    private final String name;
    private int elements;
    private int shapes;

    private SafeDrawing(String name) {
        this.name = name;
    }

    static byte[] of(byte[] content, String name) throws ReportException {
        Document document = parse(content, name);
        Element root = document.getDocumentElement();
        if (!isSvg(root) || !root.getLocalName().equals("svg")) {
            throw new ReportException(Failures.say("logo.notSvg", name));
        }
        SafeDrawing drawing = new SafeDrawing(name);
        drawing.clean(root, 1);
        if (drawing.shapes == 0) {
            throw new ReportException(Failures.say("logo.noShape", name));
        }
        drawing.checkReferences(root);
        return text(root, name);
    }

    private static Document parse(byte[] content, String name) throws ReportException {
        try {
            DocumentBuilderFactory factory = DocumentBuilderFactory.newDefaultInstance();
            factory.setNamespaceAware(true);
            factory.setXIncludeAware(false);
            factory.setExpandEntityReferences(false);
            factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
            factory.setFeature("http://xml.org/sax/features/external-general-entities", false);
            factory.setFeature("http://xml.org/sax/features/external-parameter-entities", false);
            factory.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
            DocumentBuilder builder = factory.newDocumentBuilder();
            builder.setErrorHandler(new DefaultHandler());
            builder.setEntityResolver((publicId, systemId) -> new InputSource(new StringReader("")));
            Document document = builder.parse(new ByteArrayInputStream(content));
            if (document.getDoctype() != null && document.getDoctype().getInternalSubset() != null) {
                throw new ReportException(Failures.say("logo.entities", name));
            }
            return document;
        } catch (ParserConfigurationException e) {
            throw new IllegalStateException("This Java cannot read XML safely.", e);
        } catch (SAXException | IOException e) {
            throw new ReportException(Failures.say("logo.notWhole", name), e);
        }
    }

    private static boolean isSvg(Element element) {
        return SVG.equals(element.getNamespaceURI());
    }

    private void clean(Element element, int depth) throws ReportException {
        elements++;
        if (elements > MOST_ELEMENTS || depth > MOST_DEPTH) {
            throw new ReportException(Failures.say("logo.parts", name, MOST_ELEMENTS + "", MOST_DEPTH + ""));
        }
        if (SHAPES.contains(element.getLocalName())) {
            shapes++;
        }
        attributes(element);
        boolean words = Set.of("style", "title", "desc").contains(element.getLocalName());
        for (Node child : children(element)) {
            if (child instanceof Element inner) {
                keepOrRemove(element, inner, depth);
            } else if (!words || child.getNodeType() == Node.PROCESSING_INSTRUCTION_NODE) {
                element.removeChild(child);
            }
        }
    }

    private static boolean isOutwardStyle(Element element) {
        return element.getLocalName().equals("style")
                && OUTWARD.matcher(element.getTextContent()).find();
    }

    private void keepOrRemove(Element parent, Element inner, int depth) throws ReportException {
        if (isSvg(inner) && MISSED.contains(inner.getLocalName())) {
            throw new ReportException(Failures.say("logo.element", name, inner.getLocalName()));
        }
        if (isSvg(inner) && ELEMENTS.contains(inner.getLocalName()) && !isOutwardStyle(inner)) {
            clean(inner, depth + 1);
        } else {
            parent.removeChild(inner);
        }
    }

    private static void attributes(Element element) {
        NamedNodeMap all = element.getAttributes();
        List<Attr> unwanted = new ArrayList<>();
        for (int index = 0; index < all.getLength(); index++) {
            Attr attribute = (Attr) all.item(index);
            if (!isWanted(attribute)) {
                unwanted.add(attribute);
            }
        }
        unwanted.forEach(element::removeAttributeNode);
    }

    private static boolean isWanted(Attr attribute) {
        String space = attribute.getNamespaceURI();
        if (XMLConstants.XMLNS_ATTRIBUTE_NS_URI.equals(space)) {
            return SVG.equals(attribute.getValue()) || XLINK.equals(attribute.getValue());
        }
        if (!ATTRIBUTES.contains(attribute.getLocalName()) || space != null && !XLINK.equals(space)) {
            return false;
        }
        String value = attribute.getValue();
        if (attribute.getLocalName().equals("href")) {
            return value.startsWith("#");
        }
        return !OUTWARD.matcher(value).find();
    }

    /** A drawing that is used may not use another: a chain of a few would make billions of one. */
    private void checkReferences(Element root) throws ReportException {
        Set<String> users = new HashSet<>();
        NodeList uses = root.getElementsByTagNameNS(SVG, "use");
        for (int index = 0; index < uses.getLength(); index++) {
            for (Node node = uses.item(index); node instanceof Element around; node = node.getParentNode()) {
                users.add("#" + around.getAttribute("id"));
            }
        }
        users.remove("#");
        for (int index = 0; index < uses.getLength(); index++) {
            Element use = (Element) uses.item(index);
            String target =
                    use.hasAttributeNS(XLINK, "href") ? use.getAttributeNS(XLINK, "href") : use.getAttribute("href");
            if (users.contains(target)) {
                throw new ReportException(Failures.say("logo.copies", name));
            }
        }
    }

    private static List<Node> children(Element element) {
        List<Node> children = new ArrayList<>();
        for (Node child = element.getFirstChild(); child != null; child = child.getNextSibling()) {
            children.add(child);
        }
        return children;
    }

    private static byte[] text(Element root, String name) throws ReportException {
        try {
            TransformerFactory factory = TransformerFactory.newDefaultInstance();
            factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
            Transformer transformer = factory.newTransformer();
            transformer.setOutputProperty(OutputKeys.ENCODING, "UTF-8");
            transformer.setOutputProperty(OutputKeys.OMIT_XML_DECLARATION, "yes");
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            transformer.transform(new DOMSource(root), new StreamResult(bytes));
            return bytes.toByteArray();
        } catch (TransformerException e) {
            throw new ReportException(Failures.say("logo.notClean", name), e);
        }
    }
}
