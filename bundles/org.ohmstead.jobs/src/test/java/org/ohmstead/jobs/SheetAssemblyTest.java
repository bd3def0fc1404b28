// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.jobs;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.curves.RatingOutcome;
import org.ohmstead.curves.RatingResult;
import org.ohmstead.metrology.Verdict;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.model.ProjectChecks;
import org.ohmstead.model.Rating;
import org.ohmstead.model.SetAside;
import org.ohmstead.model.VerdictKind;
import org.ohmstead.model.VerdictRule;
import org.ohmstead.model.json.ProjectFile;
import org.ohmstead.report.HtmlSheet;
import org.ohmstead.report.ResultsSheet;
import org.ohmstead.report.SheetReading;
import org.ohmstead.testlog.TestLog;

class SheetAssemblyTest {
    private static final Instant LATER = Instant.parse("2051-07-08T23:30:00Z");

    @TempDir
    static Path shared;

    @TempDir
    Path folder;

    private static ProjectFolder made;
    private ProjectFolder project;

    @BeforeAll
    static void make() throws Exception {
        made = DemoSteps.project(shared.resolve("project"));
        Path recordings = DemoSteps.recordings(shared.resolve("recordings"), DemoSteps.FIVE);
        new ReplayJob(made, DemoSteps.VERSION).run(recordings, false, JobProgress.SILENT);
    }

    @BeforeEach
    void copy() throws Exception {
        project = DemoSteps.project(folder.resolve("project"));
        Files.copy(made.logFile(), project.logFile());
    }

    private ResultsSheet sheet() throws Exception {
        return SheetAssembly.assemble(project, DemoSteps.VERSION, LATER);
    }

    @Test
    void holdsEveryReadingAndRatingAndTheLogsHead() throws Exception {
        ResultsSheet sheet = sheet();
        assertEquals(DemoSteps.FIVE.size(), sheet.readings().size());
        assertEquals(
                project.project().amplifier().ratings().size(), sheet.ratings().size());
        try (TestLog log = project.readLog()) {
            assertEquals(log.headHash(), sheet.log().headHash());
        }
        assertTrue(sheet.log().verified());
        assertEquals(LATER, sheet.producedAt());
    }

    @Test
    void showsAVoidedReadingButDrawsNothingFromIt() throws Exception {
        int curvesBefore = sheet().curves().size();
        try (TestLog log = TestLog.open(project.logFile())) {
            log.voidEntry("R0001", "lead was loose", "T. Est");
        }
        ResultsSheet sheet = sheet();
        SheetReading voided = sheet.readings().get(0);
        assertEquals("lead was loose", voided.voidReason().orElseThrow());
        assertTrue(sheet.curves().size() < curvesBefore, "the step's only reading still makes a curve");
        assertEquals(DemoSteps.FIVE.size() + 1, sheet.log().entryCount());
    }

    @Test
    void showsAReadingThatTheProjectSetsAsideButDrawsNothingFromIt() throws Exception {
        int curvesBefore = sheet().curves().size();
        Project without = project.project().withSetAside(List.of(new SetAside("R0001", "amplifier still cold")));
        ProjectFile.write(
                project.folder(), without, Optional.of(project.loaded().document()));
        project = ProjectFolder.open(project.folder());
        ResultsSheet sheet = sheet();
        SheetReading aside = sheet.readings().get(0);
        assertEquals("amplifier still cold", aside.setAsideReason().orElseThrow());
        assertTrue(aside.voidReason().isEmpty());
        assertFalse(aside.stands());
        assertTrue(sheet.curves().size() < curvesBefore, "the step's only reading still makes a curve");
        assertEquals(DemoSteps.FIVE.size(), sheet.log().entryCount(), "the log itself is as it was");
        assertTrue(HtmlSheet.render(sheet).contains("Set aside, not in curves and verdicts: amplifier still cold"));
    }

