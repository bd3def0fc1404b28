// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.quality;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.ohmstead.history.SampleProject;
import org.ohmstead.history.SampleReading;
import org.ohmstead.model.BenchKind;
import org.ohmstead.model.CheckStandard;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.MeasuredFigure;
import org.ohmstead.model.MeasuredFigures;
import org.ohmstead.model.Project;
import org.ohmstead.model.SetAside;
import org.ohmstead.testlog.LogEntry;

class CheckValuesTest {
    private static final CheckStandard TYPED = SampleProject.typedIn("r1", 4);
    private static final CheckStandard POWER = new CheckStandard(
            "p",
            "Reference amplifier",
            "s1",
            "power",
            "",
            "W",
            4,
            0.01,
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            0);

    private static MeasuredFigures typed(CheckStandard standard, double value, String at) {
        return new TypedCheck(standard, value, OptionalDouble.of(0.1), "N. N.", Instant.parse(at))
                .figures(SampleProject.with(standard), SampleProject.REVISION, "0.1.0");
    }

    private static List<Double> values(List<CheckValue> values) {
        return values.stream().map(CheckValue::value).toList();
    }

    @Test
    void findsTypedInValuesOfTheirStandardInTheOrderOfTime() {
        CheckStandard other = SampleProject.typedIn("r2", 4);
        Project project = SampleProject.with(TYPED, other);
        List<LogEntry> entries = List.of(
                SampleProject.entry(1, typed(TYPED, 10.2, "2026-02-02T08:00:00Z")),
                SampleProject.entry(2, typed(TYPED, 10.1, "2026-02-01T08:00:00Z")),
                SampleProject.entry(3, typed(other, 99, "2026-02-01T08:00:00Z")),
                SampleProject.voided(SampleProject.entry(4, typed(TYPED, 50, "2026-02-03T08:00:00Z"))));
        CheckValues found = CheckValues.of(project, TYPED, entries);
        assertEquals(List.of(10.1, 10.2), values(found.own()));
        assertEquals("F0001", found.newest().orElseThrow().entryId());
        assertEquals(OptionalDouble.of(0.1), found.own().get(0).standardUncertainty());
        assertEquals("Bench 1", found.own().get(0).bench());
        assertTrue(found.elsewhere().isEmpty());
        assertTrue(found.notes().isEmpty());
    }

    @Test
    void aTypedInValueCountsAsMeasuredByNoStep() {
        MeasuredFigures figures = typed(POWER, 100, "2026-02-02T08:00:00Z");
        assertEquals(TypedCheck.PROCEDURE_ID, figures.measurementId());
        assertFalse(SampleProject.with(POWER).step(figures.stepId()).isPresent());
        assertEquals(
                List.of(100.0),
                values(CheckValues.of(SampleProject.with(POWER), POWER, List.of(SampleProject.entry(1, figures)))
                        .own()));
    }

    @Test
    void takesTheWeakestChannelOrTheNamedOneOfReadingsThatReachedTheEnd() {
        LogEntry both = SampleProject.entry(
                1,
                SampleReading.at("2026-02-01T08:00:00Z")
                        .channel(14.4, 101, 0.3, 0.4)
                        .channel(14.4, 99, 0.3, 0.4)
                        .reading());
        LogEntry bound = SampleProject.entry(
                2,
                SampleReading.at("2026-02-02T08:00:00Z")
                        .channel(14.4, 80, 0.3, 0.4, EndPointOutcome.NOT_REACHED)
                        .reading());
        List<LogEntry> entries = List.of(both, bound);
        Project project = SampleProject.with(POWER);
        assertEquals(
                List.of(99.0), values(CheckValues.of(project, POWER, entries).own()));
        CheckValues named = CheckValues.of(project, POWER.withChannel("A"), entries);
        assertEquals(List.of(101.0), values(named.own()));
        // Closed form: the root of 0.3 squared and 0.4 squared.
        assertEquals(0.5, named.own().get(0).standardUncertainty().orElseThrow(), 1e-12);
        Project without = project.withSetAside(List.of(new SetAside("R0001", "load was hot")));
        assertTrue(CheckValues.of(without, POWER, entries).own().isEmpty());
    }

