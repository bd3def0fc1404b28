// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart.internal;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.ohmstead.plot.Axis;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.chart.ChartFonts;
import org.ohmstead.units.text.Messages;
import org.w3c.dom.Element;
import org.w3c.dom.NamedNodeMap;
import org.w3c.dom.Node;

/** Makes the generated SVG small and fit for a page: no defaults, named fonts, texts for readers, ids of its own. */
final class SvgTidying {
    private static final String SVG = "http://www.w3.org/2000/svg";

    private static final String CLIP = "clip-path";

    // What the generator states on the root although it is the initial value of SVG 1.1, or a hint without effect.
    private static final List<String> NEEDLESS = List.of(
            "color-interpolation",
            "color-rendering",
            "fill-opacity",
            "image-rendering",
            "shape-rendering",
            "stroke-dasharray",
            "stroke-dashoffset",
            "stroke-linejoin",
            "stroke-opacity",
            "stroke-width");

    private static final Pattern RGB = Pattern.compile("rgb\\((\\d+),(\\d+),(\\d+)\\)");
    private static final Pattern REFERENCE = Pattern.compile("url\\(#([^)]+)\\)");

    private final Element root;
    private final ChartFonts fonts;

    SvgTidying(Element root, ChartFonts fonts) {
        this.root = root;
        this.fonts = fonts;
    }

    static String number(double value) {
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(2, RoundingMode.HALF_EVEN);
        return (rounded.signum() == 0 ? BigDecimal.ZERO : rounded.stripTrailingZeros()).toPlainString();
    }

    /** The root after tidying. */
    Element tidied() {
        NEEDLESS.forEach(root::removeAttribute);
        tidyBelow(root);
        root.setAttribute("font-family", fonts.svgFontFamily());
        root.setAttribute("text-rendering", "geometricPrecision");
        return root;
    }

    void describe(Plot plot, Messages texts) {
        root.setAttribute("role", "img");
        root.setAttribute("aria-labelledby", "title desc");
        Element description = element("desc", description(plot, texts));
        root.insertBefore(description, root.getFirstChild());
        String title = plot.title().isBlank()
                ? texts.text("chart.title", plot.y().label(), plot.x().label())
                : plot.title();
        root.insertBefore(element("title", title), description);
    }

    /** Sets the prefix before every id, and before every reference to one. */
    void prefixIds(String prefix) {
        prefixIds(root, prefix + "-");
        root.setAttribute("aria-labelledby", prefix + "-title " + prefix + "-desc");
    }

    private void tidyBelow(Element parent) {
        for (Element child : children(parent)) {
            tidyBelow(child);
            child.removeAttribute("font-family");
            child.removeAttribute("text-rendering");
            if (!child.getTextContent().contains("  ")) {
                child.removeAttribute("xml:space");
            }
            for (String colour : List.of("fill", "stroke")) {
                Matcher matcher = RGB.matcher(child.getAttribute(colour));
                if (matcher.matches()) {
                    child.setAttribute(colour, hex(matcher));
                }
            }
            boolean definitions = "defs".equals(child.getLocalName());
            if (definitions) {
                child.removeAttribute("id");
            }
            if (definitions && child.getFirstChild() == null) {
                parent.removeChild(child);
            }
            raiseClip(child);
        }
    }

    // A clip that all parts of a group share is stated once, on the group.
    private static void raiseClip(Element group) {
        List<Element> parts = children(group);
        if (!"g".equals(group.getLocalName()) || parts.isEmpty() || group.hasAttribute(CLIP)) {
            return;
        }
        String clip = parts.get(0).getAttribute(CLIP);
        if (clip.isEmpty() || parts.stream().anyMatch(part -> !clip.equals(part.getAttribute(CLIP)))) {
            return;
        }
        parts.forEach(part -> part.removeAttribute(CLIP));
        group.setAttribute(CLIP, clip);
    }

    private static String hex(Matcher rgb) {
        int value = 0;
        for (int i = 1; i <= 3; i++) {
            value = value << 8 | Integer.parseInt(rgb.group(i));
        }
        return String.format(Locale.ROOT, "#%06x", value);
    }

    private Element element(String name, String text) {
        Element element = root.getOwnerDocument().createElementNS(SVG, name);
        element.setAttribute("id", name);
        element.setTextContent(text);
        return element;
    }

    private static String description(Plot plot, Messages texts) {
        String names = plot.series().stream()
                .map(Series::name)
                .filter(name -> !name.isBlank())
                .collect(Collectors.joining("; "));
        String y = name(plot.y(), texts);
        String x = name(plot.x(), texts);
        return names.isEmpty()
                ? texts.text("chart.description", y, x)
                : texts.text("chart.description.series", y, x, names);
    }

    private static String name(Axis axis, Messages texts) {
        return switch (axis.scale()) {
            case LINEAR -> axis.caption();
            case LOG -> texts.text("axis.log", axis.caption());
        };
    }

    private static void prefixIds(Element element, String prefix) {
        NamedNodeMap attributes = element.getAttributes();
        for (int i = 0; i < attributes.getLength(); i++) {
            Node attribute = attributes.item(i);
            String value = attribute.getNodeValue();
            if ("id".equals(attribute.getNodeName())) {
                attribute.setNodeValue(prefix + value);
            } else {
                attribute.setNodeValue(REFERENCE.matcher(value).replaceAll("url(#" + prefix + "$1)"));
            }
        }
        children(element).forEach(child -> prefixIds(child, prefix));
    }

    private static List<Element> children(Node parent) {
        List<Element> children = new ArrayList<>();
        for (Node node = parent.getFirstChild(); node != null; node = node.getNextSibling()) {
            if (node instanceof Element element) {
                children.add(element);
            }
        }
        return children;
    }
}
