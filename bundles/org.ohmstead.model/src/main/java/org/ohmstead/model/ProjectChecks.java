// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
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
                problems.add(new Problem(
                        Severity.WARNING,
                        "$.heat.pacing.rests[" + index + "].stepId",
                        "A rest lies before the step \"" + rests.get(index).stepId()
                                + "\", which the plan does not have.",
                        "Remove the rest, or give it the id of a step of the plan."));
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
                problems.add(new Problem(
                        Severity.ERROR,
                        where + "[" + index + "].id",
                        "The id \"" + ids.get(index) + "\" is used twice.",
                        "Give each entry of the list an id of its own."));
            }
        }
    }

    private static void checkRatings(Project project, List<Problem> problems) {
        for (int index = 0; index < project.amplifier().ratings().size(); index++) {
            Rating rating = project.amplifier().ratings().get(index);
            boolean covered = project.plan().stream().anyMatch(step -> covers(project, step, rating));
            if (!covered) {
                problems.add(new Problem(
                        Severity.WARNING,
                        "$.amplifier.ratings[" + index + "]",
                        "No step of the plan measures the rating \"" + rating.id() + "\".",
                        "Add a step with its mode, load and kind of stimulus, or the sheet will call it not tested."));
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
                problems.add(new Problem(
                        Severity.ERROR,
                        "$.bench.meters",
                        "The bench has no meter for "
                                + needed.name().toLowerCase(Locale.ROOT).replace('_', ' ') + ".",
                        "Add the instrument with its specification; without it no uncertainty can be stated."));
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
                    problems.add(new Problem(
                            Severity.WARNING,
                            "$.loads[" + index + "].branches[" + branch + "].ohms",
                            String.format(
                                    Locale.ROOT,
                                    "The load \"%s\" measures %.4g ohm, more than 5 %% from the %.4g ohm it stands for.",
                                    load.id(),
                                    ohms,
                                    load.nominalOhms()),
                            "Measure it again by four wires, or build it nearer to its nominal value."));
                }
                checkHeating(load, branch, "$.loads[" + index + "].branches[" + branch + "]", problems);
            }
        }
    }

    private static void checkHeating(BenchLoad load, int branch, String where, List<Problem> problems) {
        double ratio = load.branches().get(branch).heatingRatio();
        if (ratio > MOST_HEATING_RATIO) {
            problems.add(
                    new Problem(
                            Severity.WARNING,
                            where + ".heatingRatio",
                            String.format(
                                    Locale.ROOT,
                                    "The load \"%s\" is said to change its resistance by up to %.3g %% when it is hot, more than %.0f %%.",
                                    load.id(),
                                    100 * ratio,
                                    100 * MOST_HEATING_RATIO),
                            "Enter it as a ratio, for example 0.01 for 1 %; a load that really changes so much tells little of power."));
        }
    }

    private static void checkStep(Project project, Step step, String where, List<Problem> problems) {
        if (project.load(step.loadId()).isEmpty()) {
            problems.add(new Problem(
                    Severity.ERROR,
                    where + ".loadId",
                    "The step \"" + step.id() + "\" names the load \"" + step.loadId() + "\", which does not exist.",
                    "Use the id of one of the loads, or add the load."));
            return;
        }
        if (step.mode() == Mode.BRIDGED && project.amplifier().channelCount() < 2) {
            problems.add(new Problem(
                    Severity.ERROR,
                    where + ".mode",
                    "The step \"" + step.id() + "\" is bridged, but the amplifier has only one channel.",
                    "Use the mode single, or correct the amplifier's channel count."));
        }
        BenchLoad load = project.load(step.loadId()).orElseThrow();
        int channelsNeeded = step.mode() == Mode.STEREO ? project.amplifier().channelCount() : 1;
        if (load.branches().size() < channelsNeeded) {
            problems.add(new Problem(
                    Severity.ERROR,
                    where + ".loadId",
                    "The step \"" + step.id() + "\" needs " + channelsNeeded + " resistances, but the load \""
                            + load.id() + "\" has " + load.branches().size() + ".",
                    "Give the load one branch for each channel."));
        }
        checkStepLimits(project, step, load, where, problems);
    }

    private static void checkStepLimits(
            Project project, Step step, BenchLoad load, String where, List<Problem> problems) {
        OptionalDouble lowest = project.amplifier().lowestLoadOhms(step.mode());
        if (lowest.isPresent()
                && load.nominalOhms() < lowest.getAsDouble() * (1 - 1e-9)
                && !step.belowLowestLoadConfirmed()) {
            problems.add(new Problem(
                    Severity.ERROR,
                    where + ".belowLowestLoadConfirmed",
                    String.format(
                            Locale.ROOT,
                            "The step \"%s\" works into %.4g ohm, below the lowest load of %.4g ohm that the maker allows.",
                            step.id(),
                            load.nominalOhms(),
                            lowest.getAsDouble()),
                    "Leave the step out, or confirm it and accept the risk to the amplifier."));
        }
        Supply supply = project.bench().supply();
        if (step.supplyVolts() > supply.highestVolts() || step.supplyVolts() < supply.lowestVolts()) {
            problems.add(new Problem(
                    Severity.ERROR,
                    where + ".supplyVolts",
                    String.format(
                            Locale.ROOT,
                            "The step \"%s\" wants %.4g V, outside the supply's range of %.4g V to %.4g V.",
                            step.id(),
                            step.supplyVolts(),
                            supply.lowestVolts(),
                            supply.highestVolts()),
                    "Choose a voltage within the range, or another supply."));
        }
    }
}
