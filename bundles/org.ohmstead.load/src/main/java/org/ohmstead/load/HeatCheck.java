// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.ohmstead.model.Problem;
import org.ohmstead.model.PulseRule;
import org.ohmstead.model.Severity;
import org.ohmstead.model.Step;
import org.ohmstead.model.Stimulus;

/** Looks at what the power of a step does to a network. */
final class HeatCheck {
    /** Below the about 65 degrees at which bare metal burns the skin within a second (ISO 13732-1). */
    private static final double HOT_CELSIUS = 60;

    private static final double DRIFT_RATIO = 0.01;
    private static final double SHORTEST_USEFUL_SECONDS = 1;
    private static final double LIMIT_ROUNDING = 1e-9;

    private final Step step;
    private final NetworkAnalysis analysis;
    private final String name;
    private final String where;
    private final List<Problem> problems;

    HeatCheck(Step step, Network network, double ambientCelsius, String name, String where, List<Problem> problems) {
        this.step = step;
        this.analysis = NetworkAnalysis.of(network, ambientCelsius);
        this.name = name;
        this.where = where;
        this.problems = problems;
    }

    /** Adds what is wrong with a power during the tone or burst and its mean over time. */
    void run(double watts, double meanWatts) {
        unrated();
        Optional<LoadHeat> heat =
                LoadHeat.atWatts(analysis.network(), meanWatts, LoadHeat.Air.of(analysis.ambientCelsius()));
        if (heat.isEmpty()) {
            add(
                    Severity.ERROR,
                    "At " + Figures.three(meanWatts) + " W " + name + " never stops getting warmer.",
                    "Use larger resistors or better cooling, or correct the temperature coefficients.");
            return;
        }
        boolean overloaded = mean(meanWatts);
        if (!overloaded && step.stimulus() instanceof Stimulus.ToneBurst burst) {
            bursts(watts, burst);
        }
        warm(heat.get(), meanWatts);
    }

    private void unrated() {
        String unrated = analysis.resistors().stream()
                .filter(resistor -> resistor.rating().isEmpty())
                .map(Resistor::id)
                .distinct()
                .collect(Collectors.joining("\", \"", "\"", "\""));
        if (unrated.length() > 2) {
            add(
                    Severity.WARNING,
                    "No power rating is known of " + unrated + " in " + name + ", so its limit cannot be told.",
                    "Write the ids of parts of the bench, or add the rating, such as 8R2@50W.");
        }
    }

    /** The resistor furthest beyond what it may take for ever, of those with a rating; -1 when none is. */
    private int furthestBeyond(double watts) {
        int which = -1;
        double least = 1 - LIMIT_ROUNDING;
        for (int i = 0; i < analysis.size(); i++) {
            OptionalDouble headroom = analysis.headroomRatio(i, watts);
            if (headroom.isPresent() && headroom.getAsDouble() < least) {
                least = headroom.getAsDouble();
                which = i;
            }
        }
        return which;
    }

    private boolean mean(double meanWatts) {
        int which = furthestBeyond(meanWatts);
        if (which < 0) {
            return false;
        }
        double allowed = analysis.allowedWatts(which).orElseThrow();
        String what = "At " + Figures.three(meanWatts) + " W into " + name + " \""
                + analysis.resistor(which).id() + "\" takes " + Figures.three(analysis.powerWatts(which, meanWatts))
                + " W, but at " + Figures.three(analysis.ambientCelsius()) + " degrees Celsius it may take "
                + Figures.three(allowed) + " W; the load's limit is " + Figures.three(allowed / analysis.share(which))
                + " W.";
        OptionalDouble seconds = longestSeconds(meanWatts);
        boolean brief = seconds.isPresent()
                && seconds.getAsDouble() >= SHORTEST_USEFUL_SECONDS
                && step.stimulus() instanceof Stimulus.ContinuousSine;
        if (brief) {
            add(
                    Severity.WARNING,
                    what + " From cold it lasts " + Figures.three(seconds.getAsDouble()) + " s.",
                    "Be done within that time and let it cool down, or use a larger load.");
        } else {
            add(Severity.ERROR, what, "Use a larger load or better cooling, or lower the power.");
        }
        return true;
    }

