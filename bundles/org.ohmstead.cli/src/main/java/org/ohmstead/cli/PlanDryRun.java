// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.ohmstead.jobs.JobException;
import org.ohmstead.jobs.LogTrust;
import org.ohmstead.jobs.PlanRuns;
import org.ohmstead.jobs.ProjectFolder;
import org.ohmstead.load.NetworkPartSharing;
import org.ohmstead.measure.Readiness;
import org.ohmstead.measure.engine.Catalog;
import org.ohmstead.measure.engine.DryStep;
import org.ohmstead.measure.engine.PlanItem;
import org.ohmstead.measure.engine.PlanSetup;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Severity;
import org.ohmstead.model.StopLimit;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.thermal.plan.PlanForecast;
import org.ohmstead.thermal.plan.ScheduleAnswer;
import org.ohmstead.thermal.plan.ScheduleTask;
import org.ohmstead.thermal.plan.Scheduler;
import org.ohmstead.thermal.plan.SearchEffort;
import org.ohmstead.thermal.plan.ThermalPrecautions;

/** Goes through a plan without a bench: what is in the way, what needs a yes, what ends a step, how hot it gets. */
final class PlanDryRun {
    private final Console console;
    private final Catalog catalog;
    private final ProjectFolder folder;
    private final RunOptions options;
    private final boolean again;

    /** A plan that was gone through, with the forecast of its heat where there is one. */
    private record Seen(RunPlan plan, List<DryStep> steps, Optional<PlanText> forecast) {}

    PlanDryRun(Console console, Catalog catalog, ProjectFolder folder, RunOptions options, boolean again) {
        this.console = console;
        this.catalog = catalog;
        this.folder = folder;
        this.options = options;
        this.again = again;
    }

    /** Shows it; returns the exit code. */
    int show(boolean json) throws JobException, TestLogException, IOException {
        RunPlan plan = RunPlan.of(folder, catalog.view(), options);
        List<DryStep> steps = steps(plan);
        Seen seen = new Seen(plan, steps, forecast(steps));
        if (json) {
            console.json(document(seen));
        } else {
            print(seen);
        }
        boolean forbidden =
                seen.steps().stream().anyMatch(step -> !forbidding(step).isEmpty());
        return forbidden || !plan.leftOut().isEmpty() ? ExitCodes.FELL_SHORT : ExitCodes.DONE;
    }

    private List<DryStep> steps(RunPlan plan) throws JobException, TestLogException, IOException {
        PlanSetup setup = PlanRuns.setup(
                folder.project(), folder.loaded().revisionSha256(), folder.folder(), plan.items(), options.operator());
        if (again || !Files.exists(folder.logFile())) {
            return UnloggedRun.dryRun(setup, catalog);
        }
        try (TestLog log = folder.readLog()) {
            LogTrust.requireWhole(log);
            return UnloggedRun.dryRun(setup, catalog, log);
        }
    }

    private Optional<PlanText> forecast(List<DryStep> steps) throws JobException, TestLogException {
        PlanForecast forecast = PlanForecast.of(folder.project(), new NetworkPartSharing(), LogPowers.ifAny(folder));
        if (forecast.task().isEmpty()) {
            return Optional.empty();
        }
        ScheduleTask task = forecast.task().get();
        ScheduleAnswer answer =
                Scheduler.run(ThermalPlanCommand.inOrder(task), SearchEffort.USUAL, () -> false, done -> {});
        Set<String> said = steps.stream()
                .flatMap(step -> step.problems().stream())
                .map(Problem::what)
                .collect(Collectors.toSet());
        List<Problem> further = ThermalPrecautions.of(forecast, Optional.of(answer)).stream()
                .filter(problem -> !said.contains(problem.what()))
                .toList();
        return Optional.of(new PlanText(forecast, task, answer, further));
    }

    /** Returns what no yes gets out of the way. */
    static String forbidding(DryStep step) {
        return new DryStep(step.item(), step.readiness(), step.problems(), List.of(), step.stopLimits()).blocked();
    }

