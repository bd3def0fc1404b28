// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.jobs;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.measure.engine.PlanItem;
import org.ohmstead.measure.engine.PlanState;
import org.ohmstead.measure.engine.Rests;
import org.ohmstead.model.Project;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.thermal.plan.PlanForecast;

/** A computer's clock that is wrong makes rests longer, never shorter. */
class ThermalRestsClockTest {
    private static final Instant NOON = Instant.parse("2026-03-03T12:00:00Z");
    private static final double HOT = 79;
    private static final double REST_SECONDS = 0.5;

    @TempDir
    private Path folder;

    private Project project;
    private double fullRestSeconds;
    private final List<LogEntry> log = new ArrayList<>();

    @BeforeEach
    void makeTheProject() throws Exception {
        project = OneLump.in(DemoSteps.project(folder.resolve("demo")).project());
        fullRestSeconds = OneLump.expectedRestSeconds(project, HOT);
        assertTrue(fullRestSeconds > 120, "the case must be too hot for the tests to tell anything");
    }

    private void logged(Instant shown, double caseCelsius) {
        log.add(HeatEntries.entry(log.size() + 1, shown, OptionalDouble.of(caseCelsius), ""));
    }

    /** The rest that a program wants which is started at a time and asks at once. */
    private double restSeconds(Instant shown) {
        return seconds(ThermalRests.of(project, OneLump.NO_PARTS, log, Clock.fixed(shown, ZoneOffset.UTC), () -> 0));
    }

    private static double seconds(Rests rests) {
        PlanItem item = new PlanItem(OneLump.HOT_STEP, "org.ohmstead.power-at-end-point", Map.of());
        return rests.before(item, new PlanState(List.of(), false)).toNanos() / 1e9;
    }

    @Test
    void theClockIsSetBackByAnHourBetweenTwoTests() {
        logged(NOON, 30);
        logged(NOON.plusSeconds(300).minusSeconds(3600), HOT);
        assertEquals(
                fullRestSeconds - 60,
                restSeconds(NOON.plusSeconds(360).minusSeconds(3600)),
                REST_SECONDS,
                "as with the true clock: the second test was the last");
    }

    @Test
    void theClockIsSetBackAfterTheLastTest() {
        logged(NOON, HOT);
        assertEquals(fullRestSeconds, restSeconds(NOON.minusSeconds(3000)), REST_SECONDS, "no rest is known of");
        assertEquals(fullRestSeconds, restSeconds(NOON), REST_SECONDS);
        assertEquals(fullRestSeconds - 60, restSeconds(NOON.plusSeconds(60)), REST_SECONDS);
    }

    @Test
    void aClockThatWasWrongForOneTestAndIsRightAgainTellsNoRest() {
        for (String wrong : List.of("1970-01-01T00:00:07Z", "2026-03-03T11:05:00Z", "2027-03-03T12:05:00Z")) {
            log.clear();
            logged(NOON, 30);
            logged(Instant.parse(wrong), HOT);
            assertEquals(fullRestSeconds, restSeconds(NOON.plusSeconds(1800)), REST_SECONDS, wrong);
        }
    }

    @Test
    void aClockThatWasAheadAndWasPutRightIsBelievedFromThenOn() {
        logged(NOON.plus(Duration.ofDays(300)), HOT);
        logged(NOON, 30);
        logged(NOON.plusSeconds(900), HOT);
        assertEquals(fullRestSeconds - 60, restSeconds(NOON.plusSeconds(960)), REST_SECONDS);
        assertEquals(0, restSeconds(NOON.plusSeconds(7200)), REST_SECONDS, "its tests are not hot for 300 days");
    }

    @Test
    void aStepCountsWithItsWholeTimeHoweverLittleTheClockSaysHasPassed() {
        double onSeconds = OneLump.job(
                        PlanForecast.of(project, OneLump.NO_PARTS).task().orElseThrow())
                .onSeconds();
        List<LogEntry> right = new ArrayList<>();
        Instant end = NOON;
        for (int done = 1; done <= 200; done++) {
            end = end.plusMillis(Math.round(1000 * onSeconds));
            right.add(HeatEntries.entry(done, end, OptionalDouble.empty(), ""));
            log.add(HeatEntries.entry(done, NOON.plusSeconds(done), OptionalDouble.empty(), ""));
        }
        double trueSeconds =
                seconds(ThermalRests.of(project, OneLump.NO_PARTS, right, Clock.fixed(end, ZoneOffset.UTC), () -> 0));
        assertTrue(trueSeconds > 60, "so much must make it hot: " + trueSeconds);
        assertTrue(restSeconds(NOON.plusSeconds(200)) > trueSeconds - REST_SECONDS);
    }

    @Test
    void whileTheProgramRunsOnlyTheSteadyClockTells() {
        MovedClock clock = new MovedClock();
        Rests rests = ThermalRests.of(project, OneLump.NO_PARTS, log, clock, clock::nanos);
        assertEquals(0, seconds(rests), 0);
        clock.pass(Duration.ofSeconds(100));
        logged(clock.now, HOT);
        clock.pass(Duration.ofSeconds(10));
        assertEquals(fullRestSeconds - 10, seconds(rests), REST_SECONDS);
        clock.set(Duration.ofHours(5));
        clock.pass(Duration.ofSeconds(10));
        assertEquals(fullRestSeconds - 20, seconds(rests), REST_SECONDS, "set forth after the test");
        clock.set(Duration.ofHours(-9));
        clock.pass(Duration.ofSeconds(10));
        assertEquals(fullRestSeconds - 30, seconds(rests), REST_SECONDS, "set back");
        logged(clock.now, HOT);
        clock.set(Duration.ofHours(2));
        clock.pass(Duration.ofSeconds(10));
        assertEquals(fullRestSeconds, seconds(rests), REST_SECONDS, "when it was set is not known");
    }

    @Test
    void anotherBenchsClockDoesNotUpsetTheOrderOfOurs() {
        logged(NOON.plusSeconds(600), HOT);
        log.add(HeatEntries.entry(1, NOON, OptionalDouble.of(30), "B"));
        assertEquals(fullRestSeconds - 60, restSeconds(NOON.plusSeconds(660)), REST_SECONDS);
        log.add(HeatEntries.entry(2, NOON.plusSeconds(9000), OptionalDouble.of(HOT), "B"));
        assertEquals(fullRestSeconds, restSeconds(NOON.plusSeconds(660)), REST_SECONDS, "at the latest just now");
    }
}
