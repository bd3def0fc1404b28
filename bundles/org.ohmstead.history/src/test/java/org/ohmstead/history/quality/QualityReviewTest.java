// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.quality;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.history.SampleProject;
import org.ohmstead.metrology.quality.ControlLimits;
import org.ohmstead.model.CheckStandard;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.model.Severity;
import org.ohmstead.plot.Mark;
import org.ohmstead.plot.Plot;

class QualityReviewTest {
    /** NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2: flow rates of ten batches. */
    private static final double[] FLOW = {49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1};

    private static final CheckStandard STANDARD = SampleProject.typedIn("r1", 10);
    private static final LocalDate DAY = LocalDate.of(2026, 1, 1);

    @Test
    void setsTheLimitsOfTheHandbook() {
        QualityReview review = new Checks().daily(STANDARD, FLOW).review(STANDARD);
        ControlLimits limits = review.review().orElseThrow().chart().readings();
        // The handbook prints 45.8159 and 55.8041 from a mean range rounded to 1.8778 and d2 = 1.128.
        assertEquals(50.81, limits.centre(), 1e-9);
        assertEquals(45.8159, limits.lower(), 0.002);
        assertEquals(55.8041, limits.upper(), 0.002);
        assertTrue(review.mayRun());
        assertEquals(
                "Values between 45.8 and 55.8 ohm are to be expected, and successive ones within 6.1 ohm of each other. Only 10"
                        + " values set these limits; 20 are advised.",
                review.notes().get(0));
    }

    @Test
    void saysHowManyValuesTheBaselineLacks() {
        QualityReview review = new Checks().daily(STANDARD, 1, 2, 3).review(STANDARD);
        assertTrue(review.review().isEmpty());
        assertTrue(review.findings().isEmpty());
        assertEquals(
                "3 of the 10 values that are to set the limits are there; the chart begins with the last of them.",
                review.notes().get(0));
        assertTrue(QualityPlots.individuals(review).isEmpty());
        assertTrue(QualityPlots.movingRanges(review).isEmpty());
    }

    @Test
    void aValueBeyondTheLimitsForbidsTheRunUntilTheNextOneIsGood() {
        Checks checks = new Checks().daily(STANDARD, FLOW).daily(STANDARD, 57);
        QualityReview out = checks.review(STANDARD);
        assertFalse(out.mayRun());
        List<Problem> problems = QualityProblems.of(SampleProject.with(STANDARD), List.of(out));
        assertEquals(Severity.WARNING, problems.get(0).severity());
        assertEquals("$.checkStandards[0]", problems.get(0).where());
        assertTrue(problems.get(0).what().startsWith("Check standard \"Resistor r1\": Reading 11:"));
        checks.daily(STANDARD, 51);
        assertTrue(checks.review(STANDARD).mayRun());
    }

    @Test
    void marksTheSignalledPointsInThePlots() {
        QualityReview review =
                new Checks().daily(STANDARD, FLOW).daily(STANDARD, 57).review(STANDARD);
        Plot values = QualityPlots.individuals(review).orElseThrow();
        List<Mark.Point> points = points(values);
        assertEquals(
                List.of(11.0, 57.0),
                List.of(
                        points.get(points.size() - 1).x(),
                        points.get(points.size() - 1).y()));
        assertEquals(11, values.series().get(0).points().size());
        List<String> lines = values.marks().stream().map(Mark::text).toList();
        assertTrue(lines.containsAll(List.of("upper limit", "mean", "lower limit", "baseline ends")));
        Plot ranges = QualityPlots.movingRanges(review).orElseThrow();
        // 57 - 52.1 = 4.9 is below D4 times the mean range, 3.267 x 1.8778 = 6.13 (e-Handbook 6.3.2.2): no jump.
        assertTrue(points(ranges).isEmpty());
        assertEquals(10, ranges.series().get(0).points().size());
        assertEquals(
                6.135,
                ranges.marks().stream()
                        .filter(mark -> mark.text().equals("upper limit"))
                        .mapToDouble(mark -> ((Mark.HorizontalLine) mark).y())
                        .findFirst()
                        .orElseThrow(),
                0.002);
    }

