// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.quality;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.ohmstead.history.internal.CheckEntries;
import org.ohmstead.model.Precaution;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.model.Severity;
import org.ohmstead.model.Step;
import org.ohmstead.model.StopLimit;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.units.text.Messages;

/**
 * Says the alarms of the check standards before each step of a run: a serious one needs a yes, the others are shown. A step that measures
 * a check standard itself is not held up by its alarms, as it is what clears them up. The log is read again only when it has grown.
 */
public final class QualityPrecaution implements Precaution {
    private static final Messages TEXTS = Messages.of(QualityPrecaution.class);
    private static final String ID = "org.ohmstead.history.quality";

    private final Path logFile;
    private final Clock clock;
    private Optional<Seen> seen = Optional.empty();

    private record Seen(Project project, String headHash, LocalDate day, List<QualityReview> reviews) {}

    /**
     * Makes it.
     *
     * @param logFile the log with the values; it need not exist
     * @param clock tells the day, in its own zone
     */
    public QualityPrecaution(Path logFile, Clock clock) {
        this.logFile = Objects.requireNonNull(logFile, "logFile");
        this.clock = Objects.requireNonNull(clock, "clock");
    }

    @Override
    public String id() {
        return ID;
    }

    @Override
    public List<Problem> check(Project project, Step step) {
        if (project.checkStandards().isEmpty()) {
            return List.of();
        }
        List<QualityReview> reviews;
        try {
            reviews = reviews(project);
        } catch (TestLogException unreadable) {
            return List.of(new Problem(
                    Severity.ERROR,
                    logFile.getFileName() == null
                            ? logFile.toString()
                            : logFile.getFileName().toString(),
                    TEXTS.text("precaution.unread", unreadable.getMessage()),
                    TEXTS.text("precaution.unread.remedy")));
        }
        List<Problem> problems = new ArrayList<>();
        for (QualityReview review : reviews) {
            boolean itself = review.standard().stepId().equals(step.id());
            for (Problem problem : QualityProblems.of(project, List.of(review))) {
                problems.add(
                        itself
                                ? new Problem(
                                        Severity.NOTE, problem.where(), problem.what(), TEXTS.text("precaution.itself"))
                                : problem);
            }
        }
        return List.copyOf(problems);
    }

    private synchronized List<QualityReview> reviews(Project project) throws TestLogException {
        LocalDate day = LocalDate.now(clock);
        if (!Files.exists(logFile)) {
            return QualityReview.all(project, List.of(), day, clock.getZone());
        }
        try (TestLog log = TestLog.openReadOnly(logFile)) {
            String head = log.headHash();
            Optional<Seen> known = seen.filter(each -> each.headHash().equals(head)
                    && each.day().equals(day)
                    && each.project().equals(project));
            if (known.isEmpty()) {
                known = Optional.of(new Seen(
                        project,
                        head,
                        day,
                        QualityReview.all(project, CheckEntries.of(log, project), day, clock.getZone())));
                seen = known;
            }
            return known.get().reviews();
        }
    }

    @Override
    public List<StopLimit> stopLimits(Project project, Step step) {
        return List.of();
    }
}
