// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Properties;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.ohmstead.history.Period;
import org.ohmstead.history.Subject;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.PaperSize;
import org.ohmstead.model.Price;
import org.ohmstead.model.Reading;
import org.ohmstead.model.SheetDesign;
import org.ohmstead.model.SheetLayout;
import org.ohmstead.model.Specimen;
import org.ohmstead.units.text.Language;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

class SheetDesignsTest {
    @TempDir
    Path folder;

    /** A sheet as the jobs make one: the ratings too are judged in the language that it is made in. */
    private static ResultsSheet sheet(SheetDesign design, Locale language) {
        ResultsSheet plain =
                Language.speaking(language, () -> SampleSheet.plain().build());
        return plain.withForm(plain.form()
                .withDesign(design)
                .withLanguage(language)
                .withComparison(Optional.of(new SheetComparison(subjects(plain)))));
    }

    /** The sample's amplifier, and another whose powers are 10 % lower. */
    private static List<Subject> subjects(ResultsSheet plain) {
        List<Reading> readings =
                plain.standingReadings().stream().map(SheetReading::reading).toList();
        Optional<Price> price = Optional.of(new Price(200, "EUR", LocalDate.of(2026, 1, 1)));
        Specimen specimen = Specimen.of(plain.project());
        return List.of(
                new Subject("Kestrel", "kestrel", specimen, Period.ALWAYS, readings, price, 2),
                new Subject(
                        "Heron",
                        "heron",
                        specimen,
                        Period.ALWAYS,
                        readings.stream().map(SheetDesignsTest::weaker).toList(),
                        Optional.empty(),
                        2));
    }

    private static Reading weaker(Reading reading) {
        return new Reading(
                reading.stepId(),
                reading.mode(),
                reading.loadId(),
                reading.nominalLoadOhms(),
                reading.stimulus(),
                reading.endPoint(),
                reading.takenAt(),
                reading.conditions(),
                reading.channels().stream()
                        .map(channel -> new ChannelReading(
                                channel.channel(),
                                channel.outcome(),
                                channel.loadOhms(),
                                0.9 * channel.powerWatts(),
                                0.9 * channel.standardUncertaintyWatts(),
                                Math.sqrt(0.9) * channel.outputVoltsRms(),
                                channel.frequencyHz(),
                                channel.thdFRatio(),
                                channel.supplyVolts(),
                                channel.supplyAmps(),
                                List.of(),
                                List.of(),
                                List.of()))
                        .toList(),
                reading.provenance(),
                reading.notes());
    }

    private static String words(ResultsSheet sheet) throws Exception {
        return HtmlSheetTest.parse(HtmlSheet.render(sheet))
                .getDocumentElement()
                .getTextContent()
                .replaceAll("[\\s\u00a0\u2002]+", " ");
    }

    @ParameterizedTest
    @EnumSource(SheetDesign.class)
    void everyDesignIsWholeNeedsNothingFromElsewhereAndWarns(SheetDesign design) throws Exception {
        for (Locale language : List.of(Locale.ENGLISH, Locale.GERMAN)) {
            String page = HtmlSheet.render(sheet(design, language));
            Document document = HtmlSheetTest.parse(page);
            assertTrue(page.contains("name=\"viewport\" content=\"width=device-width, initial-scale=1\""));
            assertEquals(0, document.getElementsByTagName("script").getLength());
            NodeList all = document.getElementsByTagName("*");
            List<String> ids = new ArrayList<>();
            for (int index = 0; index < all.getLength(); index++) {
                Element element = (Element) all.item(index);
                assertFalse(element.hasAttribute("src"), element.getTagName());
                String reference = element.getAttribute("href");
                assertTrue(reference.isEmpty() || reference.startsWith("#"), reference);
                if (element.hasAttribute("id")) {
                    ids.add(element.getAttribute("id"));
                }
            }
            assertEquals(Set.copyOf(ids).size(), ids.size());
            String warning = language.equals(Locale.ENGLISH)
                    ? "hot load resistors, high supply currents"
                    : "hei\u00dfe Lastwiderst\u00e4nde, hohe Versorgungsstr\u00f6me";
            assertTrue(page.contains(warning), design + " in " + language);
        }
    }

    @ParameterizedTest
    @EnumSource(value = SheetDesign.class, names = "BENCH", mode = EnumSource.Mode.EXCLUDE)
    void longerDesignsKeepTheWholeCaution(SheetDesign design) throws Exception {
        assertTrue(words(sheet(design, Locale.ENGLISH)).contains("Load resistors get hot enough to burn"));
    }

    @ParameterizedTest
    @CsvSource({"A4, 210, 297", "LETTER, 215.9, 279.4"})
    void pagesHaveTheSizeOfThePaper(PaperSize paper, double widthMillimetres, double heightMillimetres)
            throws Exception {
        for (SheetDesign design : SheetDesign.values()) {
            ResultsSheet sheet = sheet(design, Locale.ENGLISH);
            Path file = folder.resolve("sheet.pdf");
            PdfSheet.write(sheet.withForm(sheet.form().withPaper(paper)), file);
            try (PDDocument document = Loader.loadPDF(file.toFile())) {
                // ISO 216 and ANSI/ASME Y14.1, in points of 1/72 inch.
                assertEquals(
                        widthMillimetres / 25.4 * 72,
                        document.getPage(0).getMediaBox().getWidth(),
                        0.5);
                assertEquals(
                        heightMillimetres / 25.4 * 72,
                        document.getPage(0).getMediaBox().getHeight(),
                        0.5);
            }
        }
    }

