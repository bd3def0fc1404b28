// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology.quality;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.ohmstead.metrology.FitException;
import org.ohmstead.metrology.GrubbsTest;
import org.ohmstead.metrology.internal.Checks;
import org.ohmstead.metrology.internal.Sentences;
import org.ohmstead.units.text.Messages;

/**
 * What the readings of a check standard, measured again and again, say about the bench before the next run: control
 * chart with run rules, jumps, outliers in the baseline and drift.
 *
 * @param chart the chart whose lines the baseline set
 * @param signals the patterns among all readings
 * @param drift the line through all readings; nothing if they were all taken at the same time
 * @param trend the test for a steady trend among the readings, the newest 3000 of them
 * @param findings what is to be done, the most serious first; empty if the bench is in order
 */
public record CheckStandardReview(
        IndividualsChart chart,
        List<RunSignal> signals,
        Optional<DriftLine> drift,
        TrendTest trend,
        List<Finding> findings) {
    private static final Messages TEXTS = Messages.of(CheckStandardReview.class);

    private static final int FEWEST_READINGS = 4;
    private static final int MOST_FOR_TREND = 3000;

    /**
     * One thing that is wrong.
     *
     * @param serious whether the bench must not be used before this is cleared up
     * @param sentence what was found, as a whole sentence
     * @param remedy what to do about it, as a whole sentence
     */
    public record Finding(boolean serious, String sentence, String remedy) {}

    /**
     * How the readings are judged.
     *
     * @param baselineCount how many of the first readings set the chart's lines, at least 4; 20 are advised
     * @param rules the patterns to look for
     * @param significance the risk of a false alarm of the tests for drift and outliers, strictly between 0 and 1
     * @param unit the unit of the readings, may be empty
     */
    public record Settings(int baselineCount, Set<RunRule> rules, double significance, String unit) {

        /** Checks the ranges given above. */
        public Settings {
            rules = Set.copyOf(rules);
            Checks.probability("significance", significance);
            if (baselineCount < FEWEST_READINGS) {
                throw new IllegalArgumentException(
                        "baselineCount is " + baselineCount + " but must be at least " + FEWEST_READINGS + ".");
            }
        }

        /** Returns the usual settings: 20 readings, the four zone tests, 1 % risk of a false alarm. */
        public static Settings usual(String unit) {
            return new Settings(20, RunRule.ZONE_TESTS, 0.01, unit);
        }
    }

    /** Copies the lists. */
    public CheckStandardReview {
        signals = List.copyOf(signals);
        findings = List.copyOf(findings);
    }

    /**
     * Returns the review.
     *
     * @param days when the readings were taken, in days from any origin, ascending
     * @param values the readings, at least as many as the baseline
     * @param settings how they are judged
     */
    public static CheckStandardReview of(double[] days, double[] values, Settings settings) {
        Checks.sameLength("days", days.length, "values", values.length);
        if (values.length < settings.baselineCount()) {
            throw new IllegalArgumentException("values has " + values.length + " readings but the baseline alone needs "
                    + settings.baselineCount() + ".");
        }
        for (int i = 1; i < days.length; i++) {
            if (!(days[i] >= days[i - 1])) {
                throw new IllegalArgumentException(
                        "days[" + i + "] is " + days[i] + " but must not be before the day before it.");
            }
        }
        double[] baseline = Arrays.copyOf(values, settings.baselineCount());
        IndividualsChart chart = IndividualsChart.of(baseline);
        List<RunSignal> signals = chart.signals(values, settings.rules());
        Optional<DriftLine> drift = drift(days, values, 1 - settings.significance());
        List<Finding> findings = new ArrayList<>();
        addSignals(findings, signals, values.length - 1);
        addJump(findings, chart, values, settings.unit());
        int oldest = Math.max(0, values.length - MOST_FOR_TREND);
        TrendTest trend = TrendTest.of(
                Arrays.copyOfRange(days, oldest, days.length), Arrays.copyOfRange(values, oldest, values.length));
        if (drift.isPresent() && drift.get().drifts()) {
            findings.add(new Finding(
                    false, drift.get().sentence(settings.unit(), "day"), TEXTS.text("review.drift.remedy")));
        } else if (trend.trends(settings.significance())) {
            findings.add(new Finding(false, trend.sentence(settings.unit(), "day"), TEXTS.text("review.drift.remedy")));
        }
        addBaselineOutlier(findings, baseline, settings);
        findings.sort((one, other) -> Boolean.compare(other.serious(), one.serious()));
        return new CheckStandardReview(chart, signals, drift, trend, findings);
    }

    /** Returns whether nothing was found that forbids the next run. */
    public boolean mayRun() {
        return findings.stream().noneMatch(Finding::serious);
    }

    private static Optional<DriftLine> drift(double[] days, double[] values, double confidence) {
        try {
            return Optional.of(DriftLine.of(days, values, confidence));
        } catch (FitException sameTime) {
            // Readings of one moment have no slope; that is not a fault of the bench.
            return Optional.empty();
        }
    }

    private static void addSignals(List<Finding> findings, List<RunSignal> signals, int newest) {
        for (RunSignal signal : signals) {
            boolean now = signal.lastIndex() == newest;
            boolean serious = now && signal.rule() == RunRule.BEYOND_LIMITS;
            if (now) {
                findings.add(new Finding(
                        serious, signal.sentence(), TEXTS.text(serious ? "review.stop.remedy" : "review.look.remedy")));
            }
        }
    }

    private static void addJump(List<Finding> findings, IndividualsChart chart, double[] values, String unit) {
        int newest = values.length - 1;
        if (chart.jumps(values).contains(newest)) {
            findings.add(new Finding(
                    false,
                    TEXTS.text(
                            "review.jump",
                            Sentences.quantity(Math.abs(values[newest] - values[newest - 1]), unit),
                            Sentences.quantity(chart.ranges().upper(), unit)),
                    TEXTS.text("review.jump.remedy")));
        }
    }

    private static void addBaselineOutlier(List<Finding> findings, double[] baseline, Settings settings) {
        GrubbsTest.Outcome outcome = GrubbsTest.test(baseline, settings.significance());
        if (outcome.outlier()) {
            findings.add(new Finding(
                    false,
                    TEXTS.text(
                            "review.baseline",
                            Integer.toString(outcome.index() + 1),
                            Sentences.quantity(outcome.reading(), settings.unit())),
                    TEXTS.text("review.baseline.remedy")));
        }
    }
}
