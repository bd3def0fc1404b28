// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.help;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.ohmstead.units.text.Language;
import org.w3c.dom.Element;

class HelpFilesTest {
    private static final Set<String> CONTEXTS = Set.of(
            "navigator",
            "problems",
            "amplifier_editor",
            "bench_editor",
            "parts_editor",
            "loads_editor",
            "load_design_view",
            "load_bank_view",
            "plan_editor",
            "heat_editor",
            "heat_forecast_view",
            "heat_calculator_view",
            "heat_identify_view",
            "gain_view",
            "stimulus_view",
            "sound_view",
            "lesson_view",
            "console_view",
            "power_view",
            "capture_view",
            "log_view",
            "pair_view",
            "audit_view",
            "sheet_view",
            "quality_view",
            "compare_view",
            "help_view",
            "welcome",
            "preferences",
            "install");

    static List<Locale> languages() {
        return Language.SPOKEN;
    }

    static Stream<Path> pages() throws IOException, URISyntaxException {
        Path folder = Path.of(HelpFilesTest.class.getResource("/help/toc.xml").toURI())
                .getParent();
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(file -> file.toString().endsWith(".html")).toList().stream();
        }
    }

    @ParameterizedTest
    @MethodSource("pages")
    void readsThePageAndFindsWhatItLeadsTo(Path file) throws IOException, HelpException {
        for (Locale language : languages()) {
            FileHelpSource source = new FileHelpSource(language);
            HelpPage page = parse(source, FileHelpSource.ROOT + "help/" + file.getFileName());
            HelpLibrary library = HelpLibrary.read(source);

            assertTrue(page.blocks().size() > 2, "a page says something");
            assertEquals(page.title(), page.blocks().get(0).plainText(), "the title is the first heading");
            for (String link : page.links()) {
                assertTrue(library.page(link).isPresent(), file + " leads to " + link);
            }
        }
    }

    @ParameterizedTest
    @MethodSource("languages")
    void listsEachPageOnceInTheContents(Locale language) throws IOException, URISyntaxException {
        FileHelpSource source = new FileHelpSource(language);
        Set<String> files = pages().map(file -> FileHelpSource.ROOT + "help/" + file.getFileName())
                .collect(Collectors.toCollection(TreeSet::new));
        List<String> listed = flat(source.contents())
                .filter(topic -> !topic.href().isEmpty())
                .map(HelpTopic::href)
                .sorted()
                .toList();
        assertEquals(List.copyOf(files), listed);
    }

    @ParameterizedTest
    @MethodSource("languages")
    void namesEachPageInTheContentsAsThePageItself(Locale language) throws IOException, HelpException {
        FileHelpSource source = new FileHelpSource(language);
        for (HelpTopic topic :
                flat(source.contents()).filter(each -> !each.href().isEmpty()).toList()) {
            assertEquals(topic.title(), parse(source, topic.href()).title());
        }
    }

    @ParameterizedTest
    @MethodSource("languages")
    void hasAContextForEachPlaceWithPagesThatExist(Locale language) throws IOException, HelpException {
        FileHelpSource source = new FileHelpSource(language);
        Element contexts =
                FileHelpSource.document("help/contexts.xml", language).getDocumentElement();
        Set<String> ids = new TreeSet<>();
        for (Element context : FileHelpSource.children(contexts, "context")) {
            assertTrue(ids.add(context.getAttribute("id")), "each id is there once");
            Element words = FileHelpSource.children(context, "description").get(0);
            assertFalse(words.getTextContent().isBlank());
            List<Element> topics = FileHelpSource.children(context, "topic");
            assertFalse(topics.isEmpty());
            for (Element topic : topics) {
                assertEquals(
                        topic.getAttribute("label"),
                        parse(source, FileHelpSource.address(topic)).title());
            }
        }
        assertEquals(new TreeSet<>(CONTEXTS), ids);
    }

    @ParameterizedTest
    @MethodSource("languages")
    void warnsWhereWorkCanHurt(Locale language) throws IOException, HelpException {
        for (String name : List.of(
                "first-steps",
                "amplifier",
                "bench",
                "loads",
                "load-design",
                "load-bank",
                "plan",
                "heat",
                "forecast",
                "step-heat",
                "gain",
                "test-signals",
                "sound",
                "lessons",
                "identify",
                "replay",
                "console",
                "modules")) {
            HelpPage page = parse(new FileHelpSource(language), FileHelpSource.ROOT + "help/" + name + ".html");
            assertTrue(
                    page.blocks().stream()
                            .anyMatch(block ->
                                    block instanceof HelpBlock.Text text && text.kind() == HelpBlock.Kind.CAUTION),
                    name);
        }
    }

    private static HelpPage parse(FileHelpSource source, String href) throws IOException, HelpException {
        try (InputStream content = source.open(href)) {
            return HelpPageParser.parse(href, content);
        }
    }

    private static Stream<HelpTopic> flat(List<HelpTopic> topics) {
        return topics.stream().flatMap(topic -> Stream.concat(Stream.of(topic), flat(topic.topics())));
    }
}
