// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.ui.internal;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.ohmstead.history.quality.QualityProblems;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.model.Severity;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.session.LogSnapshot.LogState;
import org.ohmstead.workbench.session.ProblemProvider;
import org.ohmstead.workbench.session.ProjectView;
import org.ohmstead.workbench.session.WorkProgress;
import org.osgi.service.component.annotations.Component;

/** Shows among the project's problems what its check standards say of the bench, so that it is seen before a run. */
@Component
public final class CheckStandardProblems implements ProblemProvider {
    private static final Messages TEXTS = Messages.of(CheckStandardProblems.class);
    private static final WorkProgress UNSEEN = new WorkProgress() {
        @Override
        public void step(int done, int total, String what) {
            // The problems are looked for in a work that shows its own progress.
        }

        @Override
        public boolean cancelled() {
            return Thread.currentThread().isInterrupted();
        }
    };

    private Optional<Answer> last = Optional.empty();

    /** What was found last, and of what: the log is read anew only when something has changed. */
    private record Answer(Path folder, Project project, LocalDate today, String head, List<Problem> problems) {}

    @Override
    public String name() {
        return TEXTS.text("problem.name");
    }

    @Override
    public List<Problem> problems(ProjectView view) {
        Project project = view.project();
        LogState state = view.log().state();
        // A log that cannot be read is a problem of its own, which another provider tells.
        if (project.checkStandards().isEmpty() || state == LogState.UNREADABLE) {
            return List.of();
        }
        if (state == LogState.READING) { // until it is known whether there is more, what was found goes on
            return last.filter(answer -> answer.folder().equals(view.folder())
                            && answer.project().checkStandards().equals(project.checkStandards()))
                    .map(Answer::problems)
                    .orElse(List.of());
        }
        String head = view.log().headHash();
        Optional<Answer> known = last.filter(answer -> answer.folder().equals(view.folder())
                && answer.project().equals(project)
                && answer.today().equals(view.today())
                && answer.head().equals(head));
        if (known.isPresent()) {
            return known.get().problems();
        }
        List<Problem> found = find(view);
        last = Optional.of(new Answer(view.folder(), project, view.today(), head, found));
        return found;
    }

    private static List<Problem> find(ProjectView view) {
        Project project = view.project();
        if (!Files.isDirectory(view.folder())) {
            return List.of();
        }
        try {
            return QualityProblems.of(
                    project,
                    LoggedQuality.reviews(project, view.folder(), view.today(), ZoneId.systemDefault(), UNSEEN));
        } catch (TestLogException unreadable) {
            return List.of(new Problem(
                    Severity.WARNING,
                    TestLog.FILE_NAME,
                    TEXTS.text("problem.unread", unreadable.getMessage()),
                    TEXTS.text("problem.unread.remedy")));
        }
    }
}