    private static List<Mark.Point> points(Plot plot) {
        return plot.marks().stream()
                .filter(Mark.Point.class::isInstance)
                .map(Mark.Point.class::cast)
                .toList();
    }

    @ParameterizedTest
    @CsvSource({"2026-01-10, ''", "2026-01-11, due today", "2026-01-12, has been due since 2026-01-11"})
    void saysWhenAValueIsDue(LocalDate today, String words) {
        CheckStandard daily = STANDARD.withEveryDays(1);
        QualityReview review = new Checks().daily(daily, FLOW).review(daily, today);
        assertEquals(LocalDate.of(2026, 1, 11), review.dueOn().orElseThrow());
        boolean overdue = today.isAfter(LocalDate.of(2026, 1, 11));
        assertEquals(!overdue, review.mayRun());
        if (words.isEmpty()) {
            assertTrue(review.findings().isEmpty());
        } else {
            assertTrue(review.findings().get(0).sentence().contains(words));
        }
    }

    @Test
    void aStandardWithAReminderThatWasNeverMeasuredIsShown() {
        CheckStandard weekly = STANDARD.withEveryDays(7);
        QualityReview never = new Checks().review(weekly, DAY);
        assertEquals(
                "It was never measured on this bench.", never.findings().get(0).sentence());
        assertTrue(never.mayRun());
    }

    @Test
    void theDayEndsAtTheMidnightOfTheZone() {
        CheckStandard daily = STANDARD.withEveryDays(1);
        Checks checks = new Checks().add(daily, DAY, 23, "N. N.", "Bench 1", 1);
        QualityReview east =
                QualityReview.of(SampleProject.with(daily), daily, checks.entries(), DAY, ZoneOffset.ofHours(2));
        assertEquals(LocalDate.of(2026, 1, 3), east.dueOn().orElseThrow());
        assertEquals(LocalDate.of(2026, 1, 2), checks.review(daily, DAY).dueOn().orElseThrow());
    }

    @Test
    void comparesWithTheReferenceByItsEnNumber() {
        CheckStandard known = STANDARD.withReferenceValue(OptionalDouble.of(50))
                .withReferenceStandardUncertainty(OptionalDouble.of(0.3));
        QualityReview review = new Checks().daily(known, FLOW).review(known);
        double sigma = review.review().orElseThrow().chart().sigma();
        // ISO/IEC 17043: error over the root of the sum of squares of the expanded uncertainties, k = 2.
        double expected = (52.1 - 50) / Math.sqrt(4 * sigma * sigma + 0.36);
        ReferenceComparison reference = review.reference().orElseThrow();
        assertEquals(expected, reference.enNumber().orElseThrow(), 1e-12);
        assertFalse(reference.contradicts());
        assertEquals(2.1, reference.error(), 1e-12);
    }

    @Test
    void beforeTheBaselineIsCompleteTheValuesBeforeTellTheUncertainty() {
        CheckStandard known = STANDARD.withReferenceValue(OptionalDouble.of(10))
                .withReferenceStandardUncertainty(OptionalDouble.of(0));
        QualityReview review = new Checks().daily(known, 9.9, 10.1, 11).review(known);
        // Closed form: 9.9 and 10.1 have the standard deviation 0.1 sqrt(2); the 11 does not excuse itself.
        assertEquals(
                1 / (0.2 * Math.sqrt(2)),
                review.reference().orElseThrow().enNumber().orElseThrow(),
                1e-9);
        assertFalse(review.mayRun());
        assertTrue(new Checks()
                .daily(known, 9.9, 11)
                .review(known)
                .reference()
                .orElseThrow()
                .enNumber()
                .isEmpty());
    }

    @ParameterizedTest
    @CsvSource({"10.3, 0.2, 0.1, 1.3416407865, true", "9.8, 0.3, 0.4, -0.4, false", "10, 0.3, 0.4, 0, false"})
    void theEnNumberIsTheErrorOverBothExpandedUncertainties(
            double value, double expanded, double expandedReference, double number, boolean contradicts) {
        ReferenceComparison comparison = new ReferenceComparison(
                value, OptionalDouble.of(expanded), 10, OptionalDouble.of(expandedReference), "V");
        // Closed form: 0.3/sqrt(0.05) and -0.2/0.5.
        assertEquals(number, comparison.enNumber().orElseThrow(), 1e-9);
        assertEquals(contradicts, comparison.contradicts());
    }

