// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.quality;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import org.ohmstead.metrology.quality.CheckStandardReview.Finding;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.model.Severity;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.units.text.Messages;

/** The alarms of a project's check standards as problems: what is serious as a warning, the rest as a note. */
public final class QualityProblems {
    private static final Messages TEXTS = Messages.of(QualityProblems.class);

    private QualityProblems() {}

    /**
     * Returns what is wrong, with days that end at this computer's midnight.
     *
     * @param project whose check standards
     * @param entries what its log holds, in its order
     * @param today for which it is asked whether values are due
     */
    public static List<Problem> of(Project project, List<LogEntry> entries, LocalDate today) {
        return of(project, QualityReview.all(project, entries, today, ZoneId.systemDefault()));
    }

    /** Returns what is wrong by reviews that were made already. */
    public static List<Problem> of(Project project, List<QualityReview> reviews) {
        List<Problem> problems = new ArrayList<>();
        for (QualityReview review : reviews) {
            String where = "$.checkStandards[" + project.checkStandards().indexOf(review.standard()) + "]";
            for (Finding finding : review.findings()) {
                problems.add(new Problem(
                        finding.serious() ? Severity.WARNING : Severity.NOTE,
                        where,
                        TEXTS.text("problem", review.standard().name(), finding.sentence()),
                        finding.remedy()));
            }
        }
        return List.copyOf(problems);
    }
}
