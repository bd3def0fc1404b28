// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Range;
import org.ohmstead.thermal.SupplyCautions;
import org.ohmstead.thermal.SupplyCurrent;
import org.ohmstead.thermal.plan.ExpectedPower;
import org.ohmstead.thermal.plan.HeatJob;
import org.ohmstead.thermal.plan.Impossible;
import org.ohmstead.thermal.plan.PlanForecast;
import org.ohmstead.thermal.plan.Schedule;
import org.ohmstead.thermal.plan.ScheduleAnswer;
import org.ohmstead.thermal.plan.ScheduleTask;
import org.ohmstead.thermal.plan.ScheduledJob;
import org.ohmstead.thermal.plan.StepForecast;
import org.ohmstead.thermal.plan.StopLimit;
import org.ohmstead.thermal.plan.StopLimits;
import org.ohmstead.thermal.plan.WatchedPlace;

/** A plan's forecast and schedule for people and for machines. */
final class PlanText {
    private static final double JOULES_PER_WATT_HOUR = 3600;
    private static final double PERCENT = 100;

    private final PlanForecast forecast;
    private final ScheduleTask task;
    private final ScheduleAnswer answer;
    private final List<Problem> precautions;
    private final List<WatchedPlace> places;

    PlanText(PlanForecast forecast, ScheduleTask task, ScheduleAnswer answer, List<Problem> precautions) {
        this.forecast = forecast;
        this.task = task;
        this.answer = answer;
        this.precautions = precautions;
        places = WatchedPlace.of(task.model());
    }

    void print(Console console) {
        console.line(Texts.of(
                "plan.head",
                forecast.project().title(),
                task.jobs().size(),
                Texts.number(task.ambientCelsius()),
                Texts.number(task.marginKelvin())));
        long read = count(ExpectedPower.Basis.READING);
        long unknown = count(ExpectedPower.Basis.UNKNOWN);
        console.line(Texts.of("plan.powers", read, forecast.steps().size() - read - unknown, unknown));
        console.line("");
        if (answer instanceof Schedule schedule) {
            table(console, schedule);
            console.line("");
            totals(console, schedule);
        } else {
            impossible(console);
        }
        console.line("");
        console.line(Texts.of("plan.stop"));
        TextTable stops = TextTable.named("plan.stops");
        for (StopLimit limit : StopLimits.of(forecast)) {
            boolean celsius = limit.quantity() == StopLimit.Quantity.CELSIUS;
            stops.row(
                    "  " + limit.name(),
                    Texts.fixed(limit.limit(), celsius ? 0 : 1),
                    celsius ? "\u00b0C" : "A",
                    limit.why());
        }
        stops.print(console);
        notes(console);
        Cautions.print(console, cautions(forecast.project().heat().supply().battery()));
    }

    private long count(ExpectedPower.Basis basis) {
        return forecast.steps().stream()
                .filter(step -> step.power().basis() == basis)
                .count();
    }

    private void table(Console console, Schedule schedule) {
        TextTable table = TextTable.named("plan.columns");
        for (ScheduledJob job : schedule.jobs()) {
            StepForecast step = forecast.step(job.id()).orElseThrow();
            Optional<SupplyCurrent> current = step.current();
            WatchedPlace place = WatchedPlace.tightest(places, job.peakCelsius());
            table.row(
                    job.id(),
                    clock(job.startSeconds()),
                    job.changeSeconds() > 0 ? clock(job.changeSeconds()) : "",
                    job.restSeconds() > 0 ? clock(job.restSeconds()) : "",
                    Texts.number(job.endSeconds() - job.startSeconds()),
                    current.map(value -> Texts.fixed(value.averageAmps(), 1)).orElse(Texts.of("plan.unknown")),
                    current.map(value -> Texts.fixed(value.rmsAmps(), 1)).orElse(""),
                    Texts.range(step.heatWatts(), 0),
                    place.name(),
                    Texts.range(place.celsius(job.peakCelsius()), 0),
                    room(place.roomKelvin(job.peakCelsius())),
                    cause(job));
        }
        table.print(console);
    }

    private static String room(OptionalDouble kelvin) {
        return kelvin.isPresent() ? Texts.fixed(kelvin.getAsDouble(), 0) : Texts.of("plan.noLimit");
    }

    private String cause(ScheduledJob job) {
        return switch (job.cause()) {
            case NONE -> "";
            case WISH -> Texts.of("plan.wish");
            case LIMIT -> job.limitPointId().map(this::name).orElse(Texts.of("plan.limit"));
        };
    }

    private String name(String pointId) {
        int point = task.model().pointIndex(pointId);
        return point < 0 ? pointId : task.model().points().get(point).name();
    }

    private static void totals(Console console, Schedule schedule) {
        console.line(schedule.message());
        console.line(Texts.of(
                "plan.inAll",
                clock(schedule.totalSeconds()),
                clock(schedule.onSeconds()),
                clock(schedule.changeSeconds()),
                clock(schedule.restSeconds()),
                Texts.three(schedule.energyJoules() / JOULES_PER_WATT_HOUR)));
        console.line(Texts.of(
                "plan.bound", clock(schedule.lowerBoundSeconds()), Texts.fixed(PERCENT * schedule.gapRatio(), 1)));
        if (schedule.ending() == Schedule.Ending.TIME_LIMIT) {
            console.line(Texts.of("plan.timeLimit"));
        }
        if (!schedule.restsProvenShortest()) {
            console.line(Texts.of("plan.lags"));
        }
    }