    private List<PlanItem> done(Seen seen) {
        List<PlanItem> open = seen.steps().stream().map(DryStep::item).toList();
        return seen.plan().items().stream().filter(item -> !open.contains(item)).toList();
    }

    private void print(Seen seen) {
        for (DryStep step : seen.steps()) {
            console.line(step.item().stepId() + "  " + step.item().measurementId());
            if (!(step.readiness() instanceof Readiness.Ready)) {
                console.line(Texts.of("dryRun.notReady", readiness(step)));
            }
            for (Problem problem : step.problems()) {
                console.line("    " + Texts.severity(problem.severity()) + "  " + problem.what());
                console.line("        " + problem.remedy());
            }
            for (StopLimit limit : step.stopLimits()) {
                console.line(Texts.of("dryRun.limit", Texts.three(limit.highest()), unit(limit), limit.reason()));
            }
        }
        long forbidden = seen.steps().stream()
                .filter(step -> !forbidding(step).isEmpty())
                .count();
        long asking = seen.steps().stream()
                .filter(step -> !step.unconfirmed().isEmpty())
                .count();
        console.line("");
        console.line(Texts.of("dryRun.summary", seen.steps().size(), done(seen).size(), forbidden, asking));
        if (!seen.plan().leftOut().isEmpty()) {
            console.line(Texts.of("dryRun.leftOut", Texts.some(seen.plan().leftOut())));
        }
        seen.forecast().ifPresent(forecast -> {
            console.line("");
            forecast.print(console);
        });
    }

    private static String readiness(DryStep step) {
        if (step.readiness() instanceof Readiness.NotYet notYet) {
            return notYet.reason() + " " + notYet.remedy();
        }
        return step.readiness() instanceof Readiness.NotApplicable never ? never.reason() : "";
    }

    private static String unit(StopLimit limit) {
        return switch (limit.quantity()) {
            case SUPPLY_AMPS -> "A";
            case CASE_CELSIUS -> "\u00b0C";
            case OUTPUT_WATTS -> "W";
        };
    }

    private ObjectNode document(Seen seen) {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        root.put("project", folder.project().title());
        root.put("folder", folder.folder().toString());
        root.put("dryRun", true);
        seen.plan().driver().ifPresent(driver -> root.put("driver", driver.id()));
        ArrayNode items = root.putArray("items");
        seen.steps().forEach(step -> fill(items.addObject(), step));
        ArrayNode done = root.putArray("done");
        done(seen)
                .forEach(item -> done.addObject().put("step", item.stepId()).put("measurement", item.measurementId()));
        seen.plan().leftOut().forEach(root.putArray("leftOut")::add);
        root.put("mayRun", seen.steps().stream().allMatch(step -> forbidding(step)
                .isEmpty()));
        seen.forecast().ifPresent(forecast -> forecast.fill(root.putObject("forecast")));
        return root;
    }

    private static void fill(ObjectNode node, DryStep step) {
        node.put("step", step.item().stepId());
        node.put("measurement", step.item().measurementId());
        ObjectNode settings = node.putObject("settings");
        step.item().settings().forEach(settings::put);
        node.put("ready", step.readiness() instanceof Readiness.Ready);
        node.put("notReady", readiness(step));
        ArrayNode problems = node.putArray("problems");
        List<Problem> open = new ArrayList<>(step.unconfirmed());
        for (Problem problem : step.problems()) {
            problems.addObject()
                    .put("severity", problem.severity().name().toLowerCase(Locale.ROOT))
                    .put("where", problem.where())
                    .put("what", problem.what())
                    .put("remedy", problem.remedy())
                    .put("forbids", problem.severity() == Severity.ERROR)
                    .put("needsYes", open.contains(problem));
        }
        ArrayNode limits = node.putArray("stopLimits");
        for (StopLimit limit : step.stopLimits()) {
            limits.addObject()
                    .put("quantity", limit.quantity().name())
                    .put("highest", limit.highest())
                    .put("unit", unit(limit))
                    .put("reason", limit.reason());
        }
        node.put("inTheWay", forbidding(step));
    }
}
