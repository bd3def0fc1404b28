// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.ohmstead.model.BenchKind;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.MeasuredFigure;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.PlotPoint;
import org.ohmstead.plot.Tick;
import org.ohmstead.testlog.LogEntry;

class TrendTest {
    private static final Trend.Line LINE = new Trend.Line("", "power", "W", "s1", "A", "");
    private static final Instant START = Instant.parse("2020-01-01T00:00:00Z");

    private static List<TrendPoint> points(double daysApart, double... values) {
        List<TrendPoint> points = new ArrayList<>();
        for (int i = 0; i < values.length; i++) {
            points.add(new TrendPoint(
                    "R" + i,
                    START.plus(Math.round(86_400_000 * daysApart * i), ChronoUnit.MILLIS),
                    values[i],
                    OptionalDouble.of(0.1)));
        }
        return points;
    }

    @Test
    void fitsTheSlopePerDay() {
        Trend trend = Trend.of(LINE, points(1, 10, 12.5, 14, 16.5), 0.05);
        // Closed form: sum of (t - 1.5)(y - mean) over sum of (t - 1.5)², times 0 to 3: 10.5 / 5.
        assertEquals(2.1, trend.drift().orElseThrow().slope().value(), 1e-9);
        assertEquals("day", trend.timeUnit());
        assertTrue(trend.drift().orElseThrow().drifts());
        assertTrue(trend.sentence().startsWith("The readings drift by 2.1 "), trend.sentence());
        assertTrue(trend.test().orElseThrow().exact());
    }

    @Test
    void takesYearsForALongTime() {
        Trend trend = Trend.of(LINE, points(365.25, 100, 98, 99, 97), 0.05);
        // Closed form: (-1.5 x 1.5 - 0.5 x -0.5 + 0.5 x 0.5 + 1.5 x -1.5) / 5 with deviations 1.5, -0.5, 0.5, -1.5.
        assertEquals(-0.8, trend.drift().orElseThrow().slope().value(), 1e-9);
        assertEquals("year", trend.timeUnit());
        assertTrue(trend.sentence().startsWith("No drift is to be seen"), trend.sentence());
    }

    @Test
    void saysThatAFewValuesAreNoTrend() {
        assertEquals(
                "There are 2 values; a trend needs at least three of different times.",
                Trend.of(LINE, points(1, 10, 12), 0.05).sentence());
        assertEquals(
                "There are 3 values; a trend needs at least three of different times.",
                Trend.of(LINE, points(0, 10, 12, 11), 0.05).sentence());
        assertTrue(HistoryPlots.trend(Trend.of(LINE, List.of(), 0.05)).isEmpty());
    }

    @Test
    void keepsStepsChannelsPlacesAndSpecimensApart() throws HistoryException {
        List<LogEntry> entries = List.of(
                SampleProject.entry(
                        1,
                        SampleReading.at("2026-01-02T09:00:00Z")
                                .channel(14.4, 100, 0.3, 0.4)
                                .channel(14.4, 101, 0.3, 0.4)
                                .reading()),
                SampleProject.entry(
                        1,
                        SampleProject.figures(
                                "2026-01-02T09:00:00Z",
                                "",
                                BenchKind.REAL,
                                new MeasuredFigure("power", "A", "", 100, "W", OptionalDouble.empty()),
                                new MeasuredFigure("power", "A", "1 kHz", 99, "W", OptionalDouble.empty()))),
                SampleProject.entry(
                        2,
                        SampleReading.at("2026-01-01T09:00:00Z")
                                .channel(14.4, 102, 0.3, 0.4)
                                .channel(14.4, 90, 0.3, 0.4, EndPointOutcome.NOT_REACHED)
                                .reading()),
                SampleProject.entry(
                        3,
                        SampleReading.at("2026-01-03T09:00:00Z")
                                .of("Other", "7", "")
                                .channel(14.4, 80, 0.3, 0.4)
                                .reading()),
                SampleProject.voided(SampleProject.entry(
                        4,
                        SampleReading.at("2026-01-04T09:00:00Z")
                                .channel(14.4, 1, 0.3, 0.4)
                                .reading())));
        List<Trend> trends = Trend.of(entries, Trend.POWER, Period.ALWAYS, 0.05);
        assertEquals(
                List.of(
                        "power, step s1, channel A",
                        "power, step s1, channel A, 1 kHz",
                        "power, step s1, channel A, Other no. 7",
                        "power, step s1, channel B"),
                trends.stream().map(trend -> trend.line().words()).toList());
        assertEquals(
                List.of(102.0, 100.0),
                trends.get(0).points().stream().map(TrendPoint::value).toList());
        assertEquals(0.5, trends.get(0).points().get(0).standardUncertainty().orElseThrow(), 1e-12);
        assertEquals(
                List.of(1.0),
                Trend.of(entries, Trend.THD, Period.parse("2026-01-03"), 0.05).get(0).points().stream()
                        .map(TrendPoint::value)
                        .toList(),
                "a ratio of 0.01 is 1 %");
        assertEquals(
                14.4,
                Trend.of(entries, Trend.SUPPLY, Period.ALWAYS, 0.05)
                        .get(0)
                        .points()
                        .get(0)
                        .value());
        assertTrue(Trend.of(entries, "noise", Period.ALWAYS, 0.05).isEmpty());
    }

    @Test
    void plotsTheValuesWithTheLineThroughThem() {
        Plot plot = HistoryPlots.trend(Trend.of(LINE, points(365.25, 100, 98, 99, 97), 0.05))
                .orElseThrow();
        List<PlotPoint> values = plot.series().get(0).points();
        // 2020-01-01 is 18262 days after 1970-01-01 (50 years with 12 leap days).
        assertEquals(18262, values.get(0).x(), 1e-9);
        assertEquals(0.2, values.get(0).barHalfLength().orElseThrow(), 1e-12);
        List<PlotPoint> line = plot.series().get(1).points();
        // Closed form: mean 98.5, slope -0.8 a year, 1.5 years from the mean at either end.
        assertEquals(99.7, line.get(0).y(), 1e-9);
        assertEquals(97.3, line.get(1).y(), 1e-9);
        assertEquals(
                List.of("2020-01", "2020-07", "2021-01", "2021-07", "2022-01", "2022-07"),
                plot.x().ticks().stream().map(Tick::label).toList());
    }
}
