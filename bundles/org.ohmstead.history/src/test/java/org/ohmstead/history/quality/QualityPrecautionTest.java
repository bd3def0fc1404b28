// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.quality;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.history.SampleProject;
import org.ohmstead.model.CheckStandard;
import org.ohmstead.model.MeasuredFigures;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.model.Severity;
import org.ohmstead.model.Step;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;

class QualityPrecautionTest {
    private static final Clock CLOCK = Clock.fixed(Instant.parse("2026-03-02T10:00:00Z"), ZoneOffset.UTC);

    @TempDir
    private Path folder;

    private static List<Severity> severities(List<Problem> problems) {
        return problems.stream().map(Problem::severity).toList();
    }

    @Test
    void saysNothingWithoutCheckStandards() {
        Project project = SampleProject.with();
        QualityPrecaution precaution = new QualityPrecaution(folder.resolve(TestLog.FILE_NAME), CLOCK);
        assertTrue(precaution.check(project, project.plan().get(0)).isEmpty());
        assertTrue(precaution.stopLimits(project, project.plan().get(0)).isEmpty());
    }

    @Test
    void asksForAYesUntilTheStandardIsMeasured() throws TestLogException {
        CheckStandard daily = SampleProject.typedIn("r1", 4).withEveryDays(1);
        Project project = SampleProject.with(daily);
        Step step = project.plan().get(0);
        Path file = folder.resolve(TestLog.FILE_NAME);
        QualityPrecaution precaution = new QualityPrecaution(file, CLOCK);
        assertEquals(List.of(Severity.NOTE), severities(precaution.check(project, step)), "never measured");
        try (TestLog log = TestLog.open(file)) {
            log.append(measured(daily, Instant.parse("2026-02-27T10:00:00Z")));
            assertEquals(List.of(Severity.WARNING), severities(precaution.check(project, step)));
            log.append(measured(daily, CLOCK.instant()));
            assertTrue(precaution.check(project, step).isEmpty());
        }
    }

    private static MeasuredFigures measured(CheckStandard standard, Instant at) {
        return new TypedCheck(standard, 10, OptionalDouble.empty(), "N. N.", at)
                .figures(SampleProject.with(standard), SampleProject.REVISION, "0.1.0");
    }

    @Test
    void doesNotHoldUpTheStepThatMeasuresTheStandard() throws TestLogException {
        CheckStandard daily = SampleProject.typedIn("r1", 4).withEveryDays(1).withStepId("s1");
        Project project = SampleProject.with(daily);
        Path file = folder.resolve(TestLog.FILE_NAME);
        try (TestLog log = TestLog.open(file)) {
            log.append(measured(daily, Instant.parse("2026-02-27T10:00:00Z")));
        }
        QualityPrecaution precaution = new QualityPrecaution(file, CLOCK);
        List<Problem> own = precaution.check(project, project.plan().get(0));
        assertEquals(List.of(Severity.NOTE), severities(own));
        assertEquals("This step measures it anew.", own.get(0).remedy());
        assertEquals(
                List.of(Severity.WARNING),
                severities(precaution.check(project, project.plan().get(0).withId("s2"))));
    }

    @Test
    void forbidsAStepWhenTheLogCannotBeRead() throws IOException {
        Project project = SampleProject.with(SampleProject.typedIn("r1", 4));
        Path file = folder.resolve(TestLog.FILE_NAME);
        Files.writeString(file, "this is no log");
        List<Problem> problems =
                new QualityPrecaution(file, CLOCK).check(project, project.plan().get(0));
        assertEquals(List.of(Severity.ERROR), severities(problems));
        assertTrue(problems.get(0).what().startsWith("The check standards could not be looked up. "));
    }
}
