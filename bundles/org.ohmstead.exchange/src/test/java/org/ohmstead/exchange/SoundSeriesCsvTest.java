// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.signal.FrequencyWeighting;
import org.ohmstead.signal.sound.SoundPoint;
import org.ohmstead.signal.sound.SoundSeries;

class SoundSeriesCsvTest {
    private static final String HEAD = "ohmstead-sound,1\nname,n\nmeter,m\ncommon_std_uncertainty_dB,0.7\n"
            + "repeat_std_uncertainty_dB,0.5\nfrequency_Hz,drive_dB,level_dB,weighting,position\n";

    @TempDir
    private Path folder;

    private SoundSeries read(String text) throws Exception {
        Path file = folder.resolve("series.csv");
        Files.writeString(file, text);
        return SoundSeriesCsv.read(file);
    }

    @Test
    void comesBackAsItWas() throws Exception {
        SoundSeries series = new SoundSeries(
                "=before, \"loud\"",
                "'-meter",
                0.7,
                0.25,
                List.of(
                        new SoundPoint(
                                31.622776601683793,
                                OptionalDouble.of(-10),
                                104.2,
                                FrequencyWeighting.C,
                                "driver's ear"),
                        new SoundPoint(1000, OptionalDouble.empty(), -3.5, FrequencyWeighting.Z, "@back\nseat")));
        Path file = folder.resolve("a.csv");
        SoundSeriesCsv.write(series, file);
        assertEquals(series, SoundSeriesCsv.read(file));
        String text = Files.readString(file);
        assertTrue(text.startsWith("ohmstead-sound,1\r\n"), text);
        assertTrue(text.contains("1000,,-3.5,Z,"), text);
        // RFC 4180 quoting aside, no text cell may begin with what a spreadsheet takes for a formula.
        for (String start : List.of(",=", ",\"=", ",@", ",\"@", "\n=", "\n@")) {
            assertFalse(text.contains(start), text);
        }
    }

    @Test
    void takesWhatASpreadsheetSaves() throws Exception {
        SoundSeries series = read("\uFEFF" + HEAD + "50, -10 ,104.2,C,seat\n\n63,,99,A,\n");
        assertEquals(2, series.points().size());
        assertEquals(-10, series.points().get(0).driveDb().orElseThrow());
        assertEquals("", series.points().get(1).position());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "50,-10,loud,C,x | line 7, level_dB: \"loud\" is no number",
                "50,-10,99,B,x | line 7, weighting: \"B\" is no weighting",
                "-50,-10,99,C,x | line 7, frequency_Hz",
                "50,-10,NaN,C,x | line 7, level_dB",
                "50,-10,99,C | there must be 5 cells, but there are 4"
            })
    void saysWhereARowIsWrong(String row, String words) {
        String message = assertThrows(ExchangeException.class, () -> read(HEAD + row + "\n"))
                .getMessage();
        assertTrue(message.contains(words), message);
    }

    @Test
    void refusesOtherFiles() {
        assertTrue(message("time,volts\n1,2\n").contains("must be \"ohmstead-sound\", but is \"time\""));
        assertTrue(message("ohmstead-sound,2\n").contains("reads version 1"));
        assertTrue(message("ohmstead-sound,1\nname,x\n").contains("ends before the headings"));
        assertTrue(message(HEAD.replace("0.7", "-1")).contains("line 4"));
        assertTrue(assertThrows(ExchangeException.class, () -> SoundSeriesCsv.read(folder.resolve("none.csv")))
                .causedOutside());
    }

    private String message(String text) {
        return assertThrows(ExchangeException.class, () -> read(text)).getMessage();
    }
}
