// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.ui.internal;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.ohmstead.curves.CurveGroup;
import org.ohmstead.curves.CurvePlots;
import org.ohmstead.curves.VerdictWords;
import org.ohmstead.curves.study.PowerStudy;
import org.ohmstead.curves.study.RefusedPoint;
import org.ohmstead.curves.study.StudyOutcome;
import org.ohmstead.curves.study.StudyPoint;
import org.ohmstead.curves.study.StudyRating;
import org.ohmstead.curves.study.StudyReadings;
import org.ohmstead.curves.study.StudyRequest;
import org.ohmstead.metrology.DecisionRule;
import org.ohmstead.model.Amplifier;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.Mode;
import org.ohmstead.model.PowerKind;
import org.ohmstead.model.Rating;
import org.ohmstead.model.Reading;
import org.ohmstead.model.SheetSettings;
import org.ohmstead.testlog.LogEntry;

/**
 * One study of all loads, modes and channels together, with all that takes long to find out.
 *
 * @param kind steady tone or burst
 * @param endPoint what ended the search
 * @param frequencyHz of the tone
 * @param study empty when there can be none
 * @param findings what it means, in whole sentences; when there is no study, why
 * @param refused readings that could not be used
 * @param ratings what the study says of each rating that it may be held against, by the rating's id
 * @param differences of channels, modes and loads
 * @param confidence coverage of intervals
 */
record JointStudy(
        PowerKind kind,
        EndPoint endPoint,
        double frequencyHz,
        Optional<PowerStudy> study,
        List<String> findings,
        List<RefusedPoint> refused,
        Map<String, StudyRating> ratings,
        List<Difference> differences,
        double confidence) {

    JointStudy {
        findings = List.copyOf(findings);
        refused = List.copyOf(refused);
        ratings = Map.copyOf(ratings);
        differences = List.copyOf(differences);
    }

    /** Returns a study for each kind of power and frequency that has a curve; may take long. */
    static List<JointStudy> of(
            List<LogEntry> entries, List<CurveGroup> groups, Amplifier amplifier, SheetSettings settings) {
        List<JointStudy> studies = new ArrayList<>();
        for (CurveGroup group : groups) {
            if (studies.stream().noneMatch(each -> each.concerns(group))) {
                studies.add(of(entries, group, amplifier, settings));
            }
        }
        return studies;
    }

    private static JointStudy of(
            List<LogEntry> entries, CurveGroup group, Amplifier amplifier, SheetSettings settings) {
        double confidence = settings.confidence();
        List<StudyPoint> points = new ArrayList<>();
        List<Reading> readings = new ArrayList<>();
        for (LogEntry entry : entries) {
            Reading reading = entry.reading().orElseThrow();
            if (concerns(group, reading)) {
                readings.add(reading);
                StudyReadings.points("", entry.id(), reading)
                        .forEach(point -> points.add(point.named(label(entry, point), entry.id())));
            }
        }
        StudyRequest request = StudyRequest.of(points)
                .withSharedRelativeUncertainty(StudyReadings.sharedRelativeUncertainty(readings));
        StudyOutcome outcome = PowerStudy.of(request);
        if (outcome instanceof PowerStudy study) {
            return new JointStudy(
                    group.kind(),
                    group.endPoint(),
                    group.frequencyHz(),
                    Optional.of(study),
                    study.findings(),
                    study.refused(),
                    ratings(study, group, amplifier, VerdictWords.rule(settings.rule())),
                    Difference.of(study, confidence),
                    confidence);
        }
        return new JointStudy(
                group.kind(),
                group.endPoint(),
                group.frequencyHz(),
                Optional.empty(),
                List.of(((StudyOutcome.Refused) outcome).reason()),
                outcome.refused(),
                Map.of(),
                List.of(),
                confidence);
    }

    private static String label(LogEntry entry, StudyPoint point) {
        return point.channel().isEmpty() ? entry.id() : entry.id() + " " + point.channel();
    }

    private static Map<String, StudyRating> ratings(
            PowerStudy study, CurveGroup group, Amplifier amplifier, DecisionRule rule) {
        Map<String, StudyRating> found = new LinkedHashMap<>();
        List<Rating> ratings = amplifier.ratings().stream()
                .filter(rating -> CurvePlots.concerns(rating, inMode(group, rating.mode())))
                .toList();
        for (StudyRating each : StudyRating.of(study, ratings, rule)) {
            found.putIfAbsent(each.rating().id(), each);
        }
        return found;
    }

    /** A study answers for modes that were not read as well, so the group's own mode is no bar. */
    private static CurveGroup inMode(CurveGroup group, Mode mode) {
        return new CurveGroup(group.kind(), mode, group.endPoint(), group.frequencyHz(), group.curves());
    }

    /** Returns whether a group shows readings of this study. */
    boolean concerns(CurveGroup group) {
        return kind == group.kind() && endPoint.equals(group.endPoint()) && frequencyHz == group.frequencyHz();
    }

    /** Returns whether a reading is of the kind of power and the frequency that a group shows, in whatever mode. */
    static boolean concerns(CurveGroup group, Reading reading) {
        return reading.stimulus().powerKind() == group.kind()
                && reading.endPoint().equals(group.endPoint())
                && reading.stimulus().frequencyHz() == group.frequencyHz();
    }
}
