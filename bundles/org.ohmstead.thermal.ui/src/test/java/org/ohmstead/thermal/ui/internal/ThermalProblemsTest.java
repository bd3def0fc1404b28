// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.model.Severity;
import org.ohmstead.workbench.session.LogSnapshot;
import org.ohmstead.workbench.session.ProjectView;

class ThermalProblemsTest extends ForecastStage {
    private final ThermalProblems provider = new ThermalProblems(LIKE_PARTS);
    private Project project;

    @BeforeEach
    void openProject() throws Exception {
        stage.withProject().open();
        project = stage.project();
    }

    private List<Problem> of(Project of) {
        return provider.problems(new ProjectView(folder, of, List.of(), LogSnapshot.NONE, LocalDate.of(2026, 3, 1)));
    }

    @Test
    void aPlanWithoutStepsHasNone() {
        assertEquals(List.of(), of(project.withPlan(List.of())));
    }

    @Test
    void namesTheStepThatGetsTooHot() {
        assertTrue(of(project).stream().noneMatch(problem -> problem.remedy().contains("Keep it on for at most")));
        List<Problem> problems = of(paced(project, pacing -> pacing.withStepSeconds(3600)));
        Problem hot = problems.stream()
                .filter(problem -> problem.remedy().startsWith("Keep it on for at most"))
                .findFirst()
                .orElseThrow();
        assertEquals(Severity.ERROR, hot.severity());
        assertTrue(hot.where().startsWith("$.plan["), hot.where());
        int index = Integer.parseInt(hot.where().replaceAll("\\D", ""));
        assertTrue(hot.what().startsWith("\"" + project.plan().get(index).id() + "\""), hot.what());
    }

    @Test
    void warnsOfWhatTheSupplyCannotGive() {
        Project weak = project.withBench(
                project.bench().withSupply(project.bench().supply().withCurrentLimitAmps(30)));
        List<Problem> more = of(weak).stream()
                .filter(problem -> problem.what().contains("the 30 A at which the supply limits"))
                .toList();
        assertFalse(more.isEmpty());
        assertTrue(of(project).stream()
                .noneMatch(problem ->
                        problem.what().contains("at which the supply limits") && problem.severity() == Severity.ERROR));
    }

    @Test
    void saysWhatItIsCalled() {
        assertEquals("Heat and current of the plan", provider.name());
    }
}
