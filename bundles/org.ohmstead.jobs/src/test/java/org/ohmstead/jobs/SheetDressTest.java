// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.jobs;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.history.Subject;
import org.ohmstead.model.PaperSize;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.model.SheetDesign;
import org.ohmstead.model.SheetLayout;
import org.ohmstead.model.json.ProjectFile;
import org.ohmstead.report.HtmlSheet;
import org.ohmstead.report.ResultsSheet;
import org.ohmstead.report.SheetComparison;

class SheetDressTest {
    private static final Instant LATER = Instant.parse("2026-11-26T12:00:00Z");
    private static final String LOGO =
            "<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 40 20' width='40' height='20'>"
                    + "<rect width='40' height='20' fill='#123456'/></svg>";

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
        project = copyTo("own", SheetLayout.USUAL);
    }

    private ProjectFolder copyTo(String name, SheetLayout layout) throws Exception {
        ProjectFolder copy = DemoSteps.project(folder.resolve(name));
        Files.copy(made.logFile(), copy.logFile());
        return with(copy, layout);
    }

    private static ProjectFolder with(ProjectFolder copy, SheetLayout layout) throws Exception {
        Project changed = copy.project().withSheet(copy.project().sheet().withLayout(layout));
        ProjectFile.write(copy.folder(), changed, Optional.of(copy.loaded().document()));
        return ProjectFolder.open(copy.folder());
    }

    private ResultsSheet sheet(SheetLayout layout, SheetWish wish) throws Exception {
        project = with(project, layout);
        return SheetAssembly.assemble(project, wish, DemoSteps.VERSION, LATER);
    }

    private static List<Problem> about(ResultsSheet sheet, String where) {
        return sheet.problems().stream()
                .filter(problem -> problem.where().startsWith(where))
                .toList();
    }

    @Test
    void comesInTheFormThatTheProjectWishesFor() throws Exception {
        Files.createDirectories(project.sheetsFolder());
        Files.writeString(project.sheetsFolder().resolve("logo.svg"), LOGO);
        ResultsSheet sheet = sheet(
                SheetLayout.USUAL
                        .withDesign(SheetDesign.BENCH)
                        .withPaper(PaperSize.LETTER)
                        .withLogoFile("sheets/logo.svg"),
                SheetWish.NONE);
        assertEquals(SheetDesign.BENCH, sheet.form().design());
        assertEquals(PaperSize.LETTER, sheet.form().paper());
        assertTrue(sheet.form().logo().isPresent());
        assertEquals(List.of(), about(sheet, SheetDress.LOGO));
        assertTrue(SheetPublisher.name(sheet).endsWith("-bench"));
    }

    @Test
    void aWishGoesBeforeTheProject() throws Exception {
        ResultsSheet sheet = sheet(
                SheetLayout.USUAL.withDesign(SheetDesign.BENCH),
                new SheetWish(
                        Optional.of(SheetDesign.HANDOUT),
                        Optional.of(PaperSize.LETTER),
                        Optional.of(Locale.GERMAN),
                        List.of(),
                        List.of()));
        assertEquals(SheetDesign.HANDOUT, sheet.form().design());
        assertEquals(PaperSize.LETTER, sheet.form().paper());
        assertTrue(HtmlSheet.render(sheet).contains("lang=\"de\""));
        assertTrue(SheetPublisher.name(sheet).endsWith("-handout-de"));
    }

    @Test
    void aGermanSheetLeavesTheEnglishOneOfTheDayAlone() throws Exception {
        SheetWish german =
                new SheetWish(Optional.empty(), Optional.empty(), Optional.of(Locale.GERMANY), List.of(), List.of());
        SheetWish english =
                new SheetWish(Optional.empty(), Optional.empty(), Optional.of(Locale.ENGLISH), List.of(), List.of());
        String name = SheetPublisher.name(sheet(SheetLayout.USUAL, english));
        assertEquals(name + "-de", SheetPublisher.name(sheet(SheetLayout.USUAL, german)));
        assertEquals(Locale.GERMANY, sheet(SheetLayout.USUAL, german).form().language());
    }

    @Test
    void isMadeWithoutALogoThatCannotBeShown() throws Exception {
        ResultsSheet sheet = sheet(SheetLayout.USUAL.withLogoFile("sheets/none.png"), SheetWish.NONE);
        assertTrue(sheet.form().logo().isEmpty());
        List<Problem> problems = about(sheet, SheetDress.LOGO);
        assertEquals(1, problems.size());
        assertTrue(problems.get(0).what().contains("sheets/none.png cannot be read"), problems.toString());
        assertTrue(HtmlSheet.render(sheet).contains("sheets/none.png cannot be read"));
    }

    @Test
    void comparesWithTheProjectsThatAreNamed() throws Exception {
        copyTo("other", SheetLayout.USUAL);
        ResultsSheet sheet = sheet(
                SheetLayout.USUAL
                        .withDesign(SheetDesign.COMPARISON)
                        .withComparedProjects(List.of("../../other/larkspur.ohmstead", "../missing.ohmstead")),
                SheetWish.NONE);
        List<String> names = sheet.form().comparison().map(SheetComparison::subjects).orElseThrow().stream()
                .map(Subject::name)
                .toList();
        assertEquals(2, names.size());
        assertTrue(names.get(0).endsWith("(larkspur)") && names.get(1).endsWith("(larkspur) 2"), names.toString());
        List<Problem> problems = about(sheet, SheetDress.PROJECTS);
        assertEquals(1, problems.size());
        assertEquals("$.sheet.layout.comparedProjects[1]", problems.get(0).where());
        String page = HtmlSheet.render(sheet);
        // Both hold the very same readings.
        assertTrue(page.contains("no difference can be shown"), page);
    }

    @Test
    void comparesPeriodsAndSaysWhichItCannotRead() throws Exception {
        ResultsSheet sheet = sheet(
                SheetLayout.USUAL
                        .withDesign(SheetDesign.COMPARISON)
                        .withComparedPeriods(List.of("2000..", "soon", "..1999")),
                SheetWish.NONE);
        assertEquals(1, sheet.form().comparison().orElseThrow().subjects().size());
        assertEquals(
                "$.sheet.layout.comparedPeriods[1]",
                about(sheet, SheetDress.PERIODS).get(0).where());
    }

    @Test
    void otherDesignsReadNoOtherProject() throws Exception {
        ResultsSheet sheet =
                sheet(SheetLayout.USUAL.withComparedProjects(List.of("../missing.ohmstead")), SheetWish.NONE);
        assertTrue(sheet.form().comparison().isEmpty());
        assertEquals(List.of(), about(sheet, SheetDress.PROJECTS));
        assertFalse(SheetPublisher.name(sheet).endsWith("full"));
    }
}
