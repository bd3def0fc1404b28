// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.ui.internal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.ohmstead.curves.CurveGroup;
import org.ohmstead.curves.CurvePlots;
import org.ohmstead.curves.LoadCurve;
import org.ohmstead.curves.LoadCurves;
import org.ohmstead.curves.RatingJudge;
import org.ohmstead.curves.RatingResult;
import org.ohmstead.curves.study.StudyRating;
import org.ohmstead.model.Amplifier;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.PowerKind;
import org.ohmstead.model.Rating;
import org.ohmstead.model.Reading;
import org.ohmstead.model.SetAside;
import org.ohmstead.model.SheetSettings;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.session.WorkProgress;

/**
 * The curves through the readings that count, and what they say about the ratings.
 *
 * @param entries the entries with the readings, in the order of the log
 * @param groups the curves, those of one chart together
 * @param ratings a result for each rating of the amplifier, in its order
 * @param settings coverage of all intervals, and the rule of verdicts
 * @param asides the entries whose readings are set aside, in the order of the log
 * @param studies one of all loads, modes and channels together for each kind of power and frequency
 */
record PowerCurves(
        List<LogEntry> entries,
        List<CurveGroup> groups,
        List<RatingResult> ratings,
        SheetSettings settings,
        List<LogEntry> asides,
        List<JointStudy> studies) {
    private static final Messages TEXTS = Messages.of(PowerCurves.class);

    static final PowerCurves NOTHING =
            new PowerCurves(List.of(), List.of(), List.of(), new SheetSettings("", "", 0.95, ""), List.of(), List.of());

    private static final int STEPS = 3;

    PowerCurves {
        asides = List.copyOf(asides);
        studies = List.copyOf(studies);
        entries = List.copyOf(entries);
        groups = List.copyOf(groups);
        ratings = List.copyOf(ratings);
    }

    /**
     * A kind of power: with which stimulus, to which end point.
     *
     * @param kind steady tone or burst
     * @param endPoint what ended the search
     */
    record Sort(PowerKind kind, EndPoint endPoint) {
        static Sort of(CurveGroup group) {
            return new Sort(group.kind(), group.endPoint());
        }

        String text() {
            return Words.powerName(kind, endPoint);
        }
    }

    /**
     * Fits and judges; may take long.
     *
     * @param log all of it
     * @param amplifier with the ratings
     * @param settings with the confidence and the rule of verdicts
     * @param setAside which readings are left out
     */
    static PowerCurves of(
            List<LogEntry> log,
            Amplifier amplifier,
            SheetSettings settings,
            List<SetAside> setAside,
            WorkProgress progress) {
        Set<String> out = setAside.stream().map(SetAside::entryId).collect(Collectors.toSet());
        List<LogEntry> valid = log.stream()
                .filter(entry -> !entry.voided() && entry.reading().isPresent())
                .toList();
        List<LogEntry> entries =
                valid.stream().filter(entry -> !out.contains(entry.id())).toList();
        List<LogEntry> asides =
                valid.stream().filter(entry -> out.contains(entry.id())).toList();
        progress.step(0, STEPS, TEXTS.text("view.fittingStep", Integer.toString(entries.size())));
        List<LoadCurve> curves = LoadCurves.fit(readings(entries));
        progress.stopIfCancelled();
        progress.step(1, STEPS, TEXTS.text("view.judgingStep"));
        List<RatingResult> results = RatingJudge.judge(amplifier.ratings(), curves, settings);
        List<CurveGroup> groups = CurveGroup.of(curves);
        progress.stopIfCancelled();
        progress.step(2, STEPS, TEXTS.text("view.studyingStep"));
        List<JointStudy> studies = JointStudy.of(entries, groups, amplifier, settings);
        return new PowerCurves(entries, groups, results, settings, asides, studies);
    }

    private static List<Reading> readings(List<LogEntry> entries) {
        return entries.stream().map(entry -> entry.reading().orElseThrow()).toList();
    }

    /** Returns the coverage of all intervals. */
    double confidence() {
        return settings.confidence();
    }

    /** Returns the kinds of power that occur, each once, steady tones first. */
    List<Sort> sorts() {
        return groups.stream().map(Sort::of).distinct().toList();
    }

    /** Returns the groups of one kind of power: one for each mode and frequency. */
    List<CurveGroup> groupsOf(Sort sort) {
        return groups.stream().filter(group -> Sort.of(group).equals(sort)).toList();
    }

    /** Returns the study of all loads, modes and channels that a group is part of. */
    Optional<JointStudy> studyOf(CurveGroup group) {
        return studies.stream().filter(each -> each.concerns(group)).findFirst();
    }

    /** Returns what the studies say of a rating; the one nearest to its frequency counts. */
    Optional<StudyRating> jointly(Rating rating) {
        return studies.stream()
                .filter(each -> each.ratings().containsKey(rating.id()))
                .min(Comparator.comparingDouble(each -> Math.abs(each.frequencyHz() - rating.frequencyHz())))
                .map(each -> each.ratings().get(rating.id()));
    }

    /**
     * Returns the entries, set aside or not, whose readings are of a group's kind of power and frequency, and those set aside whose kind
     * of power has no curve any more; in the order of the log.
     */
    List<LogEntry> readingsAbout(Optional<CurveGroup> group) {
        return Stream.concat(entries.stream(), asides.stream())
                .filter(entry -> about(group, entry))
                .sorted(Comparator.comparingLong(LogEntry::sequence))
                .toList();
    }

    private boolean about(Optional<CurveGroup> group, LogEntry entry) {
        Reading reading = entry.reading().orElseThrow();
        return group.filter(each -> JointStudy.concerns(each, reading)).isPresent()
                || asides.contains(entry) && groups.stream().noneMatch(each -> JointStudy.concerns(each, reading));
    }

    /** Returns the entries that are set aside and would be in a group else. */
    List<LogEntry> asidesOf(CurveGroup group) {
        return asides.stream()
                .filter(entry -> JointStudy.concerns(group, entry.reading().orElseThrow())
                        && entry.reading().orElseThrow().mode() == group.mode())
                .toList();
    }

    /** Returns the results of the ratings that speak of what a group shows. */
    List<RatingResult> ratingsOf(CurveGroup group) {
        return ratings.stream()
                .filter(result -> CurvePlots.concerns(result.rating(), group))
                .toList();
    }

    /** Returns the group that a rating speaks of, rather one with its load and its frequency. */
    Optional<CurveGroup> groupOf(Rating rating) {
        List<CurveGroup> fitting = new ArrayList<>(groups.stream()
                .filter(group -> CurvePlots.concerns(rating, group))
                .toList());
        fitting.sort(Comparator.comparing((CurveGroup group) ->
                        group.loadsOhms().stream().noneMatch(ohms -> CurvePlots.ratedLoad(rating, ohms)))
                .thenComparingDouble(group -> Math.abs(group.frequencyHz() - rating.frequencyHz())));
        return fitting.stream().findFirst();
    }

    /** Returns the group that has a point of an entry, or empty. */
    Optional<CurveGroup> groupWith(LogEntry entry) {
        return groups.stream()
                .filter(group -> group.curves().stream().anyMatch(curve -> entriesOf(curve).stream()
                        .anyMatch(each -> each.id().equals(entry.id()))))
                .findFirst();
    }

    /** Returns every load that occurs, highest first: the place in it gives a load its colour everywhere. */
    List<Double> loadsOhms() {
        return groups.stream()
                .flatMap(group -> group.loadsOhms().stream())
                .distinct()
                .sorted(Comparator.reverseOrder())
                .toList();
    }

    /** Returns the entry behind each point of a curve, in the order of the points. */
    List<LogEntry> entriesOf(LoadCurve curve) {
        return LoadCurves.readingIndexes(curve, readings(entries)).stream()
                .map(entries::get)
                .toList();
    }
}
