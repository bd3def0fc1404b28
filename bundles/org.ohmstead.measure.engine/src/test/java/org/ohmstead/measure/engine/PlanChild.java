// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import java.nio.file.Path;
import java.util.Map;
import org.ohmstead.model.Project;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;

/** Carries out a plan in a process of its own and prints the id of each entry as soon as it is acknowledged. */
final class PlanChild {
    static final String MEASUREMENT = "org.example.good";

    private PlanChild() {}

    public static void main(String[] arguments) throws TestLogException {
        Path folder = Path.of(arguments[0]);
        Project project = FakeProject.ofSteps(Integer.parseInt(arguments[1]));
        Catalog catalog = new Catalog();
        catalog.bindMeasurement(FakeMeasurement.good(MEASUREMENT));
        catalog.bindDriver(new FakeDriver());
        PlanSetup setup = PlanSetup.ofPlan(project, FakeProject.REVISION, folder, MEASUREMENT, "N. N.", "0.1.0");
        try (TestLog log = TestLog.open(folder.resolve(TestLog.FILE_NAME));
                Runner runner = new Runner(catalog, new BenchChoice(FakeDriver.ID, Map.of()), RunLimits.usual())) {
            PlanRun plan = new PlanRun(setup, catalog, runner, log, Rests.NONE);
            plan.addListener(new RunListener() {
                @Override
                public void logged(LogEntry entry) {
                    say(entry.id());
                }
            });
            say("ready");
            if (plan.runAll().complete()) {
                say("complete");
            }
        }
    }

    private static void say(String line) {
        System.out.println(line);
        System.out.flush();
    }
}
