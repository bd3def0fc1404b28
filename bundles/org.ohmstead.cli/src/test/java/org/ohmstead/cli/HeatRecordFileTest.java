// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.ohmstead.thermal.HeatReading;
import org.ohmstead.thermal.PowerStep;

class HeatRecordFileTest {
    private static final List<HeatReading> READINGS =
            List.of(new HeatReading(0, 20), new HeatReading(1.5, 21.25), new HeatReading(3, 22.5));

    @ParameterizedTest
    @ValueSource(
            strings = {
                "0,20\n1.5,21.25\n3,22.5\n",
                "seconds,celsius\n0,20\n1.5,21.25\n3,22.5",
                "\ufeff\"Time\";\"Temperature\"\n0;20\n1,5;21,25\n3;22,5\n",
                "# made by hand\n\n0\t20\r\n1,5\t21,25\r\n3\t22,5\r\n",
                "celsius,seconds\n20,0\n21.25,1.5\n22.5,3\n",
                "0 s, 20 \u00b0C\n1500 ms, 21.25 C\n3 s, 22.5\n",
                "note;t;\u00b0C\na;0;20\nb;1.5;21.25\nc;3;22.5\n",
            })
    void readsTheSameReadingsHoweverTheyAreWritten(String text) throws Exception {
        HeatRecordFile file = HeatRecordFile.parse("log.csv", text);
        assertEquals(READINGS, file.readings());
        assertTrue(file.watts().isEmpty());
    }

    @Test
    void aThirdColumnHoldsThePowerFromItsLineToTheNext() throws Exception {
        HeatRecordFile file = HeatRecordFile.parse("log.csv", "5,20,60\n10,21,60\n20,22,0\n30,21,0\n50,20,10\n");
        List<PowerStep> steps = file.powers().steps();
        assertEquals(List.of(new PowerStep(20, 60), new PowerStep(30, 0), new PowerStep(0, 10)), steps);
        assertArrayEquals(new double[] {60}, steps.get(0).watts());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "'0,20\n1,x' | line 2: \"x\" does not begin with a number",
                "'0,20\n1' | line 2: there are 1 columns; 2 are needed",
                "'s,celsius\n\n5,20\n5,21' | line 4: the time 5 is not after",
                "'0,20\n-1,21' | line 2: the time is -1",
                "'0,20,5\n1,21' | line 2: there are 2 columns; 3 are needed",
                "'0,5,20,5' | line 1: there are 4 columns without names",
                "'0' | line 1: there is one column only",
                "'a,b\n0,20' | line 1: the columns \"a, b\" do not name",
                "'0,20\n1,1e999' | line 2: \"1e999\" is too large",
                "'seconds,celsius' | holds no reading",
            })
    void saysWhichLineIsWrong(String text, String expected) {
        InputException refusal = assertThrows(InputException.class, () -> HeatRecordFile.parse("log.csv", text));
        assertTrue(refusal.getMessage().startsWith("log.csv"), refusal.getMessage());
        assertTrue(refusal.getMessage().contains(expected), refusal.getMessage());
        assertTrue(refusal.getMessage().endsWith("."), refusal.getMessage());
    }

    @Test
    void refusesWhatIsNoTextFile(@TempDir Path folder) throws Exception {
        Path latin = Files.write(folder.resolve("latin.csv"), new byte[] {'0', ',', '2', '0', (byte) 0xb0});
        assertTrue(assertThrows(InputException.class, () -> HeatRecordFile.read(latin))
                .getMessage()
                .contains("UTF-8"));
        assertTrue(assertThrows(InputException.class, () -> HeatRecordFile.read(folder))
                .getMessage()
                .contains("is a folder"));
        assertTrue(assertThrows(InputException.class, () -> HeatRecordFile.read(folder.resolve("none.csv")))
                .getMessage()
                .contains("does not exist"));
    }

    @Test
    void refusesMoreReadingsThanItCanFit() {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i <= 20_000; i++) {
            text.append(i).append(",20\n");
        }
        assertTrue(assertThrows(InputException.class, () -> HeatRecordFile.parse("log.csv", text.toString()))
                .getMessage()
                .contains("more than 20000 readings"));
    }
}
