// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.module;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Severity;

class ModuleProblemsTest {
    @Test
    void aModuleThatRunsIsNoProblemAndAFaultyOneIsNamedWithItsFile() {
        List<Problem> problems = ModuleProblems.of(List.of(
                new ModuleState("org.sound 1.0.0", "/modules/sound.jar", Optional.empty()),
                new ModuleState("org.faulty 1.0.0", "/modules/faulty.jar", Optional.of("It cannot be started."))));
        assertEquals(1, problems.size());
        Problem problem = problems.get(0);
        assertEquals(Severity.WARNING, problem.severity());
        assertEquals("module org.faulty 1.0.0", problem.where());
        assertEquals("The module org.faulty 1.0.0 does not run. It cannot be started.", problem.what());
        assertTrue(problem.remedy().contains("/modules/faulty.jar"), problem.remedy());
    }
}
