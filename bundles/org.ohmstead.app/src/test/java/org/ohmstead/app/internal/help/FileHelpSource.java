// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.help;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.ohmstead.units.text.Language;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.xml.sax.SAXException;

/** The bundle's own help, read from its files as the platform's help system reads them. */
final class FileHelpSource implements HelpSource {
    static final String ROOT = "/org.ohmstead.app/";

    private final Locale language;

    /** Reads in the language that is spoken now. */
    FileHelpSource() {
        this(Language.current());
    }

    FileHelpSource(Locale language) {
        this.language = language;
    }

    @Override
    public List<HelpTopic> contents() {
        return topics(document("help/toc.xml", language).getDocumentElement());
    }

    @Override
    public InputStream open(String href) throws IOException {
        InputStream content = stream(href.substring(ROOT.length()), language);
        if (content == null) {
            throw new FileNotFoundException(href);
        }
        return content;
    }

    /** Opens a file in a language, as the platform finds it: below nl/LANGUAGE if it is there, else in English. */
    private static InputStream stream(String file, Locale language) {
        InputStream translated = FileHelpSource.class.getResourceAsStream("/nl/" + language.getLanguage() + "/" + file);
        return translated != null ? translated : FileHelpSource.class.getResourceAsStream("/" + file);
    }

    static Document document(String file, Locale language) {
        try (InputStream content = stream(file, language)) {
            return DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(content);
        } catch (IOException | SAXException | ParserConfigurationException e) {
            throw new AssertionError(file, e);
        }
    }

    static List<Element> children(Element parent, String name) {
        List<Element> found = new ArrayList<>();
        for (Node each = parent.getFirstChild(); each != null; each = each.getNextSibling()) {
            if (each instanceof Element element && element.getTagName().equals(name)) {
                found.add(element);
            }
        }
        return found;
    }

    private static List<HelpTopic> topics(Element parent) {
        return children(parent, "topic").stream()
                .map(topic -> new HelpTopic(topic.getAttribute("label"), address(topic), topics(topic)))
                .toList();
    }

    static String address(Element topic) {
        return topic.hasAttribute("href") ? ROOT + topic.getAttribute("href") : "";
    }
}
