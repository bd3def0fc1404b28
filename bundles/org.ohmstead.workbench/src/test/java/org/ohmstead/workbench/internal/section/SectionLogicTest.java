// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.reflect.RecordComponent;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.model.Cable;
import org.ohmstead.model.Meter;
import org.ohmstead.model.Mode;
import org.ohmstead.model.PartTraits;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.model.Severity;
import org.ohmstead.model.Step;
import org.ohmstead.model.Stimulus;
import org.ohmstead.model.json.ProjectFile;
import org.ohmstead.model.json.ProjectFileException;
import org.ohmstead.workbench.session.ProblemPlace;
import org.ohmstead.workbench.table.Column;

class SectionLogicTest {
    private static final LocalDate TODAY = LocalDate.of(2026, 6, 15);

    private static Project demo() throws ProjectFileException {
        return ProjectFile.read(Path.of("../../demo-data/larkspur.ohmstead")).project();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "$ | Project",
                "$.title | Project, title",
                "$.amplifier.ratings[0].powerWatts | Rating 4-ohm, power",
                "$.amplifier.ratings[2] | Rating bridged-4-ohm",
                "$.amplifier.ratings[99].loadOhms | Rating 100, load",
                "$.amplifier.lowestLoads[1].loadOhms | Lowest load bridged, load",
                "$.amplifier.fuses[1].ratedAmps | Fuse 2, rated current",
                "$.amplifier.serialNumber | Amplifier, serial number",
                "$.bench.meters | Meters",
                "$.bench.meters[1].accuracy.fixed | Meter dcv, fixed part",
                "$.bench.supply.highestVolts | Supply, highest output",
                "$.bench.cable.loopMetres | Supply cable, loop length",
                "$.bench.parts[0].ohms | Part 8R-250W, resistance",
                "$.bench.parts[0].traits.temperatureCoefficientPerKelvin | Part 8R-250W, drift",
                "$.bench.parts[0].traits.inductanceHenries | Part 8R-250W, inductance",
                "$.bench.parts[0].traits.pulseRule.overloadRatio | Part 8R-250W, short overload",
                "$.bench.parts[0].sinkKelvinPerWatt | Part 8R-250W, case to air",
                "$.loads[0].branches[1].ohms | Load 8ohm, branch 2, resistance",
                "$.loads[0].branches[0].heatingRatio | Load 8ohm, branch 1, change when hot",
                "$.plan[0].loadId | Step stereo-8ohm-11V5, load",
                "$.sheet.preparedBy | Results sheet, prepared by",
                "$.sheet.verdictRule.riskRatio | Results sheet, risk of a wrong verdict",
                "$.bench.meters[0].stability.driftRatioPerYear | Meter rec, drift",
                "$.bench.repeatability.degreesOfFreedom | Bench, degrees of freedom",
                "$.amplifier.price.currency | Amplifier, currency",
                "$.checkStandards[0].stepId | Check standard ten-ohm, source of the values",
                "$.checkStandards | Check standards",
                "$.sharedLog.host | Shared log, server",
                "$.newThing.size | Project file, new thing size",
                "log.db | log.db"
            })
    void saysPlacesInPlainWords(String where, String words) throws ProjectFileException {
        assertEquals(words, PlaceWords.of(where, demo()));
    }

    /** Each column that an edit can name is the column of a path, and has the same words. */
    @Test
    void everyTraitColumnIsFoundByItsPath() {
        Map<String, String> columns = Map.of(
                "traits.measured", "measured",
                "traits.temperatureCoefficientPerKelvin", "drift",
                "traits.inductanceHenries", "inductanceHenries",
                "traits.sinkKelvinPerWatt", "caseToAir",
                "traits.elementKelvinPerWatt", "wireToCase",
                "traits.pulseRule", "shortOverload");
        assertEquals(
                Set.copyOf(columns.values()),
                PartTraitColumns.all().stream().map(Column::id).collect(Collectors.toSet()));
        columns.forEach((path, column) -> {
            assertEquals(column, PlaceWords.column(path));
            assertEquals(PlaceWords.field(column), PlaceWords.field(path));
        });
        assertEquals(
                Set.of(
                        "measured",
                        "temperatureCoefficientPerKelvin",
                        "inductanceHenries",
                        "sinkKelvinPerWatt",
                        "elementKelvinPerWatt",
                        "pulseRule"),
                Arrays.stream(PartTraits.class.getRecordComponents())
                        .map(RecordComponent::getName)
                        .collect(Collectors.toSet()),
                "another trait needs a column and its path");
    }

    @ParameterizedTest
    @CsvSource({
        "$.amplifier.maker",
        "$.amplifier.ratings[3].powerWatts",
        "$.bench.supply.name",
        "$.bench.meters[1].accuracy.fixed",
        "$.bench.parts[2]",
        "$.bench.parts[2].traits.sinkKelvinPerWatt",
        "$.loads[0].branches[1].ohms",
        "$.plan[12].loadId",
        "$.sheet.confidence",
        "$.checkStandards[0].stepId",
        "$.sharedLog.host",
        "$.title"
    })
    void findsThePathOfAPlaceAgain(String where) {
        assertEquals(
                Optional.of(where), ProjectPath.of(ProblemPlace.parse(where)).map(ProjectPath::text));
    }

    @Test
    void takesNoFileNameForAPath() {
        assertTrue(ProjectPath.parse("log.db").isEmpty());
        assertTrue(ProjectPath.parse("$.loads[x]").isEmpty());
        assertTrue(ProjectPath.of(ProblemPlace.parse("log.db#e1")).isEmpty());
    }

    @Test
    void addsTheWholeBlockOfStepsButThoseThatAreThere() throws ProjectFileException {
        Project project = demo();
        PlanMatrix there = new PlanMatrix(
                List.of(Mode.STEREO),
                List.of("8ohm", "4ohm"),
                List.of(11.5, 12.5, 13.5, 14.4),
                List.of(new Stimulus.ContinuousSine(1000)),
                StepTable.USUAL_END,
                false);
        assertEquals(List.of(), there.missingIn(project));
        PlanMatrix more = new PlanMatrix(
                List.of(Mode.STEREO, Mode.SINGLE),
                List.of("8ohm", "4ohm"),
                List.of(11.5, 13.0),
                List.of(new Stimulus.ContinuousSine(1000), new Stimulus.ToneBurst(1000, 0.02, 0.5, -20)),
                StepTable.USUAL_END,
                true);
        assertEquals(16, more.size());
        List<Step> missing = more.missingIn(project);
        // Of the 16, the two continuous stereo steps at 11.5 V are in the demo's plan.
        assertEquals(14, missing.size());
        assertEquals(14, missing.stream().map(Step::id).distinct().count());
        assertTrue(missing.stream().noneMatch(step -> project.step(step.id()).isPresent()));
        assertTrue(missing.stream().anyMatch(step -> step.id().equals("burst-single-4ohm-13V")));
        assertTrue(missing.stream().noneMatch(Step::belowLowestLoadConfirmed), "none of these loads is too low");
    }

    @Test
    void confirmsOnlyLoadsThatAreTooLow() throws ProjectFileException {
        PlanMatrix matrix = new PlanMatrix(
                List.of(Mode.STEREO),
                List.of("1ohm", "8ohm"),
                List.of(13.0),
                List.of(new Stimulus.ContinuousSine(1000)),
                StepTable.USUAL_END,
                true);
        List<Step> steps = matrix.missingIn(demo());
        assertTrue(steps.get(0).belowLowestLoadConfirmed());
        assertFalse(steps.get(1).belowLowestLoadConfirmed());
    }

    @Test
    void findsFreeIds() {
        assertEquals("4ohm", FreshIds.freeOf("4ohm", List.of("8ohm")));
        assertEquals("4ohm-3", FreshIds.freeOf("4ohm", List.of("4ohm", "4ohm-2")));
        assertEquals("rating-2", FreshIds.numbered("rating", List.of("rating-1", "rating-3")));
    }

    @Test
    void tellsARenamedRowFromOneThatMovedOrWent() {
        assertEquals(Map.of("b", "x"), RowIds.renamed(List.of("a", "b"), List.of("a", "x"), id -> id));
        assertEquals(Map.of(), RowIds.renamed(List.of("a", "b"), List.of("b", "a"), id -> id));
        assertEquals(Map.of(), RowIds.renamed(List.of("a", "b"), List.of("b"), id -> id));
    }

    @Test
    void refusesAnIdTwiceButLeavesThoseThatWereDoubleBefore() {
        assertThrows(
                IllegalArgumentException.class,
                () -> RowIds.refuseDoubles(List.of("a", "b"), List.of("a", "a"), id -> id));
        RowIds.refuseDoubles(List.of("a", "a"), List.of("a", "a", "b"), id -> id);
    }

    @ParameterizedTest
    @CsvSource({
        "2026-06-14, overdue by 1 day, WARNING",
        "2026-05-15, overdue by 31 days, WARNING",
        "2026-06-15, due today, NOTE",
        "2026-08-14, due in 60 days, NOTE",
        "2026-08-15, in date,",
        ", no due day,"
    })
    void tellsHowACalibrationStands(LocalDate due, String words, Severity severity) throws ProjectFileException {
        Meter meter = demo().bench().meters().get(0).withCalibrationDueOn(Optional.ofNullable(due));
        CalibrationState state = CalibrationState.of(meter, TODAY);
        assertEquals(words, state.words());
        assertEquals(Optional.ofNullable(severity), state.mark().map(mark -> mark.severity()));
    }

    @Test
    void reckonsTheCableFromItsCopperUntilItIsMeasured() {
        // IEC 60028: copper has 1/58 ohm square millimetre per metre at 20 degrees; 5.8 m of 10 mm2 are 10 mOhm, 0.5 V
        // and 25 W at 50 A.
        assertEquals(
                "Loop 10 m\u03a9 (copper at 20 \u00b0C). At 50 A it drops 500 mV and turns 25 W into heat.",
                BenchPage.drop(new Cable(10, 5.8, OptionalDouble.empty())));
        assertTrue(
                BenchPage.drop(new Cable(10, 5.8, OptionalDouble.of(0.02))).startsWith("Loop 20 m\u03a9 (measured)"));
    }

    @Test
    void countsAndFiltersAndCopiesProblems() {
        Problem error = new Problem(Severity.ERROR, "$.plan[0]", "It is\ttorn.", "Mend it.");
        Problem warning = new Problem(Severity.WARNING, "$.loads[0]", "It is warm.", "Cool it.");
        assertEquals("No problems found.", ProblemLine.counted(List.of()));
        assertEquals("1 error, 2 warnings", ProblemLine.counted(List.of(warning, error, warning)));
        ProblemLine line = new ProblemLine(error, "Step s1", 0);
        assertTrue(line.matches(Optional.empty(), "step MEND"));
        assertFalse(line.matches(Optional.empty(), "step cool"));
        assertFalse(line.matches(Optional.of(Severity.WARNING), ""));
        assertEquals(
                "Severity\tProblem\tWhere\tRemedy\nError\tIt is torn.\tStep s1\tMend it.\n",
                ProblemLine.asTsv(List.of(line)));
    }
}
