// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.help;

import java.io.IOException;
import java.io.InputStream;
import java.io.StringReader;
import java.net.URI;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.Set;
import javax.xml.XMLConstants;
import javax.xml.parsers.ParserConfigurationException;
import javax.xml.parsers.SAXParserFactory;
import org.ohmstead.units.text.Messages;
import org.xml.sax.Attributes;
import org.xml.sax.InputSource;
import org.xml.sax.Locator;
import org.xml.sax.SAXException;
import org.xml.sax.SAXParseException;
import org.xml.sax.helpers.DefaultHandler;

/**
 * Reads a page: well-formed XHTML with headings {@code h1} to {@code h3}, {@code p} (class {@code caution} for a warning), {@code ul},
 * {@code ol}, {@code li}, {@code table}, {@code tr}, {@code th}, {@code td}, and within them {@code strong}, {@code em}, {@code code},
 * {@code kbd} and {@code a}. Other elements are refused, so that nothing is left out unnoticed.
 */
final class HelpPageParser extends DefaultHandler {
    private static final Messages TEXTS = Messages.of(HelpPageParser.class);
    private static final Map<String, HelpBlock.Kind> BLOCKS = Map.of(
            "h1", HelpBlock.Kind.TITLE,
            "h2", HelpBlock.Kind.HEADING,
            "h3", HelpBlock.Kind.SUBHEADING,
            "p", HelpBlock.Kind.PARAGRAPH);
    private static final Map<String, HelpSpan.Look> LOOKS = Map.of(
            "strong", HelpSpan.Look.STRONG,
            "b", HelpSpan.Look.STRONG,
            "em", HelpSpan.Look.EMPHASIS,
            "i", HelpSpan.Look.EMPHASIS,
            "code", HelpSpan.Look.CODE,
            "kbd", HelpSpan.Look.KEY);
    private static final Set<String> FRAMES = Set.of("html", "head", "body", "thead", "tbody");

    private final String href;
    private final List<HelpBlock> blocks = new ArrayList<>();
    private final List<HelpSpan> spans = new ArrayList<>();
    private final StringBuilder words = new StringBuilder();
    private final Deque<HelpSpan.Look> looks = new ArrayDeque<>();
    private final Deque<Integer> lists = new ArrayDeque<>();
    private final List<HelpBlock.Row> rows = new ArrayList<>();
    private final List<List<HelpSpan>> cells = new ArrayList<>();
    private String title = "";
    private String target = "";
    private boolean header;
    private HelpBlock.Kind kind = HelpBlock.Kind.PARAGRAPH;
    private Locator place;

    private HelpPageParser(String href) {
        this.href = href;
    }

    /**
     * Reads a page; the caller closes the stream.
     *
     * @param href the page's own address, against which its links are resolved
     * @throws HelpException when the page cannot be read, is not well-formed, or holds another element
     */
    static HelpPage parse(String href, InputStream content) throws HelpException {
        HelpPageParser handler = new HelpPageParser(href);
        try {
            SAXParserFactory factory = SAXParserFactory.newDefaultInstance();
            factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
            factory.newSAXParser().parse(content, handler);
        } catch (SAXParseException e) {
            throw new HelpException(
                    TEXTS.text("page.malformed", href, e.getMessage(), Integer.toString(e.getLineNumber())), e);
        } catch (SAXException | ParserConfigurationException | IOException e) {
            throw new HelpException(TEXTS.text("page.unreadable", href, e.getMessage()), e);
        }
        return new HelpPage(href, handler.title, handler.blocks);
    }

    @Override
    public void setDocumentLocator(Locator locator) {
        place = locator;
    }

    /** A page may name a document type; it is not fetched. */
    @Override
    public InputSource resolveEntity(String publicId, String systemId) {
        return new InputSource(new StringReader(""));
    }

    @Override
    public void startElement(String uri, String localName, String name, Attributes attributes) throws SAXException {
        if (BLOCKS.containsKey(name)) {
            startBlock("caution".equals(attributes.getValue("class")) ? HelpBlock.Kind.CAUTION : BLOCKS.get(name));
        } else if (LOOKS.containsKey(name)) {
            endSpan();
            looks.push(LOOKS.get(name));
        } else {
            startOther(name, attributes);
        }
    }

