// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.model.Range;
import org.ohmstead.model.Severity;
import org.ohmstead.model.Step;
import org.ohmstead.thermal.FuseAnswer;
import org.ohmstead.thermal.HeatAnswer;
import org.ohmstead.thermal.HeatLimits;
import org.ohmstead.thermal.HeatModel;
import org.ohmstead.thermal.plan.HeatJob;
import org.ohmstead.thermal.plan.PlanForecast;
import org.ohmstead.thermal.plan.ScheduleTask;
import org.ohmstead.thermal.plan.StepForecast;
import org.ohmstead.thermal.plan.WatchedPlace;

/** One step of a project's plan by itself, from cold. */
final class PlannedStepStudy {
    private final StepForecast step;
    private final HeatJob job;
    private final ScheduleTask task;
    private final PlanForecast forecast;
    private final List<Problem> problems;
    private final HeatAnswer onTime;
    private final HeatAnswer duty;
    private final HeatAnswer multiple;

    PlannedStepStudy(PlanForecast forecast, String stepId, double dutyPeriodSeconds) throws InputException {
        this.forecast = forecast;
        List<String> ids = forecast.steps().stream().map(StepForecast::jobId).toList();
        step = forecast.step(stepId)
                .orElseThrow(() -> new InputException(
                        ids.isEmpty()
                                ? Texts.of("planned.noLoads", stepId)
                                : Texts.of("planned.noStep", stepId, Texts.some(ids))));
        if (step.power().watts().isEmpty()) {
            throw new InputException(Texts.of("planned.noPower", step.power().sentence()));
        }
        // Every forecast step has its job.
        task = forecast.task().orElseThrow();
        job = task.jobs().stream()
                .filter(each -> each.id().equals(stepId))
                .findFirst()
                .orElseThrow();
        problems = problems(forecast, stepId);
        HeatLimits limits = new HeatLimits(
                task.model().withLimitsLowered(job.rippleKelvin()), task.ambientCelsius(), task.marginKelvin());
        double[] watts = plain(job.watts());
        double[] idle = plain(task.idleWatts());
        onTime = brief(limits.onTime(task.model().cold(), watts));
        duty = brief(limits.duty(watts, idle, dutyPeriodSeconds));
        multiple = brief(limits.continuousMultiple(watts, new double[watts.length]));
    }

    /** The model holds bodies several times, all of which a sentence without a bound would name. */
    private static HeatAnswer brief(HeatAnswer answer) {
        return answer instanceof HeatAnswer.Unlimited
                ? new HeatAnswer.Unlimited(Texts.of("planned.unlimited"))
                : answer;
    }

    private static List<Problem> problems(PlanForecast forecast, String stepId) {
        List<Step> plan = forecast.project().plan();
        List<Problem> own = new ArrayList<>();
        for (Problem problem : forecast.problems()) {
            boolean ofAnother = false;
            for (int i = 0; i < plan.size(); i++) {
                String place = "$.plan[" + i + "]";
                ofAnother |=
                        problem.where().startsWith(place) && !plan.get(i).id().equals(stepId);
            }
            if (!ofAnother) {
                own.add(problem);
            }
        }
        return own;
    }

    private static double[] plain(List<Double> values) {
        return values.stream().mapToDouble(Double::doubleValue).toArray();
    }

    /** Prints it; returns whether the step may be run from cold for as long as its signal is on. */
    boolean show(Console console, boolean asJson) throws Exception {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        Figures figures = new Figures(root);
        fill(figures);
        List<String> sentences = sentences(root);
        boolean holds =
                problems.stream().noneMatch(problem -> problem.severity() == Severity.ERROR) && lastsLongEnough();
        List<String> cautions =
                PlanText.cautions(forecast.project().heat().supply().battery());
        if (asJson) {
            places(root.putArray("places"));
            root.put("stepSeconds", job.onSeconds());
            root.put("holds", holds);
            ArrayNode list = root.putArray("precautions");
            problems.forEach(problem -> list.add(problem.what() + " " + problem.remedy()));
            notes().forEach(root.putArray("notes")::add);
            Cautions.put(root, cautions);
            console.json(root);
        } else {
            figures.print(console);
            console.line("");
            table(console);
            console.line("");
            sentences.forEach(console::line);
            notes().forEach(console::line);
            Cautions.print(console, cautions);
        }
        problems.stream()
                .filter(problem -> problem.severity() == Severity.ERROR)
                .forEach(problem -> console.message(problem.what() + " " + problem.remedy()));
        if (!lastsLongEnough()) {
            console.message(Texts.of("planned.tooLong", Texts.time(job.onSeconds()), onTime.sentence()));
        }
        return holds;
    }

