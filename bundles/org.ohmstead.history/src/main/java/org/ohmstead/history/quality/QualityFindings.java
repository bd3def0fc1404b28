// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.quality;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.ohmstead.history.internal.Words;
import org.ohmstead.metrology.quality.CheckStandardReview.Finding;
import org.ohmstead.metrology.quality.PrecisionStudy;
import org.ohmstead.units.text.Messages;

/** What a review of a check standard gives reason to do. */
final class QualityFindings {
    private static final Messages TEXTS = Messages.of(QualityFindings.class);

    private final QualityReview review;
    private final LocalDate today;
    private final Function<CheckValue, String> day;
    private final List<Finding> findings = new ArrayList<>();

    QualityFindings(QualityReview review, LocalDate today, Function<CheckValue, String> day) {
        this.review = review;
        this.today = today;
        this.day = day;
    }

    /** Returns all findings, the most serious first. */
    List<Finding> all() {
        review.review().ifPresent(charts -> findings.addAll(charts.findings()));
        review.dueOn().ifPresent(this::due);
        review.reference()
                .filter(ReferenceComparison::contradicts)
                .ifPresent(wrong -> add(true, wrong.sentence(), TEXTS.text("reference.remedy")));
        repeats();
        review.days().ifPresent(this::scatter);
        review.operators().ifPresent(study -> {
            scatter(study);
            differ(study, TEXTS.text("operators.remedy"));
        });
        review.benches().ifPresent(study -> differ(study, TEXTS.text("benches.remedy")));
        findings.sort((one, other) -> Boolean.compare(other.serious(), one.serious()));
        return List.copyOf(findings);
    }

    private void add(boolean serious, String sentence, String remedy) {
        findings.add(new Finding(serious, sentence, remedy));
    }

    private void due(LocalDate dueOn) {
        if (review.values().newest().isEmpty()) {
            add(false, TEXTS.text("due.never"), TEXTS.text("due.remedy"));
        } else if (dueOn.isBefore(today)) {
            add(true, TEXTS.text("due.since", dueOn.toString()), TEXTS.text("due.remedy"));
        } else if (dueOn.equals(today)) {
            add(false, TEXTS.text("due.today"), TEXTS.text("due.remedy"));
        }
    }

    /** ISO 5725-6, 5.2: two values under repeatability conditions should differ by no more than the limit. */
    private void repeats() {
        List<CheckValue> own = review.values().own();
        if (own.size() < 2) {
            return;
        }
        CheckValue newest = own.get(own.size() - 1);
        CheckValue before = own.get(own.size() - 2);
        boolean alike =
                day.apply(newest).equals(day.apply(before)) && newest.operator().equals(before.operator());
        Optional<PrecisionStudy> past = alike ? pastDays(own, day.apply(newest)) : Optional.empty();
        double apart = Math.abs(newest.value() - before.value());
        past.filter(study -> apart > study.repeatabilityLimit())
                .ifPresent(study -> add(
                        false,
                        TEXTS.text(
                                "repeat",
                                Words.quantity(apart, review.standard().unit()),
                                Words.uncertainty(
                                        study.repeatabilityLimit(),
                                        review.standard().unit())),
                        TEXTS.text("again")));
    }

    private Optional<PrecisionStudy> pastDays(List<CheckValue> own, String newestDay) {
        Map<String, List<Double>> byDay = new LinkedHashMap<>();
        int count = 0;
        for (CheckValue value : own) {
            if (!day.apply(value).equals(newestDay)) {
                byDay.computeIfAbsent(day.apply(value), any -> new ArrayList<>())
                        .add(value.value());
                count++;
            }
        }
        if (byDay.size() < 2 || count <= byDay.size()) {
            return Optional.empty();
        }
        return Optional.of(PrecisionStudy.of(byDay.values().stream()
                .map(list -> list.stream().mapToDouble(Double::doubleValue).toArray())
                .toList()));
    }

    private void scatter(GroupStudy study) {
        if (study.cochran().filter(outcome -> outcome.outlier()).isPresent()) {
            add(false, study.scatterSentence(), TEXTS.text("scatter.remedy"));
        }
    }

    private void differ(GroupStudy study, String remedy) {
        if (study.precision().pValue() < review.standard().significanceRatio()) {
            add(false, TEXTS.text("differ." + study.what()), remedy);
        }
    }
}
