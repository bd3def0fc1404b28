// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.curves.RatingOutcome;
import org.ohmstead.curves.RatingResult;
import org.ohmstead.metrology.Verdict;
import org.ohmstead.model.Rating;
import org.ohmstead.model.json.ProjectFile;
import org.ohmstead.workbench.look.Coverage;
import org.ohmstead.workbench.look.Numbers;

/** A line of the verdicts above the sheet follows what the user chose; the verdict itself does not. */
class RatingLineTest {
    private static Rating rating;

    @BeforeAll
    static void readRating() throws Exception {
        rating = ProjectFile.read(Path.of("..", "..", "demo-data", "larkspur.ohmstead"))
                .project()
                .amplifier()
                .ratings()
                .get(0);
    }

    @AfterEach
    void asUsual() {
        Numbers.useDecimalComma(false);
        Coverage.use(Coverage.USUAL_FACTOR);
    }

    private static RatingLine line() {
        RatingOutcome outcome = new RatingOutcome(
                "B", 95.26, 0.5, 1.04, 2.08, 1.06, 0.25, Verdict.MEETS, 0.975, false, OptionalDouble.empty());
        return RatingLine.of(new RatingResult(rating, Optional.of(outcome), "It is measured at 14.4 V."));
    }

    // GUM 6.2.1, U = k u, and 7.2.6: the uncertainty to two digits, the value to the same place.
    @ParameterizedTest
    @CsvSource({"1, 95.26, 0.50", "2, 95.3, 1.0", "3, 95.3, 1.5"})
    void theUncertaintyIsTheFactorTimesTheStandardOne(int factor, String watts, String expanded) {
        Coverage.use(factor);
        assertEquals(watts + "\u00a0\u00b1\u00a0" + expanded, line().measuredWatts());
        assertTrue(line().hover().contains("W (k = " + factor + "), channel B"), line().hover());
        assertEquals(VerdictMark.MEETS, line().mark());
    }

    @Test
    void allNumbersHaveTheDecimalSign() {
        Numbers.useDecimalComma(true);
        RatingLine line = line();
        assertEquals("95,3\u00a0\u00b1\u00a01,0", line.measuredWatts());
        assertEquals("97,5", line.probability());
        assertEquals("2,5", line.risk());
        assertTrue(line.hover().contains("Consumer's risk 2,5 %"), line.hover());
        assertTrue(line.hover().contains("+0,25\u00a0dB"), line.hover());
        assertTrue(line.hover().endsWith("It is measured at 14,4 V."), line.hover());
        assertTrue(line.hover().startsWith(rating.wording() + ": "), "the maker's own words stay as they are");
        String ours = line.hover().substring(rating.wording().length());
        assertFalse(ours.matches("(?s).*\\d\\.\\d.*"), ours);
    }
}
