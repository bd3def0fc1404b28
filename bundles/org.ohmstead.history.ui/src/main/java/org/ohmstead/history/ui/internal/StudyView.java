// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.ohmstead.history.quality.CheckValue;
import org.ohmstead.history.quality.CrossedStudy;
import org.ohmstead.history.quality.GaugeReview;
import org.ohmstead.history.quality.GroupStudy;
import org.ohmstead.history.quality.QualityReview;
import org.ohmstead.metrology.Estimate;
import org.ohmstead.units.text.Messages;

/**
 * What a study of operators or benches says, as a table with sentences.
 *
 * @param title what was studied, such as "Operators"
 * @param sentences what it means
 * @param groups one for each operator or bench
 */
record StudyView(String title, List<String> sentences, List<GroupRow> groups) {
    private static final Messages TEXTS = Messages.of(StudyView.class);

    /**
     * One operator or bench.
     *
     * @param name who or which
     * @param count how many values
     * @param mean of them, in the check standard's unit
     * @param deviation standard deviation of them; 0 for a single one
     */
    record GroupRow(String name, int count, double mean, double deviation) {}

    StudyView {
        sentences = List.copyOf(sentences);
        groups = List.copyOf(groups);
    }

    /**
     * Returns the studies that the values of a check standard allow.
     *
     * @param gauges whether check standards are told apart, of all that the project has
     */
    static List<StudyView> all(QualityReview review, List<GaugeReview> gauges) {
        List<CheckValue> own = review.values().own();
        List<CheckValue> everywhere = new ArrayList<>(own);
        everywhere.addAll(review.values().elsewhere());
        List<StudyView> studies = new ArrayList<>();
        add(studies, TEXTS.text("study.operators"), review.operators(), own, CheckValue::operator);
        add(studies, TEXTS.text("study.benches"), review.benches(), everywhere, CheckValue::bench);
        review.crossed()
                .ifPresent(crossed ->
                        studies.add(crossed(crossed, review.standard().unit())));
        for (GaugeReview gauge : gauges) {
            if (gauge.items().contains(review.standard().name())) {
                studies.add(
                        new StudyView(TEXTS.text("study.gauge." + gauge.what()), List.of(gauge.sentence()), List.of()));
            }
        }
        return studies;
    }

    private static StudyView crossed(CrossedStudy crossed, String unit) {
        return new StudyView(
                TEXTS.text("study.crossed", Integer.toString(crossed.repeats())),
                List.of(crossed.study().sentence(unit)),
                List.of());
    }

    private static void add(
            List<StudyView> studies,
            String title,
            Optional<GroupStudy> study,
            List<CheckValue> values,
            Function<CheckValue, String> group) {
        study.ifPresent(found -> {
            List<GroupRow> rows = new ArrayList<>();
            for (String name : found.names()) {
                rows.add(row(
                        name,
                        values.stream()
                                .filter(value -> group.apply(value).equals(name))
                                .mapToDouble(CheckValue::value)
                                .toArray()));
            }
            studies.add(new StudyView(title, found.sentences(), rows));
        });
    }

    private static GroupRow row(String name, double[] values) {
        if (values.length == 1) {
            return new GroupRow(name, 1, values[0], 0);
        }
        Estimate mean = Estimate.fromReadings(values);
        return new GroupRow(name, values.length, mean.value(), mean.standardUncertainty() * Math.sqrt(values.length));
    }
}