    @Test
    void leavesASimulatedBenchOutBesideAMeasuredOne() {
        CheckStandard noise = POWER.withFigureId("noise").withUnit("V");
        LogEntry simulated = SampleProject.entry(
                1,
                SampleProject.figures(
                        "2026-02-01T08:00:00Z",
                        "",
                        BenchKind.SIMULATED,
                        new MeasuredFigure("noise", "A", "", 1, "V", OptionalDouble.empty())));
        LogEntry real = SampleProject.entry(
                2,
                SampleProject.figures(
                        "2026-02-02T08:00:00Z",
                        "",
                        BenchKind.REAL,
                        new MeasuredFigure("noise", "A", "", 2, "V", OptionalDouble.empty())));
        Project project = SampleProject.with(noise);
        assertEquals(
                List.of(1.0),
                values(CheckValues.of(project, noise, List.of(simulated)).own()));
        CheckValues mixed = CheckValues.of(project, noise, List.of(simulated, real));
        assertEquals(List.of(2.0), values(mixed.own()));
        assertEquals(1, mixed.notes().size());
    }

    @Test
    void knowsASimulatedReadingByTheFiguresBehindIt() {
        LogEntry reading = SampleProject.entry(
                7,
                SampleReading.at("2026-02-01T08:00:00Z")
                        .channel(14.4, 50, 0.3, 0.4)
                        .reading());
        MeasuredFigures none = SampleProject.figures(
                "2026-02-01T08:00:00Z",
                "",
                BenchKind.SIMULATED,
                new MeasuredFigure("power", "A", "", 50, "W", OptionalDouble.empty()));
        // An entry and what its run also found are recorded at the same moment.
        LogEntry behind = SampleProject.entry(7, none);
        LogEntry real = SampleProject.entry(
                9,
                SampleReading.at("2026-02-02T08:00:00Z")
                        .channel(14.4, 60, 0.3, 0.4)
                        .reading());
        assertEquals(
                List.of(60.0),
                values(CheckValues.of(SampleProject.with(POWER), POWER, List.of(reading, behind, real))
                        .own()));
    }

    @Test
    void leavesAnotherUnitOutAndSaysSo() {
        LogEntry entry = SampleProject.entry(
                1,
                SampleProject.figures(
                        "2026-02-01T08:00:00Z",
                        "",
                        BenchKind.REAL,
                        new MeasuredFigure("noise", "A", "", 1, "mV", OptionalDouble.empty())));
        CheckStandard noise = POWER.withFigureId("noise").withUnit("V");
        CheckValues found = CheckValues.of(SampleProject.with(noise), noise, List.of(entry));
        assertTrue(found.own().isEmpty());
        assertEquals(List.of("Left out because their unit is not \"V\": 1 value."), found.notes());
    }

    @Test
    void keepsOtherBenchesApart() {
        LogEntry own = SampleProject.entry(1, typed(TYPED, 10.1, "2026-02-01T08:00:00Z"));
        Project elsewhere =
                SampleProject.with(TYPED).withBench(SampleProject.with().bench().withPlace("Bench 2"));
        LogEntry other = SampleProject.joined(
                "B",
                SampleProject.entry(
                        1,
                        new TypedCheck(
                                        TYPED,
                                        10.4,
                                        OptionalDouble.empty(),
                                        "N. N.",
                                        Instant.parse("2026-02-01T09:00:00Z"))
                                .figures(elsewhere, SampleProject.REVISION, "0.1.0")));
        CheckValues found = CheckValues.of(SampleProject.with(TYPED), TYPED, List.of(own, other));
        assertEquals(List.of(10.1), values(found.own()));
        assertEquals(List.of(10.4), values(found.elsewhere()));
        assertEquals("Bench 2", found.elsewhere().get(0).bench());
    }
}
