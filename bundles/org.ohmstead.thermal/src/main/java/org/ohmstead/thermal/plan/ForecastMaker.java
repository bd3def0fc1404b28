// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.Cable;
import org.ohmstead.model.PartSharing;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.model.Range;
import org.ohmstead.model.Severity;
import org.ohmstead.model.Step;
import org.ohmstead.model.SupplyLimits;
import org.ohmstead.thermal.CableLead;
import org.ohmstead.thermal.FuseBank;
import org.ohmstead.thermal.HeatModel;
import org.ohmstead.units.text.Messages;

/** Puts a {@link PlanForecast} together. */
final class ForecastMaker {
    private static final Messages TEXTS = Messages.of(ForecastMaker.class);
    private static final double USUAL_AMBIENT_CELSIUS = 25;

    private final Project project;
    private final Function<Step, Optional<KnownPower>> known;
    private final Set<String> notes = new LinkedHashSet<>();
    private final List<Problem> problems = new ArrayList<>();
    private final double ambientCelsius;
    private final AmplifierBodies amplifier;
    private final LoadBodies loads;
    private final CableLead lead;

    ForecastMaker(Project project, PartSharing sharing, Function<Step, Optional<KnownPower>> known) {
        this.project = project;
        this.known = known;
        ambientCelsius = project.bench().ambientCelsius().orElseGet(() -> {
            notes.add(TEXTS.text("forecast.noAir"));
            return USUAL_AMBIENT_CELSIUS;
        });
        amplifier = new AmplifierBodies(project, ambientCelsius, notes);
        loads = new LoadBodies(project, sharing, ambientCelsius, notes);
        lead = lead();
    }

    PlanForecast make() {
        List<PlannedStep> planned = planned();
        StepMaker maker = new StepMaker(project, lead, fuses());
        CurrentChecks checks = new CurrentChecks(project, problems);
        List<StepForecast> steps = new ArrayList<>();
        for (PlannedStep each : planned) {
            StepForecast step = maker.make(each);
            checks.check(each, step);
            steps.add(step);
        }
        ofOtherLoads(steps);
        steps.forEach(step -> step.remarks().stream().skip(1).forEach(notes::add));
        Optional<ScheduleTask> task = planned.isEmpty() ? Optional.empty() : Optional.of(task(planned, steps));
        Optional<Range> device = project.heat().amplifier().deviceKelvinPerWatt();
        return new PlanForecast(
                project,
                steps,
                task,
                device.isPresent() ? OptionalDouble.of(device.get().high()) : OptionalDouble.empty(),
                problems,
                List.copyOf(notes));
    }

    private void ofOtherLoads(List<StepForecast> steps) {
        List<StepForecast> estimated = steps.stream()
                .filter(step -> step.power().basis() == ExpectedPower.Basis.OTHER_LOAD)
                .toList();
        if (estimated.size() == 1) {
            notes.add(estimated.get(0).power().sentence());
        } else if (!estimated.isEmpty()) {
            notes.add(TEXTS.text(
                    "forecast.otherLoads",
                    Integer.toString(estimated.size()),
                    estimated.get(0).jobId()));
        }
    }

    private List<PlannedStep> planned() {
        List<PlannedStep> planned = new ArrayList<>();
        if (project.heat().pacing().warmUp()) {
            Optional<PlannedStep> warmUp = WarmUp.of(project);
            warmUp.ifPresent(planned::add);
            notes.add(warmUp.isPresent() ? WarmUp.note() : TEXTS.text("forecast.noWarmUp"));
        }
        Set<String> ids = new LinkedHashSet<>();
        for (int index = 0; index < project.plan().size(); index++) {
            Step step = project.plan().get(index);
            Optional<BenchLoad> load = project.load(step.loadId());
            boolean usable = load.isPresent() && !step.id().equals(PlanForecast.WARM_UP) && ids.add(step.id());
            if (usable) {
                planned.add(new PlannedStep(
                        step,
                        load.get(),
                        known.apply(step),
                        "$.plan[" + index + "]",
                        project.heat().pacing().stepSeconds()));
            } else {
                notes.add(TEXTS.text("forecast.leftOut", step.id()));
            }
        }
        return planned;
    }

    private CableLead lead() {
        Cable cable = project.bench().cable();
        SupplyLimits limits = project.heat().supply();
        double solid = 2e-3 * Math.sqrt(cable.crossSectionSquareMillimetres() / Math.PI);
        if (limits.cableOuterMetres().orElse(1) < solid) {
            problems.add(new Problem(
                    Severity.WARNING,
                    "$.heat.supply.cableOuterMetres",
                    TEXTS.text("forecast.thinCable"),
                    TEXTS.text("forecast.thinCable.remedy")));
            limits = new SupplyLimits(
                    limits.battery(),
                    limits.sourceOhms(),
                    limits.continuousAmps(),
                    limits.cableLimitCelsius(),
                    OptionalDouble.empty());
        }
        return CableLead.of(cable, limits);
    }

    private Optional<FuseBank> fuses() {
        Optional<FuseBank> bank = FuseBanks.of(project);
        if (bank.isEmpty() && !project.amplifier().fuses().isEmpty()) {
            notes.add(TEXTS.text("forecast.fuses"));
        }
        return bank;
    }

    private ScheduleTask task(List<PlannedStep> planned, List<StepForecast> steps) {
        HeatModel.Builder builder = new HeatModel.Builder();
        Optional<Range> caseKelvinPerWatt = amplifier.caseKelvinPerWatt();
        if (caseKelvinPerWatt.isPresent()) {
            amplifier.add(builder, caseKelvinPerWatt.get());
        } else {
            problems.add(new Problem(
                    Severity.WARNING,
                    "$.heat.amplifier.caseKelvinPerWatt",
                    TEXTS.text("forecast.noCase"),
                    TEXTS.text("forecast.noCase.remedy")));
        }
        List<Map<String, Pulse>> powers = new ArrayList<>();
        for (int i = 0; i < steps.size(); i++) {
            Map<String, Pulse> own = new HashMap<>(loads.powers(planned.get(i), steps.get(i)));
            own.putAll(JobMaker.powers(planned.get(i), steps.get(i), lead));
            powers.add(own);
        }
        loads.add(builder);
        cable(builder);
        return new JobMaker(project, builder.build(), ambientCelsius).task(planned, steps, powers);
    }

    private void cable(HeatModel.Builder builder) {
        notes.addAll(lead.notes());
        if (ambientCelsius < lead.limitCelsius()) {
            builder.chain(lead.point(), CableLead.ID, lead.chain(ambientCelsius));
        } else {
            problems.add(new Problem(
                    Severity.ERROR,
                    "$.bench.ambientCelsius",
                    TEXTS.text("forecast.warmAir", Said.celsius(ambientCelsius), Said.celsius(lead.limitCelsius())),
                    TEXTS.text("forecast.warmAir.remedy")));
        }
    }
}
