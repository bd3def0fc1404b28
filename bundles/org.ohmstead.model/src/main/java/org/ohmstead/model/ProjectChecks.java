// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;

/** Finds what is wrong or risky in a project as a whole, beyond what each record's constructor checks. */
public final class ProjectChecks {
    private static final double SAME_LOAD_RATIO = 0.05;
    private static final double MOST_HEATING_RATIO = 0.5;

    private ProjectChecks() {}

    /**
     * Returns the problems of a project, in the order of the file.
     *
     * @param project what to check
     * @param today the day for which calibration dates are judged
     */
    public static List<Problem> check(Project project, LocalDate today) {
        List<Problem> problems = new ArrayList<>();
        checkIds(project, problems);
        checkRatings(project, problems);
        LabChecks.checkPrice(project, problems);
        checkMeters(project, today, problems);
        checkLoads(project, problems);
        for (int index = 0; index < project.plan().size(); index++) {
            checkStep(project, project.plan().get(index), "$.plan[" + index + "]", problems);
        }
        LabChecks.checkVerdictRule(project, problems);
        checkRests(project, problems);
        LabChecks.checkStandards(project, problems);
        LabChecks.checkSharedLog(project, problems);
        return List.copyOf(problems);
    }

    private static void checkRests(Project project, List<Problem> problems) {
        List<Rest> rests = project.heat().pacing().rests();
        for (int index = 0; index < rests.size(); index++) {
            if (project.step(rests.get(index).stepId()).isEmpty()) {
                problems.add(Problems.of(
                        Severity.WARNING,
                        "$.heat.pacing.rests[" + index + "].stepId",
                        "rest.step",
                        rests.get(index).stepId()));
            }
        }
    }

    private static void checkIds(Project project, List<Problem> problems) {
        unique(project.amplifier().ratings().stream().map(Rating::id).toList(), "$.amplifier.ratings", problems);
        unique(project.bench().meters().stream().map(Meter::id).toList(), "$.bench.meters", problems);
        unique(project.bench().parts().stream().map(Part::id).toList(), "$.bench.parts", problems);
        unique(project.loads().stream().map(BenchLoad::id).toList(), "$.loads", problems);
        unique(project.plan().stream().map(Step::id).toList(), "$.plan", problems);
        unique(project.checkStandards().stream().map(CheckStandard::id).toList(), "$.checkStandards", problems);
    }

    private static void unique(List<String> ids, String where, List<Problem> problems) {
        Set<String> seen = new HashSet<>();
        for (int index = 0; index < ids.size(); index++) {
            if (!seen.add(ids.get(index))) {
                problems.add(Problems.of(Severity.ERROR, where + "[" + index + "].id", "id.twice", ids.get(index)));
            }
        }
    }

    private static void checkRatings(Project project, List<Problem> problems) {
        for (int index = 0; index < project.amplifier().ratings().size(); index++) {
            Rating rating = project.amplifier().ratings().get(index);
            boolean covered = project.plan().stream().anyMatch(step -> covers(project, step, rating));
            if (!covered) {
                problems.add(Problems.of(
                        Severity.WARNING, "$.amplifier.ratings[" + index + "]", "rating.untested", rating.id()));
            }
        }
    }

    private static boolean covers(Project project, Step step, Rating rating) {
        return step.mode() == rating.mode()
                && step.stimulus().powerKind() == rating.kind()
                && project.load(step.loadId())
                        .map(load ->
                                Math.abs(load.nominalOhms() - rating.loadOhms()) < SAME_LOAD_RATIO * rating.loadOhms())
                        .orElse(false);
    }

