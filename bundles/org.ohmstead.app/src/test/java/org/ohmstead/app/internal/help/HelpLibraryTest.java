// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.help;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class HelpLibraryTest {
    private static final Map<String, String> TEXTS = Map.of(
            "/b/one.html", page("Fuses", "<p>A fuse protects the cable.</p>"),
            "/b/two.html",
                    page("Cables", "<p>Thick ones.</p><h2>Fuse at the source</h2><p>Close to it. FUSES age.</p>"),
            "/b/three.html", page("Loads", "<p>They get hot. The refuse bin is elsewhere.</p>"),
            "/b/bad.html", "<html><body><p>broken");

    private final HelpLibrary library = HelpLibrary.read(new Texts());

    @Test
    void findsBeginningsOfWordsAndPutsTitlesFirst() {
        List<String> found =
                library.search("fuse").stream().map(hit -> hit.page().title()).toList();

        assertEquals(List.of("Fuses", "Cables"), found);
    }

    @Test
    void asksForAllWords() {
        List<HelpLibrary.Hit> found = library.search("CABLE protec");

        assertEquals(1, found.size());
        assertEquals("Fuses", found.get(0).page().title());
        assertEquals("A fuse protects the cable.", found.get(0).excerpt());
    }

    @Test
    void findsNothingForNothing() {
        assertTrue(library.search(" .,- ").isEmpty());
        assertTrue(library.search("xylophone").isEmpty());
    }

    @Test
    void takesSignsOfAPatternAsTheyAre() {
        assertTrue(library.search("h[o]t").isEmpty());
        assertEquals(1, library.search("hot.").size());
    }

    @Test
    void saysWhichPageCannotBeShownAndShowsTheOthers() {
        HelpPage bad = library.page("/b/bad.html").orElseThrow();
        HelpPage gone = library.page("/b/gone.html").orElseThrow();

        assertEquals("Broken", bad.title());
        assertTrue(bad.blocks().get(2).plainText().contains("/b/bad.html"));
        assertTrue(gone.blocks().get(2).plainText().contains("/b/gone.html"));
        assertEquals(5, library.pages().size());
    }

    @Test
    void findsAPageWithAFragment() {
        assertEquals("Loads", library.page("/b/three.html#hot").orElseThrow().title());
    }

    @Test
    void searchesTheRealPages() {
        HelpLibrary real = HelpLibrary.read(new FileHelpSource());

        assertEquals("Keyboard", real.search("keyboard").get(0).page().title());
        assertEquals(
                "Verdicts and uncertainty",
                real.search("verdict undecided").get(0).page().title());
        assertTrue(real.search("hydrogen").get(0).excerpt().contains("hydrogen"));
    }

    private static String page(String title, String body) {
        return "<html><head><title>" + title + "</title></head><body><h1>" + title + "</h1>" + body + "</body></html>";
    }

    private static final class Texts implements HelpSource {
        @Override
        public List<HelpTopic> contents() {
            return List.of(
                    new HelpTopic(
                            "Part",
                            "",
                            List.of(HelpTopic.page("Cables", "/b/two.html"), HelpTopic.page("Fuses", "/b/one.html"))),
                    HelpTopic.page("Loads", "/b/three.html"),
                    HelpTopic.page("Broken", "/b/bad.html"),
                    HelpTopic.page("Gone", "/b/gone.html"));
        }

        @Override
        public InputStream open(String href) throws IOException {
            if (!TEXTS.containsKey(href)) {
                throw new FileNotFoundException("There is no " + href + ".");
            }
            return new ByteArrayInputStream(TEXTS.get(href).getBytes(StandardCharsets.UTF_8));
        }
    }
}
