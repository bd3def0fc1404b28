// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import org.ohmstead.measure.DriverInfo;
import org.ohmstead.measure.Measurement;
import org.ohmstead.model.Project;
import org.ohmstead.testlog.LogQuery;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;

/** A catalog, a bench, a log and a plan of two steps: the first for the measurement under test, the second for a good one. */
final class Stage implements AutoCloseable {
    static final String BAD = "org.example.bad";
    static final String GOOD = "org.example.good";
    static final RunLimits LIMITS = new RunLimits(
            Duration.ofMillis(400),
            Duration.ofMillis(3000),
            Duration.ofMillis(400),
            Duration.ofMillis(300),
            Duration.ofMillis(40),
            5,
            20);

    final Catalog catalog = new Catalog();
    final FakeDriver driver = new FakeDriver();
    final Project project = FakeProject.ofSteps(2);
    final PlanItem first = new PlanItem("s1", BAD, Map.of());
    final PlanItem second = new PlanItem("s2", GOOD, Map.of());
    final PlanSetup setup;
    final TestLog log;
    Runner runner;
    PlanRun plan;

    Stage(Path folder, Measurement underTest) throws TestLogException {
        this(folder, underTest, DriverInfo.Kind.SIMULATED);
    }

    Stage(Path folder, Measurement underTest, DriverInfo.Kind kind) throws TestLogException {
        driver.kind = kind;
        log = TestLog.open(folder.resolve(TestLog.FILE_NAME));
        catalog.bindMeasurement(underTest);
        catalog.bindMeasurement(FakeMeasurement.good(GOOD));
        catalog.bindDriver(driver);
        setup = new PlanSetup(project, FakeProject.REVISION, folder, List.of(first, second), "N. N.", "0.1.0");
        reopen();
    }

    void reopen() throws TestLogException {
        if (runner != null) {
            runner.close();
        }
        runner = new Runner(catalog, new BenchChoice(FakeDriver.ID, Map.of()), LIMITS);
        plan = planWith(Rests.NONE);
    }

    PlanRun planWith(Rests rests) throws TestLogException {
        return new PlanRun(setup, catalog, runner, log, rests);
    }

    /** Runs the bad one, which must fail by its own name; then all else must go on as if nothing had been. */
    RunOutcome.Failed failsAndGoesOn(PluginKind culprit, boolean fault) throws TestLogException {
        RunOutcome.Failed failed = assertInstanceOf(RunOutcome.Failed.class, plan.run(first));
        String id = culprit == PluginKind.DRIVER ? FakeDriver.ID : BAD;
        assertEquals(culprit, failed.kind(), failed.sentence());
        assertEquals(id, failed.pluginId(), failed.sentence());
        assertEquals(fault, failed.fault(), failed.sentence());
        assertTrue(failed.sentence().contains(id) && failed.sentence().endsWith("."), failed.sentence());
        assertFalse(driver.fed, "nothing is fed");
        assertEquals(ItemState.Status.FAILED, plan.state().items().get(0).status());
        goesOn();
        return failed;
    }

    void goesOn() throws TestLogException {
        driver.trick = call -> {};
        driver.nothing = false;
        RunOutcome next = plan.run(second);
        assertInstanceOf(RunOutcome.Finished.class, next, next.sentence());
        assertEquals(ItemState.Status.DONE, plan.state().items().get(1).status());
        assertFalse(driver.fed, "nothing is fed");
        assertEquals(1, log.entries(LogQuery.validFigures()).size());
        assertTrue(log.verify().intact(), log.verify().toString());
    }

    boolean isSetAside() {
        return catalog.view().plugins().stream()
                .filter(plugin -> plugin.id().equals(BAD))
                .findFirst()
                .orElseThrow()
                .setAside();
    }

    static void await(BooleanSupplier condition) {
        long end = System.nanoTime() + Duration.ofSeconds(20).toNanos();
        while (!condition.getAsBoolean()) {
            assertTrue(System.nanoTime() - end < 0, "it never came to that");
            LockSupport.parkNanos(1_000_000);
        }
    }

    @Override
    public void close() throws TestLogException {
        runner.close();
        log.close();
    }
}
