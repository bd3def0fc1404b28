// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.sound;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Locale;
import java.util.ResourceBundle;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ExposureCriterionTest {
    /** Table 1-1 of NIOSH 98-126, in hours and minutes: 85 8 h, 88 4 h, 94 1 h, 97 30 min, 100 15 min. */
    @ParameterizedTest
    @CsvSource({"85, 480", "88, 240", "91, 120", "94, 60", "97, 30", "100, 15", "109, 1.875"})
    void timesOfNiosh(double levelDb, double minutes) {
        assertEquals(minutes * 60, ExposureCriterion.NIOSH_1998.seconds(levelDb), 1e-6);
    }

    /** Table G-16 of 29 CFR 1910.95, in hours; some are rounded there. */
    @ParameterizedTest
    @CsvSource({"90, 8", "92, 6", "95, 4", "97, 3", "100, 2", "102, 1.5", "105, 1", "110, 0.5", "115, 0.25"})
    void timesOfOsha(double levelDb, double hours) {
        assertEquals(hours * 3600, ExposureCriterion.OSHA_1910_95.seconds(levelDb), 0.02 * hours * 3600);
    }

    /** Equal energy, LEX,8h = LAeq + 10 lg (T / 8 h): 100 dB(A) reaches 80 after 4.8 min, 85 after 15.18 min, 87 after 24.06 min. */
    @ParameterizedTest
    @CsvSource({"EU_LOWER_ACTION, 4.8, 135", "EU_UPPER_ACTION, 15.178933, 137", "EU_LIMIT, 24.056987, 140"})
    void timesOfTheDirective(ExposureCriterion criterion, double minutes, double peakDb) {
        assertEquals(minutes * 60, criterion.seconds(100), 1e-4);
        assertEquals(peakDb, criterion.peakCDb().orElseThrow(), 1e-12);
        double dailyDb = ExposureCriterion.dailyLevelDb(List.of(new TimedLevel(100, criterion.seconds(100))));
        assertEquals(criterion.levelDb(), dailyDb, 1e-9);
    }

    @Test
    void allowsNoTimeAboveACeiling() {
        assertEquals(0, ExposureCriterion.OSHA_1910_95.seconds(115.1));
        assertEquals(0, ExposureCriterion.NIOSH_1998.seconds(141));
        assertThrows(
                IllegalArgumentException.class,
                () -> ExposureCriterion.OSHA_1910_95.doseRatio(List.of(new TimedLevel(120, 1))));
        assertEquals(24 * 3600, ExposureCriterion.NIOSH_1998.seconds(40));
    }

    /** Half of each of two allowed times is the whole of a day. */
    @Test
    void addsUpADay() {
        List<TimedLevel> day = List.of(new TimedLevel(95, 2 * 3600), new TimedLevel(100, 3600));
        assertEquals(1, ExposureCriterion.OSHA_1910_95.doseRatio(day), 1e-12);
        assertEquals(
                1,
                ExposureCriterion.NIOSH_1998.doseRatio(List.of(new TimedLevel(88, 7200), new TimedLevel(94, 1800))),
                1e-12);
    }

    @Test
    void cautionsFromEightyOn() {
        assertTrue(ExposureCaution.about(79.9, Locale.ENGLISH).isEmpty());
        List<String> about = ExposureCaution.about(100, Locale.ENGLISH);
        assertTrue(about.get(0).contains("after 15 min"), about.get(0));
        assertTrue(about.get(1).contains("Local rules and qualified people decide"), about.get(1));
        assertTrue(ExposureCaution.about(145, Locale.ENGLISH).get(0).contains("no time at all"));
    }

    @ParameterizedTest
    @CsvSource({"0.4, under 1 s", "45.9, 45 s", "1500, 25 min", "28800, 8 h", "9000, 2 h 30 min"})
    void saysTimes(double seconds, String words) {
        assertEquals(words, ExposureCaution.duration(seconds, Locale.ENGLISH));
    }

    @Test
    void saysWhereEachIsFrom() {
        for (ExposureCriterion criterion : ExposureCriterion.values()) {
            assertTrue(criterion
                    .source(Locale.ENGLISH)
                    .contains(String.format(Locale.ROOT, "%.0f dB", criterion.levelDb())));
        }
        assertTrue(ExposureCaution.aboutLimits(Locale.ENGLISH).contains("not levels to aim at"));
        assertFalse(ExposureCaution.always(Locale.ENGLISH).isBlank());
    }

    @Test
    void speaksGermanThroughout() {
        String name = Texts.class.getPackageName() + ".messages";
        ResourceBundle german = ResourceBundle.getBundle(name, Locale.GERMAN);
        ResourceBundle english = ResourceBundle.getBundle(name, Locale.ROOT);
        assertEquals(new TreeSet<>(english.keySet()), new TreeSet<>(german.keySet()));
        assertTrue(ExposureCaution.aboutLimits(Locale.GERMAN).contains("kein Ziel"));
        assertTrue(ExposureCaution.about(94.5, Locale.GERMAN).get(0).startsWith("94,5 dB(A) erreichen"));
    }
}
