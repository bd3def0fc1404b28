// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PriceIndexTest {
    private static final LocalDate BOUGHT = LocalDate.of(2019, 6, 15);

    @TempDir
    private Path folder;

    @Test
    void bringsAPriceToTheMoneyOfTheBaseYear() throws HistoryException {
        PriceIndex index = PriceIndex.parse("cpi.csv", "period,index\n2019,80\n2024,100\n2021,90\n");
        // Closed form: index(base) over index(bought).
        assertEquals(1.25, index.factor(BOUGHT, "2024"), 1e-15);
        assertEquals(1, index.factor(BOUGHT, "2019"), 0);
        assertEquals("2019", index.periodOf(BOUGHT));
    }

    @Test
    void readsMonthsWithRemarksAndABom() throws HistoryException, IOException {
        Path file = folder.resolve("cpi.csv");
        Files.writeString(file, "\uFEFF# made up\r\nperiod, index\r\n\r\n2019-06, 102.5\r\n2019-07,103\r\n");
        PriceIndex index = PriceIndex.read(file);
        assertEquals("2019-06", index.periodOf(BOUGHT));
        assertEquals(103 / 102.5, index.factor(BOUGHT, "2019-07"), 1e-15);
    }

    @Test
    void guessesNothingInAGapOrOutside() throws HistoryException {
        PriceIndex index = PriceIndex.parse("cpi.csv", "period,index\n2018,70\n2020,80\n2024,100\n");
        assertEquals(
                "The price index cpi.csv has no value for 2019: there is a gap between 2018 and 2020. Add the value; nothing is"
                        + " guessed.",
                assertThrows(HistoryException.class, () -> index.factor(BOUGHT, "2024"))
                        .getMessage());
        assertEquals(
                "The price index cpi.csv has no value for 2026; it goes from 2018 to 2024. Add the value; nothing is guessed.",
                assertThrows(HistoryException.class, () -> index.at("2026")).getMessage());
        assertTrue(assertThrows(HistoryException.class, () -> index.at("2024-01"))
                .getMessage()
                .contains("table of years"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "2019,80 | 1 | header",
                "period;index | 1 | header",
                "period,index/2019;80 | 2 | one comma",
                "period,index/2019,80/19,90 | 3 | year",
                "period,index/2019-13,80 | 2 | month",
                "period,index/2019,80/2020-01,90 | 3 | mixes years with months",
                "period,index/2019,80/2019,90 | 3 | second time",
                "period,index/2019,0 | 2 | above 0",
                "period,index/2019,-4 | 2 | above 0",
                "period,index/2019,1e3 | 2 | above 0",
                "period,index/2019,NaN | 2 | above 0",
                "period,index/2019,80,5 | 2 | one comma",
                "period,index/# nothing/2019,=1+1 | 3 | above 0"
            })
    void namesTheLineThatIsWrong(String text, int line, String words) {
        HistoryException wrong =
                assertThrows(HistoryException.class, () -> PriceIndex.parse("cpi.csv", text.replace("/", "\n")));
        assertTrue(
                wrong.getMessage().startsWith("Line " + line + " of the price index cpi.csv ")
                        && wrong.getMessage().contains(words),
                wrong.getMessage());
    }

    @Test
    void whateverStandsInAFileIsEitherATableOrRefusedWithASentence() {
        String good = "period,index\n2019-11,99.5\n2019-12,100\n2020-01,101.25\n";
        String strange = ",;.\"'=+-\t 019eE\u00e9\u0000#\n\uFEFFNaN";
        Random random = new Random(20260108);
        int read = 0;
        for (int i = 0; i < 5000; i++) {
            StringBuilder text = new StringBuilder(good);
            for (int changes = random.nextInt(4); changes >= 0; changes--) {
                int at = random.nextInt(text.length());
                char other = strange.charAt(random.nextInt(strange.length()));
                switch (random.nextInt(3)) {
                    case 0 -> text.setCharAt(at, other);
                    case 1 -> text.insert(at, other);
                    default -> text.deleteCharAt(at);
                }
            }
            try {
                PriceIndex index = PriceIndex.parse("cpi.csv", text.toString());
                read++;
                index.values().values().forEach(value -> assertTrue(value > 0 && Double.isFinite(value)));
            } catch (HistoryException refused) {
                assertTrue(refused.getMessage().matches("(?s).*cpi\\.csv.*\\."), refused.getMessage());
            }
        }
        assertTrue(read > 100 && read < 4900, read + " of 5000 were read");
    }

    @Test
    void refusesATableWithoutValuesAndAFileThatIsNone() throws IOException {
        assertThrows(HistoryException.class, () -> PriceIndex.parse("cpi.csv", "period,index\n"));
        assertThrows(HistoryException.class, () -> PriceIndex.parse("cpi.csv", ""));
        assertThrows(HistoryException.class, () -> PriceIndex.read(folder.resolve("nowhere.csv")));
        Path latin = folder.resolve("latin.csv");
        Files.write(latin, new byte[] {'p', (byte) 0xE9, 'r'});
        assertTrue(assertThrows(HistoryException.class, () -> PriceIndex.read(latin))
                .getMessage()
                .contains("UTF-8"));
    }
}
