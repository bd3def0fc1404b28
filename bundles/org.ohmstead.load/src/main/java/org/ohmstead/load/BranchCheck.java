// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.LoadBranch;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.model.Severity;
import org.ohmstead.model.Step;
import org.ohmstead.model.Stimulus;
import org.ohmstead.units.text.Messages;

/** Looks at one branch of a load in one step. */
final class BranchCheck {
    private static final Messages TEXTS = Messages.of(BranchCheck.class);

    private static final double USUAL_CELSIUS = 25;
    private static final double LEADS_OHMS = 0.1;
    private static final double POWER_ERROR_RATIO = 0.01;

    private static final NetworkNotation.Options READING = NetworkNotation.Options.USUAL.withCountsChecked(false);

    private final Project project;
    private final Step step;
    private final BenchLoad load;
    private final LoadBranch branch;
    private final String loadPath;
    private final String branchPath;
    private final String name;
    private final List<Problem> problems;

    BranchCheck(Project project, Step step, BenchLoad load, int branchIndex, String loadPath, List<Problem> problems) {
        this.project = project;
        this.step = step;
        this.load = load;
        this.branch = load.branches().get(branchIndex);
        this.loadPath = loadPath;
        this.branchPath = loadPath + ".branches[" + branchIndex + "]";
        boolean different = load.branches().stream().distinct().count() > 1;
        this.name = different
                ? TEXTS.text("branch.nameOfOne", load.id(), Integer.toString(branchIndex + 1))
                : TEXTS.text("branch.name", load.id());
        this.problems = problems;
    }

    /** Adds what is wrong and returns the branch's network when it has one that can be read. */
    Optional<Network> run(OptionalDouble watts) {
        if (watts.isPresent()) {
            statedLimit(meanWatts(watts.getAsDouble()));
        }
        Optional<Network> network = read();
        if (network.isPresent()) {
            values(network.get());
            if (watts.isPresent()) {
                new HeatCheck(step, network.get(), ambientCelsius(), name, branchPath + ".network", problems)
                        .run(watts.getAsDouble(), meanWatts(watts.getAsDouble()));
            }
        }
        band(network);
        return network;
    }

    private double ambientCelsius() {
        return project.bench().ambientCelsius().orElse(USUAL_CELSIUS);
    }

    /** The mean over a burst's period; of a steady tone the power itself. */
    private double meanWatts(double watts) {
        if (step.stimulus() instanceof Stimulus.ToneBurst burst) {
            double on = burst.onSeconds() / burst.periodSeconds();
            return watts * (on + (1 - on) * Math.pow(10, burst.lowLevelDb() / 10));
        }
        return watts;
    }

    private void statedLimit(double meanWatts) {
        if (meanWatts > load.powerLimitWatts()) {
            problems.add(new Problem(
                    Severity.ERROR,
                    loadPath + ".powerLimitWatts",
                    TEXTS.text(
                            "branch.overLimit",
                            step.id(),
                            Figures.three(meanWatts),
                            name,
                            Figures.three(load.powerLimitWatts())),
                    TEXTS.text("branch.overLimitRemedy")));
        }
    }

    private Optional<Network> read() {
        if (branch.network().isBlank()) {
            return Optional.empty();
        }
        try {
            return Optional.of(NetworkNotation.parse(
                    branch.network(), Stock.of(project.bench().parts()), READING));
        } catch (NotationException fault) {
            problems.add(new Problem(
                    Severity.ERROR,
                    branchPath + ".network",
                    TEXTS.text(
                            "branch.unreadable",
                            branch.network(),
                            name,
                            Integer.toString(fault.position() + 1),
                            fault.problem()),
                    fault.remedy()));
            return Optional.empty();
        }
    }

    private void values(Network network) {
        NetworkAnalysis analysis = NetworkAnalysis.of(network, ambientCelsius());
        double low = analysis.worstCaseLowOhms();
        double high = analysis.worstCaseHighOhms();
        String range = TEXTS.text("branch.range", Figures.four(analysis.ohms()), Figures.four(low), Figures.four(high));
        double rounding = 1e-9 * load.nominalOhms();
        if (load.nominalOhms() < low - rounding || load.nominalOhms() > high + rounding) {
            problems.add(new Problem(
                    Severity.WARNING,
                    branchPath + ".network",
                    TEXTS.text("branch.leavesOut", name, range, Figures.four(load.nominalOhms())),
                    TEXTS.text("branch.leavesOutRemedy")));
        }
        double doubt = 2 * branch.standardUncertaintyOhms() + rounding;
        if (branch.ohms() < low - doubt || branch.ohms() > high + LEADS_OHMS + doubt) {
            problems.add(new Problem(
                    Severity.WARNING,
                    branchPath + ".ohms",
                    TEXTS.text("branch.differs", name, range, Figures.four(branch.ohms())),
                    TEXTS.text("branch.differsRemedy")));
        }
    }

    private void band(Optional<Network> network) {
        OptionalDouble limitHz;
        if (branch.inductanceHenries() > 0) {
            limitHz = OptionalDouble.of(
                    NetworkImpedance.powerLimitHz(branch.ohms(), branch.inductanceHenries(), POWER_ERROR_RATIO));
        } else if (network.isPresent()) {
            limitHz = NetworkImpedance.of(network.get()).powerLimitHz(POWER_ERROR_RATIO);
        } else {
            return;
        }
        double frequencyHz = step.stimulus().frequencyHz();
        if (limitHz.isPresent() && frequencyHz > limitHz.getAsDouble()) {
            problems.add(new Problem(
                    Severity.WARNING,
                    branchPath + ".inductanceHenries",
                    TEXTS.text(
                            "branch.band",
                            name,
                            Figures.three(limitHz.getAsDouble()),
                            step.id(),
                            Figures.three(frequencyHz)),
                    TEXTS.text("branch.bandRemedy")));
        }
    }
}
