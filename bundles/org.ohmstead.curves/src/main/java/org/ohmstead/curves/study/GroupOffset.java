// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.study;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.ohmstead.model.Mode;
import org.ohmstead.units.text.Messages;

/**
 * How far the readings of one channel or one mode lie on average from the joint curve. The curve of all is drawn towards
 * each group, so the true distance of a large group is larger than this.
 *
 * @param group what the readings have in common, as it is called in a sentence
 * @param count how many they are
 * @param meanRelative the mean of reading over curve, minus 1, weighted by the uncertainties
 * @param deviations the same in standard deviations of such a mean
 */
public record GroupOffset(String group, int count, double meanRelative, double deviations) {
    private static final Messages TEXTS = Messages.of(GroupOffset.class);

    /** From so many standard deviations on the group is named (a choice of this program). */
    public static final double CLEAR_FROM = 3;

    /** Returns the offsets of all channels and modes of a study; nothing for what all readings have in common. */
    public static List<GroupOffset> of(PowerStudy study) {
        List<GroupOffset> offsets = new ArrayList<>();
        offsets.addAll(by(
                study,
                point -> point.channel().isEmpty()
                        ? TEXTS.text("group.unnamed")
                        : TEXTS.text("group.channel", point.channel())));
        offsets.addAll(by(study, point -> words(point.mode())));
        return List.copyOf(offsets);
    }

    private static String words(Mode mode) {
        return TEXTS.text("group.mode." + mode.name());
    }

    private static List<GroupOffset> by(PowerStudy study, Function<StudyPoint, String> grouping) {
        Map<String, List<ResidualPoint>> groups = new LinkedHashMap<>();
        for (ResidualPoint residual : study.fit().diagnostics().residuals()) {
            groups.computeIfAbsent(grouping.apply(residual.point()), unused -> new ArrayList<>())
                    .add(residual);
        }
        List<GroupOffset> offsets = new ArrayList<>();
        if (groups.size() > 1) {
            double scatter = study.fit().uncertaintyFromScatter()
                    ? study.fit().scatterRatio().orElse(1)
                    : 1;
            groups.forEach((group, residuals) -> offsets.add(of(group, residuals, scatter)));
        }
        return offsets;
    }

    private static GroupOffset of(String group, List<ResidualPoint> residuals, double scatter) {
        double weights = 0;
        double sum = 0;
        for (ResidualPoint residual : residuals) {
            double relative = residual.residualWatts() / residual.fittedWatts();
            double uncertainty = residual.point().standardUncertaintyWatts() / residual.fittedWatts();
            double weight = 1 / (uncertainty * uncertainty);
            weights += weight;
            sum += weight * relative;
        }
        double mean = sum / weights;
        return new GroupOffset(group, residuals.size(), mean, mean * Math.sqrt(weights) / scatter);
    }

    /** Returns whether chance hardly explains the offset. */
    public boolean clear() {
        return Math.abs(deviations) > CLEAR_FROM;
    }

    /** Returns the offset in words. */
    public String sentence() {
        return TEXTS.text(
                "group.offset",
                Integer.toString(count),
                group,
                StudyWords.say("%.1f", 100 * Math.abs(meanRelative)),
                TEXTS.text(meanRelative > 0 ? "words.above" : "words.below"),
                StudyWords.say("%.1f", Math.abs(deviations)));
    }
}
