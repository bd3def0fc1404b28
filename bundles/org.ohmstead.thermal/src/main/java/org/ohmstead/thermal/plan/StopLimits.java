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
import org.ohmstead.units.text.Messages;

/** At what a run is to be stopped, by hand or by a watching instrument. */
public final class StopLimits {
    private static final Messages TEXTS = Messages.of(StopLimits.class);
    private static final String SUPPLY = "supply";

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
                limits.add(celsius(point, point.limitCelsius().getAsDouble(), TEXTS.text("limit.bears", point.name())));
            } else if (!caseSeen) {
                caseSeen = true;
                limits.add(ofCase(forecast, task, point));
            }
        }
    }

    private static boolean isBody(HeatPoint point, String name) {
        return isBody(point.id(), name);
    }

    /** Returns whether a limit is that of the amplifier's case. */
    static boolean ofCase(StopLimit limit) {
        return isBody(limit.placeId(), "case");
    }

    private static boolean isBody(String pointId, String name) {
        return pointId.equals(name) || pointId.startsWith(name + ".");
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
                        TEXTS.text("limit.devices", Said.three(loudest), Said.celsius(device.orElseThrow())))
                : celsius(point, own, TEXTS.text("limit.reach", point.name()));
    }

    private static StopLimit celsius(HeatPoint point, double celsius, String why) {
        return new StopLimit(StopLimit.Quantity.CELSIUS, point.id(), point.name(), celsius, why);
    }

    private static Optional<StopLimit> current(Project project) {
        List<StopLimit> candidates = new ArrayList<>(ofSupply(project));
        fuseRule(project).ifPresent(candidates::add);
        return candidates.stream().min(Comparator.comparingDouble(StopLimit::limit));
    }

    static List<StopLimit> ofSupply(Project project) {
        List<StopLimit> candidates = new ArrayList<>();
        if (!project.heat().supply().battery()) {
            candidates.add(amps(project.bench().supply().currentLimitAmps(), TEXTS.text("limit.supply")));
        }
        project.heat()
                .supply()
                .continuousAmps()
                .ifPresent(amps -> candidates.add(amps(amps, TEXTS.text("limit.continuous"))));
        return candidates;
    }

    /** The current that all fuses together are to carry for ever at most. */
    static Optional<StopLimit> fuseRule(Project project) {
        double fuseAmps = project.amplifier().totalFuseAmps();
        return fuseAmps > 0
                ? Optional.of(amps(
                        FuseBank.CONTINUOUS_RATIO * fuseAmps, TEXTS.text("limit.fuses", FuseBank.continuousRule())))
                : Optional.empty();
    }

    static StopLimit amps(double amps, String why) {
        return new StopLimit(StopLimit.Quantity.SUPPLY_AMPS, SUPPLY, TEXTS.text("limit.amps"), amps, why);
    }
}
