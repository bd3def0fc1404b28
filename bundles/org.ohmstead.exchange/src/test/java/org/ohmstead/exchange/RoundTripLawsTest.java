// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.From;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tuple;
import net.jqwik.api.constraints.Size;
import net.jqwik.api.lifecycle.AfterContainer;
import net.jqwik.api.lifecycle.BeforeContainer;
import org.ohmstead.exchange.internal.Cell;
import org.ohmstead.exchange.internal.FormulaGuard;
import org.ohmstead.exchange.internal.SheetText;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.Conditions;
import org.ohmstead.model.DistortionMeasure;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Provenance;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Specimen;
import org.ohmstead.model.Stimulus;
import org.ohmstead.testlog.EntryKind;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.TestLog;

/** What is written out comes in again as it was, whatever people write and whatever was measured. */
class RoundTripLawsTest {
    private static final ImportSettings PLAIN = ImportSettings.of(Samples.REVISION, "0.1.0");
    private static final int MOST = 10_000;

    private static Path folder;

    @BeforeContainer
    static void makeAFolder() throws IOException {
        folder = Files.createTempDirectory("ohmstead-exchange");
    }

    @AfterContainer
    static void deleteIt() throws IOException {
        try (var files = Files.walk(folder)) {
            for (Path each : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(each);
            }
        }
    }

    /**
     * What people write in all sorts of scripts, with all that means something to a table, and characters that no keyboard gives but a
     * pasted text can hold.
     */
    @Provide
    Arbitrary<String> texts() {
        Arbitrary<String> controls = Arbitraries.chars()
                .range('\u0000', '\u001f')
                .with('\u007f', '\u0085', '\u009f', '\u2028', '\u2029', '\ufdd0', '\ufffe', '\uffff')
                .map(String::valueOf);
        Arbitrary<String> letters = Arbitraries.of(
                "=",
                "+",
                "-",
                "@",
                "'",
                "\"",
                ",",
                ";",
                "\n",
                "\r\n",
                "\t",
                " ",
                "\\",
                "<",
                "&",
                "]]>",
                "#",
                "%",
                "0",
                "1e5",
                "A",
                "z",
                "\u00e9",
                "e\u0301",
                "\u03a9",
                "\u5b57",
                "\u05d0",
                "\u200b",
                "\u2028",
                "\ud83d\udd0a",
                "_x000D_",
                "\ufeff",
                "\u00a0",
                "null",
                "{",
                "}",
                "\u0085",
                "\r",
                "\ufffd");
        // How a workbook writes what XML cannot hold, and pieces that make it.
        Arbitrary<String> escapes = Arbitraries.of(
                "_x0041_",
                "_x005F_",
                "_x005f_x0041_",
                "_x0000_",
                "_xD83D_",
                "_x004g_",
                "_x0041",
                "x0041_",
                "_",
                "_x",
                "_X0041_");
        return Arbitraries.frequencyOf(Tuple.of(4, letters), Tuple.of(2, controls), Tuple.of(1, escapes))
                .list()
                .ofMinSize(0)
                .ofMaxSize(12)
                .map(parts -> String.join("", parts));
    }

    @Provide
    Arbitrary<Double> numbers() {
        return Arbitraries.oneOf(
                Combinators.combine(
                                Arbitraries.longs().between(1, 1L << 53),
                                Arbitraries.integers().between(-290, 60))
                        .as((digits, exponent) -> Double.parseDouble(digits + "e" + exponent)),
                Arbitraries.longs().between(1, 1_000_000).map(thousandths -> thousandths / 1000.0),
                Arbitraries.of(Double.MIN_NORMAL, 0.1, 1.0 / 3, 1e15, 123456789012345680.0, Double.MIN_VALUE));
    }

    @Provide
    Arbitrary<Reading> readings() {
        return Combinators.combine(
                        texts().list().ofSize(8),
                        numbers().list().ofSize(5),
                        Arbitraries.integers().between(0, 40_000))
                .as(RoundTripLawsTest::reading);
    }

