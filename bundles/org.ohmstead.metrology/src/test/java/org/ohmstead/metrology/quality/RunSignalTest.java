// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology.quality;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.metrology.internal.Well;

class RunSignalTest {

    private static List<RunSignal> find(RunRule rule, double... standardised) {
        return RunSignal.find(standardised, Set.of(rule));
    }

    // Average run lengths without any shift: C. W. Champ and W. H. Woodall, Technometrics 29 (1987), table 1.
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "370.40 | BEYOND_LIMITS",
                "225.44 | BEYOND_LIMITS TWO_OF_THREE_FAR_OUT",
                "166.05 | BEYOND_LIMITS FOUR_OF_FIVE_OFF_CENTRE",
                "152.73 | BEYOND_LIMITS EIGHT_ON_ONE_SIDE",
                "91.75 | BEYOND_LIMITS TWO_OF_THREE_FAR_OUT FOUR_OF_FIVE_OFF_CENTRE EIGHT_ON_ONE_SIDE"
            })
    void falseAlarmsAreAsRareAsPublished(double averageRunLength, String names) {
        Set<RunRule> rules = EnumSet.noneOf(RunRule.class);
        for (String name : names.split(" ")) {
            rules.add(RunRule.valueOf(name));
        }
        Well random = new Well(19870401);
        int runs = 10_000;
        long points = 0;
        for (int run = 0; run < runs; run++) {
            RunWatch watch = new RunWatch();
            EnumSet<RunRule> complete;
            do {
                complete = watch.accept(random.nextGaussian());
                complete.retainAll(rules);
                points++;
            } while (complete.isEmpty());
        }
        // Run lengths are nearly geometric, so the mean of 10000 has a relative standard deviation of 1 %.
        assertEquals(averageRunLength, points / (double) runs, 0.03 * averageRunLength);
    }

    @Test
    void onePointBeyondTheLimits() {
        assertEquals(List.of(new RunSignal(RunRule.BEYOND_LIMITS, 1, 1)), find(RunRule.BEYOND_LIMITS, 0, 3.01, 3, -3));
        assertEquals(
                List.of(new RunSignal(RunRule.BEYOND_LIMITS, 0, 1), new RunSignal(RunRule.BEYOND_LIMITS, 3, 3)),
                find(RunRule.BEYOND_LIMITS, -4, -4, 0, 5));
    }

    @Test
    void twoOfThreeAndFourOfFive() {
        RunRule two = RunRule.TWO_OF_THREE_FAR_OUT;
        assertEquals(List.of(new RunSignal(two, 0, 2)), find(two, 2.1, 0, 2.1));
        assertEquals(List.of(new RunSignal(two, 0, 1)), find(two, -2.1, -2.5, 0, 0, -2.1));
        assertTrue(find(two, 2.1, -2.1, 0, 2.1, 0, 0, 2.1).isEmpty());
        RunRule four = RunRule.FOUR_OF_FIVE_OFF_CENTRE;
        assertEquals(List.of(new RunSignal(four, 0, 4)), find(four, 1.1, 1.2, -0.5, 1.3, 1.1));
        assertTrue(find(four, 1.1, 1.2, -1.5, 1.3, 0.9, 1.1).isEmpty());
    }

    @Test
    void runsOnOneSide() {
        double[] nine = {1, .1, .1, .1, .1, .1, .1, .1, .1, -1};
        assertEquals(List.of(new RunSignal(RunRule.EIGHT_ON_ONE_SIDE, 0, 8)), find(RunRule.EIGHT_ON_ONE_SIDE, nine));
        assertEquals(List.of(new RunSignal(RunRule.NINE_ON_ONE_SIDE, 0, 8)), find(RunRule.NINE_ON_ONE_SIDE, nine));
        // A point on the line ends the run.
        assertTrue(find(RunRule.EIGHT_ON_ONE_SIDE, -1, -1, -1, -1, 0, -1, -1, -1, -1)
                .isEmpty());
    }

    @Test
    void trendsAndSwings() {
        RunRule six = RunRule.SIX_RISING_OR_FALLING;
        assertEquals(List.of(new RunSignal(six, 1, 6)), find(six, 5, -2, -1, 0, 0.5, 1, 1.5, 1.5));
        assertEquals(List.of(new RunSignal(six, 0, 6)), find(six, 6, 5, 4, 3, 2, 1, 0));
        assertTrue(find(six, 1, 2, 3, 4, 5, 5, 6, 7, 8, 9).isEmpty());
        RunRule fourteen = RunRule.FOURTEEN_UP_AND_DOWN;
        double[] swing = new double[14];
        Arrays.setAll(swing, i -> i % 2 == 0 ? 1 : -0.5 - i / 100.0);
        assertEquals(List.of(new RunSignal(fourteen, 0, 13)), find(fourteen, swing));
        assertTrue(find(fourteen, Arrays.copyOf(swing, 13)).isEmpty());
    }

    @Test
    void nearAndAwayFromTheCentre() {
        double[] near = new double[15];
        Arrays.setAll(near, i -> i % 3 == 0 ? 0.9 : -0.4);
        RunRule fifteen = RunRule.FIFTEEN_NEAR_CENTRE;
        assertEquals(List.of(new RunSignal(fifteen, 0, 14)), find(fifteen, near));
        near[7] = 1.5;
        assertTrue(find(fifteen, near).isEmpty());
        RunRule away = RunRule.EIGHT_AWAY_FROM_CENTRE;
        assertEquals(List.of(new RunSignal(away, 0, 7)), find(away, 1.1, -1.2, 2, 1.5, -1.1, -1.4, 1.3, -2));
        assertTrue(find(away, 1.1, 1.2, 2, 1.5, 1.1, 1.4, 1.3, 2).isEmpty());
        assertTrue(find(away, 1.1, -1.2, 2, 0.5, -1.1, -1.4, 1.3, -2).isEmpty());
    }

    @Test
    void speaksInWholeSentences() {
        assertEquals(
                "Readings 13 to 20: eight in a row lie on the same side of the centre line, so the level has probably"
                        + " shifted.",
                new RunSignal(RunRule.EIGHT_ON_ONE_SIDE, 12, 19).sentence());
        assertEquals(
                "Reading 3: one point lies outside the control limits, so something changed suddenly for this reading.",
                new RunSignal(RunRule.BEYOND_LIMITS, 2, 2).sentence());
    }

    @Test
    void setsHoldTheRulesOfTheirPublications() {
        assertEquals(4, RunRule.ZONE_TESTS.size());
        assertEquals(8, RunRule.EIGHT_TESTS.size());
        assertFalse(RunRule.EIGHT_TESTS.contains(RunRule.EIGHT_ON_ONE_SIDE));
        assertThrows(IllegalArgumentException.class, () -> new RunSignal(RunRule.BEYOND_LIMITS, 2, 1));
        assertThrows(IllegalArgumentException.class, () -> find(RunRule.BEYOND_LIMITS, Double.NaN));
    }
}