    private void startOther(String name, Attributes attributes) throws SAXException {
        switch (name) {
            case "a" -> {
                endSpan();
                target = resolved(attributes.getValue("href"));
            }
            case "ul", "ol" -> {
                endBlock();
                lists.push("ul".equals(name) ? -1 : 0);
            }
            case "li" -> {
                startBlock(HelpBlock.Kind.ITEM);
                countItem();
            }
            case "th", "td" -> {
                startBlock(HelpBlock.Kind.PARAGRAPH);
                header = "th".equals(name);
            }
            case "title" -> words.setLength(0);
            case "table", "tr" -> endBlock();
            default -> {
                if (!FRAMES.contains(name)) {
                    throw new SAXParseException(TEXTS.text("page.element", name), place);
                }
            }
        }
    }

    @Override
    public void endElement(String uri, String localName, String name) {
        if (BLOCKS.containsKey(name) || "li".equals(name)) {
            endBlock();
        } else if (LOOKS.containsKey(name)) {
            endSpan();
            looks.pop();
        } else {
            endOther(name);
        }
    }

    private void endOther(String name) {
        switch (name) {
            case "a" -> {
                endSpan();
                target = "";
            }
            case "ul", "ol" -> {
                endBlock();
                lists.pop();
            }
            case "th", "td" -> {
                endSpan();
                cells.add(trimmed());
                spans.clear();
            }
            case "tr" -> {
                rows.add(new HelpBlock.Row(header, cells));
                cells.clear();
            }
            case "table" -> {
                blocks.add(new HelpBlock.Table(rows));
                rows.clear();
            }
            case "title" -> {
                title = words.toString().strip();
                words.setLength(0);
            }
            default -> words.setLength(0);
        }
    }

    @Override
    public void characters(char[] text, int start, int length) {
        for (int i = start; i < start + length; i++) {
            boolean space = Character.isWhitespace(text[i]);
            if (!space) {
                words.append(text[i]);
            } else if (!endsWithSpace()) {
                words.append(' ');
            }
        }
    }

    private boolean endsWithSpace() {
        if (words.length() > 0) {
            return words.charAt(words.length() - 1) == ' ';
        }
        return spans.isEmpty() || spans.get(spans.size() - 1).text().endsWith(" ");
    }

    private void startBlock(HelpBlock.Kind which) {
        endBlock();
        kind = which;
    }

    private void endBlock() {
        endSpan();
        List<HelpSpan> text = trimmed();
        if (!text.isEmpty()) {
            boolean item = kind == HelpBlock.Kind.ITEM;
            blocks.add(new HelpBlock.Text(kind, lists.size(), item ? marker() : "", text));
        }
        spans.clear();
    }

    private void endSpan() {
        if (words.length() > 0) {
            HelpSpan.Look look = looks.isEmpty() ? HelpSpan.Look.PLAIN : looks.peek();
            spans.add(new HelpSpan(words.toString(), look, target));
            words.setLength(0);
        }
    }

    private List<HelpSpan> trimmed() {
        List<HelpSpan> text = new ArrayList<>(spans);
        if (!text.isEmpty()) {
            HelpSpan last = text.remove(text.size() - 1);
            String kept = last.text().stripTrailing();
            if (!kept.isEmpty()) {
                text.add(new HelpSpan(kept, last.look(), last.href()));
            }
        }
        return text;
    }

    private void countItem() throws SAXException {
        if (lists.isEmpty()) {
            throw new SAXParseException(TEXTS.text("page.item"), place);
        }
        int before = lists.pop();
        lists.push(before < 0 ? before : before + 1);
    }

    private String marker() {
        int count = lists.isEmpty() ? -1 : lists.peek();
        return count < 0 ? "•" : count + ".";
    }

    private String resolved(String address) throws SAXException {
        if (address == null) {
            throw new SAXParseException(TEXTS.text("page.link.none"), place);
        }
        try {
            return URI.create(href).resolve(address).toString();
        } catch (IllegalArgumentException e) {
            throw new SAXParseException(TEXTS.text("page.link.wrong", address), place, e);
        }
    }
}
