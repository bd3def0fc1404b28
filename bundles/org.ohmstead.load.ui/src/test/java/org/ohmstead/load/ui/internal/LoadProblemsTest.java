// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.load.PlanPrecautions;
import org.ohmstead.model.LoadBranch;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.model.Severity;

class LoadProblemsTest {
    @TempDir
    Path folder;

    private Bench bench;

    @BeforeEach
    void setUp() throws Exception {
        bench = new Bench(folder);
        bench.withProject().open();
    }

    @AfterEach
    void tearDown() {
        bench.close();
    }

    private static List<Problem> of(Project project) {
        return PlanPrecautions.of(project);
    }

    @Test
    void theDemosLoadsHaveNoError() {
        List<Problem> problems = of(bench.project());
        assertTrue(problems.stream().noneMatch(problem -> problem.severity() == Severity.ERROR), problems::toString);
    }

    /** Several steps have no rating of their mode and load. */
    @Test
    void saysEachThingOnceHoweverManyStepsHaveIt() {
        List<Problem> problems = of(bench.project());
        assertEquals(
                problems.size(),
                problems.stream()
                        .map(problem -> problem.where() + problem.remedy())
                        .distinct()
                        .count());
        assertTrue(
                problems.stream().anyMatch(problem -> problem.what().startsWith("No power is known for ")),
                problems::toString);
    }

    @Test
    void leavesOutWhatTheProjectsOwnChecksSay() {
        Project unconfirmed = bench.project()
                .withPlan(bench.project().plan().stream()
                        .map(step -> step.withBelowLowestLoadConfirmed(false))
                        .toList());
        assertTrue(
                of(unconfirmed).stream().noneMatch(problem -> problem.where().endsWith(".belowLowestLoadConfirmed")));
    }

    /** One 8 ohm part of 250 W in the place of a 4 ohm load that the ratings drive with more. */
    @Test
    void namesALoadThatIsTooWeakAndWrong() {
        Project weak = bench.project()
                .withLoads(bench.project().loads().stream()
                        .map(load -> load.id().equals("4ohm")
                                ? load.withBranches(List.of(
                                        new LoadBranch(4, 0.01, 0, "8R-250W"),
                                        load.branches().get(1)))
                                : load)
                        .toList());
        List<Problem> problems = of(weak);
        assertTrue(
                problems.stream()
                        .anyMatch(problem -> problem.where().startsWith("$.loads[1].branches[0]")
                                && problem.severity() != Severity.NOTE),
                problems::toString);
    }
}
