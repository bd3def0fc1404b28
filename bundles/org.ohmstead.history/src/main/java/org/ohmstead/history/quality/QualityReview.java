// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.quality;

import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.Function;
import org.ohmstead.history.internal.Words;
import org.ohmstead.metrology.Estimate;
import org.ohmstead.metrology.quality.CheckStandardReview;
import org.ohmstead.metrology.quality.CheckStandardReview.Finding;
import org.ohmstead.metrology.quality.IndividualsChart;
import org.ohmstead.metrology.quality.RunRule;
import org.ohmstead.model.CheckStandard;
import org.ohmstead.model.Project;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.units.text.Messages;

/**
 * What a check standard says about the bench.
 *
 * @param standard which
 * @param values its values
 * @param review charts, drift, trend and outliers of the project's bench; empty as long as the baseline is not complete
 * @param reference the newest value beside the reference value, when there are both
 * @param days the values of the project's bench by day; empty without a day of several
 * @param operators the same by operator; empty with a single one
 * @param benches all values by bench; empty with a single one
 * @param crossed operators and benches together, when each of some measured on each of some
 * @param dueOn the day on which a new value is due; empty without a reminder
 * @param findings what is to be done, the most serious first
 * @param notes whole sentences about what else is to be known
 */
public record QualityReview(
        CheckStandard standard,
        CheckValues values,
        Optional<CheckStandardReview> review,
        Optional<ReferenceComparison> reference,
        Optional<GroupStudy> days,
        Optional<GroupStudy> operators,
        Optional<GroupStudy> benches,
        Optional<CrossedStudy> crossed,
        Optional<LocalDate> dueOn,
        List<Finding> findings,
        List<String> notes) {
    private static final Messages TEXTS = Messages.of(QualityReview.class);
    private static final double HOURS_PER_DAY = 24;
    private static final double SECONDS_PER_HOUR = 3600;
    private static final double COVERAGE = 2;
    private static final int ENOUGH = 20;

    /** Copies the lists. */
    public QualityReview {
        findings = List.copyOf(findings);
        notes = List.copyOf(notes);
    }

    /** Returns the reviews of all check standards of a project; see {@link #of}. */
    public static List<QualityReview> all(Project project, List<LogEntry> entries, LocalDate today, ZoneId zone) {
        return project.checkStandards().stream()
                .map(standard -> of(project, standard, entries, today, zone))
                .toList();
    }

    /**
     * Returns the review of a check standard.
     *
     * @param project whose check standard it is
     * @param standard which
     * @param entries what the log holds, in its order
     * @param today for which it is asked whether a value is due
     * @param zone whose midnight divides the days
     */
    public static QualityReview of(
            Project project, CheckStandard standard, List<LogEntry> entries, LocalDate today, ZoneId zone) {
        CheckValues values = CheckValues.of(project, standard, entries);
        List<CheckValue> own = values.own();
        Optional<CheckStandardReview> review = review(standard, own);
        double significance = standard.significanceRatio();
        List<CheckValue> everywhere = new ArrayList<>(own);
        everywhere.addAll(values.elsewhere());
        everywhere.sort(Comparator.comparing(CheckValue::takenAt));
        Function<CheckValue, String> day =
                value -> value.takenAt().atZone(zone).toLocalDate().toString();
        QualityReview found = new QualityReview(
                standard,
                values,
                review,
                reference(standard, values, review),
                GroupStudy.of("day", standard.unit(), groups(own, day), significance),
                GroupStudy.of("operator", standard.unit(), groups(own, CheckValue::operator), significance),
                GroupStudy.of("bench", standard.unit(), groups(everywhere, CheckValue::bench), significance),
                CrossedStudy.of(everywhere),
                dueOn(standard, values, today, zone),
                List.of(),
                List.of());
        List<Finding> findings = new QualityFindings(found, today, day).all();
        return new QualityReview(
                standard,
                values,
                review,
                found.reference(),
                found.days(),
                found.operators(),
                found.benches(),
                found.crossed(),
                found.dueOn(),
                findings,
                found.remarks());
    }

    private static Optional<CheckStandardReview> review(CheckStandard standard, List<CheckValue> own) {
        if (own.size() < standard.baselineCount()) {
            return Optional.empty();
        }
        double[] days = own.stream()
                .mapToDouble(value ->
                        Duration.between(own.get(0).takenAt(), value.takenAt()).toSeconds()
                                / SECONDS_PER_HOUR
                                / HOURS_PER_DAY)
                .toArray();
        return Optional.of(CheckStandardReview.of(
                days,
                own.stream().mapToDouble(CheckValue::value).toArray(),
                new CheckStandardReview.Settings(
                        standard.baselineCount(), RunRule.ZONE_TESTS, standard.significanceRatio(), standard.unit())));
    }

    private static Optional<ReferenceComparison> reference(
            CheckStandard standard, CheckValues values, Optional<CheckStandardReview> review) {
        if (standard.referenceValue().isEmpty() || values.newest().isEmpty()) {
            return Optional.empty();
        }
        CheckValue newest = values.newest().get();
        OptionalDouble uncertainty = newest.standardUncertainty();
        if (uncertainty.isEmpty()) {
            uncertainty = review.map(each -> OptionalDouble.of(each.chart().sigma()))
                    .orElseGet(
                            () -> scatter(values.own().subList(0, values.own().size() - 1)));
        }
        return Optional.of(new ReferenceComparison(
                newest.value(),
                doubled(uncertainty),
                standard.referenceValue().getAsDouble(),
                doubled(standard.referenceStandardUncertainty()),
                standard.unit()));
    }

    /** The newest value is not among them, so that a wrong one does not excuse itself. */
    private static OptionalDouble scatter(List<CheckValue> before) {
        if (before.size() < 2) {
            return OptionalDouble.empty();
        }
        Estimate mean = Estimate.fromReadings(
                before.stream().mapToDouble(CheckValue::value).toArray());
        return OptionalDouble.of(mean.standardUncertainty() * Math.sqrt(before.size()));
    }

    private static OptionalDouble doubled(OptionalDouble standardUncertainty) {
        return standardUncertainty.isPresent()
                ? OptionalDouble.of(COVERAGE * standardUncertainty.getAsDouble())
                : OptionalDouble.empty();
    }

    private static Map<String, double[]> groups(List<CheckValue> values, Function<CheckValue, String> group) {
        Map<String, List<Double>> lists = new TreeMap<>();
        for (CheckValue value : values) {
            String name = group.apply(value);
            if (!name.isBlank()) {
                lists.computeIfAbsent(name, any -> new ArrayList<>()).add(value.value());
            }
        }
        Map<String, double[]> arrays = new LinkedHashMap<>();
        lists.forEach((name, list) ->
                arrays.put(name, list.stream().mapToDouble(Double::doubleValue).toArray()));
        return arrays;
    }

    private static Optional<LocalDate> dueOn(CheckStandard standard, CheckValues values, LocalDate today, ZoneId zone) {
        if (standard.everyDays() == 0) {
            return Optional.empty();
        }
        return Optional.of(values.newest()
                .map(newest -> newest.takenAt().atZone(zone).toLocalDate().plusDays(standard.everyDays()))
                .orElse(today));
    }

    /** Returns whether nothing was found that forbids the next run. */
    public boolean mayRun() {
        return findings.stream().noneMatch(Finding::serious);
    }

    private List<String> remarks() {
        List<String> remarks = new ArrayList<>();
        int count = values.own().size();
        if (review.isEmpty()) {
            remarks.add(TEXTS.text("note.few", Integer.toString(count), Integer.toString(standard.baselineCount())));
        }
        review.ifPresent(each -> {
            remarks.add(limits(each.chart()));
            each.drift().ifPresent(line -> remarks.add(line.sentence(standard.unit(), "day")));
        });
        reference.ifPresent(each -> remarks.add(each.sentence()));
        days.ifPresent(study -> {
            remarks.addAll(study.sentences());
            if (study.precision().groupsDiffer()) {
                remarks.add(TEXTS.text("note.days"));
            }
        });
        operators.ifPresent(study -> remarks.addAll(study.sentences()));
        benches.ifPresent(study -> remarks.addAll(study.sentences()));
        crossed.ifPresent(each -> remarks.add(each.study().sentence(standard.unit())));
        if (!values.elsewhere().isEmpty()) {
            int elsewhere = values.elsewhere().size();
            remarks.add(TEXTS.text(
                    elsewhere == 1 ? "note.elsewhere.one" : "note.elsewhere.many", Integer.toString(elsewhere)));
        }
        remarks.addAll(values.notes());
        return List.copyOf(remarks);
    }

    private String limits(IndividualsChart chart) {
        if (chart.sigma() <= 0) {
            return TEXTS.text("limits.equal");
        }
        String sentence = TEXTS.text(
                "limits",
                Words.to(chart.readings().lower(), chart.sigma()),
                Words.to(chart.readings().upper(), chart.sigma(), standard.unit()),
                Words.to(chart.ranges().upper(), chart.sigma(), standard.unit()));
        return chart.baselineCount() < ENOUGH
                ? TEXTS.text("limits.few", sentence, Integer.toString(chart.baselineCount()), Integer.toString(ENOUGH))
                : sentence;
    }
}
