// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.help;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.xml.sax.SAXException;

/** The bundle's own help, read from its files as the platform's help system reads them. */
final class FileHelpSource implements HelpSource {
    static final String ROOT = "/org.ohmstead.app/";

    @Override
    public List<HelpTopic> contents() {
        return topics(document("help/toc.xml").getDocumentElement());
    }

    @Override
    public InputStream open(String href) throws IOException {
        InputStream content = FileHelpSource.class.getResourceAsStream("/" + href.substring(ROOT.length()));
        if (content == null) {
            throw new FileNotFoundException(href);
        }
        return content;
    }

    static Document document(String file) {
        try (InputStream content = FileHelpSource.class.getResourceAsStream("/" + file)) {
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
