// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.Conditions;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Project;
import org.ohmstead.model.Provenance;
import org.ohmstead.model.Reading;
import org.ohmstead.model.SetAside;
import org.ohmstead.model.Step;
import org.ohmstead.testlog.EntryKind;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.VoidNote;
import org.ohmstead.thermal.plan.ExpectedPower;
import org.ohmstead.thermal.plan.KnownPower;
import org.ohmstead.workbench.session.LogSnapshot;
import org.ohmstead.workbench.session.LogSnapshot.LogState;

class ForecastReadingsTest extends ForecastStage {
    private final List<LogEntry> entries = new ArrayList<>();
    private Project project;
    private Step step;

    @BeforeEach
    void openProject() throws Exception {
        stage.withProject().open();
        project = stage.project();
        step = project.step("stereo-4ohm-14V4").orElseThrow();
    }

    private static ChannelReading channel(String name, double watts, double volts, double amps) {
        return new ChannelReading(
                name,
                EndPointOutcome.REACHED,
                4,
                watts,
                1,
                Math.sqrt(4 * watts),
                1000,
                0.01,
                volts,
                amps > 0 ? OptionalDouble.of(amps) : OptionalDouble.empty(),
                List.of(),
                List.of(),
                List.of());
    }

    private void add(Reading reading, boolean voided) {
        String id = "R" + (entries.size() + 1);
        entries.add(new LogEntry(
                entries.size() + 1,
                EntryKind.READING,
                id,
                reading.takenAt(),
                "{}",
                "0",
                "0",
                Optional.of(reading),
                Optional.empty(),
                Optional.empty(),
                voided
                        ? Optional.of(
                                new VoidNote("V0001", id, "wrong lead", "N. N.", Instant.parse("2026-03-04T10:00:00Z")))
                        : Optional.empty()));
    }

    private Reading reading(String at, Mode mode, ChannelReading... channels) {
        return new Reading(
                step.id(),
                mode,
                "4ohm",
                4,
                step.stimulus(),
                step.endPoint(),
                Instant.parse(at),
                new Conditions(OptionalDouble.empty(), OptionalDouble.of(41)),
                List.of(channels),
                new Provenance("0", "p", "1", "1", "", List.of(), List.of()),
                List.of());
    }

    private Optional<KnownPower> known(Project of) {
        LogSnapshot log = new LogSnapshot(LogState.WHOLE, entries, "0", "whole");
        return ForecastReadings.of(log, of).apply(step);
    }

    @Test
    void theMeanOfTheChannelsCountsAndWhatTheSupplyGave() {
        add(
                reading("2026-03-01T10:00:00Z", Mode.STEREO, channel("A", 96, 14.4, 25), channel("B", 94, 14.4, 25)),
                false);
        // 14.4 V times 25 A are 360 W.
        assertEquals(Optional.of(new KnownPower(95, OptionalDouble.of(360))), known(project));
    }

    @Test
    void withoutACurrentOnlyTheOutputIsKnown() {
        add(reading("2026-03-01T10:00:00Z", Mode.STEREO, channel("A", 96, 14.4, 0), channel("B", 94, 14.4, 25)), false);
        assertEquals(Optional.of(new KnownPower(95, OptionalDouble.empty())), known(project));
    }

    @Test
    void theLatestThatCountsIsTaken() {
        add(reading("2026-03-02T10:00:00Z", Mode.STEREO, channel("A", 90, 14.4, 24)), false);
        add(reading("2026-03-01T10:00:00Z", Mode.STEREO, channel("A", 80, 14.4, 24)), false);
        add(reading("2026-03-03T10:00:00Z", Mode.STEREO, channel("A", 70, 14.4, 24)), true);
        assertEquals(90, known(project).orElseThrow().outputWatts());
        Project without = project.withSetAside(List.of(new SetAside("R1", "cold")));
        assertEquals(80, known(without).orElseThrow().outputWatts());
    }

    @Test
    void aReadingOfAnotherModeOrOtherVoltsDoesNotCount() {
        add(reading("2026-03-01T10:00:00Z", Mode.BRIDGED, channel("A+B", 350, 14.4, 40)), false);
        assertEquals(Optional.empty(), known(project));
        entries.clear();
        add(reading("2026-03-01T10:00:00Z", Mode.STEREO, channel("A", 90, 13.5, 24)), false);
        assertEquals(Optional.empty(), known(project));
    }

    @Test
    void theForecastAndItsChartUseThem() {
        add(
                reading("2026-03-01T10:00:00Z", Mode.STEREO, channel("A", 96, 14.4, 25), channel("B", 94, 14.4, 25)),
                false);
        LogSnapshot log = new LogSnapshot(LogState.WHOLE, entries, "0", "whole");
        Forecast forecast = Forecast.of(project, LIKE_PARTS, ForecastReadings.of(log, project), () -> false);
        assertEquals(
                ExpectedPower.Basis.READING,
                forecast.plan().step(step.id()).orElseThrow().power().basis());
        // Two channels of 95 W.
        assertEquals(190, forecast.plan().step(step.id()).orElseThrow().outputWatts(), 1e-9);
        var measured = ForecastPlot.of(forecast, OptionalDouble.empty()).series().stream()
                .filter(series -> series.name().equals("Case as measured"))
                .findFirst()
                .orElseThrow();
        assertEquals(1, measured.points().size());
        assertEquals(41, measured.points().get(0).y());
        assertEquals(
                forecast.job(step.id()).orElseThrow().endSeconds() / 60,
                measured.points().get(0).x(),
                1e-9);
        assertTrue(StepTableRow.of(forecast).stream()
                .anyMatch(row -> ForecastWords.basis(row.step().power().basis()).equals("reading")));
    }
}
