// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.ui.internal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.ohmstead.curves.CurveGroup;
import org.ohmstead.curves.CurvePlots;
import org.ohmstead.curves.LoadCurve;
import org.ohmstead.curves.LoadCurves;
import org.ohmstead.curves.RatingJudge;
import org.ohmstead.curves.RatingResult;
import org.ohmstead.model.Amplifier;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.PowerKind;
import org.ohmstead.model.Rating;
import org.ohmstead.model.Reading;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.workbench.session.WorkProgress;

/**
 * The curves through the readings that count, and what they say about the ratings.
 *
 * @param entries the entries with the readings, in the order of the log
 * @param groups the curves, those of one chart together
 * @param ratings a result for each rating of the amplifier, in its order
 * @param confidence coverage of all intervals, and what a verdict needs
 */
record PowerStudy(List<LogEntry> entries, List<CurveGroup> groups, List<RatingResult> ratings, double confidence) {
    static final PowerStudy NOTHING = new PowerStudy(List.of(), List.of(), List.of(), 0.95);

    private static final int STEPS = 2;

    PowerStudy {
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

    /** Fits and judges; may take long. */
    static PowerStudy of(List<LogEntry> log, Amplifier amplifier, double confidence, WorkProgress progress) {
        List<LogEntry> entries = log.stream()
                .filter(entry -> !entry.voided() && entry.reading().isPresent())
                .toList();
        progress.step(0, STEPS, "Fitting curves through " + entries.size() + " readings");
        List<LoadCurve> curves = LoadCurves.fit(readings(entries));
        progress.stopIfCancelled();
        progress.step(1, STEPS, "Judging ratings");
        List<RatingResult> results = RatingJudge.judge(amplifier.ratings(), curves, confidence);
        return new PowerStudy(entries, CurveGroup.of(curves), results, confidence);
    }

    private static List<Reading> readings(List<LogEntry> entries) {
        return entries.stream().map(entry -> entry.reading().orElseThrow()).toList();
    }

    /** Returns the kinds of power that occur, each once, steady tones first. */
    List<Sort> sorts() {
        return groups.stream().map(Sort::of).distinct().toList();
    }

    /** Returns the groups of one kind of power: one for each mode and frequency. */
    List<CurveGroup> groupsOf(Sort sort) {
        return groups.stream().filter(group -> Sort.of(group).equals(sort)).toList();
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
