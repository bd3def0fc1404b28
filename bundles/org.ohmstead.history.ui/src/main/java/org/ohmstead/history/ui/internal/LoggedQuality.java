// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.ui.internal;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import org.ohmstead.history.quality.QualityReview;
import org.ohmstead.history.quality.TypedCheck;
import org.ohmstead.model.CheckStandard;
import org.ohmstead.model.Project;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.testlog.search.Find;
import org.ohmstead.testlog.search.LogIndex;
import org.ohmstead.workbench.session.WorkProgress;

/** Reads the values of check standards from the test log, and writes those that are typed into it. */
final class LoggedQuality implements QualitySource {
    private final Clock clock;
    private final String softwareVersion;

    /**
     * Makes it.
     *
     * @param clock tells when a value is typed, and whose midnight divides the days
     * @param softwareVersion is kept with what is written
     */
    LoggedQuality(Clock clock, String softwareVersion) {
        this.clock = clock;
        this.softwareVersion = softwareVersion;
    }

    @Override
    public List<CheckView> read(Project project, Path folder, LocalDate today, WorkProgress progress)
            throws TestLogException {
        return CheckView.all(reviews(project, folder, today, clock.getZone(), progress), today);
    }

    /** Returns what the check standards of a project say. */
    static List<QualityReview> reviews(
            Project project, Path folder, LocalDate today, ZoneId zone, WorkProgress progress) throws TestLogException {
        Path logFile = folder.resolve(TestLog.FILE_NAME);
        List<LogEntry> entries = Files.exists(logFile) ? entries(project, logFile, progress) : List.of();
        return QualityReview.all(project, entries, today, zone);
    }

    /** Only what can hold a value is read, as a log may be long. */
    private static List<LogEntry> entries(Project project, Path logFile, WorkProgress progress)
            throws TestLogException {
        Set<String> steps = new TreeSet<>(Set.of(TypedCheck.STEP_ID));
        project.checkStandards().stream()
                .filter(standard -> !standard.isTypedIn())
                .map(CheckStandard::stepId)
                .forEach(steps::add);
        List<Find> questions = steps.stream().map(Find.EVERYTHING::withStepId).toList();
        try (TestLog log = TestLog.openReadOnly(logFile)) {
            return new LogEntries(log, Optional.of(LogIndex.beside(logFile)))
                    .results(entry -> isOf(steps, entry), questions, progress);
        }
    }

    private static boolean isOf(Set<String> steps, LogEntry entry) {
        return entry.reading().filter(each -> steps.contains(each.stepId())).isPresent()
                || entry.figures().filter(each -> steps.contains(each.stepId())).isPresent();
    }

    @Override
    public void append(Typed typed) throws TestLogException {
        TypedCheck check = new TypedCheck(
                typed.standard(), typed.value(), OptionalDouble.empty(), typed.operator(), clock.instant());
        try (TestLog log = TestLog.open(typed.folder().resolve(TestLog.FILE_NAME))) {
            log.append(check.figures(typed.project(), typed.revision(), softwareVersion));
        }
    }
}
