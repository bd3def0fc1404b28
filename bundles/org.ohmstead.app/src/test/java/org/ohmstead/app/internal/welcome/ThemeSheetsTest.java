// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.welcome;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.net.URL;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.apache.batik.css.parser.DefaultDocumentHandler;
import org.apache.batik.css.parser.Parser;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.css.sac.CSSException;
import org.w3c.css.sac.CSSParseException;
import org.w3c.css.sac.ErrorHandler;
import org.w3c.css.sac.InputSource;
import org.w3c.css.sac.LexicalUnit;
import org.w3c.css.sac.SelectorList;
import org.w3c.dom.Document;
import org.w3c.dom.NodeList;
import org.xml.sax.SAXException;

/** The theme sheets, read by the parser that the platform's style engine uses. */
class ThemeSheetsTest {
    @ParameterizedTest
    @ValueSource(strings = {"light", "dark"})
    void parsesWithoutAnyComplaint(String theme) throws IOException {
        Sheet sheet = Sheet.read(theme);

        assertEquals(List.of(), sheet.complaints);
        assertTrue(sheet.properties.size() > 15, "rules were read");
    }

    @ParameterizedTest
    @ValueSource(strings = {"light", "dark"})
    void setsOnlyWhatTheStyleEngineKnows(String theme) throws IOException {
        Set<String> unknown = new TreeSet<>(Sheet.read(theme).properties);
        Set<String> known = known();
        assertFalse(known.isEmpty(), "the engine's own list was found");
        unknown.removeAll(known);

        assertEquals(Set.of(), unknown);
    }

    @Test
    void stylesTheSameThingsInLightAndDark() throws IOException {
        assertEquals(Sheet.read("light").rules, Sheet.read("dark").rules);
    }

    /** The engine's plug-ins list the properties that they handle in their plugin.xml. */
    private static Set<String> known() throws IOException {
        Set<String> names = new TreeSet<>();
        for (URL plugin :
                Collections.list(ThemeSheetsTest.class.getClassLoader().getResources("plugin.xml"))) {
            try (InputStream content = plugin.openStream()) {
                Document document = DocumentBuilderFactory.newInstance()
                        .newDocumentBuilder()
                        .parse(content);
                NodeList properties = document.getElementsByTagName("property-name");
                for (int i = 0; i < properties.getLength(); i++) {
                    names.add(properties
                            .item(i)
                            .getAttributes()
                            .getNamedItem("name")
                            .getNodeValue());
                }
            } catch (SAXException | ParserConfigurationException e) {
                throw new AssertionError(plugin.toString(), e);
            }
        }
        return names;
    }

    private static final class Sheet extends DefaultDocumentHandler implements ErrorHandler {
        final List<String> complaints = new ArrayList<>();
        final Set<String> properties = new TreeSet<>();
        final Map<String, Set<String>> rules = new TreeMap<>();
        private String rule = "";

        static Sheet read(String theme) throws IOException {
            Sheet sheet = new Sheet();
            Parser parser = new Parser();
            parser.setDocumentHandler(sheet);
            parser.setErrorHandler(sheet);
            try (Reader text = new InputStreamReader(
                    ThemeSheetsTest.class.getResourceAsStream("/css/" + theme + ".css"), StandardCharsets.UTF_8)) {
                parser.parseStyleSheet(new InputSource(text));
            }
            return sheet;
        }

        @Override
        public void startSelector(SelectorList selectors) {
            List<String> names = new ArrayList<>();
            for (int i = 0; i < selectors.getLength(); i++) {
                names.add(selectors.item(i).toString());
            }
            rule = String.join(", ", names);
        }

        @Override
        public void property(String name, LexicalUnit value, boolean important) {
            properties.add(name);
            rules.computeIfAbsent(rule, key -> new TreeSet<>()).add(name);
        }

        @Override
        public void warning(CSSParseException e) throws CSSException {
            complaints.add(e.getLineNumber() + ": " + e.getMessage());
        }

        @Override
        public void error(CSSParseException e) throws CSSException {
            complaints.add(e.getLineNumber() + ": " + e.getMessage());
        }

        @Override
        public void fatalError(CSSParseException e) throws CSSException {
            complaints.add(e.getLineNumber() + ": " + e.getMessage());
        }
    }
}