    private static Reading reading(List<String> texts, List<Double> numbers, int minute) {
        ChannelReading channel = new ChannelReading(
                "A" + texts.get(7),
                EndPointOutcome.REACHED,
                Math.min(numbers.get(0), 1e6),
                numbers.get(1),
                numbers.get(2),
                numbers.get(3),
                1000,
                0.01,
                numbers.get(4),
                OptionalDouble.empty(),
                List.of(),
                List.of(),
                List.of());
        Optional<Specimen> specimen = texts.get(0).isBlank()
                ? Optional.empty()
                : Optional.of(new Specimen(texts.get(0), texts.get(1), texts.get(2)));
        Provenance usual = Samples.provenance(specimen);
        return new Reading(
                "s" + texts.get(3),
                Mode.STEREO,
                "4ohm" + texts.get(6),
                4,
                new Stimulus.ContinuousSine(1000),
                new EndPoint.DistortionLimit(0.01, DistortionMeasure.THD_F),
                Samples.TAKEN.plusSeconds(60L * minute),
                new Conditions(OptionalDouble.of(22.6), OptionalDouble.empty()),
                List.of(channel),
                new Provenance(
                        usual.projectRevision(),
                        usual.procedureId(),
                        usual.procedureVersion(),
                        usual.softwareVersion(),
                        texts.get(5),
                        usual.instruments(),
                        usual.captures(),
                        specimen),
                Stream.of(texts.get(4), texts.get(5))
                        .filter(note -> !note.isBlank())
                        .toList());
    }

    private static List<LogEntry> entries(List<Reading> readings) {
        List<LogEntry> entries = new ArrayList<>();
        for (Reading reading : readings) {
            long sequence = entries.size() + 1L;
            entries.add(new LogEntry(
                    sequence,
                    EntryKind.READING,
                    "R000" + sequence,
                    Samples.TAKEN,
                    "{}",
                    "0".repeat(64),
                    "ab".repeat(32),
                    Optional.of(reading),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty()));
        }
        return entries;
    }

    private static Stream<String> textsOf(Reading reading) {
        Provenance provenance = reading.provenance();
        return Stream.concat(
                Stream.of(
                        reading.stepId(),
                        reading.loadId(),
                        reading.channels().get(0).channel(),
                        provenance.operator()),
                provenance.specimen().stream()
                        .flatMap(specimen ->
                                Stream.of(specimen.amplifier(), specimen.serialNumber(), specimen.bench())));
    }

    /** Every text comes back but for white space around it, which no table keeps; several notes come back as one. */
    private static void assertBack(List<Reading> written, Path file) throws ExchangeException {
        ReadingImport table = ReadingImport.read(file, PLAIN);
        assertEquals(List.of(), table.faults());
        assertEquals(List.of(), table.unusedHeadings());
        assertEquals(written.size(), table.readings().size());
        for (int at = 0; at < written.size(); at++) {
            Reading was = written.get(at);
            Reading is = table.readings().get(at);
            assertEquals(was.takenAt(), is.takenAt());
            assertEquals(textsOf(was).map(String::strip).toList(), textsOf(is).toList());
            String notes = String.join(" ", was.notes()).strip();
            assertEquals(
                    notes.isEmpty() ? List.of() : List.of(notes),
                    is.notes().subList(2, is.notes().size()));
            ChannelReading wasChannel = was.channels().get(0);
            ChannelReading isChannel = is.channels().get(0);
            assertEquals(wasChannel.powerWatts(), isChannel.powerWatts());
            assertEquals(wasChannel.standardUncertaintyWatts(), isChannel.standardUncertaintyWatts());
            assertEquals(wasChannel.loadOhms(), isChannel.loadOhms());
            assertEquals(wasChannel.outputVoltsRms(), isChannel.outputVoltsRms());
            assertEquals(wasChannel.supplyVolts(), isChannel.supplyVolts());
        }
    }

    @Property(seed = "20261211", tries = 2000)
    void aGuardedTextIsNoFormulaAndComesBack(@ForAll String any, @ForAll @From("texts") String text) {
        for (String each : List.of(any, text)) {
            String cell = FormulaGuard.guarded(each);
            assertEquals(each, FormulaGuard.unguarded(cell));
            assertFalse(!cell.isEmpty() && "=+-@\t\r\n".indexOf(cell.charAt(0)) >= 0, cell);
        }
    }

    @Property(seed = "20261215", tries = 2000)
    void aSheetHoldsEveryText(@ForAll @From("texts") String text, @ForAll @From("texts") String next) {
        for (String each : List.of(text, text + "_x0041" + next, text + "_x00" + next)) {
            String written = SheetText.escaped(each);
            assertEquals(each, SheetText.unescaped(written));
            assertTrue(written.codePoints().allMatch(RoundTripLawsTest::inXml), written);
        }
    }

