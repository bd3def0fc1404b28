// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.jobs;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.model.AmplifierHeat;
import org.ohmstead.model.OutputClass;
import org.ohmstead.model.PartSharing;
import org.ohmstead.model.Project;
import org.ohmstead.model.Range;
import org.ohmstead.thermal.plan.HeatJob;
import org.ohmstead.thermal.plan.PlanForecast;
import org.ohmstead.thermal.plan.ScheduleTask;

/** An amplifier whose heating and cooling have a closed form. */
final class OneLump {
    static final PartSharing NO_PARTS = (stock, branch) -> List.of();
    static final String HOT_STEP = "stereo-2ohm-14V4";
    static final double CASE_KELVIN_PER_WATT = 0.45;
    static final double CASE_JOULES_PER_KELVIN = 2900;
    private static final double CASE_LIMIT_CELSIUS = 80;

    private OneLump() {}

    /** The demo with a case that is one lump of known size, and nothing else that gets warm. */
    static Project in(Project demo) {
        AmplifierHeat lump = AmplifierHeat.NONE
                .withOutputClass(OutputClass.CLASS_AB)
                .withRailVolts(OptionalDouble.of(31.4))
                .withConverterEfficiencyRatio(Optional.of(Range.of(0.86)))
                .withIdleWatts(Optional.of(Range.of(8)))
                .withCaseKelvinPerWatt(Optional.of(Range.of(CASE_KELVIN_PER_WATT)))
                .withCaseJoulesPerKelvin(Optional.of(Range.of(CASE_JOULES_PER_KELVIN)))
                .withCaseLimitCelsius(OptionalDouble.of(CASE_LIMIT_CELSIUS));
        return demo.withHeat(demo.heat().withAmplifier(lump));
    }

    /**
     * Closed form of one lump: it goes towards P R with the time constant R C. At the end of the step it may be at the limit less the
     * margin; at its beginning it must be that much cooler; at rest it goes towards the idle power's rise.
     */
    static double expectedRestSeconds(Project project, double caseCelsius) {
        ScheduleTask task = PlanForecast.of(project, NO_PARTS).task().orElseThrow();
        HeatJob job = job(task);
        double tau = CASE_KELVIN_PER_WATT * CASE_JOULES_PER_KELVIN;
        double onRise = CASE_KELVIN_PER_WATT * job.watts().get(task.model().sourceIndex("amplifier"));
        double idleRise =
                CASE_KELVIN_PER_WATT * task.idleWatts().get(task.model().sourceIndex("amplifier"));
        double mostAtEnd = CASE_LIMIT_CELSIUS - task.marginKelvin() - task.ambientCelsius();
        double mostAtStart = onRise + (mostAtEnd - onRise) * Math.exp(job.onSeconds() / tau);
        double now = caseCelsius - task.ambientCelsius();
        return tau * Math.log((now - idleRise) / (mostAtStart - idleRise));
    }

    static HeatJob job(ScheduleTask task) {
        return task.jobs().stream()
                .filter(each -> each.id().equals(HOT_STEP))
                .findFirst()
                .orElseThrow();
    }
}