    /** Says what the steps draw and heat when there is no schedule; why there is none follows as messages. */
    private void impossible(Console console) {
        console.line(Texts.of("plan.impossible"));
        console.line("");
        TextTable table = TextTable.named("plan.impossible.columns");
        for (HeatJob job : task.jobs()) {
            StepForecast step = forecast.step(job.id()).orElseThrow();
            table.row(
                    step.jobId(),
                    step.current()
                            .map(value -> Texts.fixed(value.averageAmps(), 1))
                            .orElse(Texts.of("plan.unknown")),
                    step.current().map(value -> Texts.fixed(value.rmsAmps(), 1)).orElse(""),
                    Texts.range(step.heatWatts(), 0));
        }
        table.print(console);
    }

    private void notes(Console console) {
        if (!precautions.isEmpty()) {
            console.line("");
        }
        for (Problem problem : precautions) {
            console.line(Texts.severity(problem.severity()) + "  " + problem.where());
            console.line("    " + problem.what());
            console.line("    " + problem.remedy());
        }
        if (!forecast.notes().isEmpty()) {
            console.line("");
            console.line(Texts.of("plan.restsOn"));
            forecast.notes().forEach(note -> console.line("  " + note));
        }
    }

    /** Returns what to say beside a plan's or a step's forecast. */
    static List<String> cautions(boolean battery) {
        List<String> cautions =
                new ArrayList<>(List.of(SupplyCautions.hotParts(), SupplyCautions.cables(), SupplyCautions.fuses()));
        if (battery) {
            cautions.add(SupplyCautions.batteries());
        }
        cautions.add(SupplyCautions.wiring());
        return cautions;
    }

    /** Returns a time as hours, minutes and seconds, rounded up: 0:02:30. */
    static String clock(double seconds) {
        long whole = (long) Math.ceil(seconds - 1e-6);
        return String.format(Locale.ROOT, "%d:%02d:%02d", whole / 3600, whole / 60 % 60, whole % 60);
    }

    void fill(ObjectNode root) {
        root.put("title", forecast.project().title());
        root.put("ambientCelsius", task.ambientCelsius());
        root.put("marginKelvin", task.marginKelvin());
        root.put("possible", answer instanceof Schedule);
        if (answer instanceof Schedule schedule) {
            root.put("totalSeconds", schedule.totalSeconds());
            root.put("onSeconds", schedule.onSeconds());
            root.put("changeSeconds", schedule.changeSeconds());
            root.put("restSeconds", schedule.restSeconds());
            root.put("energyJoules", schedule.energyJoules());
            root.put("lowerBoundSeconds", schedule.lowerBoundSeconds());
            root.put("gapRatio", schedule.gapRatio());
            root.put("provenShortest", schedule.provenShortest());
            root.put("restsProvenShortest", schedule.restsProvenShortest());
            root.put("ending", schedule.ending().name());
            root.put("message", schedule.message());
            ArrayNode steps = root.putArray("steps");
            schedule.jobs().forEach(job -> fill(steps.addObject(), job));
        } else if (answer instanceof Impossible impossible) {
            ArrayNode obstacles = root.putArray("obstacles");
            impossible.obstacles().forEach(obstacle -> {
                ObjectNode node = obstacles.addObject();
                node.put("reason", obstacle.reason().name());
                obstacle.jobId().ifPresent(id -> node.put("step", id));
                obstacle.pointId().ifPresent(id -> node.put("point", id));
                node.put("excessKelvin", obstacle.excessKelvin());
                node.put("what", obstacle.what());
                node.put("remedy", obstacle.remedy());
            });
        }
        ArrayNode stops = root.putArray("stopLimits");
        StopLimits.of(forecast).forEach(limit -> stops.addObject()
                .put("quantity", limit.quantity().name())
                .put("name", limit.name())
                .put("limit", limit.limit())
                .put("why", limit.why()));
        ArrayNode list = root.putArray("precautions");
        precautions.forEach(problem -> list.addObject()
                .put("severity", problem.severity().name().toLowerCase(Locale.ROOT))
                .put("where", problem.where())
                .put("what", problem.what())
                .put("remedy", problem.remedy()));
        forecast.notes().forEach(root.putArray("notes")::add);
        Cautions.put(root, cautions(forecast.project().heat().supply().battery()));
    }

    private void fill(ObjectNode node, ScheduledJob job) {
        StepForecast step = forecast.step(job.id()).orElseThrow();
        node.put("id", job.id());
        node.put("startSeconds", job.startSeconds());
        node.put("endSeconds", job.endSeconds());
        node.put("changeSeconds", job.changeSeconds());
        node.put("restSeconds", job.restSeconds());
        node.put("restCause", job.cause().name());
        job.limitPointId().ifPresent(id -> node.put("restPoint", WatchedPlace.key(id)));
        node.put("powerBasis", step.power().basis().name());
        step.power().watts().ifPresent(watts -> node.put("powerWatts", watts));
        node.put("outputWatts", step.outputWatts());
        Ranges.put(node, "heatWatts", step.heatWatts());
        step.current().ifPresent(current -> node.put("supplyAverageAmps", current.averageAmps())
                .put("supplyRmsAmps", current.rmsAmps())
                .put("supplyPeakAmps", current.peakAmps()));
        step.setVolts().ifPresent(volts -> node.put("setVolts", volts));
        step.fuse().ifPresent(fuse -> node.set("fuse", ThermalFuseCommand.node(fuse)));
        ArrayNode hot = node.putArray("places");
        for (WatchedPlace place : places) {
            Range celsius = place.celsius(job.peakCelsius());
            ObjectNode entry = hot.addObject();
            entry.put("id", place.key());
            entry.put("name", place.name());
            Ranges.put(entry, "peakCelsius", celsius);
            place.limitCelsius().ifPresent(limit -> entry.put("limitCelsius", limit));
        }
    }
}
