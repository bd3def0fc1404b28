// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.help;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntPredicate;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilder;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.ohmstead.units.text.Messages;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.xml.sax.SAXException;
import org.xml.sax.helpers.DefaultHandler;

/**
 * A way through Ohmstead, step by step, with what each step opens. It is written as the platform's cheat sheets are; their own viewer needs
 * the platform's help window, which is not in the product.
 *
 * @param title what it is about
 * @param intro what stands before the steps
 * @param steps the steps in their order
 */
record StepSheet(String title, List<HelpBlock> intro, List<Step> steps) {
    /** Begins the address of what runs a command; the command as the platform writes it follows. */
    static final String COMMAND = "command:";

    /** Begins the address of what ticks a step off, or takes the tick away; the number of the step from 0 follows. */
    static final String TICK = "tick:";

    private static final Messages TEXTS = Messages.of(StepSheet.class);

    StepSheet {
        intro = List.copyOf(intro);
        steps = List.copyOf(steps);
    }

    /**
     * A step.
     *
     * @param title what is to be done
     * @param words how
     * @param opens what it opens, each with a label
     */
    record Step(String title, List<HelpSpan> words, List<HelpSpan> opens) {
        Step {
            words = List.copyOf(words);
            opens = List.copyOf(opens);
        }
    }

    /**
     * Reads a sheet; the caller closes the stream.
     *
     * @throws HelpException when it cannot be read
     */
    static StepSheet read(String name, InputStream content) throws HelpException {
        try {
            DocumentBuilderFactory factory = DocumentBuilderFactory.newDefaultInstance();
            factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
            factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
            DocumentBuilder builder = factory.newDocumentBuilder();
            builder.setErrorHandler(new DefaultHandler()); // Java's own would write to the standard streams
            Element sheet = builder.parse(content).getDocumentElement();
            List<HelpBlock> intro = new ArrayList<>();
            for (Element part : children(sheet, "intro")) {
                paragraphs(description(part)).forEach(spans -> intro.add(introduced(spans)));
            }
            List<Step> steps = new ArrayList<>();
            for (Element item : children(sheet, "item")) {
                List<HelpSpan> words = new ArrayList<>();
                paragraphs(description(item)).forEach(words::addAll);
                steps.add(new Step(item.getAttribute("title"), words, opens(item)));
            }
            return new StepSheet(sheet.getAttribute("title"), intro, steps);
        } catch (IOException | SAXException | ParserConfigurationException e) {
            throw new HelpException(TEXTS.text("page.unreadable", name, e.getMessage()), e);
        }
    }

    /** Returns the page that shows it: each step with what it opens, and a tick where it is done. */
    HelpPage page(IntPredicate done) {
        List<HelpBlock> blocks = new ArrayList<>();
        blocks.add(HelpBlock.Text.of(HelpBlock.Kind.TITLE, HelpSpan.plain(title)));
        blocks.addAll(intro);
        for (int i = 0; i < steps.size(); i++) {
            Step step = steps.get(i);
            String key = done.test(i) ? "steps.done" : "steps.open";
            String heading = TEXTS.text(key, Integer.toString(i + 1), step.title());
            blocks.add(HelpBlock.Text.of(HelpBlock.Kind.SUBHEADING, HelpSpan.plain(heading)));
            blocks.add(new HelpBlock.Text(HelpBlock.Kind.PARAGRAPH, 0, "", step.words()));
            for (HelpSpan open : step.opens()) {
                blocks.add(new HelpBlock.Text(HelpBlock.Kind.ITEM, 1, "→", List.of(open)));
            }
            String tick = TEXTS.text(done.test(i) ? "steps.untick" : "steps.tick");
            blocks.add(new HelpBlock.Text(
                    HelpBlock.Kind.ITEM, 1, done.test(i) ? "☑" : "☐", List.of(HelpSpan.link(tick, TICK + i))));
        }
        return new HelpPage("", title, blocks);
    }

    /** What begins in strong type says what can hurt. */
    private static HelpBlock introduced(List<HelpSpan> spans) {
        boolean caution = spans.get(0).look() == HelpSpan.Look.STRONG;
        return new HelpBlock.Text(caution ? HelpBlock.Kind.CAUTION : HelpBlock.Kind.PARAGRAPH, 0, "", spans);
    }

    private static List<HelpSpan> opens(Element item) {
        List<HelpSpan> opens = new ArrayList<>();
        for (Element command : children(item, "command")) {
            opens.add(link(TEXTS.text("steps.show"), command));
        }
        for (Element part : children(item, "subitem")) {
            for (Element command : children(part, "command")) {
                opens.add(link(part.getAttribute("label"), command));
            }
        }
        return opens;
    }

    private static HelpSpan link(String label, Element command) {
        return HelpSpan.link(label, COMMAND + command.getAttribute("serialization"));
    }

    private static Element description(Element parent) throws SAXException {
        return children(parent, "description").stream()
                .findFirst()
                .orElseThrow(() -> new SAXException(TEXTS.text("steps.unsaid", parent.getAttribute("title"))));
    }

    /** Returns what stands between line breaks, without what is empty. */
    private static List<List<HelpSpan>> paragraphs(Element description) {
        List<List<HelpSpan>> paragraphs = new ArrayList<>(List.of(new ArrayList<>()));
        for (Node each = description.getFirstChild(); each != null; each = each.getNextSibling()) {
            if ("br".equals(each.getNodeName())) {
                paragraphs.add(new ArrayList<>());
            } else if (!each.getTextContent().isEmpty()) {
                HelpSpan.Look look = "b".equals(each.getNodeName()) ? HelpSpan.Look.STRONG : HelpSpan.Look.PLAIN;
                paragraphs.get(paragraphs.size() - 1).add(new HelpSpan(each.getTextContent(), look, ""));
            }
        }
        paragraphs.removeIf(List::isEmpty);
        return paragraphs;
    }

    private static List<Element> children(Element parent, String name) {
        List<Element> found = new ArrayList<>();
        for (Node each = parent.getFirstChild(); each != null; each = each.getNextSibling()) {
            if (each instanceof Element element && element.getTagName().equals(name)) {
                found.add(element);
            }
        }
        return found;
    }
}
