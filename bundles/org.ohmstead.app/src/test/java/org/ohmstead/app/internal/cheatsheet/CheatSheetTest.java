// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.cheatsheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.net.URL;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.ohmstead.app.internal.help.StepsView;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.SAXException;

/** The steps of the first test: that both languages hold the same ones, and that all they open exists. */
class CheatSheetTest {
    private static final String ENGLISH = "cheatsheets/first-test.xml";
    private static final String GERMAN = "nl/de/cheatsheets/first-test.xml";
    private static final Pattern COMMAND = Pattern.compile("([\\w.]+)(?:\\(([\\w.]+)=([\\w.]+)\\))?");
    private static final String SHOW_VIEW = "org.eclipse.ui.views.showView";
    private static final String SHOW_PERSPECTIVE = "org.eclipse.ui.perspectives.showPerspective";

    /** A command as a step has it; parameter and value are null when it has none. */
    private record Call(String id, String parameter, String value) {}

    private static Document read(InputStream text) throws IOException, SAXException {
        try (text) {
            return DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(text);
        } catch (ParserConfigurationException impossible) {
            throw new AssertionError(impossible);
        }
    }

    private static Element sheet(String name) throws IOException, SAXException {
        return read(Files.newInputStream(Path.of("src", "main", "resources").resolve(name)))
                .getDocumentElement();
    }

    private static List<Element> below(Element from, String tag) {
        List<Element> found = new ArrayList<>();
        NodeList nodes = from.getElementsByTagName(tag);
        for (int i = 0; i < nodes.getLength(); i++) {
            found.add((Element) nodes.item(i));
        }
        return found;
    }

    private static List<Call> calls(Element sheet) {
        return below(sheet, "command").stream()
                .map(command -> {
                    Matcher matcher = COMMAND.matcher(command.getAttribute("serialization"));
                    assertTrue(matcher.matches(), command.getAttribute("serialization"));
                    return new Call(matcher.group(1), matcher.group(2), matcher.group(3));
                })
                .toList();
    }

    /** What all modules beside this one, and the platform's on the class path, declare. */
    private static List<Element> plugins() throws IOException, SAXException {
        List<Element> plugins = new ArrayList<>();
        try (Stream<Path> modules = Files.list(Path.of(".."))) {
            for (Path module : modules.filter(folder -> Files.exists(folder.resolve("plugin.xml")))
                    .toList()) {
                plugins.add(
                        read(Files.newInputStream(module.resolve("plugin.xml"))).getDocumentElement());
            }
        }
        for (URL url : Collections.list(CheatSheetTest.class.getClassLoader().getResources("plugin.xml"))) {
            plugins.add(read(url.openStream()).getDocumentElement());
        }
        return plugins;
    }

    private static Set<String> ids(String tag) throws IOException, SAXException {
        Set<String> ids = new TreeSet<>();
        for (Element plugin : plugins()) {
            below(plugin, tag).forEach(each -> ids.add(each.getAttribute("id")));
        }
        ids.remove("");
        return ids;
    }

    @ParameterizedTest
    @ValueSource(strings = {ENGLISH, GERMAN})
    void everyStepHasATitleAnExplanationAndSomethingToOpen(String name) throws Exception {
        Element sheet = sheet(name);
        assertFalse(sheet.getAttribute("title").isBlank());
        assertEquals(1, below(sheet, "intro").size());
        List<Element> steps = below(sheet, "item");
        assertTrue(steps.size() >= 10, "steps: " + steps.size());
        Set<String> titles = new TreeSet<>();
        for (Element step : steps) {
            String title = step.getAttribute("title");
            assertTrue(titles.add(title) && !title.isBlank(), title);
            String words = below(step, "description").get(0).getTextContent();
            assertTrue(words.length() > 80 && words.strip().endsWith("."), title + ": " + words);
            List<Element> parts = below(step, "subitem");
            assertEquals(Math.max(1, parts.size()), below(step, "command").size(), title);
            parts.forEach(part -> assertFalse(part.getAttribute("label").isBlank(), title));
        }
    }

