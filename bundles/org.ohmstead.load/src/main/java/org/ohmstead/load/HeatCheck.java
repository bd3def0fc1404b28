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
import org.ohmstead.units.text.Messages;

/** Looks at what the power of a step does to a network. */
final class HeatCheck {
    private static final Messages TEXTS = Messages.of(HeatCheck.class);

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
                    TEXTS.text("heat.runaway", Figures.three(meanWatts), name),
                    TEXTS.text("heat.runawayRemedy"));
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
            add(Severity.WARNING, TEXTS.text("heat.unrated", unrated, name), TEXTS.text("heat.unratedRemedy"));
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
        String what = TEXTS.text(
                "heat.overload",
                Figures.three(meanWatts),
                name,
                analysis.resistor(which).id(),
                Figures.three(analysis.powerWatts(which, meanWatts)),
                Figures.three(analysis.ambientCelsius()),
                Figures.three(allowed),
                Figures.three(allowed / analysis.share(which)));
        OptionalDouble seconds = longestSeconds(meanWatts);
        boolean brief = seconds.isPresent()
                && seconds.getAsDouble() >= SHORTEST_USEFUL_SECONDS
                && step.stimulus() instanceof Stimulus.ContinuousSine;
        if (brief) {
            add(
                    Severity.WARNING,
                    TEXTS.text("heat.brief", what, Figures.three(seconds.getAsDouble())),
                    TEXTS.text("heat.briefRemedy"));
        } else {
            add(Severity.ERROR, what, TEXTS.text("heat.overloadRemedy"));
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
        String times = Figures.three(ratio);
        Optional<PulseRule> rule = resistor.traits().pulseRule();
        if (rule.isEmpty()) {
            add(
                    Severity.WARNING,
                    TEXTS.text("heat.burstUnknown", resistor.id(), name, times),
                    TEXTS.text("heat.burstUnknownRemedy"));
            return;
        }
        double between = ratio * Math.pow(10, burst.lowLevelDb() / 10);
        for (PulseModel model : PulseModel.values()) {
            if (!new PulseCurve(rule.get(), model)
                    .bursts(ratio, between, burst.onSeconds(), burst.periodSeconds())
                    .holds()) {
                add(
                        Severity.ERROR,
                        TEXTS.text("heat.burst", resistor.id(), name, times, Figures.three(burst.onSeconds())),
                        TEXTS.text("heat.burstRemedy"));
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
                    TEXTS.text(
                            known ? "heat.hot" : "heat.perhapsHot",
                            Figures.three(meanWatts),
                            hottest.resistor().id(),
                            name,
                            Long.toString(Math.round(surface.getAsDouble()))),
                    TEXTS.text("heat.hotRemedy"));
        }
        if (Math.abs(heat.overstatementRatio()) > DRIFT_RATIO) {
            add(
                    Severity.NOTE,
                    TEXTS.text(
                            "heat.drift",
                            name,
                            Figures.four(heat.hotOhms()),
                            Figures.four(heat.coldOhms()),
                            Figures.three(100 * heat.overstatementRatio())),
                    TEXTS.text("heat.driftRemedy"));
        }
    }

    private void add(Severity severity, String what, String remedy) {
        problems.add(new Problem(severity, where, what, remedy));
    }
}