    @Test
    void withoutUncertaintiesThereIsNoEnNumber() {
        ReferenceComparison comparison =
                new ReferenceComparison(10.3, OptionalDouble.empty(), 10, OptionalDouble.of(0.1), "V");
        assertTrue(comparison.enNumber().isEmpty());
        assertFalse(comparison.contradicts());
        assertTrue(comparison.sentence().contains("cannot be said"));
    }

    @Test
    void aContradictionOfTheReferenceForbidsTheRun() {
        CheckStandard known = SampleProject.typedIn("r1", 4)
                .withReferenceValue(OptionalDouble.of(10))
                .withReferenceStandardUncertainty(OptionalDouble.of(0.01));
        QualityReview review =
                new Checks().daily(known, 10.50, 10.51, 10.49, 10.50).review(known);
        assertFalse(review.mayRun());
        // E_n = 0.5 / (2 sqrt(sigma² + 0.01²)); sigma = mean moving range 0.04/3 over 1.128.
        assertEquals(
                "The newest value, 10.50 ohm, lies 0.50 ohm above the reference, 10.00 ohm, which is more than the uncertainties of"
                        + " both allow (E_n = 16).",
                review.findings().get(0).sentence());
    }

    @Test
    void findsRepeatabilityOverTheDays() {
        CheckStandard standard = SampleProject.typedIn("r1", 4);
        Checks checks = new Checks();
        // Closed form: each day two values d apart have the variance d²/2, all days together 0.02² / 2.
        for (int day = 0; day < 4; day++) {
            double middle = 10 + 0.001 * day;
            checks.add(standard, DAY.plusDays(day), 8, "N. N.", "Bench 1", middle - 0.01);
            checks.add(standard, DAY.plusDays(day), 9, "N. N.", "Bench 1", middle + 0.01);
        }
        QualityReview review = checks.review(standard, DAY.plusDays(3));
        GroupStudy days = review.days().orElseThrow();
        assertEquals(List.of("2026-01-01", "2026-01-02", "2026-01-03", "2026-01-04"), days.names());
        assertEquals(0.02 / Math.sqrt(2), days.precision().repeatability(), 1e-12);
        // ISO 5725-6: r = 1.96 sqrt(2) s(r).
        assertEquals(1.959964 * 0.02, days.precision().repeatabilityLimit(), 1e-7);
        assertTrue(days.cochran().isPresent());
        assertTrue(review.operators().isEmpty());

        checks.add(standard, DAY.plusDays(4), 8, "N. N.", "Bench 1", 10);
        checks.add(standard, DAY.plusDays(4), 9, "N. N.", "Bench 1", 10.039);
        assertTrue(sentences(checks.review(standard, DAY.plusDays(4))).stream()
                .noneMatch(sentence -> sentence.contains("two newest")));
        checks.add(standard, DAY.plusDays(4), 10, "N. N.", "Bench 1", 9.999);
        assertTrue(sentences(checks.review(standard, DAY.plusDays(4))).stream()
                .anyMatch(sentence ->
                        sentence.contains("two newest values of the same day and operator lie 0.04 ohm apart")));
    }

    private static List<String> sentences(QualityReview review) {
        return review.findings().stream().map(finding -> finding.sentence()).toList();
    }

    @Test
    void namesTheOperatorWhoseValuesScatter() {
        CheckStandard standard = SampleProject.typedIn("r1", 4);
        Checks checks = new Checks();
        double[] steady = {10.00, 10.01, 9.99, 10.00, 10.01, 9.99};
        double[] wild = {10.4, 9.5, 10.6, 9.6, 10.5, 9.4};
        for (int i = 0; i < steady.length; i++) {
            checks.add(standard, DAY.plusDays(i), 8, "Ada", "Bench 1", steady[i]);
            checks.add(standard, DAY.plusDays(i), 9, "Ben", "Bench 1", steady[i] + 0.003);
            checks.add(standard, DAY.plusDays(i), 10, "Cleo", "Bench 1", wild[i]);
        }
        QualityReview review = checks.review(standard, DAY.plusDays(5));
        GroupStudy operators = review.operators().orElseThrow();
        assertEquals("Cleo", operators.suspect().orElseThrow());
        assertTrue(
                sentences(review).stream().anyMatch(sentence -> sentence.contains("operator \"Cleo\" scatter more")));
    }

