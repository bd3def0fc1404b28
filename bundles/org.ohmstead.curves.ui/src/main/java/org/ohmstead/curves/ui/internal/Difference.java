// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.ui.internal;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.ohmstead.curves.study.PowerDifference;
import org.ohmstead.curves.study.PowerPrediction;
import org.ohmstead.curves.study.PowerStudy;
import org.ohmstead.curves.study.PowerStudy.PlacedLoad;
import org.ohmstead.curves.study.ResidualPoint;
import org.ohmstead.curves.study.StudyOutcome;
import org.ohmstead.curves.study.StudyPoint;
import org.ohmstead.metrology.Estimate;
import org.ohmstead.model.Mode;
import org.ohmstead.units.text.Messages;

/**
 * How much more power one part of the readings shows than another, or than the curve of all.
 *
 * @param what the part
 * @param against what it is held against
 * @param load where
 * @param supplyVolts where
 * @param power the difference
 */
record Difference(String what, String against, PlacedLoad load, double supplyVolts, PowerDifference power) {
    private static final Messages TEXTS = Messages.of(Difference.class);

    private static final double USUAL_VOLTS = 13.8;

    /** Of points that a grouping leaves out: bridged ones belong to no one channel. */
    private static final String NO_GROUP = "";

    /** Returns channel against channel for each load, then channels, modes and loads against the joint curve. */
    static List<Difference> of(PowerStudy study, double confidence) {
        List<Difference> found = new ArrayList<>(betweenChannels(study, confidence));
        found.addAll(fromCurve(
                study,
                confidence,
                point -> point.mode() == Mode.BRIDGED ? NO_GROUP : TEXTS.text("differences.channel", point.channel())));
        found.addAll(fromCurve(study, confidence, point -> Words.of(point.mode())));
        found.addAll(fromCurve(study, confidence, point -> Words.load(new PlacedLoad(point.loadOhms(), point.mode()))));
        return found;
    }

    /** Returns where differences are stated: where amplifiers are rated as a rule, if readings reach there, or amid them. */
    static double supplyVolts(PowerStudy study) {
        boolean usual = study.lowestSupplyVolts() <= USUAL_VOLTS && study.highestSupplyVolts() >= USUAL_VOLTS;
        return usual ? USUAL_VOLTS : (study.lowestSupplyVolts() + study.highestSupplyVolts()) / 2;
    }

    private static List<Difference> betweenChannels(PowerStudy study, double confidence) {
        Map<String, PowerStudy> alone = new LinkedHashMap<>();
        List<String> channels = study.points().stream()
                .filter(point -> point.mode() != Mode.BRIDGED)
                .map(StudyPoint::channel)
                .distinct()
                .sorted()
                .toList();
        for (String channel : channels) {
            StudyOutcome outcome = PowerStudy.of(study.request()
                    .withPoints(study.points().stream()
                            .filter(point -> point.channel().equals(channel))
                            .toList()));
            if (outcome instanceof PowerStudy own) {
                alone.put(channel, own);
            }
        }
        List<Difference> found = new ArrayList<>();
        List<String> known = List.copyOf(alone.keySet());
        for (int first = 0; first < known.size(); first++) {
            for (int second = first + 1; second < known.size(); second++) {
                found.addAll(between(known.get(first), known.get(second), alone, supplyVolts(study), confidence));
            }
        }
        return found;
    }

    private static List<Difference> between(
            String first, String second, Map<String, PowerStudy> alone, double supplyVolts, double confidence) {
        List<Difference> found = new ArrayList<>();
        String what = TEXTS.text("differences.channel", first);
        String against = TEXTS.text("differences.againstChannel", second);
        for (PlacedLoad load : alone.get(first).loads()) {
            PowerPrediction one = alone.get(first).predict(supplyVolts, load.loadOhms(), load.mode());
            PowerPrediction other = alone.get(second).predict(supplyVolts, load.loadOhms(), load.mode());
            PowerDifference.of(what, one, against, other, confidence)
                    .ifPresent(power -> found.add(new Difference(what, against, load, supplyVolts, power)));
        }
        return found;
    }

    private static List<Difference> fromCurve(
            PowerStudy study, double confidence, Function<StudyPoint, String> grouping) {
        Map<String, List<ResidualPoint>> groups = new LinkedHashMap<>();
        for (ResidualPoint residual : study.fit().diagnostics().residuals()) {
            groups.computeIfAbsent(grouping.apply(residual.point()), unused -> new ArrayList<>())
                    .add(residual);
        }
        groups.remove(NO_GROUP);
        List<Difference> found = new ArrayList<>();
        if (groups.size() > 1) {
            groups.forEach((name, residuals) ->
                    fromCurve(study, name, residuals, confidence).ifPresent(found::add));
        }
        return found;
    }

    /** The weighted mean of reading over curve, as power at one place; the curve itself counts as known there. */
    private static Optional<Difference> fromCurve(
            PowerStudy study, String name, List<ResidualPoint> residuals, double confidence) {
        double weights = 0;
        double sum = 0;
        for (ResidualPoint residual : residuals) {
            double relative = residual.point().standardUncertaintyWatts() / residual.fittedWatts();
            weights += 1 / (relative * relative);
            sum += residual.residualWatts() / residual.fittedWatts() / (relative * relative);
        }
        double ratio = 1 + sum / weights;
        double scatter = study.fit().uncertaintyFromScatter()
                ? study.fit().scatterRatio().orElse(1)
                : 1;
        StudyPoint first = residuals.get(0).point();
        PlacedLoad load = new PlacedLoad(first.loadOhms(), first.mode());
        double supplyVolts = supplyVolts(study);
        if (study.predict(supplyVolts, load.loadOhms(), load.mode()) instanceof PowerPrediction.Predicted curve
                && curve.powerWatts() > 0
                && ratio > 0
                && Double.isFinite(ratio)) {
            double watts = curve.powerWatts();
            Estimate group = new Estimate(
                    watts * ratio,
                    watts * scatter / Math.sqrt(weights),
                    study.fit().degreesOfFreedom());
            Estimate joint = Estimate.of(watts, 0);
            String against = TEXTS.text("differences.joint");
            return Optional.of(new Difference(
                    name, against, load, supplyVolts, PowerDifference.of(name, group, against, joint, confidence)));
        }
        return Optional.empty();
    }
}