    @Test
    void bothLanguagesOpenTheSameInTheSameOrder() throws Exception {
        Element english = sheet(ENGLISH);
        Element german = sheet(GERMAN);
        assertEquals(calls(english), calls(german));
        assertEquals(below(english, "item").size(), below(german, "item").size());
        for (String tag : List.of("item", "subitem")) {
            String named = tag.equals("item") ? "title" : "label";
            for (int i = 0; i < below(english, tag).size(); i++) {
                assertNotEquals(
                        below(english, tag).get(i).getAttribute(named),
                        below(german, tag).get(i).getAttribute(named));
            }
        }
        for (int i = 0; i < below(english, "description").size(); i++) {
            assertNotEquals(
                    below(english, "description").get(i).getTextContent(),
                    below(german, "description").get(i).getTextContent());
        }
    }

    @Test
    void allThatIsOpenedExists() throws Exception {
        Set<String> commands = ids("command");
        Set<String> views = ids("view");
        Set<String> perspectives = ids("perspective");
        for (Call call : calls(sheet(ENGLISH))) {
            assertTrue(commands.contains(call.id()), call.id());
            if (call.id().equals(SHOW_VIEW)) {
                assertEquals("org.eclipse.ui.views.showView.viewId", call.parameter());
                assertTrue(views.contains(call.value()), call.value());
            } else if (call.id().equals(SHOW_PERSPECTIVE)) {
                assertEquals("org.eclipse.ui.perspectives.showPerspective.perspectiveId", call.parameter());
                assertTrue(perspectives.contains(call.value()), call.value());
            } else {
                assertEquals(null, call.parameter());
            }
        }
    }

    @Test
    void theWayLeadsThroughGainRunLogAndSheet() throws Exception {
        List<String> opened = calls(sheet(ENGLISH)).stream()
                .map(call -> call.value() == null ? call.id() : call.value())
                .toList();
        List<String> way = List.of(
                "org.ohmstead.workbench.new",
                "org.ohmstead.app.design",
                "org.ohmstead.load.ui.design",
                "org.ohmstead.thermal.ui.forecast",
                "org.ohmstead.signal.ui.gain",
                "org.ohmstead.measure.ui.console",
                "org.ohmstead.testlog.ui.log",
                "org.ohmstead.curves.ui.power",
                "org.ohmstead.report.ui.sheet");
        assertEquals(way, opened.stream().filter(way::contains).toList());
    }

    @Test
    void theModuleOffersTheSheetAndItsMenuOpensIt() throws Exception {
        Element plugin = read(Files.newInputStream(Path.of("plugin.xml"))).getDocumentElement();
        Element view = below(plugin, "view").stream()
                .filter(each -> each.getAttribute("class").equals(StepsView.class.getName()))
                .findFirst()
                .orElseThrow();
        assertEquals(StepsView.ID, view.getAttribute("id"));
        assertTrue(below(plugin, "menuContribution").stream()
                .filter(menu -> menu.getAttribute("locationURI").startsWith("menu:org.ohmstead.help"))
                .flatMap(menu -> below(menu, "parameter").stream())
                .anyMatch(parameter -> parameter.getAttribute("name").equals(SHOW_VIEW + ".viewId")
                        && parameter.getAttribute("value").equals(view.getAttribute("id"))));
    }

    @ParameterizedTest
    @ValueSource(strings = {ENGLISH, GERMAN})
    void theBeginningWarnsOfWhatCanHurt(String name) throws Exception {
        String words = below(sheet(name), "intro").get(0).getTextContent();
        for (String danger : name.equals(ENGLISH)
                ? List.of("loudspeakers off", "hot enough to burn", "fuse", "local rules")
                : List.of("Lautsprecher abklemmen", "Verbrennungen", "absichern", "Vorschriften")) {
            assertTrue(words.contains(danger), danger);
        }
    }
}
