// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import org.ohmstead.jobs.JobException;
import org.ohmstead.jobs.LogTrust;
import org.ohmstead.jobs.PlanRuns;
import org.ohmstead.jobs.ProjectFolder;
import org.ohmstead.jobs.SharingState;
import org.ohmstead.load.NetworkPartSharing;
import org.ohmstead.measure.DriverInfo;
import org.ohmstead.measure.engine.Catalog;
import org.ohmstead.measure.engine.DryStep;
import org.ohmstead.measure.engine.ItemState;
import org.ohmstead.measure.engine.PlanItem;
import org.ohmstead.measure.engine.PlanRun;
import org.ohmstead.measure.engine.PlanSetup;
import org.ohmstead.measure.engine.PlanState;
import org.ohmstead.measure.engine.Rests;
import org.ohmstead.measure.engine.RunLimits;
import org.ohmstead.measure.engine.RunOutcome;
import org.ohmstead.measure.engine.Runner;
import org.ohmstead.model.json.ProjectFileException;
import org.ohmstead.model.json.ProjectLock;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.LogQuery;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;

/** Carries out the plan of a project on a bench. */
final class PlanOnBench {
    private static final double NANOS_PER_SECOND = 1e9;

    private final Console console;
    private final Catalog catalog;
    private final ProjectFolder folder;
    private final RunOptions options;
    private final boolean again;
    private final boolean json;

    PlanOnBench(
            Console console, Catalog catalog, ProjectFolder folder, RunOptions options, boolean again, boolean json) {
        this.console = console;
        this.catalog = catalog;
        this.folder = folder;
        this.options = options;
        this.again = again;
        this.json = json;
    }

    /** Carries it out and says what came of it; returns the exit code. */
    int run() throws JobException, ProjectFileException, TestLogException, IOException, InterruptedException {
        RunPlan plan = RunPlan.of(folder, catalog.view(), options);
        ProjectLock lock = ProjectLock.acquire(folder.folder());
        try (lock;
                TestLog log = LogTrust.openToAdd(folder.logFile(), console::message)) {
            List<LogEntry> entries = new CopyOnWriteArrayList<>(log.entries(LogQuery.everything()));
            Rests rests =
                    options.rests() ? PlanRuns.rests(folder.project(), new NetworkPartSharing(), entries) : Rests.NONE;
            try (Runner runner = new Runner(catalog, plan.bench(), RunLimits.usual());
                    HandingOver handingOver = HandingOver.begin(folder)) {
                PlanRun run = new PlanRun(setup(plan), catalog, runner, log, rests);
                run.addListener(handingOver);
                return run(plan, run, runner, entries, handingOver);
            }
        }
    }

    private PlanSetup setup(RunPlan plan) {
        return PlanRuns.setup(
                folder.project(), folder.loaded().revisionSha256(), folder.folder(), plan.items(), options.operator());
    }

    private int run(RunPlan plan, PlanRun run, Runner runner, List<LogEntry> entries, HandingOver handingOver)
            throws JobException, TestLogException, IOException, InterruptedException {
        long start = System.nanoTime();
        List<DryStep> wanted =
                again ? UnloggedRun.dryRun(setup(plan), catalog) : run.dryRun().steps();
        RunWatch watch = new RunWatch(console, entries, wanted.size());
        run.addListener(watch);
        Confirmations confirmations = new Confirmations(console, options);
        confirmations.all(run, wanted);
        List<DryStep> inTheWay = (again
                        ? confirmed(wanted, confirmations)
                        : run.dryRun().steps())
                .stream().filter(step -> !step.mayRun()).toList();
        boolean begun = !wanted.isEmpty() && (inTheWay.isEmpty() || options.goOn());
        try (EmergencyHook hook = new EmergencyHook(run, options.who(), console)) {
            if (begun) {
                measure(plan, run, runner, wanted);
            }
            RunReport report = new RunReport(
                    folder,
                    plan,
                    run.state(),
                    watch,
                    List.copyOf(entries),
                    confirmations.given(),
                    begun ? List.of() : inTheWay,
                    (System.nanoTime() - start) / NANOS_PER_SECOND);
            runner.close(); // the bench does not wait for a server
            print(report, handingOver.end());
            return exitCode(report, wanted);
        }
    }

