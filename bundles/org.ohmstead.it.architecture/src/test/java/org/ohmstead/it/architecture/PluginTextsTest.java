// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.it.architecture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/** What the plugin.xml files say to people comes from message files in both languages. */
class PluginTextsTest {
    private static final String TEXTS = "OSGI-INF/l10n/bundle";
    /** The command line has no face of its own, and the bare workbench is only measured. */
    private static final Set<String> FACELESS = Set.of("org.ohmstead.cli", "org.ohmstead.ui.bare");

    private static final Set<String> SHOWN = Set.of("name", "label", "description", "tooltip");
    /** Elements whose name is no text. */
    private static final Set<String> NAMELESS = Set.of("parameter", "separator", "property", "scheme", "product");

    static Stream<Path> bundles() throws IOException {
        return Bundles.all().stream()
                .filter(bundle -> Files.exists(bundle.resolve("plugin.xml")))
                .filter(bundle -> !FACELESS.contains(bundle.getFileName().toString()));
    }

    private static List<Element> elements(Path bundle) throws Exception {
        NodeList all = DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(bundle.resolve("plugin.xml").toFile())
                .getElementsByTagName("*");
        List<Element> elements = new ArrayList<>();
        for (int i = 0; i < all.getLength(); i++) {
            elements.add((Element) all.item(i));
        }
        return elements;
    }

    /** Returns what an element says to people. */
    private static List<String> said(Element element) {
        List<String> said = new ArrayList<>();
        for (String attribute : SHOWN) {
            boolean name = attribute.equals("name") && NAMELESS.contains(element.getTagName());
            if (element.hasAttribute(attribute) && !name) {
                said.add(element.getAttribute(attribute));
            }
        }
        if (element.getTagName().equals("description")) {
            said.add(element.getTextContent());
        }
        if (element.getAttribute("name").equals("aboutText")) {
            said.add(element.getAttribute("value"));
        }
        said.remove("Ohmstead");
        return said;
    }

    private static Properties texts(Path bundle, String suffix) throws IOException {
        Properties texts = new Properties();
        try (Reader reader = Files.newBufferedReader(bundle.resolve(TEXTS + suffix + ".properties"))) {
            texts.load(reader);
        }
        return texts;
    }

    @ParameterizedTest
    @MethodSource("bundles")
    void everyTextIsAKeyThatBothLanguagesHave(Path bundle) throws Exception {
        Set<String> keys = new TreeSet<>();
        for (Element element : elements(bundle)) {
            for (String text : said(element)) {
                assertTrue(text.startsWith("%"), element.getTagName() + " says \"" + text + "\" itself");
                keys.add(text.substring(1));
            }
        }
        assertFalse(keys.isEmpty());
        Properties english = texts(bundle, "");
        Properties german = texts(bundle, "_de");
        assertEquals(keys, english.keySet());
        assertEquals(keys, german.keySet());
        for (String key : keys) {
            String first = english.getProperty(key);
            String second = german.getProperty(key);
            assertFalse(first.isBlank() || second.isBlank(), key);
            assertEquals(first.contains("{0}"), second.contains("{0}"), key);
            assertEquals(first.endsWith("..."), second.endsWith("..."), key);
            assertFalse(second.contains("\ufffd"), key);
        }
    }

    @ParameterizedTest
    @MethodSource("bundles")
    void theFilesAreNamedAndPacked(Path bundle) throws IOException {
        assertEquals(TEXTS, Bundles.manifest(bundle).getValue("Bundle-Localization"));
        assertTrue(
                Files.readString(bundle.resolve("build.properties")).contains("plugin.xml,OSGI-INF/l10n/"),
                "bin.includes leaves the texts out");
    }

    /** The items of one menu come from several bundles. */
    @Test
    void eachKeyOfAGermanMenuLeadsToOneItem() throws Exception {
        Map<String, Set<Character>> taken = new HashMap<>();
        int items = 0;
        for (Path bundle : bundles().toList()) {
            Properties german = texts(bundle, "_de");
            for (Element element : elements(bundle)) {
                String label = element.getAttribute("label");
                Element parent = (Element) (element.getParentNode() instanceof Element holder ? holder : element);
                String menu = parent.getAttribute("locationURI").replaceAll("\\?.*", "") + parent.getAttribute("id");
                if (!label.startsWith("%menu.") || menu.isEmpty()) {
                    continue;
                }
                String text = german.getProperty(label.substring(1));
                int key = text.indexOf('&');
                assertTrue(key >= 0, text + " has no key");
                char letter = Character.toLowerCase(text.charAt(key + 1));
                assertTrue(
                        taken.computeIfAbsent(menu, name -> new HashSet<>()).add(letter),
                        text + " takes " + letter + " a second time in " + menu);
                items++;
            }
        }
        assertTrue(items >= 30, "items: " + items);
    }
}
