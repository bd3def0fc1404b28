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
        description = {
            "Forecast the plan of a project: what each step draws and heats, in which order and with which rests it takes least time"
                    + " without anything getting too hot, and how far from the shortest possible that may be.",
            "",
            "Powers come from the maker's ratings, or from the readings of the log with --from-log. Of what is known only as a range the"
                    + " hot end counts. Stereo comes before bridged, and the supply volts of a load rise.",
            ""
        },
        footer = {
            "",
            "Exit code 1 when the plan cannot be run as it is, or something in it breaks a limit.",
            "Example: ohmstead thermal plan kestrel.ohmstead --from-log",
            "Example: ohmstead thermal plan kestrel.ohmstead --done stereo-4ohm,stereo-2ohm --measured case=48"
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

    @Option(names = "--keep-order", description = "Keep the plan's own order; find the rests only.")
    private boolean keepOrder;

    @Option(names = "--from-log", description = "Take powers from the log's readings where there are some.")
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
        ScheduleTask whole = forecast.task()
                .orElseThrow(() -> new InputException("The plan of " + folder.folder()
                        + " has no step with a load. Enter steps, or look at: ohmstead check."));
        Optional<ScheduleTask> left = soFar.left(keepOrder ? inOrder(whole) : whole);
        if (left.isEmpty()) {
            console.message("Every step of the plan is done; nothing is left to forecast.");
            return ExitCodes.DONE;
        }
        ScheduleAnswer answer = Scheduler.run(
                left.get(),
                new SearchEffort(SearchEffort.USUAL.seed(), MOST_TRIALS, limit),
                () -> false,
                done -> console.progress((int) Math.round(100 * done), 100, "searching"));
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
            console.message("The plan cannot be run as it is. " + first.what() + " " + first.remedy());
            return ExitCodes.FELL_SHORT;
        }
        List<Problem> errors = precautions.stream()
                .filter(problem -> problem.severity() == Severity.ERROR)
                .toList();
        if (errors.isEmpty()) {
            return ExitCodes.DONE;
        }
        console.message((errors.size() > 1 ? errors.size() + " limits are broken, first: " : "")
                + errors.get(0).what() + " " + errors.get(0).remedy());
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