    @Test
    void comparesBenchesButChartsOnlyItsOwn() {
        CheckStandard standard = SampleProject.typedIn("r1", 4);
        Checks checks = new Checks();
        double[] steps = {0, 0.01, -0.01, 0.005, -0.005};
        for (int i = 0; i < steps.length; i++) {
            checks.add(standard, DAY.plusDays(i), 8, "Ada", "Bench 1", 10 + steps[i]);
            checks.add(standard, DAY.plusDays(i), 9, "Ada", "Bench 2", 10.3 - steps[i]);
        }
        QualityReview review = checks.review(standard, DAY.plusDays(4));
        assertEquals(5, review.values().own().size());
        assertEquals(10, review.review().orElseThrow().chart().readings().centre(), 0.01);
        GroupStudy benches = review.benches().orElseThrow();
        assertEquals(List.of("Bench 1", "Bench 2"), benches.names());
        assertEquals(10.3, benches.means().get(1), 1e-9);
        assertTrue(sentences(review).contains("The benches differ by more than chance explains."));
        assertTrue(review.mayRun());
    }

    @Test
    void studiesOperatorsAndBenchesTogether() {
        CheckStandard standard = SampleProject.typedIn("r1", 4);
        Checks checks = new Checks();
        for (String operator : List.of("Ada", "Ben")) {
            for (String bench : List.of("Bench 1", "Bench 2")) {
                // The oldest of three is one too many and does not count.
                if (operator.equals("Ada")) {
                    checks.add(standard, DAY, 7, operator, bench, 99);
                }
                checks.add(standard, DAY.plusDays(1), 8, operator, bench, 10);
                checks.add(standard, DAY.plusDays(2), 9, operator, bench, 12);
            }
        }
        checks.add(standard, DAY, 7, "Cleo", "Bench 1", 5);
        CrossedStudy crossed =
                checks.review(standard, DAY.plusDays(2)).crossed().orElseThrow();
        assertEquals(List.of("Ada", "Ben"), crossed.operators());
        assertEquals(List.of("Bench 1", "Bench 2"), crossed.benches());
        assertEquals(2, crossed.repeats());
        // Closed form: four cells of squares 2 with one degree of freedom each, pooled with an interaction of 0 squares
        // and one.
        assertEquals(Math.sqrt(8.0 / 5), crossed.study().repeatability(), 1e-12);
    }

    @Test
    void tellsWhetherTheBenchTellsItemsApart() {
        CheckStandard low = SampleProject.typedIn("r1", 4);
        CheckStandard high = SampleProject.typedIn("r2", 4);
        Checks checks = new Checks();
        for (String operator : List.of("Ada", "Ben")) {
            checks.add(low, DAY, 8, operator, "Bench 1", 9.9).add(low, DAY, 9, operator, "Bench 1", 10.1);
            checks.add(high, DAY, 8, operator, "Bench 1", 19.9).add(high, DAY, 9, operator, "Bench 1", 20.1);
        }
        Project project = SampleProject.with(low, high);
        List<GaugeReview> gauges = GaugeReview.of(QualityReview.all(project, checks.entries(), DAY, ZoneOffset.UTC));
        assertEquals(1, gauges.size());
        assertEquals("operator", gauges.get(0).what());
        assertEquals(List.of("Resistor r1", "Resistor r2"), gauges.get(0).items());
        // Closed form: four cells of squares 0.02, pooled with an interaction of nothing.
        assertEquals(Math.sqrt(0.08 / 5), gauges.get(0).study().gauge(), 1e-12);
        // Items: mean square 2 x 2 x 2 x 5² = 200 over 2 x 2, less the scatter.
        assertEquals(Math.sqrt((200 - 0.08 / 5) / 4), gauges.get(0).study().items(), 1e-9);
    }
}
