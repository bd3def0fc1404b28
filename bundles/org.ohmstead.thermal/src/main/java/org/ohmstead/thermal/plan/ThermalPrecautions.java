// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.model.Severity;
import org.ohmstead.thermal.SupplyCautions;
import org.ohmstead.units.text.Messages;

/** What is to be said about heat, current and time of a plan before it is run, each with a path into the project. */
public final class ThermalPrecautions {
    private static final Messages TEXTS = Messages.of(ThermalPrecautions.class);

    private ThermalPrecautions() {}

    /**
     * Returns the precautions of a plan: what supply, fuses and loads cannot take, what gets too hot whatever the
     * rests, and what is not known. Of bodies that stand in the model several times only the worst is named.
     *
     * @param forecast of the plan
     * @param answer what the scheduler said to it; empty when it was not asked
     */
    public static List<Problem> of(PlanForecast forecast, Optional<ScheduleAnswer> answer) {
        Require.present(forecast, "forecast");
        Require.present(answer, "answer");
        List<Problem> problems = new ArrayList<>(forecast.problems());
        if (answer.isPresent() && answer.get() instanceof Impossible impossible) {
            Map<List<String>, Obstacle> worst = new LinkedHashMap<>();
            for (Obstacle obstacle : impossible.obstacles()) {
                worst.merge(
                        List.of(
                                obstacle.jobId().orElse(""),
                                body(obstacle.pointId().orElse(""))),
                        obstacle,
                        (one, other) -> one.excessKelvin() >= other.excessKelvin() ? one : other);
            }
            worst.values()
                    .forEach(obstacle -> problems.add(new Problem(
                            Severity.ERROR, where(forecast.project(), obstacle), obstacle.what(), obstacle.remedy())));
        }
        if (forecast.project().heat().supply().battery()) {
            problems.add(new Problem(
                    Severity.NOTE,
                    "$.heat.supply.battery",
                    TEXTS.text("precaution.battery"),
                    SupplyCautions.batteries()));
        }
        return List.copyOf(problems);
    }

    /** The copies of the amplifier's bodies have an ending each. */
    private static String body(String pointId) {
        for (String name : AmplifierBodies.names()) {
            if (pointId.startsWith(name + ".")) {
                return name;
            }
        }
        return pointId;
    }

    private static String where(Project project, Obstacle obstacle) {
        return switch (obstacle.reason()) {
            case AMBIENT -> "$.bench.ambientCelsius";
            case IDLE -> "$.heat.amplifier.idleWatts";
            case JOB, ORDER -> job(project, obstacle.jobId().orElse(""));
        };
    }

    private static String job(Project project, String id) {
        for (int index = 0; index < project.plan().size(); index++) {
            if (project.plan().get(index).id().equals(id)) {
                return "$.plan[" + index + "]";
            }
        }
        return id.equals(PlanForecast.WARM_UP) ? "$.heat.pacing.warmUp" : "$.plan";
    }
}
