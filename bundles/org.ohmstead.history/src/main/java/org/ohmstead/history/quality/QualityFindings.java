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

/** What a review of a check standard gives reason to do. */
final class QualityFindings {
    private static final String MEASURE = "Measure the check standard before the next run.";
    private static final String AGAIN = "Measure the check standard again.";

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
                .ifPresent(
                        wrong -> add(
                                true,
                                wrong.sentence(),
                                "Check connections, settings and calibration of the meters, and measure the check standard again before any run."));
        repeats();
        review.days().ifPresent(this::scatter);
        review.operators().ifPresent(study -> {
            scatter(study);
            differ(study, "See whether they connect, set and read alike.");
        });
        review.benches()
                .ifPresent(
                        study -> differ(study, "Find out which bench is off before their readings are put together."));
        findings.sort((one, other) -> Boolean.compare(other.serious(), one.serious()));
        return List.copyOf(findings);
    }

    private void add(boolean serious, String sentence, String remedy) {
        findings.add(new Finding(serious, sentence, remedy));
    }

    private void due(LocalDate dueOn) {
        if (review.values().newest().isEmpty()) {
            add(false, "It was never measured on this bench.", MEASURE);
        } else if (dueOn.isBefore(today)) {
            add(true, "A new value has been due since " + dueOn + ".", MEASURE);
        } else if (dueOn.equals(today)) {
            add(false, "A new value is due today.", MEASURE);
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
                        "The two newest values of the same day and operator lie "
                                + Words.quantity(apart, review.standard().unit())
                                + " apart; by the days before it should be at most "
                                + Words.uncertainty(
                                        study.repeatabilityLimit(),
                                        review.standard().unit())
                                + " 19 times in 20.",
                        AGAIN));
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
            add(
                    false,
                    study.scatterSentence(),
                    "Find out what was different then, and void the values if they are wrong.");
        }
    }

    private void differ(GroupStudy study, String remedy) {
        if (study.precision().pValue() < review.standard().significanceRatio()) {
            add(
                    false,
                    "The " + (study.what().equals("bench") ? "benches" : study.what() + "s")
                            + " differ by more than chance explains.",
                    remedy);
        }
    }
}
