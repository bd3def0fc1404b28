// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.study;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.ohmstead.metrology.Estimate;
import org.ohmstead.units.text.Messages;

/**
 * Each reading predicted from the others, by the study's kind of model: whether it lies on the same curve. Where one
 * does not, it is set aside before the rest are judged, the farthest first, as one bad reading makes good ones look bad.
 *
 * @param checks one for each reading, in the order of the study
 */
public record CurveMembership(List<Check> checks) {
    private static final Messages TEXTS = Messages.of(CurveMembership.class);

    /** From so many standard deviations on a reading does not lie on the curve of the others (a choice of this program). */
    public static final double OFF_FROM = 3;

    private static final double MOST_SET_ASIDE = 0.25;

    /** Copies the list. */
    public CurveMembership {
        checks = List.copyOf(checks);
    }

    /**
     * A reading beside the curve of the others.
     *
     * @param point the reading
     * @param predicted the power that the others give there, when they determine the model without it
     * @param relativeDeviation reading over prediction, minus 1; 0 without a prediction
     * @param deviations the same in standard deviations of both together; 0 without a prediction
     * @param onCurve whether it lies on the same curve as the others
     * @param sentence in words
     */
    public record Check(
            StudyPoint point,
            Optional<Estimate> predicted,
            double relativeDeviation,
            double deviations,
            boolean onCurve,
            String sentence) {}

    /** Returns the readings that do not lie on the curve of the others. */
    public List<Check> offCurve() {
        return checks.stream().filter(check -> !check.onCurve()).toList();
    }

    /** Returns the checks of a study's readings. */
    public static CurveMembership of(PowerStudy study) {
        List<StudyPoint> rest = new ArrayList<>(study.points());
        Map<StudyPoint, Check> found = new LinkedHashMap<>();
        int mostAside = Math.max(1, (int) (MOST_SET_ASIDE * rest.size()));
        List<Check> round = round(study, rest);
        for (int aside = 0; aside < mostAside; aside++) {
            Optional<Check> worst = round.stream()
                    .filter(check -> !check.onCurve())
                    .max(Comparator.comparingDouble(check -> Math.abs(check.deviations())));
            if (worst.isEmpty()) {
                break;
            }
            found.put(worst.get().point(), worst.get());
            rest.remove(worst.get().point());
            round = round(study, rest);
        }
        round.forEach(check -> found.put(check.point(), check));
        return new CurveMembership(study.points().stream().map(found::get).toList());
    }

    private static List<Check> round(PowerStudy study, List<StudyPoint> points) {
        List<Check> checks = new ArrayList<>();
        for (int i = 0; i < points.size(); i++) {
            List<StudyPoint> others = new ArrayList<>(points);
            StudyPoint point = others.remove(i);
            checks.add(check(study, point, others));
        }
        return checks;
    }

    private static Check check(PowerStudy study, StudyPoint point, List<StudyPoint> others) {
        Optional<ModelFit> fit = others.isEmpty()
                ? Optional.empty()
                : ModelSelection.fit(study.fit().kind(), Terrain.of(others), study.request());
        Optional<Estimate> predicted = fit.flatMap(
                        found -> at(found.predict(point.supplyVolts(), point.loadOhms(), point.mode())))
                .filter(estimate -> estimate.value() > 0);
        if (predicted.isEmpty()) {
            return new Check(point, Optional.empty(), 0, 0, true, TEXTS.text("member.undetermined", point.inWords()));
        }
        Estimate power = predicted.get();
        double ratio = point.powerWatts() / power.value();
        double together = Math.hypot(power.standardUncertainty(), point.standardUncertaintyWatts());
        double deviations = (point.powerWatts() - power.value()) / together;
        boolean onCurve = Math.abs(deviations) <= OFF_FROM;
        String sentence = TEXTS.text(
                "member.sentence",
                point.inWords(),
                TEXTS.text(onCurve ? "member.on" : "member.off"),
                StudyWords.say("%.4g", power.value()),
                StudyWords.say("%.1f", 100 * Math.abs(ratio - 1)),
                TEXTS.text(ratio > 1 ? "member.above" : "member.below"),
                StudyWords.say("%.1f", Math.abs(deviations)));
        return new Check(point, predicted, ratio - 1, deviations, onCurve, sentence);
    }

    private static Optional<Estimate> at(PowerPrediction prediction) {
        return prediction instanceof PowerPrediction.Predicted predicted
                ? Optional.of(predicted.estimate())
                : Optional.empty();
    }
}
