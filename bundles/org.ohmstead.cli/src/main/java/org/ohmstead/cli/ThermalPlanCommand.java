// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.IntStream;
import org.ohmstead.jobs.JobException;
import org.ohmstead.jobs.ProjectFolder;
import org.ohmstead.load.NetworkPartSharing;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.model.Severity;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.thermal.plan.HeatJob;
import org.ohmstead.thermal.plan.Impossible;
import org.ohmstead.thermal.plan.Obstacle;
import org.ohmstead.thermal.plan.PlanForecast;
import org.ohmstead.thermal.plan.ScheduleAnswer;
import org.ohmstead.thermal.plan.ScheduleTask;
import org.ohmstead.thermal.plan.Scheduler;
import org.ohmstead.thermal.plan.SearchEffort;
import org.ohmstead.thermal.plan.ThermalPrecautions;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Forecasts a plan and puts it in the order that takes least time. */
@Command(
        name = "plan",
        description = {"${bundle:thermal.plan.does}", "", "${bundle:thermal.plan.more}", ""},
        footer = {"", "${bundle:thermal.plan.exit}", "${bundle:thermal.plan.example}", "${bundle:thermal.plan.example2}"
        })
final class ThermalPlanCommand implements Callable<Integer> {
    private static final int MOST_TRIALS = SearchEffort.USUAL.mostTrials();

    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Mixin
    private ProjectParameter project;

    @Option(names = "--keep-order", descriptionKey = "thermal.plan.keep-order")
    private boolean keepOrder;

    @Option(names = "--from-log", descriptionKey = "thermal.plan.from-log")
    private boolean fromLog;

    @Mixin
    private RunSoFar soFar;

    @Mixin
    private TimeLimitOption timeLimit;

    ThermalPlanCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        ProjectFolder folder = project.open();
        Duration limit = timeLimit.limit();
        PlanForecast forecast = forecast(folder, fromLog);
        ScheduleTask whole =
                forecast.task().orElseThrow(() -> new InputException(Texts.of("plan.noLoads", folder.folder())));
        Optional<ScheduleTask> left = soFar.left(keepOrder ? inOrder(whole) : whole);
        if (left.isEmpty()) {
            console.message(Texts.of("plan.done"));
            return ExitCodes.DONE;
        }
        ScheduleAnswer answer = Scheduler.run(
                left.get(),
                new SearchEffort(SearchEffort.USUAL.seed(), MOST_TRIALS, limit),
                () -> false,
                done -> console.progress((int) Math.round(100 * done), 100, Texts.of("loadFind.progress")));
        List<Problem> precautions = ThermalPrecautions.of(forecast, Optional.of(answer)).stream()
                .filter(problem -> concerns(problem, folder.project(), left.get()))
                .toList();
        PlanText text = new PlanText(forecast, left.get(), answer, precautions);
        if (json.wanted()) {
            ObjectNode root = JsonNodeFactory.instance.objectNode();
            text.fill(root);
            console.json(root);
        } else {
            text.print(console);
        }
        return judge(answer, precautions);
    }

    private Integer judge(ScheduleAnswer answer, List<Problem> precautions) {
        if (answer instanceof Impossible impossible) {
            Obstacle first = impossible.obstacles().get(0);
            console.message(Texts.of("plan.notSo", first.what(), first.remedy()));
            return ExitCodes.FELL_SHORT;
        }
        List<Problem> errors = precautions.stream()
                .filter(problem -> problem.severity() == Severity.ERROR)
                .toList();
        if (errors.isEmpty()) {
            return ExitCodes.DONE;
        }
        String first = errors.get(0).what() + " " + errors.get(0).remedy();
        console.message(errors.size() > 1 ? Texts.of("plan.broken", errors.size(), first) : first);
        return ExitCodes.FELL_SHORT;
    }

    /** What is about a step that is done concerns nobody any more. */
    private static boolean concerns(Problem problem, Project plan, ScheduleTask left) {
        List<String> ids = left.jobs().stream().map(HeatJob::id).toList();
        for (int i = 0; i < plan.plan().size(); i++) {
            if (problem.where().startsWith("$.plan[" + i + "]")) {
                return ids.contains(plan.plan().get(i).id());
            }
        }
        return true;
    }

    /** Forecasts the plan of a project, with the powers of its log's readings if wanted. */
    static PlanForecast forecast(ProjectFolder folder, boolean fromLog) throws JobException, TestLogException {
        return fromLog
                ? PlanForecast.of(folder.project(), new NetworkPartSharing(), LogPowers.of(folder))
                : PlanForecast.of(folder.project(), new NetworkPartSharing());
    }

    /** Returns the task with its jobs in the order in which they stand. */
    static ScheduleTask inOrder(ScheduleTask task) {
        return task.withFixedOrder(
                Optional.of(IntStream.range(0, task.jobs().size()).boxed().toList()));
    }
}
