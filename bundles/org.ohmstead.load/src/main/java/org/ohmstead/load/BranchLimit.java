// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.LoadBranch;
import org.ohmstead.model.Project;
import org.ohmstead.model.PulseRule;
import org.ohmstead.model.Step;
import org.ohmstead.model.Stimulus;
import org.ohmstead.units.text.Messages;

/**
 * The mean power that a branch of a load bears for as long as a step lasts: what is stated of the load or, when that is less, what brings
 * the first of its resistors to its limit. A steady tone may overload a resistor for as long as its maker allows; one of which no overload
 * is known is left to what is stated, since that is for a step and its rating for ever. Of bursts the mean counts as if it lasted for ever,
 * since they come again and again.
 *
 * @param watts mean power into the branch in watts, at least 0
 * @param reason whose limit it is, a whole sentence
 */
record BranchLimit(double watts, String reason) {
    private static final Messages TEXTS = Messages.of(BranchLimit.class);

    private static final double USUAL_CELSIUS = 25;
    private static final NetworkNotation.Options READING = NetworkNotation.Options.USUAL.withCountsChecked(false);

    static BranchLimit of(Project project, Step step, BenchLoad load, LoadBranch branch) {
        BranchLimit stated = new BranchLimit(
                load.powerLimitWatts(), TEXTS.text("limit.stated", load.id(), Figures.three(load.powerLimitWatts())));
        if (branch.network().isBlank()) {
            return stated;
        }
        try {
            Network network = NetworkNotation.parse(
                    branch.network(), Stock.of(project.bench().parts()), READING);
            BranchLimit weakest = stated;
            NetworkAnalysis analysis =
                    NetworkAnalysis.of(network, project.bench().ambientCelsius().orElse(USUAL_CELSIUS));
            double seconds = project.heat().pacing().stepSeconds();
            for (int i = 0; i < analysis.size(); i++) {
                OptionalDouble allowed = analysis.allowedWatts(i);
                Resistor resistor = analysis.resistor(i);
                boolean steady = step.stimulus() instanceof Stimulus.ContinuousSine;
                double ratio = steady ? overload(resistor, seconds) : 1;
                double watts = ratio * allowed.orElse(Double.POSITIVE_INFINITY) / analysis.share(i);
                weakest = watts < weakest.watts ? ofPart(watts, resistor, load, steady, seconds) : weakest;
            }
            return weakest;
        } catch (NotationException unreadable) {
            return stated; // LoadPrecautions forbids the step for it
        }
    }

    private static BranchLimit ofPart(double watts, Resistor resistor, BenchLoad load, boolean steady, double seconds) {
        return new BranchLimit(
                watts,
                TEXTS.text(
                        steady ? "limit.ofPartFor" : "limit.ofPart", resistor.id(), load.id(), Figures.three(seconds)));
    }

    /** How many times what it may take for ever a resistor bears for a while, by the more cautious model; without end when not known. */
    private static double overload(Resistor resistor, double seconds) {
        double least = Double.POSITIVE_INFINITY;
        for (PulseModel model : PulseModel.values()) {
            Optional<PulseRule> rule = resistor.traits().pulseRule();
            least = rule.isEmpty() ? least : Math.min(least, new PulseCurve(rule.get(), model).highestRatio(seconds));
        }
        return least;
    }
}
