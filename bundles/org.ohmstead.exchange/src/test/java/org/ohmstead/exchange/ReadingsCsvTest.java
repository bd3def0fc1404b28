// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.ohmstead.exchange.internal.FormulaGuard;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Specimen;
import org.ohmstead.testlog.TestLog;

class ReadingsCsvTest {
    @TempDir
    private Path folder;

    private String csv(CsvDialect dialect, Reading... readings) throws Exception {
        Path file = folder.resolve("log" + System.nanoTime() + ".db");
        try (TestLog log = TestLog.open(file)) {
            for (Reading reading : readings) {
                log.append(reading);
            }
            StringBuilder text = new StringBuilder();
            ReadingsCsv.write(EntrySource.of(Samples.entries(log)), dialect, text);
            return text.toString();
        }
    }

    @Test
    void writesCommaTablesByRfc4180() throws Exception {
        String text = csv(CsvDialect.COMMA, Samples.reading(1, "one, \"two\"\nthree"));
        String[] lines = text.split("\r\n");
        assertEquals(3, lines.length);
        assertTrue(lines[0].startsWith("entry,recorded_at_utc,taken_at_utc,step,mode,load,nominal_load_ohm,load_ohm"));
        assertTrue(lines[0].endsWith(",entry_hash"));
        assertTrue(
                lines[1].contains(
                        ",2026-03-02T09:15:05.250Z,step-1,stereo,4ohm,4,4.02,continuous,1000,,,,thd_f,1,,A,reached,71.5,0.4,17.8,1,13.36,17.52,"));
        // RFC 4180, 2.6 and 2.7: quoted whole, quotation marks doubled.
        assertTrue(lines[1].contains(",\"one, \"\"two\"\"\nthree\","));
        assertTrue(text.endsWith("\r\n"));
    }

    @Test
    void namesTheDialectWithSemicolonsInTheFile() throws Exception {
        String text = csv(CsvDialect.SEMICOLON, Samples.reading(1));
        String[] lines = text.split("\r\n");
        assertEquals('\uFEFF', text.charAt(0));
        assertEquals(CsvDialect.SEMICOLON.firstLine(), lines[0].substring(1));
        assertTrue(lines[1].startsWith("entry;recorded_at_utc;"));
        assertTrue(lines[2].contains(";4;4,02;continuous;1000;;;;thd_f;1;;A;reached;71,5;0,4;17,8;1;13,36;17,52;"));
    }

    @Test
    void addsTheSpecimenOnlyWhereReadingsNameIt() throws Exception {
        assertFalse(csv(CsvDialect.COMMA, Samples.reading(1)).contains("serial_number"));
        Reading named =
                Samples.reading(2, Samples.provenance(Optional.of(new Specimen("Larkspur 2x90", "0042", "bench 1"))));
        String[] lines = csv(CsvDialect.COMMA, Samples.reading(1), named).split("\r\n");
        assertTrue(lines[0].endsWith(",entry_hash,amplifier,serial_number,bench"));
        assertTrue(lines[1].endsWith(",,,"));
        assertTrue(lines[3].endsWith(",\"Larkspur 2x90\",0042,\"bench 1\""));
    }

    @ParameterizedTest
    @ValueSource(strings = {"=1+1", "+1", "-1", "@SUM(A1)", "\tx", "\r=1", "\n=1", "'=1", "''@x"})
    void keepsSpreadsheetsFromTakingTextsForFormulas(String text) {
        String guarded = FormulaGuard.guarded(text);
        assertEquals("'" + text, guarded);
        assertEquals(text, FormulaGuard.unguarded(guarded));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "plain", "'", "'quoted'", "1-2", "4 \u03a9 \u00b1 1 %"})
    void leavesOtherTextsAlone(String text) {
        assertEquals(text, FormulaGuard.guarded(text));
        assertEquals(text, FormulaGuard.unguarded(text));
    }

    @Test
    void keepsNegativeNumbersNumbers() throws Exception {
        Reading cold = Samples.reading(1);
        Reading reading = new Reading(
                cold.stepId(),
                cold.mode(),
                cold.loadId(),
                cold.nominalLoadOhms(),
                cold.stimulus(),
                new EndPoint.FixedLevel(-6.5),
                cold.takenAt(),
                cold.conditions(),
                cold.channels(),
                cold.provenance(),
                List.of("-6.5"));
        String text = csv(CsvDialect.COMMA, reading);
        assertTrue(text.contains(",fixed_level,,-6.5,A,"), text);
        assertTrue(text.contains(",\"'-6.5\","), text);
    }

    @Test
    void replacesAFileWholly() throws Exception {
        Path target = folder.resolve("readings.csv");
        Files.writeString(target, "old");
        ReadingsCsv.write(EntrySource.of(List.of()), CsvDialect.COMMA, target);
        assertTrue(Files.readString(target).startsWith("entry,"));
        assertEquals(List.of("readings.csv"), Samples.everythingIn(folder));
    }
}
