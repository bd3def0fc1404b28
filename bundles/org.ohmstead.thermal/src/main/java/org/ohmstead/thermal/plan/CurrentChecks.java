// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.plan;

import java.util.List;
import java.util.OptionalDouble;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.model.Severity;
import org.ohmstead.thermal.FuseAnswer;
import org.ohmstead.thermal.SupplyCurrent;
import org.ohmstead.thermal.SupplyNoSolution;
import org.ohmstead.units.text.Messages;

/**
 * Looks at whether supply, fuses and load can take the current and power of a step. What rests on the rating of another load is an upper
 * bound of the power: it warns, but forbids nothing.
 */
final class CurrentChecks {
    private static final Messages TEXTS = Messages.of(CurrentChecks.class);

    private final Project project;
    private final List<Problem> problems;

    CurrentChecks(Project project, List<Problem> problems) {
        this.project = project;
        this.problems = problems;
    }

    void check(PlannedStep planned, StepForecast forecast) {
        if (forecast.current().isEmpty()) {
            problems.add(new Problem(
                    Severity.WARNING,
                    planned.where(),
                    forecast.power().sentence(),
                    TEXTS.text("current.unknown.remedy")));
            return;
        }
        if (!project.heat().supply().battery()) {
            limit(
                    planned,
                    gravest(forecast),
                    forecast.loudAmps(),
                    project.bench().supply().currentLimitAmps(),
                    "limits");
        }
        OptionalDouble continuous = project.heat().supply().continuousAmps();
        SupplyCurrent current = forecast.current().get();
        continuous.ifPresent(amps -> limit(planned, gravest(forecast), current.averageAmps(), amps, "long"));
        volts(planned, forecast);
        forecast.fuse().ifPresent(answer -> fuse(planned, gravest(forecast), answer));
        load(planned, forecast);
    }

    private static Severity gravest(StepForecast forecast) {
        return forecast.power().basis() == ExpectedPower.Basis.OTHER_LOAD ? Severity.WARNING : Severity.ERROR;
    }

    private void limit(PlannedStep planned, Severity gravest, double amps, double limitAmps, String which) {
        double margin = project.heat().pacing().currentMarginRatio();
        if (amps <= limitAmps * (1 - margin)) {
            return;
        }
        boolean beyond = amps > limitAmps;
        problems.add(new Problem(
                beyond ? gravest : Severity.WARNING,
                planned.where(),
                TEXTS.text(
                        (beyond ? "current.more." : "current.near.") + which,
                        planned.step().id(),
                        Said.three(amps),
                        Said.three(limitAmps)),
                TEXTS.text("current.remedy")));
    }

    private void volts(PlannedStep planned, StepForecast forecast) {
        double highest = project.bench().supply().highestVolts();
        double set = forecast.setVolts().orElse(0);
        if (set > highest && !project.heat().supply().battery()) {
            problems.add(new Problem(
                    Severity.ERROR,
                    planned.where() + (planned.warmUp() ? "" : ".supplyVolts"),
                    TEXTS.text(
                            "current.volts",
                            Said.three(planned.step().supplyVolts()),
                            planned.step().id(),
                            Said.three(set),
                            Said.three(highest)),
                    TEXTS.text("current.volts.remedy")));
        }
    }

    private void fuse(PlannedStep planned, Severity gravest, FuseAnswer answer) {
        if (answer instanceof FuseAnswer.Opens opens) {
            boolean during = opens.withinBurst()
                    || opens.earliestSeconds().orElse(opens.latestSeconds().orElse(0)) <= planned.seconds();
            problems.add(new Problem(
                    during ? gravest : Severity.WARNING,
                    planned.where(),
                    TEXTS.text("current.fuse", planned.step().id(), opens.reason()),
                    opens.remedy()));
        } else if (answer instanceof FuseAnswer.AboveContinuous above) {
            problems.add(new Problem(
                    Severity.WARNING,
                    planned.where(),
                    TEXTS.text("current.fuse", planned.step().id(), above.reason()),
                    above.remedy()));
        } else if (answer instanceof SupplyNoSolution none) {
            Problem problem = new Problem(Severity.NOTE, "$.amplifier.fuses", none.reason(), none.remedy());
            if (!problems.contains(problem)) {
                problems.add(problem);
            }
        }
    }

    private void load(PlannedStep planned, StepForecast forecast) {
        Pulse branch = Pulse.burst(planned.step().stimulus())
                .map(burst -> new Pulse(
                        forecast.power().watts().orElse(0),
                        forecast.power().watts().orElse(0) * Math.pow(10, burst.lowLevelDb() / 10)))
                .orElseGet(() -> Pulse.steady(forecast.power().watts().orElse(0)));
        double duty = Pulse.burst(planned.step().stimulus())
                .map(burst -> burst.onSeconds() / burst.periodSeconds())
                .orElse(1.0);
        double mean = duty * branch.loud() + (1 - duty) * branch.quiet();
        if (mean > planned.load().powerLimitWatts()) {
            problems.add(new Problem(
                    gravest(forecast),
                    planned.where(),
                    TEXTS.text(
                            "current.load",
                            planned.step().id(),
                            Said.three(mean),
                            planned.load().id(),
                            Said.three(planned.load().powerLimitWatts())),
                    TEXTS.text("current.load.remedy")));
        }
    }
}
