// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.ohmstead.history.internal.FigureValues;
import org.ohmstead.history.internal.Words;
import org.ohmstead.metrology.FitException;
import org.ohmstead.metrology.quality.DriftLine;
import org.ohmstead.metrology.quality.TrendTest;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.units.text.Messages;

/**
 * A figure of a specimen over time: what one step, channel and place of it gave again and again.
 *
 * @param line whose values they are
 * @param points the oldest first
 * @param timeUnit what slopes are per: "day" or "year"
 * @param drift the straight line through them; empty with fewer than three, or when all were taken at one moment
 * @param test for a steady trend among the newest 3000; empty with fewer than four
 * @param significance risk of a false alarm
 */
public record Trend(
        Line line,
        List<TrendPoint> points,
        String timeUnit,
        Optional<DriftLine> drift,
        Optional<TrendTest> test,
        double significance) {
    private static final Messages TEXTS = Messages.of(Trend.class);

    /** Id of the power of readings, in watts. */
    public static final String POWER = "power";

    /** Id of the harmonics over the fundamental of readings, in percent. */
    public static final String THD = "thd";

    /** Id of the supply volts of readings, in volts. */
    public static final String SUPPLY = "supply";

    private static final double SECONDS_PER_DAY = 86_400;
    private static final double DAYS_PER_YEAR = 365.25;
    private static final double LONGEST_IN_DAYS = 120;
    private static final int FEWEST_FOR_DRIFT = 3;
    private static final int FEWEST_FOR_TEST = 4;
    private static final int MOST_FOR_TEST = 3000;

    /**
     * Whose values they are.
     *
     * @param specimen which amplifier, with its serial number; empty when the log does not say
     * @param figureId "power", "thd" or "supply" of readings, else the id of a measured figure
     * @param unit of the values; may be empty
     * @param stepId which step gave them
     * @param channel which channel; may be empty
     * @param at at which place; may be empty
     */
    public record Line(String specimen, String figureId, String unit, String stepId, String channel, String at) {
        /** Returns it in words: "power, step stereo-4ohm, channel A". */
        public String words() {
            String step = TEXTS.text("trend.line", figureId, stepId);
            String place = channel.isEmpty() ? step : TEXTS.text("trend.line.channel", step, channel);
            return place + (at.isEmpty() ? "" : ", " + at) + (specimen.isEmpty() ? "" : ", " + specimen);
        }
    }

    /** Copies the list. */
    public Trend {
        points = List.copyOf(points);
    }

    /**
     * Returns a trend for each specimen, step, channel and place that have the figure, by step and channel.
     *
     * @param entries what the log holds; voided ones do not count
     * @param figureId "power", "thd" or "supply" of readings, else the id of a measured figure
     * @param period in which they were taken
     * @param significance risk of a false alarm of the tests, strictly between 0 and 1
     */
    public static List<Trend> of(List<LogEntry> entries, String figureId, Period period, double significance) {
        Map<Line, List<TrendPoint>> lines = new LinkedHashMap<>();
        for (LogEntry entry : entries) {
            if (!entry.voided()) {
                FigureValues.of(entry, figureId).forEach((line, point) -> {
                    if (period.contains(point.takenAt())) {
                        lines.computeIfAbsent(line, any -> new ArrayList<>()).add(point);
                    }
                });
            }
        }
        return lines.entrySet().stream()
                .map(each -> of(each.getKey(), each.getValue(), significance))
                .sorted(Comparator.comparing(trend -> trend.line().words()))
                .toList();
    }

    /** Returns the trend of some points in any order. */
    public static Trend of(Line line, List<TrendPoint> points, double significance) {
        List<TrendPoint> sorted = points.stream()
                .sorted(Comparator.comparing(TrendPoint::takenAt))
                .toList();
        double spanDays = sorted.isEmpty()
                ? 0
                : days(sorted.get(0).takenAt(), sorted.get(sorted.size() - 1).takenAt());
        boolean inDays = spanDays <= LONGEST_IN_DAYS;
        double[] times = sorted.stream()
                .mapToDouble(point -> days(sorted.get(0).takenAt(), point.takenAt()) / (inDays ? 1 : DAYS_PER_YEAR))
                .toArray();
        double[] values = sorted.stream().mapToDouble(TrendPoint::value).toArray();
        return new Trend(
                line,
                sorted,
                inDays ? "day" : "year",
                drift(times, values, 1 - significance),
                test(times, values),
                significance);
    }

    private static double days(Instant from, Instant to) {
        return Duration.between(from, to).toMillis() / 1000.0 / SECONDS_PER_DAY;
    }

    private static Optional<DriftLine> drift(double[] times, double[] values, double confidence) {
        if (values.length < FEWEST_FOR_DRIFT) {
            return Optional.empty();
        }
        try {
            return Optional.of(DriftLine.of(times, values, confidence));
        } catch (FitException sameTime) {
            // Values of one moment have no slope.
            return Optional.empty();
        }
    }

    private static Optional<TrendTest> test(double[] times, double[] values) {
        int oldest = Math.max(0, values.length - MOST_FOR_TEST);
        return values.length < FEWEST_FOR_TEST
                ? Optional.empty()
                : Optional.of(TrendTest.of(
                        Arrays.copyOfRange(times, oldest, times.length),
                        Arrays.copyOfRange(values, oldest, values.length)));
    }

    /** Returns what is to be seen, in whole sentences. */
    public String sentence() {
        if (drift.isEmpty()) {
            return TEXTS.text(points.size() == 1 ? "trend.few.one" : "trend.few.many", Integer.toString(points.size()));
        }
        String line = drift.get().sentence(this.line.unit(), timeUnit);
        boolean steady = test.map(each -> each.trends(significance)).orElse(false);
        return steady && !drift.get().drifts()
                ? TEXTS.text("trend.yet", line, Words.continued(test.get().sentence(this.line.unit(), timeUnit)))
                : line;
    }
}
