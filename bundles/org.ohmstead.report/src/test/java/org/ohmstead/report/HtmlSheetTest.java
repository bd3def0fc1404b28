// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

class HtmlSheetTest {
    static final String HOSTILE = "<script>alert(1)</script>&\"'";
    private static final int LARGEST_BYTES = 1_500_000;

    private static ResultsSheet sheet;
    private static String page;
    private static Document document;

    @BeforeAll
    static void render() throws Exception {
        sheet = SampleSheet.plain().build();
        page = HtmlSheet.render(sheet);
        document = parse(page);
    }

    static Document parse(String text) throws ParserConfigurationException, SAXException, IOException {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
        return factory.newDocumentBuilder().parse(new InputSource(new StringReader(text)));
    }

    private static List<Element> elements(Document document, String name) {
        NodeList nodes = document.getElementsByTagName(name);
        return IntStream.range(0, nodes.getLength())
                .mapToObj(index -> (Element) nodes.item(index))
                .toList();
    }

    private static String section(String id) {
        int from = page.indexOf("<h2 id=\"" + id + "\"");
        assertTrue(from >= 0, id);
        int to = page.indexOf("<h2 ", from + 1);
        return page.substring(from, to < 0 ? page.length() : to);
    }

    @Test
    void isWellFormedAndSmall() {
        assertEquals("html", document.getDocumentElement().getTagName());
        assertTrue(page.getBytes(StandardCharsets.UTF_8).length < LARGEST_BYTES);
    }

    @Test
    void showsEveryReadingOnceWithItsEntry() {
        String readings = section("readings");
        for (SheetReading entry : sheet.readings()) {
            String cell = ">" + entry.entryId() + "</td>";
            assertEquals(readings.indexOf(cell), readings.lastIndexOf(cell), entry.entryId());
            assertTrue(readings.contains(cell), entry.entryId());
            String capture = entry.reading().provenance().captures().get(0).sha256();
            assertTrue(readings.contains(capture.substring(0, 10)), entry.entryId());
        }
    }

    @Test
    void strikesVoidedReadingsThroughAndSaysWhy() {
        List<Element> struck = elements(document, "tbody").stream()
                .filter(body -> body.getAttribute("class").contains("struck"))
                .toList();
        assertEquals(1, struck.size());
        assertTrue(struck.get(0).getTextContent().contains("Voided: A probe had slipped off."));
    }

    @Test
    void printsPowersWithTheirExpandedUncertainty() {
        // Closed form with g = 2.8, V_s = 3 V, R_s = 0.1 ohm at 14.4 V into 4 ohm: 165.708792 W. Its u in the sample is
        // sqrt(0.8^2 + 0.3^2 + 0.1^2 + 0.12^2) % = 0.868562 %, times 1.959964 is 2.82 W.
        assertTrue(section("readings").contains("165.7\u00a0\u00b1\u00a02.8"));
    }

    @Test
    void saysVerdictsInWordsAndSumsThemUp() {
        String ratings = section("ratings");
        for (String word : List.of("meets", "falls short", "undecided", "not tested")) {
            assertTrue(
                    ratings.contains("\u00a0" + word + "</td>") || ratings.contains("&#160;" + word + "</td>"), word);
        }
        // The ratings of the sample: 150 W of about 163 W, 84 of 83.6, 350 of 311, 600 of 632, 340 of 348, and one load
        // not tested.
        assertTrue(page.contains(
                "3 of 6 ratings are met, 1 falls short, 1 is undecided by guarded acceptance, risk at most"
                        + " 5\u00a0%; 1 was not tested."));
    }

    @Test
    void statesTheRuleAndTheRiskOfEachVerdict() {
        String ratings = section("ratings");
        assertTrue(ratings.contains(
                "at least 95 % sure, so that either verdict is wrong with a probability of at most 5 %"));
        // Three are met and one is missed, and so surely that the risk is below what is printed or near to it.
        assertEquals(3, ratings.split("Consumer&#39;s risk ", -1).length - 1);
        assertEquals(1, ratings.split("Producer&#39;s risk ", -1).length - 1);
        assertEquals(1, ratings.split("No verdict, so no risk", -1).length - 1);
        assertTrue(section("method").contains("The risk of a verdict is the probability that it is wrong"));
    }

    @Test
    void printsABudgetWithShapesDegreesOfFreedomAndMonteCarlo() {
        String uncertainty = section("uncertainty");
        // 0.8 %, 0.3 %, 0.1 % and 0.12 % of a power: 0.64 / 0.7544 of the variance is 84.8 %.
        assertTrue(uncertainty.contains(">84.8</td>"), uncertainty);
        assertTrue(uncertainty.contains(">normal</td>"));
        assertTrue(uncertainty.contains(">\u221e</td>"));
        assertTrue(uncertainty.contains("k\u00a0=\u00a01.96"));
        assertTrue(uncertainty.contains("Monte Carlo (JCGM 101)"));
        // All parts of the sample are normal, so both methods agree.
        assertTrue(uncertainty.contains("give the same 95 % interval"), uncertainty);
    }

    @Test
    void comparesBurstsWithContinuousPower() {
        // The sample's bursts give 1.12 times the continuous power: 10 log10(1.12) = 0.492180 dB.
        assertTrue(section("channels").contains("0.49\u00a0\u00b1\u00a0"));
        // Channel B gives 0.985 times the power of A: -10 log10(0.985) = 0.065637 dB.
        assertTrue(section("channels").contains("+0.07"));
    }