    @Test
    void judgesByTheRuleThatTheProjectNames() throws Exception {
        // JCGM 106: a claim that is missed a little is undecided by guarded acceptance, met by guarded rejection,
        // missed by simple
        // acceptance.
        RatingResult before = sheet().ratings().stream()
                .filter(result -> result.outcome().isPresent())
                .findFirst()
                .orElseThrow();
        RatingOutcome found = before.outcome().orElseThrow();
        Rating close = before.rating().withPowerWatts(found.powerWatts() + 0.5 * found.standardUncertaintyWatts());
        for (VerdictKind kind : VerdictKind.values()) {
            Project changed = project.project()
                    .withAmplifier(project.project().amplifier().withRatings(List.of(close)))
                    .withSheet(project.project().sheet().withVerdictRule(Optional.of(new VerdictRule(kind, 0.05))));
            ProjectFile.write(
                    project.folder(), changed, Optional.of(project.loaded().document()));
            project = ProjectFolder.open(project.folder());
            Verdict expected =
                    switch (kind) {
                        case SIMPLE_ACCEPTANCE -> Verdict.FALLS_SHORT;
                        case GUARDED_ACCEPTANCE -> Verdict.UNDECIDED;
                        case GUARDED_REJECTION -> Verdict.MEETS;
                    };
            assertEquals(
                    expected, sheet().ratings().get(0).outcome().orElseThrow().verdict());
        }
    }

    @Test
    void judgesCalibrationsForTheDayOfTheLastReading() throws Exception {
        List<Problem> then = ProjectChecks.check(project.project(), LocalDate.of(2051, 7, 8));
        List<String> found = sheet().problems().stream().map(Problem::what).toList();
        assertTrue(
                then.stream().anyMatch(problem -> !found.contains(problem.what())),
                "a quarter of a century later the meters' calibrations have run out, but not when the readings were taken");
    }

    @Test
    void needsALogThatIsWhole() throws Exception {
        DemoSteps.tamper(project, "T. Est", "T. Xst");
        assertEquals(
                JobException.Reason.BROKEN_LOG,
                assertThrows(JobException.class, this::sheet).reason());
        Files.delete(project.logFile());
        assertEquals(
                JobException.Reason.NO_LOG,
                assertThrows(JobException.class, this::sheet).reason());
    }

    @Test
    void publishesBothFormsUnderTheDayAndTheLogsHead() throws Exception {
        ResultsSheet sheet = sheet();
        PublishedSheet published = SheetPublisher.publish(sheet, project.sheetsFolder());
        String name = "sheet-2051-07-08-" + sheet.log().headHash().substring(0, 8);
        assertEquals(project.sheetsFolder().resolve(name + ".html"), published.html());
        assertEquals(project.sheetsFolder().resolve(name + ".pdf"), published.pdf());
        assertTrue(Files.readString(published.html()).contains(sheet.log().headHash()));
        assertEquals("%PDF-", new String(Files.readAllBytes(published.pdf()), 0, 5, StandardCharsets.ISO_8859_1));
        SheetPublisher.publish(sheet, project.sheetsFolder());
        assertEquals(2, DemoSteps.filesIn(project.sheetsFolder()).size());
    }

    @Test
    void saysWhetherARatingFallsShort() throws Exception {
        // The demo's bridged rating is set above what its simulated amplifier gives; the 4-ohm one below.
        PublishedSheet all = new PublishedSheet(sheet(), folder, folder);
        assertTrue(all.anyFallsShort());
        ResultsSheet sheet = all.sheet();
        ResultsSheet kept = new ResultsSheet(
                sheet.project(),
                sheet.readings(),
                sheet.curves(),
                sheet.ratings().stream()
                        .filter(result -> result.rating().id().equals("4-ohm"))
                        .toList(),
                sheet.log(),
                sheet.softwareVersion(),
                sheet.producedAt(),
                sheet.problems());
        assertEquals(1, kept.ratings().size());
        assertFalse(new PublishedSheet(kept, folder, folder).anyFallsShort());
    }
}
