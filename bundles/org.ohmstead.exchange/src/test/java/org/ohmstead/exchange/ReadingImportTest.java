// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Specimen;
import org.ohmstead.model.Stimulus;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.TestLog;

class ReadingImportTest {
    private static final ImportSettings PLAIN = ImportSettings.of(Samples.REVISION, "0.1.0");
    private static final String HEADINGS =
            "taken_at,mode,load (ohm),frequency (kHz),end_point,end_point_limit_percent,power (mW),power_expanded_uncertainty_W,thd_f_dB,supply (mV),case_K,remark\n";
    private static final String GOOD =
            "2019-05-03T12:00:00+02:00,single,3.98,1,thd_plus_noise_r,10,88500,1.2,-40,14400,313.15,old bench\n";

    @TempDir
    private Path folder;

    private Path file(String text) throws Exception {
        return Files.writeString(folder.resolve("earlier.csv"), text);
    }

    private static void near(double expected, double actual) {
        assertEquals(expected, actual, Math.abs(expected) * 1e-12);
    }

    @Test
    void convertsUnitsAndFillsWhatFollows() throws Exception {
        ReadingImport table = ReadingImport.read(file(HEADINGS + GOOD), PLAIN);
        assertEquals(List.of(), table.faults());
        assertEquals(List.of("remark"), table.unusedHeadings());
        Reading reading = table.readings().get(0);
        ChannelReading channel = reading.channels().get(0);
        assertEquals(Instant.parse("2019-05-03T10:00:00Z"), reading.takenAt());
        assertEquals(Mode.SINGLE, reading.mode());
        assertEquals("imported", reading.stepId());
        assertEquals("3.98ohm", reading.loadId());
        near(1000, ((Stimulus.ContinuousSine) reading.stimulus()).frequencyHz());
        near(0.1, ((EndPoint.DistortionLimit) reading.endPoint()).ratio());
        near(88.5, channel.powerWatts());
        // Expanded uncertainty with the usual k = 2 (JCGM 100:2008, 6.2.1).
        near(0.6, channel.standardUncertaintyWatts());
        // -40 dB is one hundredth of a ratio of volts (IEC 60027-3).
        near(0.01, channel.thdFRatio());
        near(14.4, channel.supplyVolts());
        // 313.15 K is 40 degrees Celsius (SI Brochure, 2.3.4).
        assertEquals(40, reading.conditions().caseCelsius().orElseThrow(), 1e-10);
        // U = sqrt(P R)
        near(Math.sqrt(88.5 * 3.98), channel.outputVoltsRms());
        assertEquals("org.ohmstead.import", reading.provenance().procedureId());
        assertEquals(
                "Imported from \"earlier.csv\" (SHA-256 " + table.sha256() + "), line 2.",
                reading.notes().get(0));
    }

