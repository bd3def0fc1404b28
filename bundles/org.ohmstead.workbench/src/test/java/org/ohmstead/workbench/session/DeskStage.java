// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.testlog.LogEntry;

/** A desk with a diary of what it tells, worked by hand. */
abstract class DeskStage {
    @TempDir
    Path parent;

    final HandClock clock = new HandClock();
    final HandAlarm alarm = new HandAlarm(clock);
    final HandWork work = new HandWork();
    final ProjectDesk desk = new ProjectDesk(work, clock, alarm, ProblemDesk.usualCollector());
    final Diary diary = new Diary();
    final List<Exception> failures = new ArrayList<>();
    Path folder;

    /** Writes down what it hears. */
    static final class Diary implements DeskListener {
        final List<String> lines = new ArrayList<>();
        final List<ExternalChange> changes = new ArrayList<>();

        @Override
        public void sessionChanged(Optional<ProjectSession> session) {
            lines.add("session " + session.map(open -> open.project().title()).orElse("none"));
        }

        @Override
        public void projectChanged(Project before, Project after) {
            lines.add(before.title() + " -> " + after.title());
        }

        @Override
        public void logChanged(LogSnapshot log) {
            lines.add("log " + log.state());
        }

        @Override
        public void chosenEntryChanged(Optional<LogEntry> entry) {
            lines.add("chosen " + entry.map(LogEntry::id).orElse("none"));
        }

        @Override
        public void problemsChanged(List<Problem> problems) {
            lines.add("problems " + problems.size());
        }

        @Override
        public void externalChange(ExternalChange change) {
            changes.add(change);
        }

        @Override
        public void noticed(SessionNotice notice) {
            lines.add("notice " + notice.kind());
        }

        List<String> read() {
            List<String> all = List.copyOf(lines);
            lines.clear();
            return all;
        }
    }

    @BeforeEach
    void copy() throws IOException {
        folder = SampleFolder.copyInto(parent);
        desk.listen(diary);
    }

    @AfterEach
    void close() throws UnsavedEdits {
        desk.close(Unsaved.DISCARD);
        assertEquals(List.of(), failures);
    }

    ProjectSession open() {
        desk.open(folder, Unsaved.REFUSE, session -> {}, failures::add);
        return desk.session().orElseThrow();
    }
}