    @Test
    void aHandoutWorksItsStepsWithTheNumbersOfTheTest() throws Exception {
        String words = words(sheet(SheetDesign.HANDOUT, Locale.ENGLISH));
        // The weakest channel at 14.4 V into 4 ohm gives 0.985 of 165.708792 W: 163.22 W in 4.008 ohm.
        assertTrue(words.contains("163.2 W in 4.008 \u03a9: how many volts RMS"), words);
        // sqrt(163.22 x 4.008) = 25.577.
        assertTrue(words.contains("= 25.58 V"), words);
        // (11.013 / 14.413)^2 = 0.58385, 20 log10 of the root = -2.337 dB.
        assertTrue(words.contains("= 0.584 = \u22122.34 dB"), words);
        // Half of the load: the closed form gives 1.905 times the power, 4.7 % less than twice.
        assertTrue(words.contains("\u22124.7 % off the calculation"), words);
        // 0.01 squared is 0.01 %, 20 log10(0.01) = -40 dB.
        assertTrue(words.contains("1 % in volts is 0.01 % in power, \u221240 dB"), words);
        // 10 log10(1.12) = 0.492180 dB.
        assertTrue(words.contains("+0.49 dB"), words);
        // Supply 14.413 V times 2 x 163.22 / 14.4 / 0.62 A; what 0.62 leaves, less the second channel's greater power.
        assertTrue(words.contains("Where the rest goes"), words);
        // 163.22 W x 0.868562 % x 1.959964 = 2.78 W.
        assertTrue(words.contains("163.2 \u00b1 2.8 W"), words);
        assertTrue(words.contains("My guess"), words);
    }

    @Test
    void aHandoutWithoutReadingsSaysSo() throws Exception {
        ResultsSheet full = sheet(SheetDesign.HANDOUT, Locale.ENGLISH);
        ResultsSheet empty = new ResultsSheet(
                full.project(),
                List.of(),
                List.of(),
                List.of(),
                new LogStamp("", 0, true),
                "0.1.0",
                SampleSheet.PRODUCED,
                List.of(),
                full.form());
        assertTrue(words(empty).contains("there is nothing to explain"));
    }

    @Test
    void aComparisonSaysWhoGivesMoreAndHowSurely() throws Exception {
        String words = words(sheet(SheetDesign.COMPARISON, Locale.ENGLISH));
        assertTrue(words.contains("14.4 V, stereo into 4 \u03a9: Kestrel gives the most"), words);
        // The other one's powers are 0.9 times as high.
        assertTrue(words.contains("2 Heron against 1 Kestrel\u221216"), words);
        assertTrue(words.contains("\u221210.0"), words);
        assertTrue(words.contains("more than its uncertainty explains"), words);
        // 200 EUR over 2 x the curve's power near 162.9 W.
        assertTrue(words.contains("EUR/W"), words);
        assertTrue(words.contains("Price of a watt"), words);
    }

    @Test
    void aComparisonWithNothingSaysSo() throws Exception {
        ResultsSheet sheet = sheet(SheetDesign.COMPARISON, Locale.ENGLISH);
        assertTrue(words(sheet.withForm(sheet.form().withComparison(Optional.empty())))
                .contains("There is nothing to compare"));
        assertThrows(IllegalArgumentException.class, () -> new SheetComparison(List.of()));
    }

    @Test
    void germanSheetsHaveGermanWordsAndDecimalCommas() throws Exception {
        String bench = words(sheet(SheetDesign.BENCH, Locale.GERMAN));
        assertTrue(
                bench.contains("3 von 6 Angaben sind erf\u00fcllt, 1 ist nicht erf\u00fcllt, 1 ist unentschieden"),
                bench);
        assertTrue(bench.contains("14,4 V"), bench);
        assertTrue(bench.contains("Leistung \u00fcber der Versorgungsspannung"), bench);
        assertFalse(bench.contains("falls short"), bench);
        String handout = words(sheet(SheetDesign.HANDOUT, Locale.GERMAN));
        assertTrue(handout.contains("163,2 \u00b1 2,8 W"), handout);
        assertTrue(HtmlSheet.render(sheet(SheetDesign.HANDOUT, Locale.GERMAN)).contains("lang=\"de\""));
        assertTrue(words(sheet(SheetDesign.COMPARISON, Locale.GERMAN))
                .contains("mehr, als die Messunsicherheit erkl\u00e4rt"));
    }