    @ParameterizedTest
    @EnumSource(CsvDialect.class)
    void takesBackWhatWasWrittenOut(CsvDialect dialect) throws Exception {
        Reading first = Samples.reading(
                1,
                Samples.provenance(Optional.of(new Specimen("=Larkspur", "0042", "bench 1"))),
                "=cmd and \"more\", on\ntwo lines");
        Path out = folder.resolve("out.csv");
        try (TestLog log = TestLog.open(folder.resolve("a.db"))) {
            log.append(first);
            log.append(Samples.reading(2));
            log.append(Samples.reading(3));
            log.append(Samples.figures(3));
            log.voidEntry("R0003", "lead was loose", "");
            ReadingsCsv.write(EntrySource.of(Samples.entries(log)), dialect, out);
        }
        ReadingImport table = ReadingImport.read(out, PLAIN);
        assertEquals(List.of(), table.faults());
        assertEquals(List.of(), table.unusedHeadings());
        assertEquals(2, table.voidedRows());
        assertEquals(2, table.readings().size());
        Reading back = table.readings().get(0);
        assertEquals(first.provenance().specimen(), back.provenance().specimen());
        assertEquals("=cmd and \"more\", on\ntwo lines", back.notes().get(2));
        assertEquals(first.takenAt(), back.takenAt());
        assertEquals(first.endPoint(), back.endPoint());
        assertEquals(2, back.channels().size());
        for (int index = 0; index < 2; index++) {
            ChannelReading is = back.channels().get(index);
            ChannelReading was = first.channels().get(index);
            assertEquals(was.channel(), is.channel());
            assertEquals(was.powerWatts(), is.powerWatts());
            assertEquals(was.standardUncertaintyWatts(), is.standardUncertaintyWatts());
            near(was.thdFRatio(), is.thdFRatio());
            assertEquals(was.supplyAmps(), is.supplyAmps());
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "88500 | 88,500 | power (mW) | \"88,500\" is no number with a decimal point",
                "88500 | -1 | power (mW) | \"-1\" must be at least 0.",
                "88500 | '' | power (mW) | the cell is empty",
                "single | triple | mode | \"triple\" is none of [stereo, bridged, single].",
                "14400 | 0 | supply (mV) | \"0\" must be above 0.",
                "2019-05-03T12:00:00+02:00 | 2019-05-03T12:00:00 | taken_at | with its zone.",
                "2019-05-03T12:00:00+02:00 | 2019-02-30T12:00:00Z | taken_at | is no time",
                ",10, | ,1e3, | end_point_limit_percent | the limit must lie",
                "88500 | 1e999 | power (mW) | is too large",
                "3.98 | 1e308 | power (mW) | \"88500\" is too large",
            })
    void namesLineAndColumnOfWhatIsWrong(String good, String bad, String column, String sentence) throws Exception {
        String cell = bad.contains(",") && !bad.startsWith(",") ? "\"" + bad + "\"" : bad;
        ReadingImport table = ReadingImport.read(
                file(HEADINGS + GOOD.replace("2019", "2018") + "\n" + GOOD.replace(good, cell)), PLAIN);
        ImportFault fault = table.faults().get(0);
        assertEquals(4, fault.line());
        assertEquals(column, fault.column());
        assertTrue(fault.sentence().contains(sentence), fault.sentence());
        assertEquals(1, table.badReadings());
        assertEquals(1, table.readings().size());
    }

    @Test
    void addsNothingUnlessAllIsGoodOrBadIsLeftOutOnPurpose() throws Exception {
        ReadingImport table = ReadingImport.read(
                file(HEADINGS + GOOD + GOOD.replace("88500", "much").replace("2019", "2020")), PLAIN);
        try (TestLog log = TestLog.open(folder.resolve("log.db"))) {
            ExchangeException refusal =
                    assertThrows(ExchangeException.class, () -> table.addTo(log, false, ExchangeProgress.SILENT));
            assertTrue(refusal.getMessage().contains("Line 3, column \"power (mW)\""), refusal.getMessage());
            assertEquals(0, Samples.entries(log).size());
            ReadingImport.Report report = table.addTo(log, true, ExchangeProgress.SILENT);
            assertEquals(new ReadingImport.Report(List.of("R0001"), 0, 0, 1), report);
            LogEntry entry = Samples.entries(log).get(0);
            assertEquals(table.readings().get(0), entry.reading().orElseThrow());
            assertTrue(log.verify().intact());
        }
    }

    @Test
    void bringsNothingTwice() throws Exception {
        ReadingImport table = ReadingImport.read(file(HEADINGS + GOOD + GOOD.replace("2019", "2020") + GOOD), PLAIN);
        try (TestLog log = TestLog.open(folder.resolve("log.db"))) {
            assertEquals(
                    2, table.addTo(log, false, ExchangeProgress.SILENT).added().size());
            log.voidEntry("R0001", "other amplifier", "");
            ReadingImport again = ReadingImport.read(
                    Files.copy(file(HEADINGS + GOOD + GOOD.replace("2019", "2020")), folder.resolve("copy.csv")),
                    PLAIN);
            assertEquals(
                    new ReadingImport.Report(List.of(), 2, 1, 0), again.addTo(log, false, ExchangeProgress.SILENT));
        }
    }

    @Test
    void knowsItsOwnEntriesWhenTheyComeBack() throws Exception {
        try (TestLog log = TestLog.open(folder.resolve("log.db"))) {
            log.append(Samples.reading(1));
            Path out = folder.resolve("own.csv");
            ReadingsCsv.write(EntrySource.of(Samples.entries(log)), CsvDialect.COMMA, out);
            ReadingImport.Report report = ReadingImport.read(out, PLAIN).addTo(log, false, ExchangeProgress.SILENT);
            assertEquals(new ReadingImport.Report(List.of(), 1, 0, 0), report);
        }
    }

