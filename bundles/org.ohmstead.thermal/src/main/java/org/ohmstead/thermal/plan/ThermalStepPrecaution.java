// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import org.ohmstead.model.PartSharing;
import org.ohmstead.model.Precaution;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.model.Step;
import org.osgi.service.component.annotations.Component;
import org.osgi.service.component.annotations.Reference;
import org.osgi.service.component.annotations.ReferenceCardinality;
import org.osgi.service.component.annotations.ReferencePolicy;
import org.osgi.service.component.annotations.ReferencePolicyOption;

/**
 * The precautions of a step about heat and current, as if it were the whole plan and everything cold, and the limits at which it is
 * stopped; in a running framework a service. Without a {@link PartSharing} the parts of loads are not looked at.
 */
@Component
public final class ThermalStepPrecaution implements Precaution {
    private static final String ID = "org.ohmstead.thermal";
    private static final String FIRST_STEP = "$.plan[0]";
    private static final PartSharing NONE = (stock, branch) -> List.of();

    private final AtomicReference<PartSharing> sharing = new AtomicReference<>(NONE);

    /** Makes the service. */
    public ThermalStepPrecaution() {
        // for the framework
    }

    /** Takes what tells how power falls on the parts of a load. */
    @Reference(
            service = PartSharing.class,
            cardinality = ReferenceCardinality.OPTIONAL,
            policy = ReferencePolicy.DYNAMIC,
            policyOption = ReferencePolicyOption.GREEDY)
    public void bindSharing(PartSharing came) {
        sharing.set(Require.present(came, "came"));
    }

    /** Lets it go. */
    public void unbindSharing(PartSharing gone) {
        sharing.compareAndSet(gone, NONE);
    }

    @Override
    public String id() {
        return ID;
    }

    /** Returns what {@link ThermalPrecautions} has to say of a plan of this one step. */
    @Override
    public List<Problem> check(Project project, Step step) {
        PlanForecast forecast = forecast(project, step);
        Optional<ScheduleAnswer> answer =
                forecast.task().map(task -> Scheduler.run(task, SearchEffort.USUAL, () -> false, done -> {}));
        int index = project.plan().indexOf(step);
        String own = index < 0 ? "$.plan" : "$.plan[" + index + "]";
        return ThermalPrecautions.of(forecast, answer).stream()
                .map(problem ->
                        new Problem(problem.severity(), place(problem.where(), own), problem.what(), problem.remedy()))
                .toList();
    }

    private static String place(String where, String own) {
        return where.startsWith(FIRST_STEP) ? own + where.substring(FIRST_STEP.length()) : where;
    }

    /**
     * Returns the limits of this one step, as far as a bench can watch them: the case such that neither it nor its devices get too hot,
     * and the current that supply and fuses bear for as long as the step lasts.
     */
    @Override
    public List<org.ohmstead.model.StopLimit> stopLimits(Project project, Step step) {
        List<org.ohmstead.model.StopLimit> limits = new ArrayList<>();
        for (StopLimit limit : StopLimits.ofStep(forecast(project, step))) {
            quantity(limit)
                    .map(quantity -> new org.ohmstead.model.StopLimit(quantity, limit.limit(), limit.why()))
                    .ifPresent(limits::add);
        }
        return List.copyOf(limits);
    }

    private static Optional<org.ohmstead.model.StopLimit.Quantity> quantity(StopLimit limit) {
        return switch (limit.quantity()) {
            case SUPPLY_AMPS -> Optional.of(org.ohmstead.model.StopLimit.Quantity.SUPPLY_AMPS);
            case CELSIUS ->
                StopLimits.ofCase(limit)
                        ? Optional.of(org.ohmstead.model.StopLimit.Quantity.CASE_CELSIUS)
                        : Optional.empty();
        };
    }

    private PlanForecast forecast(Project project, Step step) {
        Require.present(project, "project");
        Require.present(step, "step");
        Project alone = project.withPlan(List.of(step))
                .withHeat(project.heat()
                        .withPacing(project.heat().pacing().withWarmUp(false).withRests(List.of())));
        return PlanForecast.of(alone, sharing.get());
    }
}