    /**
     * What other bundles say stands here in whatever language they have it, and names, notes and the maker's words are the user's own;
     * so this holds each of the full report's own texts against the page.
     */
    @Test
    void theGermanFullReportSaysNothingOfItsOwnInEnglish() throws Exception {
        String words = words(sheet(SheetDesign.FULL, Locale.GERMAN));
        Properties english = texts("messages.properties");
        Properties german = texts("messages_de.properties");
        for (String key : english.stringPropertyNames()) {
            String plain = english.getProperty(key).replaceAll("[\\s\u00a0]+", " ");
            boolean sentence = plain.length() > 20 && !plain.contains("{") && !plain.contains("''");
            if (sentence && !plain.equals(german.getProperty(key))) {
                assertFalse(words.contains(plain), key);
            }
        }
        assertTrue(words.contains("3 von 6 Angaben sind erf\u00fcllt, 1 ist nicht erf\u00fcllt"), words);
        assertTrue(words.contains("Ger\u00e4t") || words.contains("Messger\u00e4te"), words);
        assertTrue(words.contains("Kombinierte Standardunsicherheit"), words);
        assertTrue(words.contains("THDF ist die effektive Summe der Oberschwingungen"), words);
        // The sample's weakest channel at 14.4 V into 4 ohm: 162.9 W, see the English sheet.
        assertTrue(words.contains(" \u00b1 2,8"), words);
        assertFalse(words.contains(" \u00b1 2.8"), words);
    }

    /** Sheets are printed by machines that speak something else, and two at a time. */
    @Test
    void theLanguageOfASheetIsItsOwn() throws Exception {
        String before = System.getProperty(Language.PROPERTY);
        try {
            System.setProperty(Language.PROPERTY, "en");
            String english = HtmlSheet.render(sheet(SheetDesign.FULL, Locale.ENGLISH));
            String german = HtmlSheet.render(sheet(SheetDesign.FULL, Locale.GERMAN));
            System.setProperty(Language.PROPERTY, "de");
            assertEquals(english, HtmlSheet.render(sheet(SheetDesign.FULL, Locale.ENGLISH)));
            assertEquals(german, HtmlSheet.render(sheet(SheetDesign.FULL, Locale.GERMAN)));
        } finally {
            if (before == null) {
                System.clearProperty(Language.PROPERTY);
            } else {
                System.setProperty(Language.PROPERTY, before);
            }
        }
    }

    @Test
    void bothLanguagesHaveTheSameTextsWithTheSameArguments() throws Exception {
        Properties english = texts("messages.properties");
        Properties german = texts("messages_de.properties");
        assertEquals(english.keySet(), german.keySet());
        for (String key : english.stringPropertyNames()) {
            assertEquals(arguments(english.getProperty(key)), arguments(german.getProperty(key)), key);
        }
    }

    private static Properties texts(String name) throws Exception {
        Properties texts = new Properties();
        try (var reader = Files.newBufferedReader(Path.of("src/main/resources/org/ohmstead/report/internal", name))) {
            texts.load(reader);
        }
        return texts;
    }

    private static Set<String> arguments(String text) {
        return Pattern.compile("\\{\\d\\}")
                .matcher(text)
                .results()
                .map(MatchResult::group)
                .collect(Collectors.toSet());
    }

    @ParameterizedTest
    @EnumSource(SheetDesign.class)
    void showsTheHeadOfTheLaboratory(SheetDesign design) throws Exception {
        Files.writeString(folder.resolve("logo.svg"), String.format(SheetLogoTest.SVG, "<script>alert(1)</script>"));
        ResultsSheet plain = sheet(design, Locale.ENGLISH);
        SheetLayout layout = SheetLayout.USUAL
                .withAddress("1 Example Street\n" + HtmlSheetTest.HOSTILE)
                .withContact("lab@example.org")
                .withAccreditation("Not accredited.");
        ResultsSheet sheet = new ResultsSheet(
                plain.project().withSheet(plain.project().sheet().withLayout(layout)),
                plain.readings(),
                plain.curves(),
                plain.ratings(),
                plain.log(),
                plain.softwareVersion(),
                plain.producedAt(),
                plain.problems(),
                plain.form().withLogo(Optional.of(SheetLogo.read(folder, "logo.svg"))));
        Document document = HtmlSheetTest.parse(HtmlSheet.render(sheet));
        assertEquals(0, document.getElementsByTagName("script").getLength());
        Element image = (Element) document.getElementsByTagName("img").item(0);
        assertTrue(image.getAttribute("src").startsWith("data:image/svg+xml;base64,"));
        String words = document.getDocumentElement().getTextContent();
        assertTrue(words.contains("1 Example Street" + HtmlSheetTest.HOSTILE), design.toString());
        assertTrue(words.contains("lab@example.org") && words.contains("Not accredited."));
        Path file = folder.resolve("sheet.pdf");
        PdfSheet.write(sheet, file);
        try (SheetPages pages = SheetPages.open(file)) {
            assertTrue(pages.text(0).contains("Not accredited."));
            PagePicture picture = pages.picture(0, 1);
            boolean red = Arrays.stream(picture.rgb()).anyMatch(pixel -> pixel == 0xc00000);
            assertTrue(red, "the logo's red is on the page");
        }
    }
}