    private static void checkMeters(Project project, LocalDate today, List<Problem> problems) {
        for (MeterQuantity needed : List.of(MeterQuantity.OUTPUT_VOLTS, MeterQuantity.SUPPLY_VOLTS)) {
            if (project.bench().meterFor(needed).isEmpty()) {
                problems.add(Problems.of(Severity.ERROR, "$.bench.meters", "meter.none." + needed.name()));
            }
        }
        for (int index = 0; index < project.bench().meters().size(); index++) {
            Meter meter = project.bench().meters().get(index);
            LabChecks.checkCalibration(meter, "$.bench.meters[" + index + "]", today, problems);
        }
    }

    private static void checkLoads(Project project, List<Problem> problems) {
        for (int index = 0; index < project.loads().size(); index++) {
            BenchLoad load = project.loads().get(index);
            for (int branch = 0; branch < load.branches().size(); branch++) {
                double ohms = load.branches().get(branch).ohms();
                if (Math.abs(ohms - load.nominalOhms()) > SAME_LOAD_RATIO * load.nominalOhms()) {
                    problems.add(Problems.of(
                            Severity.WARNING,
                            "$.loads[" + index + "].branches[" + branch + "].ohms",
                            "load.off",
                            load.id(),
                            Problems.figure("%.4g", ohms),
                            Problems.figure("%.4g", load.nominalOhms())));
                }
                checkHeating(load, branch, "$.loads[" + index + "].branches[" + branch + "]", problems);
            }
        }
    }

    private static void checkHeating(BenchLoad load, int branch, String where, List<Problem> problems) {
        double ratio = load.branches().get(branch).heatingRatio();
        if (ratio > MOST_HEATING_RATIO) {
            problems.add(Problems.of(
                    Severity.WARNING,
                    where + ".heatingRatio",
                    "load.heating",
                    load.id(),
                    Problems.figure("%.3g", 100 * ratio),
                    Problems.figure("%.0f", 100 * MOST_HEATING_RATIO)));
        }
    }

    private static void checkStep(Project project, Step step, String where, List<Problem> problems) {
        if (project.load(step.loadId()).isEmpty()) {
            problems.add(Problems.of(Severity.ERROR, where + ".loadId", "step.load", step.id(), step.loadId()));
            return;
        }
        if (step.mode() == Mode.BRIDGED && project.amplifier().channelCount() < 2) {
            problems.add(Problems.of(Severity.ERROR, where + ".mode", "step.bridged", step.id()));
        }
        BenchLoad load = project.load(step.loadId()).orElseThrow();
        int channelsNeeded = step.mode() == Mode.STEREO ? project.amplifier().channelCount() : 1;
        if (load.branches().size() < channelsNeeded) {
            problems.add(Problems.of(
                    Severity.ERROR,
                    where + ".loadId",
                    "step.branches",
                    step.id(),
                    Integer.toString(channelsNeeded),
                    load.id(),
                    Integer.toString(load.branches().size())));
        }
        checkStepLimits(project, step, load, where, problems);
    }

    private static void checkStepLimits(
            Project project, Step step, BenchLoad load, String where, List<Problem> problems) {
        OptionalDouble lowest = project.amplifier().lowestLoadOhms(step.mode());
        if (lowest.isPresent()
                && load.nominalOhms() < lowest.getAsDouble() * (1 - 1e-9)
                && !step.belowLowestLoadConfirmed()) {
            problems.add(Problems.of(
                    Severity.ERROR,
                    where + ".belowLowestLoadConfirmed",
                    "step.lowestLoad",
                    step.id(),
                    Problems.figure("%.4g", load.nominalOhms()),
                    Problems.figure("%.4g", lowest.getAsDouble())));
        }
        Supply supply = project.bench().supply();
        if (step.supplyVolts() > supply.highestVolts() || step.supplyVolts() < supply.lowestVolts()) {
            problems.add(Problems.of(
                    Severity.ERROR,
                    where + ".supplyVolts",
                    "step.supply",
                    step.id(),
                    Problems.figure("%.4g", step.supplyVolts()),
                    Problems.figure("%.4g", supply.lowestVolts()),
                    Problems.figure("%.4g", supply.highestVolts())));
        }
    }
}
