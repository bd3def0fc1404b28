// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.help;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.w3c.dom.Element;

/** The guide in both languages: that the German pages say what the English ones do, built up alike, with the window's names. */
class HelpLanguagesTest {
    private static final Path ENGLISH = Path.of("src/main/resources/help");
    private static final Path GERMAN = Path.of("src/main/resources/nl/de/help");
    private static final Pattern ATTRIBUTES = Pattern.compile("\\b(?:id|src|href|class)=\"[^\"]*\"");
    private static final Pattern WORDS = Pattern.compile("\\p{L}{2,}(?:[^\\p{L}]+\\p{L}{2,}){3,}");

    /** What stands on buttons, tabs, menus and views in English, and all that stands there for it in German. */
    private static final Map<String, Set<String>> NAMES = new HashMap<>();

    static List<Path> pages() throws IOException {
        return files(ENGLISH).stream()
                .filter(name -> name.endsWith(".html"))
                .map(Path::of)
                .toList();
    }

    private static Set<String> files(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).collect(Collectors.toCollection(TreeSet::new));
        }
    }

    @BeforeAll
    static void readTheNames() throws IOException {
        try (Stream<Path> files = Files.walk(Path.of(".."))) {
            for (Path file : files.filter(HelpLanguagesTest::holdsTexts).toList()) {
                Properties english = texts(file);
                Properties german =
                        texts(file.resolveSibling(file.getFileName().toString().replace(".p", "_de.p")));
                english.forEach((key, text) -> NAMES.computeIfAbsent(shown(text.toString()), name -> new HashSet<>())
                        .add(shown(german.getProperty(key.toString()))));
            }
        }
        assertEquals(Set.of("netzwerke suchen"), NAMES.get("find networks"));
    }

    private static boolean holdsTexts(Path file) {
        String path = file.toString().replace('\\', '/');
        return !path.contains("/target/")
                && (path.contains("/src/main/resources/") && path.endsWith("/messages.properties")
                        || path.endsWith("/OSGI-INF/l10n/bundle.properties"));
    }

    private static Properties texts(Path file) throws IOException {
        Properties texts = new Properties();
        try (Reader reader = Files.newBufferedReader(file)) {
            texts.load(reader);
        }
        return texts;
    }

    /** Returns a name without what only its place adds: the mnemonic, the dots of what asks, the arrow of a list. */
    private static String shown(String text) {
        return text.replace("&", "").replaceAll("[\\s.…:▾]+$", "").strip().toLowerCase(Locale.ROOT);
    }

    @Test
    void eachFileIsThereInBothLanguages() throws IOException {
        assertEquals(files(ENGLISH), files(GERMAN));
        assertTrue(pages().size() >= 33, "all pages");
    }

    @ParameterizedTest
    @MethodSource("pages")
    void eachPageIsBuiltUpAlike(Path name) throws IOException, HelpException {
        List<HelpBlock> english = page(name, Locale.ENGLISH).blocks();
        List<HelpBlock> german = page(name, Locale.GERMAN).blocks();
        assertEquals(
                english.stream().map(HelpLanguagesTest::form).toList(),
                german.stream().map(HelpLanguagesTest::form).toList());
        assertEquals(attributes(ENGLISH.resolve(name)), attributes(GERMAN.resolve(name)));
        assertTrue(Files.readString(ENGLISH.resolve(name)).contains(" lang=\"en\">"));
        assertTrue(Files.readString(GERMAN.resolve(name)).contains(" lang=\"de\">"));
    }

    @ParameterizedTest
    @MethodSource("pages")
    void noSentenceWasLeftInEnglish(Path name) throws IOException, HelpException {
        List<HelpBlock> english = page(name, Locale.ENGLISH).blocks();
        List<HelpBlock> german = page(name, Locale.GERMAN).blocks();
        for (int i = 0; i < english.size(); i++) {
            List<String> before = cells(english.get(i));
            List<String> after = cells(german.get(i));
            for (int cell = 0; cell < before.size(); cell++) {
                if (WORDS.matcher(before.get(cell)).find() && !before.get(cell).contains("state:voided")) {
                    assertNotEquals(before.get(cell), after.get(cell));
                }
            }
        }
    }

    @ParameterizedTest
    @MethodSource("pages")
    void whatTheWindowNamesIsCalledAsInTheWindow(Path name) throws IOException, HelpException {
        List<HelpBlock> english = page(name, Locale.ENGLISH).blocks();
        List<HelpBlock> german = page(name, Locale.GERMAN).blocks();
        for (int i = 0; i < english.size(); i++) {
            Set<String> called = names(german.get(i));
            for (String each : names(english.get(i))) {
                Set<String> wanted = NAMES.getOrDefault(each, called);
                assertTrue(
                        called.isEmpty() || wanted.stream().anyMatch(called::contains),
                        each + " is " + wanted + " in the window, the page says " + called);
            }
        }
    }

    @Test
    void eachContextHasATextInBothLanguagesAndLeadsToTheSamePages() {
        List<Element> english = contexts(Locale.ENGLISH);
        List<Element> german = contexts(Locale.GERMAN);
        assertEquals(english.size(), german.size());
        for (int i = 0; i < english.size(); i++) {
            String id = english.get(i).getAttribute("id");
            assertEquals(id, german.get(i).getAttribute("id"));
            assertEquals(targets(english.get(i)), targets(german.get(i)), id);
            assertNotEquals(description(english.get(i)), description(german.get(i)), id);
            Set<String> titles = NAMES.get(shown(english.get(i).getAttribute("title")));
            String title = shown(german.get(i).getAttribute("title"));
            assertTrue(titles == null || titles.contains(title), id + ": " + title + " is not among " + titles);
        }
    }

    @Test
    void theContentsLeadToTheSamePagesInTheSameOrder() {
        List<HelpTopic> english = new FileHelpSource(Locale.ENGLISH).contents();
        List<HelpTopic> german = new FileHelpSource(Locale.GERMAN).contents();
        assertEquals(
                english.stream().map(part -> hrefs(part)).toList(),
                german.stream().map(part -> hrefs(part)).toList());
        for (int i = 0; i < english.size(); i++) {
            assertNotEquals(english.get(i).title(), german.get(i).title());
        }
    }

    private static List<String> hrefs(HelpTopic part) {
        return part.topics().stream().map(HelpTopic::href).toList();
    }

    private static HelpPage page(Path name, Locale language) throws IOException, HelpException {
        String href = FileHelpSource.ROOT + "help/" + name;
        try (InputStream content = new FileHelpSource(language).open(href)) {
            return HelpPageParser.parse(href, content);
        }
    }

    /** Returns what a block is, with its links and looks in any order: another language has another order of words. */
    private static String form(HelpBlock block) {
        if (block instanceof HelpBlock.Table table) {
            return table.rows().stream()
                    .map(row -> (row.header() ? "head " : "row ")
                            + row.cells().stream().map(HelpLanguagesTest::spans).toList())
                    .toList()
                    .toString();
        }
        HelpBlock.Text text = (HelpBlock.Text) block;
        return text.kind() + " " + text.depth() + text.marker() + spans(text.spans());
    }

    private static String spans(List<HelpSpan> spans) {
        return spans.stream()
                .filter(span ->
                        span.look() != HelpSpan.Look.PLAIN || !span.href().isEmpty())
                .map(span -> span.look() + span.href())
                .sorted()
                .toList()
                .toString();
    }

    private static List<String> attributes(Path file) throws IOException {
        List<String> found = new ArrayList<>();
        Matcher matcher = ATTRIBUTES.matcher(Files.readString(file));
        while (matcher.find()) {
            found.add(matcher.group());
        }
        return found.stream().sorted().toList();
    }

    private static List<String> cells(HelpBlock block) {
        if (block instanceof HelpBlock.Table table) {
            return table.rows().stream()
                    .flatMap(row -> row.cells().stream())
                    .map(HelpBlock::words)
                    .toList();
        }
        return List.of(block.plainText());
    }

    /** Returns what a block sets in strong or emphasised type: the names of buttons, tabs, pages and views. */
    private static Set<String> names(HelpBlock block) {
        if (!(block instanceof HelpBlock.Text text)) {
            return Set.of();
        }
        return text.spans().stream()
                .filter(span -> span.look() == HelpSpan.Look.STRONG || span.look() == HelpSpan.Look.EMPHASIS)
                .map(span -> shown(span.text()))
                .collect(Collectors.toSet());
    }

    private static List<Element> contexts(Locale language) {
        return FileHelpSource.children(
                FileHelpSource.document("help/contexts.xml", language).getDocumentElement(), "context");
    }

    private static List<String> targets(Element context) {
        return FileHelpSource.children(context, "topic").stream()
                .map(FileHelpSource::address)
                .toList();
    }

    private static String description(Element context) {
        return FileHelpSource.children(context, "description").get(0).getTextContent();
    }
}