    @Test
    void takesAnUncertaintyThatTheUserStates() throws Exception {
        String without =
                (HEADINGS + GOOD).replace("power_expanded_uncertainty_W,", "").replace("88500,1.2,", "88500,");
        ImportFault fault = ReadingImport.read(file(without), PLAIN).faults().get(0);
        assertTrue(fault.sentence().contains("uncertainty of the power is missing"), fault.sentence());
        ImportSettings stated = new ImportSettings(
                CsvDialect.COMMA,
                Optional.empty(),
                "",
                OptionalDouble.of(0.02),
                Samples.REVISION,
                "0.1.0",
                TableLimits.USUAL);
        Reading reading = ReadingImport.read(file(without), stated).readings().get(0);
        near(1.77, reading.channels().get(0).standardUncertaintyWatts());
    }

    @Test
    void leavesOutTheWholeReadingWhenOneOfItsChannelsIsWrong() throws Exception {
        String heads = HEADINGS.replace("\n", ",channel\n");
        String left = GOOD.replace("\n", ",A\n");
        String right = GOOD.replace("\n", ",B\n").replace("88500", "x");
        ReadingImport table = ReadingImport.read(file(heads + left + right), PLAIN);
        assertEquals(0, table.readings().size());
        assertEquals(1, table.badReadings());
        assertEquals(
                "this channel of the same reading stands in an earlier line already.",
                ReadingImport.read(file(heads + left + left), PLAIN)
                        .faults()
                        .get(0)
                        .sentence());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "power (mW) | power | names no unit that fits",
                "power (mW) | power_V | names no unit that fits",
                "supply (mV) | volts | lack supply_V",
                "mode | x | lack mode",
                "remark | case_degC | stand for the same",
            })
    void refusesHeadingsThatLeaveThingsOpen(String good, String bad, String sentence) throws Exception {
        ExchangeException refusal = assertThrows(
                ExchangeException.class, () -> ReadingImport.read(file(HEADINGS.replace(good, bad) + GOOD), PLAIN));
        assertTrue(refusal.getMessage().contains(sentence), refusal.getMessage());
    }

    @Test
    void saysWhenTheDialectSeemsToBeTheOther() throws Exception {
        ExchangeException refusal = assertThrows(
                ExchangeException.class, () -> ReadingImport.read(file((HEADINGS + GOOD).replace(',', ';')), PLAIN));
        assertTrue(refusal.getMessage().contains("separated by \";\": state the other dialect"), refusal.getMessage());
    }

    @Test
    void refusesWhatIsNoUtf8AndWhatIsNoTable() throws Exception {
        Path latin = Files.write(
                folder.resolve("latin.csv"),
                (HEADINGS + GOOD.replace("old bench", "\u00e4lter")).getBytes(StandardCharsets.ISO_8859_1));
        ExchangeException refusal = assertThrows(ExchangeException.class, () -> ReadingImport.read(latin, PLAIN));
        assertTrue(refusal.getMessage().contains("UTF-8"), refusal.getMessage());
        assertThrows(ExchangeException.class, () -> ReadingImport.read(file(""), PLAIN));
        assertThrows(ExchangeException.class, () -> ReadingImport.read(file(HEADINGS + "\"open"), PLAIN));
        assertThrows(ExchangeException.class, () -> ReadingImport.read(folder.resolve("none.csv"), PLAIN));
        assertThrows(ExchangeException.class, () -> ReadingImport.read(folder, PLAIN));
    }

    @Test
    void countsLinesOfTheFile() throws Exception {
        String quoted = GOOD.replace("old bench", "\"two\nlines\"");
        ReadingImport table = ReadingImport.read(file(HEADINGS + quoted + GOOD.replace("88500", "x")), PLAIN);
        assertEquals(4, table.faults().get(0).line());
    }

    @Test
    void holdsToItsLimits() throws Exception {
        TableLimits few = new TableLimits(1 << 20, 1 << 20, 100, 2, 20, 100, 1000);
        ImportSettings settings = new ImportSettings(
                CsvDialect.COMMA, Optional.empty(), "", OptionalDouble.empty(), Samples.REVISION, "0.1.0", few);
        assertEquals(
                2,
                ReadingImport.read(file(HEADINGS + GOOD + GOOD.replace("2019", "2020")), settings)
                        .readings()
                        .size());
        for (String tooMuch : List.of(
                HEADINGS + GOOD + GOOD + GOOD,
                HEADINGS + GOOD.replace("old bench", "x".repeat(101)),
                HEADINGS + GOOD.replace("old bench", ",,,,,,,,,,,,"),
                HEADINGS + GOOD + "\n".repeat(1 << 20))) {
            assertThrows(ExchangeException.class, () -> ReadingImport.read(file(tooMuch), settings));
        }
    }
}