    @Test
    void marksOverdueCalibrations() {
        assertTrue(section("bench").contains("2025-09-01 OVERDUE"));
        assertFalse(section("bench").contains("2026-09-01 OVERDUE"));
    }

    @Test
    void namesTheLogAndTheProblems() {
        String log = section("log");
        assertTrue(log.contains(SampleSheet.HEAD_HASH));
        assertTrue(log.contains("$.bench.meters[2]"));
    }

    @Test
    void drawsTheChartsWithinThePage() {
        long charts = elements(document, "svg").stream()
                .filter(svg -> svg.getElementsByTagName("text").getLength() > 0)
                .count();
        // Three fitted groups, for each of the six mode-and-load pairs a sweep and a spectrum, and the bars of the
        // budget.
        assertEquals(3 + 6 + 6 + 1, charts);
    }

    @Test
    void needsNothingFromElsewhere() {
        for (Element element : elements(document, "*")) {
            assertFalse(element.hasAttribute("src"), element.getTagName());
            String reference = element.getAttribute("href") + element.getAttribute("xlink:href");
            assertTrue(reference.isEmpty() || reference.startsWith("#"), reference);
        }
        assertFalse(page.contains("url(http"));
        assertFalse(page.contains("@import"));
    }

    @Test
    void hasEveryIdOnce() {
        List<String> ids = elements(document, "*").stream()
                .map(element -> element.getAttribute("id"))
                .filter(id -> !id.isEmpty())
                .toList();
        assertEquals(ids.stream().distinct().count(), ids.size());
    }

    @Test
    void escapesEveryTextOfTheProject() throws Exception {
        String hostile = HtmlSheet.render(SampleSheet.plain().withTexts(HOSTILE).build());
        Document parsed = parse(hostile);
        assertEquals(0, parsed.getElementsByTagName("script").getLength());
        assertFalse(hostile.contains("<script"));
        // The first channel bears the same name, so that the charts' legends hold it too.
        assertTrue(elements(parsed, "svg").stream()
                .anyMatch(svg -> svg.getTextContent().contains(HOSTILE)));
        String words = parsed.getDocumentElement().getTextContent();
        assertTrue(words.contains("Sample Works " + HOSTILE));
        // Title, heading, model, notes, remarks, wording of the rating, reason of the voiding, problem.
        assertTrue(words.split(Pattern.quote(HOSTILE), -1).length - 1 >= 8);
    }

    /** Content Security Policy Level 3 (W3C), 3.3: what stands before the policy in the page would not be held to it. */
    @Test
    void letsABrowserRunNothingAndFetchNothing() {
        Element policy = elements(document, "meta").stream()
                .filter(meta -> meta.getAttribute("http-equiv").equals("Content-Security-Policy"))
                .findFirst()
                .orElseThrow();
        List<String> rules = List.of(policy.getAttribute("content").split("; "));
        assertEquals(
                List.of(
                        "default-src 'none'",
                        "style-src 'unsafe-inline'",
                        "img-src data:",
                        "base-uri 'none'",
                        "form-action 'none'"),
                rules);
        int at = page.indexOf("Content-Security-Policy");
        assertTrue(at < page.indexOf("<title"));
        assertTrue(at < page.indexOf("<style"));
        for (Element picture : elements(document, "img")) {
            assertTrue(picture.getAttribute("src").startsWith("data:"), picture.getAttribute("src"));
        }
    }

    @Test
    void replacesCharactersThatNoPageMayHold() throws Exception {
        String odd = HtmlSheet.render(
                SampleSheet.plain().withTexts("bell\u0007 and half \ud800 pair").build());
        assertTrue(parse(odd).getDocumentElement().getTextContent().contains("bell\ufffd and half \ufffd pair"));
    }

    @Test
    void writesTheFileWhollyAndLeavesNothingBeside(@TempDir Path folder) throws Exception {
        Path target = folder.resolve("sheet.html");
        Files.writeString(target, "old");
        HtmlSheet.write(sheet, target);
        assertEquals(page, Files.readString(target));
        try (var files = Files.list(folder)) {
            assertEquals(List.of(target), files.toList());
        }
    }

    @Test
    void saysWhichFileCouldNotBeWritten(@TempDir Path folder) {
        Path target = folder.resolve("missing").resolve("sheet.html");
        ReportException failure = assertThrows(ReportException.class, () -> HtmlSheet.write(sheet, target));
        assertTrue(failure.getMessage().contains(target.toString()), failure.getMessage());
        assertTrue(failure.getMessage().endsWith("."), failure.getMessage());
    }

    @Test
    void showsAProjectWithoutAnyReading() throws Exception {
        ResultsSheet empty = new ResultsSheet(
                sheet.project(),
                List.of(),
                List.of(),
                List.of(),
                new LogStamp("", 0, true),
                "0.1.0",
                SampleSheet.PRODUCED,
                List.of());
        String words = parse(HtmlSheet.render(empty)).getDocumentElement().getTextContent();
        assertTrue(words.contains("There are no readings."));
        assertTrue(words.contains("the log is empty"));
    }
}
