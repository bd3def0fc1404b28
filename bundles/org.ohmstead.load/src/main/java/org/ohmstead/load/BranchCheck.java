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

/** Looks at one branch of a load in one step. */
final class BranchCheck {
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
        this.name = "the load \"" + load.id() + "\""
                + (load.branches().stream().distinct().count() > 1 ? " (branch " + (branchIndex + 1) + ")" : "");
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
                    "The step \"" + step.id() + "\" puts " + Figures.three(meanWatts) + " W into " + name
                            + ", which is stated to take " + Figures.three(load.powerLimitWatts()) + " W.",
                    "Use a larger load, or correct the limit if the load takes more."));
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
                    "The network \"" + branch.network() + "\" of " + name + " cannot be read. Character "
                            + (fault.position() + 1) + ": " + fault.problem(),
                    fault.remedy()));
            return Optional.empty();
        }
    }

    private void values(Network network) {
        NetworkAnalysis analysis = NetworkAnalysis.of(network, ambientCelsius());
        double low = analysis.worstCaseLowOhms();
        double high = analysis.worstCaseHighOhms();
        String range = Figures.four(analysis.ohms()) + " ohm, with its tolerances " + Figures.four(low) + " to "
                + Figures.four(high) + " ohm";
        double rounding = 1e-9 * load.nominalOhms();
        if (load.nominalOhms() < low - rounding || load.nominalOhms() > high + rounding) {
            problems.add(new Problem(
                    Severity.WARNING,
                    branchPath + ".network",
                    "The network of " + name + " comes to " + range + ", which leaves out the "
                            + Figures.four(load.nominalOhms()) + " ohm that the load stands for.",
                    "Find a network that is nearer, or state the value that it has."));
        }
        double doubt = 2 * branch.standardUncertaintyOhms() + rounding;
        if (branch.ohms() < low - doubt || branch.ohms() > high + LEADS_OHMS + doubt) {
            problems.add(new Problem(
                    Severity.WARNING,
                    branchPath + ".ohms",
                    "The network of " + name + " comes to " + range + ", but " + Figures.four(branch.ohms())
                            + " ohm were measured.",
                    "Look for a wrong part, a wrong connection or a bad contact, and measure again by four wires."));
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
                    "By its inductance " + name + " takes more than 1 % less than V^2/R above "
                            + Figures.three(limitHz.getAsDouble()) + " Hz, and the step \"" + step.id() + "\" is at "
                            + Figures.three(frequencyHz) + " Hz.",
                    "Use resistors wound without inductance, or test at a lower frequency."));
        }
    }
}
