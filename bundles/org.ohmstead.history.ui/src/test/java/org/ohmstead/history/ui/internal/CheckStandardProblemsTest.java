// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.model.Severity;
import org.ohmstead.workbench.session.LogSnapshot;
import org.ohmstead.workbench.session.LogSnapshot.LogState;
import org.ohmstead.workbench.session.ProjectView;

class CheckStandardProblemsTest {
    private static final LocalDate TODAY = LocalDate.of(2026, 10, 23);

    @TempDir
    Path folder;

    private final CheckStandardProblems provider = new CheckStandardProblems();
    private Stage stage;

    @BeforeEach
    void setUp() throws Exception {
        stage = new Stage(folder);
        stage.open();
    }

    @AfterEach
    void tearDown() {
        stage.close();
    }

    private Project project() {
        return stage.desk.session().orElseThrow().project().withCheckStandards(List.of(Standards.TYPED));
    }

    private List<Problem> problems(Project project) {
        return provider.problems(new ProjectView(folder, project, List.of(), stage.desk.log(), TODAY));
    }

    private void write(int firstDay, List<Double> values) throws Exception {
        Standards.write(stage, project(), Standards.TYPED, firstDay, values);
        String before = stage.desk.log().headHash();
        stage.desk.refreshLog();
        stage.until(
                "the log is read",
                () -> stage.desk.log().state() == LogState.WHOLE
                        && !stage.desk.log().headHash().equals(before));
    }

    @Test
    void aProjectWithoutCheckStandardsHasNone() {
        assertEquals(List.of(), problems(project().withCheckStandards(List.of())));
    }

    @Test
    void aBenchInOrderHasNone() throws Exception {
        write(0, Standards.inTurn(22));
        assertEquals(List.of(), problems(project()));
    }

    @Test
    void anAlarmLeadsToTheCheckStandardWithItsRemedy() throws Exception {
        write(0, Standards.inTurn(20, 50.05, 50.4));
        Problem worst = problems(project()).get(0);
        assertEquals(Severity.WARNING, worst.severity());
        assertEquals("$.checkStandards[0]", worst.where());
        assertTrue(worst.what().contains("\"50 W standard\""), worst.what());
        assertTrue(worst.what().contains("outside the control limits"), worst.what());
        assertTrue(worst.remedy().contains("before any run"), worst.remedy());
    }

    @Test
    void readsTheLogAnewOnlyWhenItHasGrown() throws Exception {
        write(0, Standards.inTurn(20, 50.05, 50.4));
        List<Problem> first = problems(project());
        assertSame(first, problems(project()));
        write(22, List.of(50.05));
        assertTrue(problems(project()).stream()
                .noneMatch(problem -> problem.what().contains("outside the control limits")));
    }

    @Test
    void anAlarmStaysWhileTheLogIsBeingRead() throws Exception {
        write(0, Standards.inTurn(20, 50.05, 50.4));
        List<Problem> found = problems(project());
        LogSnapshot reading = new LogSnapshot(LogState.READING, List.of(), "", "being read");
        assertEquals(found, provider.problems(new ProjectView(folder, project(), List.of(), reading, TODAY)));
        LogSnapshot unreadable = new LogSnapshot(LogState.UNREADABLE, List.of(), "", "no log");
        assertEquals(List.of(), provider.problems(new ProjectView(folder, project(), List.of(), unreadable, TODAY)));
    }

    @Test
    void isCalledByWhatItLooksAt() {
        assertEquals("Check standards", provider.name());
    }
}