    /** The characters of XML 1.0 (2.2, production 2). */
    private static boolean inXml(int point) {
        return point == 0x9
                || point == 0xA
                || point == 0xD
                || point >= 0x20 && point <= 0xD7FF
                || point >= 0xE000 && point <= 0xFFFD
                || point >= 0x10000;
    }

    @Example
    void whatWouldBeHalfOfASurrogatePairIsNone() {
        assertEquals("_xD83D__xDD0A_ A", SheetText.unescaped("_xD83D__xDD0A_ _x0041_"));
        assertEquals("_xdfff_", SheetText.unescaped("_xdfff_"));
        assertEquals("$1\\_", SheetText.unescaped("_x0024_1\\_x005f_"));
        assertEquals(new Cell.Text("a\ufffd\ud83d\udd0ab\ufffd"), new Cell.Text("a\ud83d\ud83d\udd0ab\udd0a"));
    }

    @Property(seed = "20261212", tries = 150)
    void readingsComeBackFromText(
            @ForAll @Size(min = 1, max = 4) List<@From("readings") Reading> readings, @ForAll CsvDialect dialect)
            throws Exception {
        Path file = folder.resolve("out.csv");
        Files.deleteIfExists(file);
        ReadingsCsv.write(EntrySource.of(entries(readings)), dialect, file);
        assertBack(readings, file);
    }

    /** Was refused on its way in, as it was written out with all its zeros. */
    @Example
    void aNumberOfManyZerosComesBack() throws Exception {
        for (CsvDialect dialect : CsvDialect.values()) {
            Path file = folder.resolve("zeros.csv");
            Files.deleteIfExists(file);
            List<String> texts = Collections.nCopies(8, "");
            List<Reading> readings =
                    List.of(reading(texts, List.of(1.0, 1e40, 1.25e-39, Double.MIN_VALUE, Double.MAX_VALUE), 0));
            ReadingsCsv.write(EntrySource.of(entries(readings)), dialect, file);
            assertBack(readings, file);
        }
    }

    @Property(seed = "20261213", tries = 50)
    void readingsComeBackFromAWorkbook(@ForAll @Size(min = 1, max = 4) List<@From("readings") Reading> readings)
            throws Exception {
        Path file = folder.resolve("out.xlsx");
        Files.deleteIfExists(file);
        LogWorkbook.write(
                EntrySource.of(entries(readings)),
                new LogWorkbook.About("a log", "0.1.0", Instant.parse("2026-03-02T10:00:00Z"), "00".repeat(32)),
                file);
        assertBack(readings, file);
    }

    private static void assertComesBackAsItWas(List<LogEntry> were, List<Reading> are) {
        assertEquals(were.size(), are.size());
        for (int at = 0; at < were.size(); at++) {
            Reading was = were.get(at).reading().orElseThrow();
            Reading is = are.get(at);
            assertEquals(textsOf(was).toList(), textsOf(is).toList());
            assertEquals(was.notes(), is.notes().subList(2, is.notes().size()));
            assertEquals(was.channels(), is.channels());
        }
    }

    @Property(seed = "20261214", tries = 10)
    void everyEntryComesBackFromLinesAsItIsStored(
            @ForAll @Size(min = 1, max = 4) List<@From("readings") Reading> readings,
            @ForAll @From("texts") String text,
            @ForAll @From("texts") String who)
            throws Exception {
        Path first = folder.resolve("first.db");
        Path second = folder.resolve("second.db");
        Path lines = folder.resolve("out.jsonl");
        for (Path file : List.of(first, second, lines)) {
            Files.deleteIfExists(file);
        }
        try (TestLog log = TestLog.open(first)) {
            for (Reading reading : readings) {
                log.append(reading);
            }
            log.note("note " + text, who);
            log.voidEntry("R0001", "reason " + text, who);
            LogLines.write(log, new LogLines.Head(text, "0.1.0", Samples.TAKEN), lines);
            LogLines.rebuild(lines, second);
            assertComesBackAsItWas(
                    log.readings(), LogLines.readings(lines, PLAIN).readings());
            try (TestLog back = TestLog.openReadOnly(second)) {
                assertTrue(back.verify().intact());
                assertEquals(
                        log.rows().rows(log.chains().get(0).chain(), 0, MOST),
                        back.rows().rows(back.chains().get(0).chain(), 0, MOST));
            }
        }
    }
}