    /** The shortest time of all overloaded resistors, by the more cautious model; empty when one's overload is not known. */
    private OptionalDouble longestSeconds(double watts) {
        double shortest = Double.POSITIVE_INFINITY;
        for (int i = 0; i < analysis.size(); i++) {
            OptionalDouble allowed = analysis.allowedWatts(i);
            double power = analysis.powerWatts(i, watts);
            if (allowed.isPresent() && power > allowed.getAsDouble()) {
                Optional<PulseRule> rule = analysis.resistor(i).traits().pulseRule();
                if (rule.isEmpty() || allowed.getAsDouble() <= 0) {
                    return OptionalDouble.empty();
                }
                for (PulseModel model : PulseModel.values()) {
                    double seconds = new PulseCurve(rule.get(), model)
                            .longestSeconds(power / allowed.getAsDouble())
                            .orElse(Double.POSITIVE_INFINITY);
                    shortest = Math.min(shortest, seconds);
                }
            }
        }
        return Double.isInfinite(shortest) ? OptionalDouble.empty() : OptionalDouble.of(shortest);
    }

    private void bursts(double watts, Stimulus.ToneBurst burst) {
        for (int i = 0; i < analysis.size(); i++) {
            OptionalDouble allowed = analysis.allowedWatts(i);
            double ratio = allowed.isEmpty() ? 0 : analysis.powerWatts(i, watts) / allowed.getAsDouble();
            if (ratio > 1) {
                burst(analysis.resistor(i), ratio, burst);
                return;
            }
        }
    }

    private void burst(Resistor resistor, double ratio, Stimulus.ToneBurst burst) {
        String what = "During the burst \"" + resistor.id() + "\" in " + name + " takes " + Figures.three(ratio)
                + " times what it may take for ever";
        Optional<PulseRule> rule = resistor.traits().pulseRule();
        if (rule.isEmpty()) {
            add(
                    Severity.WARNING,
                    what + ", and no short overload is known for it.",
                    "Enter the overload that its maker allows, or use a larger resistor.");
            return;
        }
        double between = ratio * Math.pow(10, burst.lowLevelDb() / 10);
        for (PulseModel model : PulseModel.values()) {
            if (!new PulseCurve(rule.get(), model)
                    .bursts(ratio, between, burst.onSeconds(), burst.periodSeconds())
                    .holds()) {
                add(
                        Severity.ERROR,
                        what + " for " + Figures.three(burst.onSeconds()) + " s, more than its short overload allows.",
                        "Make the burst shorter or the pause longer, or use a larger resistor.");
                return;
            }
        }
    }

    private void warm(LoadHeat heat, double meanWatts) {
        OptionalDouble surface = heat.hottestSurfaceCelsius();
        if (surface.isPresent() && surface.getAsDouble() > HOT_CELSIUS) {
            PartHeat hottest = heat.parts().stream()
                    .filter(part -> part.surfaceCelsius().equals(surface))
                    .findFirst()
                    .orElseThrow();
            boolean known = hottest.caseCelsius().isPresent();
            add(
                    Severity.WARNING,
                    "At " + Figures.three(meanWatts) + " W for long \""
                            + hottest.resistor().id() + "\" in " + name
                            + (known ? " reaches " : " may reach up to ") + Math.round(surface.getAsDouble())
                            + " degrees Celsius and can burn whoever touches it.",
                    "Keep hands, cables and anything that burns away, and let air through.");
        }
        if (Math.abs(heat.overstatementRatio()) > DRIFT_RATIO) {
            add(
                    Severity.NOTE,
                    "Hot, " + name + " comes to " + Figures.four(heat.hotOhms()) + " ohm instead of "
                            + Figures.four(heat.coldOhms()) + " ohm, so V^2/R with the cold value is off by "
                            + Figures.three(100 * heat.overstatementRatio()) + " %.",
                    "Read quickly from cold, or measure the load again while it is hot.");
        }
    }

    private void add(Severity severity, String what, String remedy) {
        problems.add(new Problem(severity, where, what, remedy));
    }
}
