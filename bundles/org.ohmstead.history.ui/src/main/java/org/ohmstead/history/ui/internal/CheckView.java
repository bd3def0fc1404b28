// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.ui.internal;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.ohmstead.history.quality.CheckValue;
import org.ohmstead.history.quality.GaugeReview;
import org.ohmstead.history.quality.QualityReview;
import org.ohmstead.metrology.quality.CheckStandardReview;
import org.ohmstead.metrology.quality.CheckStandardReview.Finding;
import org.ohmstead.model.CheckStandard;
import org.ohmstead.plot.Plot;
import org.ohmstead.units.text.Messages;

/**
 * A check standard with its values and what they say, as the view shows it.
 *
 * @param quality what the values say
 * @param standing how it stands
 * @param reminder that a value is due; empty text when none is
 * @param studies what operators and benches add to the scatter; empty when there is too little data
 * @param rules for each value what the rules of the control chart say of it, in words; empty text when it breaks none
 * @param valuesPlot the control chart of its values; empty without a value
 * @param rangesPlot the control chart of its moving ranges; empty with fewer than two values
 */
record CheckView(
        QualityReview quality,
        Standing standing,
        String reminder,
        List<StudyView> studies,
        List<String> rules,
        Optional<Plot> valuesPlot,
        Optional<Plot> rangesPlot) {
    private static final Messages TEXTS = Messages.of(CheckView.class);

    CheckView {
        studies = List.copyOf(studies);
        rules = List.copyOf(rules);
    }

    /** Returns the check standards of a project as they stand on a day. */
    static List<CheckView> all(List<QualityReview> reviews, LocalDate today) {
        List<GaugeReview> gauges = GaugeReview.of(reviews);
        return reviews.stream().map(review -> of(review, today, gauges)).toList();
    }

    private static CheckView of(QualityReview review, LocalDate today, List<GaugeReview> gauges) {
        int count = review.values().own().size();
        return new CheckView(
                review,
                standing(review),
                reminder(review, today),
                StudyView.all(review, gauges),
                PointWords.rules(review),
                count > 0 ? Optional.of(ControlPlot.values(review)) : Optional.empty(),
                count > 1 ? Optional.of(ControlPlot.ranges(review)) : Optional.empty());
    }

    private static Standing standing(QualityReview review) {
        if (!review.mayRun()) {
            return Standing.STOP;
        }
        if (!review.findings().isEmpty()) {
            return Standing.LOOK;
        }
        return review.review().isEmpty() ? Standing.TOO_FEW : Standing.IN_ORDER;
    }

    private static String reminder(QualityReview review, LocalDate today) {
        Optional<LocalDate> due = review.dueOn().filter(day -> !day.isAfter(today));
        if (due.isEmpty()) {
            return "";
        }
        boolean newToday = due.get().equals(today);
        if (review.values().newest().isEmpty()) {
            return TEXTS.text("check.never");
        }
        return newToday
                ? TEXTS.text("check.due.today")
                : TEXTS.text("check.due.since", due.get().toString());
    }

    /** Returns which check standard it is. */
    CheckStandard standard() {
        return quality.standard();
    }

    /** Returns the values of the project's bench, oldest first. */
    List<CheckValue> values() {
        return quality.values().own();
    }

    /** Returns the charts; empty while there are too few values. */
    Optional<CheckStandardReview> review() {
        return quality.review();
    }

    /** Returns how it stands in a sentence: the most serious finding, if there is one. */
    String sentence() {
        List<Finding> findings = quality.findings();
        if (!findings.isEmpty()) {
            int more = findings.size() - 1;
            String worst = findings.get(0).sentence();
            return more > 0 ? TEXTS.text("check.more", worst, Integer.toString(more)) : worst;
        }
        String count = Integer.toString(values().size());
        return standing == Standing.IN_ORDER
                ? TEXTS.text("check.nothing", count)
                : TEXTS.text("check.few", count, Integer.toString(standard().baselineCount()));
    }

    /** Returns whether a value lies outside the limits. */
    boolean outside(int index) {
        return review().map(charts ->
                        charts.chart().readings().excludes(values().get(index).value()))
                .orElse(false);
    }

    /** Returns the unit as it stands behind a number: empty, or after a space that does not break. */
    String unitSuffix() {
        return standard().unit().isEmpty() ? "" : "\u00a0" + standard().unit();
    }
}