    /** The same steps without the warnings that were said yes to. */
    private static List<DryStep> confirmed(List<DryStep> steps, Confirmations confirmations) {
        List<DryStep> left = new ArrayList<>();
        for (DryStep step : steps) {
            left.add(new DryStep(
                    step.item(),
                    step.readiness(),
                    step.problems(),
                    step.unconfirmed().stream()
                            .filter(problem -> confirmations.given().stream()
                                    .noneMatch(yes -> yes.what().equals(problem.what())
                                            && yes.stepIds()
                                                    .contains(step.item().stepId())))
                            .toList(),
                    step.stopLimits()));
        }
        return left;
    }

    private void measure(RunPlan plan, PlanRun run, Runner runner, List<DryStep> wanted) throws TestLogException {
        boolean replayed = plan.driver()
                .filter(driver -> driver.kind() == DriverInfo.Kind.REPLAYED)
                .isPresent();
        if (!again && !replayed) {
            run.runAll(options.goOn());
            return;
        }
        for (DryStep step : wanted) {
            RunOutcome outcome = run.run(step.item());
            if (replayed) {
                // The recordings of a step are a bench of their own.
                runner.close();
            }
            if (runner.halted() || !goesOnAfter(outcome)) {
                return;
            }
        }
    }

    private boolean goesOnAfter(RunOutcome outcome) {
        return outcome instanceof RunOutcome.Finished
                || options.goOn()
                        && (outcome instanceof RunOutcome.Failed
                                || outcome instanceof RunOutcome.Refused
                                || outcome instanceof RunOutcome.Stopped);
    }

    private void print(RunReport report, Optional<SharingState> sharedLog) throws JsonProcessingException {
        if (json) {
            ObjectNode document = report.document();
            HandingOver.fill(document, sharedLog);
            console.json(document);
        } else {
            report.print(console);
            HandingOver.say(console, sharedLog);
        }
        if (!report.refused().isEmpty()) {
            refuse(report.refused());
        }
        if (!report.plan().leftOut().isEmpty()) {
            console.message(Texts.of("run.leftOut", Texts.some(report.plan().leftOut())));
        }
    }

    private void refuse(List<DryStep> refused) {
        List<String> unconfirmed = new ArrayList<>();
        for (DryStep step : refused) {
            if (PlanDryRun.forbidding(step).isEmpty()) {
                unconfirmed.add(step.item().stepId());
            } else {
                console.message(RunReport.sentence(step));
            }
        }
        if (!unconfirmed.isEmpty()) {
            console.message(Texts.of("run.noYes", Texts.some(unconfirmed)));
        }
        console.message(Texts.of("run.notBegun"));
    }

    private int exitCode(RunReport report, List<DryStep> wanted) {
        RunWatch watch = report.watch();
        if (watch.ended().values().stream().anyMatch(ended -> ended.outcome() instanceof RunOutcome.NotKept)) {
            return ExitCodes.OUTSIDE_FAILURE;
        }
        boolean all = again
                ? wanted.stream().map(DryStep::item).allMatch(item -> finished(watch, item))
                : complete(report.state());
        return all && report.plan().leftOut().isEmpty() ? ExitCodes.DONE : ExitCodes.FELL_SHORT;
    }

    private static boolean finished(RunWatch watch, PlanItem item) {
        return watch.ended(item)
                .filter(ended -> ended.outcome() instanceof RunOutcome.Finished)
                .isPresent();
    }

    private static boolean complete(PlanState state) {
        return state.items().stream()
                .allMatch(each -> each.status() == ItemState.Status.DONE || each.status() == ItemState.Status.SKIPPED);
    }
}
