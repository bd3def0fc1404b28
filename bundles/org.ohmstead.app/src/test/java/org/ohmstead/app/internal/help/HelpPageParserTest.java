// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.help;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;

class HelpPageParserTest {
    private static final String HREF = "/bundle/help/page.html";

    @Test
    void keepsBlocksAndLooksInOrder() throws HelpException {
        HelpPage page = parse(
                "<h1>Title</h1>\n<p>One  <strong>two</strong>\n three <kbd>F1</kbd>.</p><p class=\"caution\">Hot.</p>");

        assertEquals("Page", page.title());
        assertEquals(
                List.of(
                        HelpBlock.Text.of(HelpBlock.Kind.TITLE, HelpSpan.plain("Title")),
                        HelpBlock.Text.of(
                                HelpBlock.Kind.PARAGRAPH,
                                HelpSpan.plain("One "),
                                new HelpSpan("two", HelpSpan.Look.STRONG, ""),
                                HelpSpan.plain(" three "),
                                new HelpSpan("F1", HelpSpan.Look.KEY, ""),
                                HelpSpan.plain(".")),
                        HelpBlock.Text.of(HelpBlock.Kind.CAUTION, HelpSpan.plain("Hot."))),
                page.blocks());
    }

    @Test
    void numbersOrderedItemsAndMarksOthers() throws HelpException {
        HelpPage page = parse("<ol><li>a</li><li>b<ul><li>c</li></ul></li><li>d</li></ol>");

        List<String> seen = page.blocks().stream()
                .map(HelpBlock.Text.class::cast)
                .map(text -> text.depth() + " " + text.marker() + " " + text.plainText())
                .toList();
        assertEquals(List.of("1 1. a", "1 2. b", "2 • c", "1 3. d"), seen);
    }

    @Test
    void readsTablesCellByCell() throws HelpException {
        HelpPage page = parse("<table><tr><th>K</th><th>W</th></tr><tr><td>x</td><td>y <em>z</em></td></tr></table>");

        HelpBlock.Table table = (HelpBlock.Table) page.blocks().get(0);
        assertTrue(table.rows().get(0).header());
        assertEquals(2, table.rows().get(1).cells().size());
        assertEquals("K W x y z", table.plainText());
    }

    @Test
    void resolvesLinksAgainstThePage() throws HelpException {
        HelpPage page = parse("<p><a href=\"other.html#place\">there</a> <a href=\"https://example.org/\">web</a></p>");

        assertEquals(List.of("/bundle/help/other.html#place", "https://example.org/"), page.links());
    }

    @Test
    void refusesElementsThatItWouldNotShow() {
        HelpException refused = assertThrows(HelpException.class, () -> parse("<p>a</p>\n<marquee>b</marquee>"));

        assertTrue(refused.getMessage().contains("marquee"), refused.getMessage());
        assertTrue(refused.getMessage().contains(HREF), refused.getMessage());
        assertTrue(refused.getMessage().contains("line 2"), refused.getMessage());
    }

    @Test
    void refusesWhatIsNotWellFormed() {
        assertThrows(HelpException.class, () -> parse("<p>a"));
        assertThrows(HelpException.class, () -> parse("<p><a>no address</a></p>"));
        assertThrows(HelpException.class, () -> parse("<li>no list</li>"));
    }

    @Test
    void fetchesNoDocumentType() throws HelpException {
        String text = "<!DOCTYPE html PUBLIC \"-//W3C//DTD XHTML 1.0 Strict//EN\" \"http://invalid.invalid/xhtml.dtd\">"
                + "<html><head><title>T</title></head><body><p>a</p></body></html>";
        HelpPage page = HelpPageParser.parse(HREF, new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)));

        assertEquals("a", page.blocks().get(0).plainText());
    }

    private static HelpPage parse(String body) throws HelpException {
        String text = "<html xmlns=\"http://www.w3.org/1999/xhtml\"><head><title>Page</title></head><body>" + body
                + "</body></html>";
        return HelpPageParser.parse(HREF, new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)));
    }
}
