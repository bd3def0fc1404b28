// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import org.ohmstead.model.Project;
import org.ohmstead.thermal.FuseBank;
import org.ohmstead.thermal.FuseCurve;
import org.ohmstead.thermal.FuseOpening;
import org.ohmstead.thermal.SupplyCurrent;
import org.ohmstead.units.text.Messages;

/**
 * The current from the supply at which a step by itself is to be stopped: the lowest of what supply and fuses bear for as long as the step
 * lasts. A limit that the forecast of the step is beyond already does not count: somebody has said yes to that, or the step is forbidden.
 */
final class StepCurrentLimit {
    private static final Messages TEXTS = Messages.of(StepCurrentLimit.class);
    private static final double HIGHEST_RATIO = 20;
    private static final int HALVINGS = 60;

    private StepCurrentLimit() {}

    static Optional<StopLimit> of(PlanForecast forecast) {
        Project project = forecast.project();
        double expectedAmps = forecast.steps().stream()
                .flatMap(step -> step.current().stream())
                .mapToDouble(SupplyCurrent::averageAmps)
                .max()
                .orElse(0);
        List<StopLimit> candidates = new ArrayList<>(StopLimits.ofSupply(project));
        candidates.addAll(ofFuses(project));
        return candidates.stream()
                .filter(limit -> limit.limit() > expectedAmps)
                .min(Comparator.comparingDouble(StopLimit::limit));
    }

    private static List<StopLimit> ofFuses(Project project) {
        Optional<FuseBank> bank = FuseBanks.of(project);
        Optional<FuseCurve> curve = bank.flatMap(FuseBank::curve);
        if (curve.isEmpty()) {
            return StopLimits.fuseRule(project).stream().toList();
        }
        double totalAmps = bank.get().totalRatedAmps();
        double seconds = project.heat().pacing().stepSeconds();
        String lasts = Said.three(seconds);
        List<StopLimit> limits = new ArrayList<>();
        ratio(curve.get(), seconds, StepCurrentLimit::soonestSeconds)
                .ifPresent(ratio -> limits.add(StopLimits.amps(ratio * totalAmps, TEXTS.text("limit.mayOpen", lasts))));
        ratio(curve.get(), seconds, StepCurrentLimit::latestSeconds)
                .ifPresent(ratio -> limits.add(StopLimits.amps(ratio * totalAmps, TEXTS.text("limit.open", lasts))));
        return limits;
    }

    private static double soonestSeconds(FuseOpening.Within within) {
        return within.earliestSeconds().orElse(latestSeconds(within));
    }

    private static double latestSeconds(FuseOpening.Within within) {
        return within.latestSeconds().orElse(Double.POSITIVE_INFINITY);
    }

    /** The current over the rating beyond which a fuse opens within a time; empty when none does. */
    private static OptionalDouble ratio(
            FuseCurve curve, double seconds, ToDoubleFunction<FuseOpening.Within> opensAfter) {
        double holds = 0;
        double opens = HIGHEST_RATIO;
        if (holds(curve.opening(opens), seconds, opensAfter)) {
            return OptionalDouble.empty();
        }
        for (int i = 0; i < HALVINGS; i++) {
            double middle = (holds + opens) / 2;
            if (holds(curve.opening(middle), seconds, opensAfter)) {
                holds = middle;
            } else {
                opens = middle;
            }
        }
        return OptionalDouble.of(holds);
    }

    private static boolean holds(FuseOpening opening, double seconds, ToDoubleFunction<FuseOpening.Within> opensAfter) {
        return !(opening instanceof FuseOpening.Within within) || opensAfter.applyAsDouble(within) > seconds;
    }
}