    private boolean lastsLongEnough() {
        return onTime.value().isPresent()
                ? onTime.value().getAsDouble() >= job.onSeconds()
                : onTime instanceof HeatAnswer.Unlimited;
    }

    private void fill(Figures figures) {
        Project project = forecast.project();
        figures.add(
                Texts.of("figure.expected"), "powerWatts", step.power().watts().orElseThrow(), "W");
        figures.words(
                Texts.of("figure.from"),
                "powerBasis",
                Texts.of("power." + step.power().basis().name()));
        figures.add(Texts.of("figure.outputAverage"), "outputWatts", step.outputWatts(), "W");
        figures.add(Texts.of("figure.heatAverage"), "heatWatts", step.heatWatts(), "W");
        if (!step.loudHeatWatts().equals(step.heatWatts())) {
            figures.add(Texts.of("figure.burstHeat"), "loudHeatWatts", step.loudHeatWatts(), "W");
        }
        figures.add(Texts.of("figure.supplyMost"), "supplyWatts", step.supplyWatts(), "W");
        step.current().ifPresent(current -> {
            figures.add(Texts.of("figure.currentAverage"), "supplyAverageAmps", current.averageAmps(), "A");
            figures.add(Texts.of("figure.currentRms"), "supplyRmsAmps", current.rmsAmps(), "A");
            figures.add(Texts.of("figure.currentPeak"), "supplyPeakAmps", current.peakAmps(), "A");
        });
        project.step(step.jobId())
                .ifPresent(planned ->
                        figures.add(Texts.of("figure.terminalVolts"), "terminalVolts", planned.supplyVolts(), "V"));
        step.setVolts().ifPresent(volts -> {
            figures.add(Texts.of("figure.setVolts"), "setVolts", volts, "V");
            figures.add(Texts.of("figure.cableDrop"), "cableDropVolts", step.cableDropVolts(), "V");
        });
    }

    /** The temperatures once the step had gone on for ever, with the swing of bursts. */
    private List<Double> settled() {
        HeatModel model = task.model();
        double[] watts = plain(job.watts());
        List<Double> celsius = new ArrayList<>();
        for (int point = 0; point < model.points().size(); point++) {
            celsius.add(model.settledCelsius(point, watts, task.ambientCelsius())
                    + job.rippleKelvin().getOrDefault(model.points().get(point).id(), 0.0));
        }
        return celsius;
    }

    private void table(Console console) {
        TextTable table = TextTable.named("planned.columns");
        List<Double> settled = settled();
        for (WatchedPlace place : WatchedPlace.of(task.model())) {
            Range celsius = place.celsius(settled);
            if (celsius.high() > task.ambientCelsius()) {
                table.row(
                        place.name(),
                        Texts.range(celsius, 0),
                        place.limitCelsius().isPresent()
                                ? Texts.fixed(place.limitCelsius().getAsDouble(), 0)
                                : "");
            }
        }
        table.print(console);
    }

    private void places(ArrayNode list) {
        List<Double> settled = settled();
        for (WatchedPlace place : WatchedPlace.of(task.model())) {
            ObjectNode node = list.addObject();
            node.put("id", place.key());
            node.put("name", place.name());
            Ranges.put(node, "settledCelsius", place.celsius(settled));
            place.limitCelsius().ifPresent(limit -> node.put("limitCelsius", limit));
        }
    }

    private List<String> sentences(ObjectNode root) {
        List<String> sentences = new ArrayList<>();
        Optional<FuseAnswer> fuse = step.fuse();
        fuse.ifPresent(answer -> {
            root.set("fuse", ThermalFuseCommand.node(answer));
            if (answer instanceof FuseAnswer.Carries carries) {
                sentences.add(Texts.of("planned.fuses", Texts.three(100 * carries.currentRatio())));
            } else if (answer instanceof FuseAnswer.Opens opens) {
                sentences.add(opens.reason());
            } else if (answer instanceof FuseAnswer.AboveContinuous above) {
                sentences.add(above.reason());
            }
        });
        sentences.add(Texts.of("answer.cold", ThermalStepCommand.sentence(root, "onTime", onTime)));
        sentences.add(Texts.of("answer.duty", ThermalStepCommand.sentence(root, "duty", duty)));
        sentences.add(Texts.of("answer.ever", ThermalStepCommand.sentence(root, "continuousMultiple", multiple)));
        return sentences;
    }

    private List<String> notes() {
        List<String> notes = new ArrayList<>(step.remarks());
        notes.add(Texts.of(
                job.rippleKelvin().isEmpty() ? "planned.margin" : "planned.margin.bursts",
                Texts.number(task.marginKelvin())));
        notes.addAll(forecast.notes());
        return notes;
    }
}
