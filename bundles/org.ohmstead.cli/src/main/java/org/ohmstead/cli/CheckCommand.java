// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.ohmstead.jobs.JobException;
import org.ohmstead.jobs.ProjectFolder;
import org.ohmstead.load.NetworkPartSharing;
import org.ohmstead.load.PlanPrecautions;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Severity;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.thermal.plan.PlanForecast;
import org.ohmstead.thermal.plan.ScheduleAnswer;
import org.ohmstead.thermal.plan.Scheduler;
import org.ohmstead.thermal.plan.SearchEffort;
import org.ohmstead.thermal.plan.ThermalPrecautions;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Lists what is wrong or risky in a project. */
@Command(
        name = "check",
        description = {"${bundle:check.does}", ""},
        footer = {"", "${bundle:check.exit}", "${bundle:check.example}"})
final class CheckCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Mixin
    private ProjectParameter project;

    CheckCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        ProjectFolder folder = project.open();
        List<Problem> problems = new ArrayList<>(folder.problems(LocalDate.now()));
        problems.addAll(PlanPrecautions.of(folder.project()));
        problems.addAll(heat(folder));
        if (json.wanted()) {
            ObjectNode root = JsonNodeFactory.instance.objectNode();
            ArrayNode list = root.putArray("problems");
            for (Problem problem : problems) {
                list.addObject()
                        .put("severity", problem.severity().name().toLowerCase(Locale.ROOT))
                        .put("where", problem.where())
                        .put("what", problem.what())
                        .put("remedy", problem.remedy());
            }
            console.json(root);
        } else if (problems.isEmpty()) {
            console.line(Texts.of(
                    "check.none",
                    folder.project().plan().size(),
                    folder.project().amplifier().ratings().size()));
        } else {
            for (Problem problem : problems) {
                console.line(Texts.severity(problem.severity()) + "  " + problem.where());
                console.line("    " + problem.what());
                console.line("    " + problem.remedy());
            }
        }
        boolean error = problems.stream().anyMatch(problem -> problem.severity() == Severity.ERROR);
        return error ? ExitCodes.FELL_SHORT : ExitCodes.DONE;
    }

    /** What heat, current and time of the plan in its own order come to, from the log's readings where it has some. */
    private static List<Problem> heat(ProjectFolder folder) throws JobException, TestLogException {
        PlanForecast forecast = PlanForecast.of(folder.project(), new NetworkPartSharing(), LogPowers.ifAny(folder));
        Optional<ScheduleAnswer> answer = forecast.task()
                .map(task ->
                        Scheduler.run(ThermalPlanCommand.inOrder(task), SearchEffort.USUAL, () -> false, done -> {}));
        return ThermalPrecautions.of(forecast, answer);
    }
}
