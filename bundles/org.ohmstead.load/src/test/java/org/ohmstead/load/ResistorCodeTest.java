// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class ResistorCodeTest {
    private static final double EXACT = 1e-12;

    /** Examples in the form of IEC 60062, table of resistance values. */
    @ParameterizedTest
    @CsvSource({
        "R1, 0.1",
        "R47, 0.47",
        "R047, 0.047",
        "1R0, 1",
        "4R7, 4.7",
        "59R04, 59.04",
        "150R, 150",
        "47K, 47000",
        "4K7, 4700",
        "1K, 1000",
        "10K, 10000",
        "1M, 1000000",
        "3M32, 3320000",
        "1G, 1e9",
        "1T, 1e12"
    })
    void readsAndWritesLetters(String text, double ohms) throws NotationException {
        assertEquals(ohms, ResistorCode.ofLetters(text).ohms(), EXACT * ohms);
        String written = ResistorCode.letters(ohms);
        assertEquals(text.equals("1R0") ? "1R" : text, written);
    }

    @ParameterizedTest
    @CsvSource({"B, .001", "C, .0025", "D, .005", "F, .01", "G, .02", "J, .05", "K, .1", "M, .2"})
    void readsAndWritesToleranceLetters(String letter, double ratio) throws NotationException {
        ResistorCode.Marking marking = ResistorCode.ofLetters("4K7" + letter);
        assertEquals(4700, marking.ohms(), EXACT * 4700);
        assertEquals(ratio, marking.toleranceRatio().orElseThrow(), EXACT);
        assertEquals("4K7" + letter, ResistorCode.letters(4700, ratio));
    }

    @Test
    void writesBackEveryPreferredValue() throws NotationException {
        for (double ohms : PreferredValues.E192.between(0.01, 1e8)) {
            assertEquals(
                    ohms, ResistorCode.ofLetters(ResistorCode.letters(ohms)).ohms(), 1e-14 * ohms);
        }
    }

    @ParameterizedTest
    @CsvSource({
        // Digits, multiplier and tolerance by the table of IEC 60062.
        "yellow violet gold gold, 4.7, .05",
        "brown black red gold, 1000, .05",
        "red red orange silver, 22000, .1",
        "grey red black gold, 82, .05",
        "yellow violet silver gold, .47, .05",
        "brown black black gold brown, 10, .01",
        "yellow violet black brown brown, 4700, .01",
        "brown green black silver violet, 1.5, .001",
        "orange white red, 3900, .2",
        "blue grey pink silver, .068, .1"
    })
    void readsAndWritesColours(String text, double ohms, double ratio) throws NotationException {
        ResistorCode.Marking marking = ResistorCode.ofColours(text);
        assertEquals(ohms, marking.ohms(), EXACT * ohms);
        assertEquals(ratio, marking.toleranceRatio().orElseThrow(), EXACT);
        assertTrue(marking.temperatureCoefficientPerKelvin().isEmpty());
        assertEquals(
                text,
                ResistorCode.colours(marking).stream()
                        .map(ResistorColour::spoken)
                        .collect(Collectors.joining(" ")));
    }

    @Test
    void readsAndWritesTheSixthRing() throws NotationException {
        ResistorCode.Marking marking = ResistorCode.ofColours("BN, RD-OG GN VT RD");
        assertEquals(12.3e6, marking.ohms(), 1e-6);
        assertEquals(0.001, marking.toleranceRatio().orElseThrow(), EXACT);
        assertEquals(50e-6, marking.temperatureCoefficientPerKelvin().orElseThrow(), EXACT);
        assertEquals(
                "BN RD OG GN VT RD",
                ResistorCode.colours(marking).stream()
                        .map(ResistorColour::letters)
                        .collect(Collectors.joining(" ")));
    }

    @ParameterizedTest
    @EnumSource(names = {"E24", "E96"})
    void writesBackEveryPreferredValueInColours(PreferredValues series) throws NotationException {
        double tolerance = series == PreferredValues.E24 ? 0.05 : 0.01;
        for (double ohms : series.between(0.1, 9.1e6)) {
            ResistorCode.Marking marking =
                    new ResistorCode.Marking(ohms, OptionalDouble.of(tolerance), OptionalDouble.empty());
            String rings = ResistorCode.colours(marking).stream()
                    .map(ResistorColour::name)
                    .collect(Collectors.joining(" "));
            assertEquals(ohms, ResistorCode.ofColours(rings).ohms(), 1e-12 * ohms);
            assertEquals(series == PreferredValues.E24 ? 4 : 5, rings.split(" ").length);
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '#',
            value = {
                "yellow violet gold mauve # 19 # This is not a colour of the code. # pink",
                "yellow violet # 13 # A colour code has 3 to 6 rings; here are 2. # all rings",
                "gold gold violet yellow # 0 # This ring should be a digit, but gold stands for none. # other end",
                "red red red white # 12 # This ring should be a tolerance, but white stands for none. # other end",
                "red red red red red gold # 20 # This ring should be a temperature coefficient, but gold stands for none. # end",
                "black black red gold # 0 # The digits come to 0 ohm. # other end",
                "red red red red red red red # 24 # A colour code has 3 to 6 rings; here are 7. # all rings"
            })
    void saysWhichRingIsWrong(String text, int position, String problem, String remedyHolds) {
        NotationException fault = assertThrows(NotationException.class, () -> ResistorCode.ofColours(text));
        assertEquals(position, fault.position());
        assertEquals(problem, fault.problem());
        assertTrue(fault.remedy().contains(remedyHolds), fault.remedy());
    }

    @Test
    void refusesWhatTheCodeCannotSay() {
        assertThrows(IllegalArgumentException.class, () -> ResistorCode.letters(4.7, 0.03));
        assertThrows(IllegalArgumentException.class, () -> ResistorCode.letters(0));
        assertThrows(
                IllegalArgumentException.class,
                () -> ResistorCode.colours(
                        new ResistorCode.Marking(4.71234, OptionalDouble.of(0.05), OptionalDouble.empty())));
        NotationException rating = assertThrows(NotationException.class, () -> ResistorCode.ofLetters("4K7J@50W"));
        assertEquals(4, rating.position());
        assertEquals(
                0,
                assertThrows(NotationException.class, () -> ResistorCode.ofLetters(""))
                        .position());
    }
}
