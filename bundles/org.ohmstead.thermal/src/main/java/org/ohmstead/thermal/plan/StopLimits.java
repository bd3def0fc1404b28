// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.model.Project;
import org.ohmstead.thermal.FuseBank;
import org.ohmstead.thermal.HeatPoint;

/** At what a run is to be stopped, by hand or by a watching instrument. */
public final class StopLimits {
    private StopLimits() {}

    /**
     * Returns the limits for a whole plan: of the case such that neither it nor its devices get too hot in the hottest
     * step, of every other point that has a limit, and of the supply's current the lowest of what supply and fuses bear
     * for as long as a step may last.
     *
     * @param forecast of the plan
     */
    public static List<StopLimit> of(PlanForecast forecast) {
        List<StopLimit> limits = new ArrayList<>();
        forecast.task().ifPresent(task -> temperatures(forecast, task, limits));
        current(forecast.project()).ifPresent(limits::add);
        return List.copyOf(limits);
    }

    /** Returns the limits for a step by itself: of the current what supply and fuses bear for its length, see {@link StepCurrentLimit}. */
    static List<StopLimit> ofStep(PlanForecast forecast) {
        List<StopLimit> limits = new ArrayList<>();
        forecast.task().ifPresent(task -> temperatures(forecast, task, limits));
        StepCurrentLimit.of(forecast).ifPresent(limits::add);
        return List.copyOf(limits);
    }

    private static void temperatures(PlanForecast forecast, ScheduleTask task, List<StopLimit> limits) {
        boolean caseSeen = false;
        for (HeatPoint point : task.model().points()) {
            if (point.limitCelsius().isEmpty() || isBody(point, "device")) {
                continue;
            }
            if (!isBody(point, "case")) {
                limits.add(celsius(
                        point,
                        point.limitCelsius().getAsDouble(),
                        "It is the most that the " + point.name() + " bears."));
            } else if (!caseSeen) {
                caseSeen = true;
                limits.add(ofCase(forecast, task, point));
            }
        }
    }

    private static boolean isBody(HeatPoint point, String name) {
        return point.id().equals(name) || point.id().startsWith(name + ".");
    }

    private static StopLimit ofCase(PlanForecast forecast, ScheduleTask task, HeatPoint point) {
        double own = point.limitCelsius().orElseThrow();
        OptionalDouble device = task.model().points().stream()
                .filter(other -> isBody(other, "device") && other.limitCelsius().isPresent())
                .mapToDouble(other -> other.limitCelsius().getAsDouble())
                .findFirst();
        double loudest = forecast.steps().stream()
                .mapToDouble(step -> step.loudHeatWatts().high())
                .max()
                .orElse(0);
        double byDevice = device.orElse(Double.POSITIVE_INFINITY)
                - forecast.deviceKelvinPerWatt().orElse(0) * loudest;
        return byDevice < own
                ? celsius(
                        point,
                        byDevice,
                        "In the step with the most heat, " + Said.three(loudest) + " W, the devices inside reach "
                                + Said.celsius(device.orElseThrow()) + " then.")
                : celsius(point, own, "It is the most that the " + point.name() + " may reach.");
    }

    private static StopLimit celsius(HeatPoint point, double celsius, String why) {
        return new StopLimit(StopLimit.Quantity.CELSIUS, point.name(), celsius, why);
    }

    private static Optional<StopLimit> current(Project project) {
        List<StopLimit> candidates = new ArrayList<>(ofSupply(project));
        fuseRule(project).ifPresent(candidates::add);
        return candidates.stream().min(Comparator.comparingDouble(StopLimit::limit));
    }

    static List<StopLimit> ofSupply(Project project) {
        List<StopLimit> candidates = new ArrayList<>();
        if (!project.heat().supply().battery()) {
            candidates.add(amps(project.bench().supply().currentLimitAmps(), "There the supply limits its current."));
        }
        project.heat()
                .supply()
                .continuousAmps()
                .ifPresent(amps -> candidates.add(amps(amps, "It is what the supply gives for as long as one likes.")));
        return candidates;
    }

    /** The current that all fuses together are to carry for ever at most. */
    static Optional<StopLimit> fuseRule(Project project) {
        double fuseAmps = project.amplifier().totalFuseAmps();
        return fuseAmps > 0
                ? Optional.of(amps(
                        FuseBank.CONTINUOUS_RATIO * fuseAmps, "Fuses are to carry " + FuseBank.CONTINUOUS_RULE + "."))
                : Optional.empty();
    }

    static StopLimit amps(double amps, String why) {
        return new StopLimit(StopLimit.Quantity.SUPPLY_AMPS, "current from the supply", amps, why);
    }
}
