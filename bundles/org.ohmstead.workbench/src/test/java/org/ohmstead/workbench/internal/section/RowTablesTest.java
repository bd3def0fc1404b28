// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.ohmstead.model.DistortionMeasure;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.MeterQuantity;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Mounting;
import org.ohmstead.model.PowerKind;
import org.ohmstead.model.Project;
import org.ohmstead.model.PulseRule;
import org.ohmstead.model.Rating;
import org.ohmstead.workbench.section.SectionPage;

/** The tables of the amplifier, the bench, the parts, and the plan's cells. */
class RowTablesTest {
    @TempDir
    Path temp;

    private static Arguments cell(
            SectionPage page,
            String table,
            String column,
            String typed,
            String undoName,
            Object expected,
            Function<Project, Object> get) {
        return Arguments.of(page, table, column, typed, undoName, expected, get);
    }

    static Stream<Arguments> cells() {
        SectionPage amplifier = new AmplifierPage();
        Function<Project, Rating> rating = p -> p.amplifier().ratings().get(0);
        Function<Project, EndPoint.DistortionLimit> limit =
                p -> (EndPoint.DistortionLimit) p.plan().get(0).endPoint();
        return Stream.of(
                cell(amplifier, "ratings", "id", "main", "Set rating id", "main", p -> rating.apply(p)
                        .id()),
                cell(amplifier, "ratings", "kind", "burst", "Set rating kind", PowerKind.BURST, p -> rating.apply(p)
                        .kind()),
                cell(amplifier, "ratings", "mode", "single", "Set rating mode", Mode.SINGLE, p -> rating.apply(p)
                        .mode()),
                cell(amplifier, "ratings", "loadOhms", "3R3", "Set rating load", 3.3, p -> rating.apply(p)
                        .loadOhms()),
                cell(amplifier, "ratings", "powerWatts", "100", "Set rating power", 100.0, p -> rating.apply(p)
                        .powerWatts()),
                cell(amplifier, "ratings", "supplyVolts", "13,8", "Set rating supply volts", 13.8, p -> rating.apply(p)
                        .supplyVolts()),
                cell(amplifier, "ratings", "distortionRatio", "10", "Set rating distortion", 0.1, p -> rating.apply(p)
                        .distortionRatio()),
                cell(amplifier, "ratings", "frequencyHz", "1k5", "Set rating frequency", 1500.0, p -> rating.apply(p)
                        .frequencyHz()),
                cell(amplifier, "ratings", "wording", "Loud", "Set rating wording", "Loud", p -> rating.apply(p)
                        .wording()),
                cell(amplifier, "lowestloads", "loadOhms", "1", "Set limit load", 1.0, p -> p.amplifier()
                        .lowestLoads()
                        .get(0)
                        .loadOhms()),
                cell(amplifier, "fuses", "ratedAmps", "40", "Set fuse rated current", 40.0, p -> p.amplifier()
                        .fuses()
                        .get(0)
                        .ratedAmps()),
                cell(
                        amplifier,
                        "fuses",
                        "place",
                        "at the battery",
                        "Set fuse place",
                        "at the battery",
                        p -> p.amplifier().fuses().get(0).place()),
                cell(
                        new BenchPage(),
                        "meters",
                        "quantity",
                        "supply volts",
                        "Set meter quantity",
                        MeterQuantity.SUPPLY_VOLTS,
                        p -> p.bench().meters().get(0).quantity()),
                cell(
                        new BenchPage(),
                        "meters",
                        "accuracy.readingRatio",
                        "0.5",
                        "Set meter share of reading",
                        0.005,
                        p -> p.bench().meters().get(0).accuracy().readingRatio()),
                cell(
                        new BenchPage(),
                        "meters",
                        "accuracy.coverageFactor",
                        "2",
                        "Set meter coverage factor",
                        2.0,
                        p -> p.bench().meters().get(0).accuracy().coverageFactor()),
                cell(
                        new BenchPage(),
                        "meters",
                        "calibrationDueOn",
                        "2031-02-03",
                        "Set meter calibration due",
                        Optional.of(LocalDate.of(2031, 2, 3)),
                        p -> p.bench().meters().get(0).calibrationDueOn()),
                cell(new PartsPage(), "parts", "toleranceRatio", "5", "Set part tolerance", 0.05, p -> p.bench()
                        .parts()
                        .get(0)
                        .toleranceRatio()),
                cell(
                        new PartsPage(),
                        "parts",
                        "mounting",
                        "free air",
                        "Set part mounting",
                        Mounting.FREE_AIR,
                        p -> p.bench().parts().get(0).mounting()),
                cell(new PartsPage(), "parts", "count", "12", "Set part count", 12, p -> p.bench()
                        .parts()
                        .get(0)
                        .count()),
                cell(
                        new PartsPage(),
                        "parts",
                        "drift",
                        "-80",
                        "Set part drift",
                        OptionalDouble.of(-80e-6),
                        p -> p.bench().parts().get(0).traits().temperatureCoefficientPerKelvin()),
                cell(
                        new PartsPage(),
                        "parts",
                        "inductanceHenries",
                        "12",
                        "Set part inductance",
                        OptionalDouble.of(12e-6),
                        p -> p.bench().parts().get(0).traits().inductanceHenries()),
                cell(
                        new PartsPage(),
                        "parts",
                        "caseToAir",
                        "0.4",
                        "Set part case to air",
                        OptionalDouble.of(0.4),
                        p -> p.bench().parts().get(0).traits().sinkKelvinPerWatt()),
                cell(
                        new PartsPage(),
                        "parts",
                        "shortOverload",
                        "5 times for 2,5 s",
                        "Set part short overload",
                        Optional.of(new PulseRule(5, 2.5)),
                        p -> p.bench().parts().get(0).traits().pulseRule()),
                cell(new LoadsPage(), "loads", "powerLimitWatts", "350", "Set load power limit", 350.0, p -> p.loads()
                        .get(0)
                        .powerLimitWatts()),
                cell(
                        new LoadsPage(),
                        "branches",
                        "standardUncertaintyOhms",
                        "7",
                        "Set branch uncertainty of load 8ohm",
                        0.007,
                        p -> p.loads().get(0).branches().get(0).standardUncertaintyOhms()),
                cell(new PlanPage(), "steps", "mode", "single", "Set step mode", Mode.SINGLE, p -> p.plan()
                        .get(0)
                        .mode()),
                cell(new PlanPage(), "steps", "loadId", "2ohm", "Set step load", "2ohm", p -> p.plan()
                        .get(0)
                        .loadId()),
                cell(new PlanPage(), "steps", "supplyVolts", "13.8 V", "Set step supply volts", 13.8, p -> p.plan()
                        .get(0)
                        .supplyVolts()),
                cell(
                        new PlanPage(),
                        "steps",
                        "stimulus.kind",
                        "burst",
                        "Set step stimulus",
                        PowerKind.BURST,
                        p -> p.plan().get(0).stimulus().powerKind()),
                cell(new PlanPage(), "steps", "stimulus.frequencyHz", "40", "Set step tone", 40.0, p -> p.plan()
                        .get(0)
                        .stimulus()
                        .frequencyHz()),
                cell(
                        new PlanPage(),
                        "steps",
                        "endPoint.kind",
                        "clipping onset",
                        "Set step end point",
                        new EndPoint.ClippingOnset(),
                        p -> p.plan().get(0).endPoint()),
                cell(
                        new PlanPage(),
                        "steps",
                        "endPoint.ratio",
                        "3",
                        "Set step distortion limit",
                        0.03,
                        p -> limit.apply(p).ratio()),
                cell(
                        new PlanPage(),
                        "steps",
                        "endPoint.measure",
                        "THD+N",
                        "Set step distortion figure",
                        DistortionMeasure.THD_PLUS_NOISE_R,
                        p -> limit.apply(p).measure()),
                cell(
                        new PlanPage(),
                        "steps",
                        "belowLowestLoadConfirmed",
                        "",
                        "Set step low load confirmed",
                        true,
                        p -> p.plan().get(0).belowLowestLoadConfirmed()));
    }

    @ParameterizedTest(name = "{1} {2}")
    @MethodSource("cells")
    void changesACellUnderItsNameAndTakesItBack(
            SectionPage page,
            String table,
            String column,
            String typed,
            String undoName,
            Object expected,
            Function<Project, Object> get)
            throws Exception {
        try (SectionStage stage = SectionStage.open(temp)) {
            stage.show(page);
            Project before = stage.project();
            stage.edit(table, 0, column, typed);
            assertEquals(
                    expected, get.apply(stage.project()), stage.editTable(table).message());
            assertEquals(Optional.of(undoName), stage.undoName());
            stage.undo();
            assertEquals(before, stage.project());
        }
    }

    @ParameterizedTest(name = "{1} {2}")
    @MethodSource("refusals")
    void refusesWhatDoesNotFitAndSaysWhy(SectionPage page, String table, String column, String typed, String words)
            throws Exception {
        try (SectionStage stage = SectionStage.open(temp)) {
            stage.show(page);
            Project before = stage.project();
            stage.edit(table, 0, column, typed);
            assertEquals(before, stage.project());
            String message = stage.editTable(table).message();
            assertTrue(message.contains(words), message);
        }
    }

    static Stream<Arguments> refusals() {
        return Stream.of(
                Arguments.of(new AmplifierPage(), "ratings", "powerWatts", "-3", "above 0"),
                Arguments.of(new AmplifierPage(), "ratings", "id", "2-ohm", "taken by another row"),
                Arguments.of(
                        new AmplifierPage(), "lowestloads", "mode", "bridged", "a lowest load for bridged already"),
                Arguments.of(new PartsPage(), "parts", "zeroPowerCelsius", "20", "25 \u00b0C"),
                Arguments.of(new PartsPage(), "parts", "ratedToCelsius", "300", "250 \u00b0C"),
                Arguments.of(new PartsPage(), "parts", "shortOverload", "often", "such as 5 x 5 s"),
                Arguments.of(new PartsPage(), "parts", "shortOverload", "0.5 x 5 s", "above 1"),
                Arguments.of(new PartsPage(), "parts", "wireToCase", "-1", "above 0"),
                Arguments.of(new BenchPage(), "meters", "calibrationDueOn", "tomorrow", "year-month-day"),
                Arguments.of(new PlanPage(), "steps", "stimulus.onSeconds", "30", "Only a burst"),
                Arguments.of(new PlanPage(), "steps", "endPoint.driveDb", "-6", "Only a fixed level"),
                Arguments.of(new PlanPage(), "steps", "endPoint.ratio", "", "needs this number"));
    }

    @ParameterizedTest(name = "{1}")
    @MethodSource("tables")
    void addsDuplicatesAndRemovesARowWithUndoAndRedo(
            SectionPage page, String table, String one, Function<Project, List<?>> rows) throws Exception {
        try (SectionStage stage = SectionStage.open(temp)) {
            stage.show(page);
            Project before = stage.project();
            int count = rows.apply(before).size();
            stage.editTable(table).select(count - 1, "");
            stage.press(table + ".add");
            Project added = stage.project();
            assertEquals(count + 1, rows.apply(added).size());
            assertTrue(
                    stage.undoName().orElseThrow().startsWith("Add " + one),
                    stage.undoName().orElseThrow());
            stage.press(table + ".duplicate");
            assertEquals(count + 2, rows.apply(stage.project()).size());
            assertTrue(
                    stage.undoName().orElseThrow().startsWith("Duplicate " + one),
                    stage.undoName().orElseThrow());
            stage.press(table + ".remove");
            stage.undo();
            stage.undo();
            assertEquals(added, stage.project());
            stage.undo();
            assertEquals(before, stage.project());
            stage.redo();
            assertEquals(added, stage.project());
            assertEquals(count + 1, stage.table(table).getItemCount());
        }
    }

    static Stream<Arguments> tables() {
        return Stream.of(
                table(new AmplifierPage(), "ratings", "rating", p -> p.amplifier()
                        .ratings()),
                table(new AmplifierPage(), "fuses", "fuse", p -> p.amplifier().fuses()),
                table(new BenchPage(), "meters", "meter", p -> p.bench().meters()),
                table(new PartsPage(), "parts", "part", p -> p.bench().parts()),
                table(new LoadsPage(), "loads", "load", Project::loads),
                table(new LoadsPage(), "branches", "branch", p -> p.loads()
                        .get(0)
                        .branches()),
                table(new PlanPage(), "steps", "step", Project::plan));
    }

    private static Arguments table(SectionPage page, String table, String one, Function<Project, List<?>> rows) {
        return Arguments.of(page, table, one, rows);
    }

    @Test
    void offersALowestLoadOnlyForAModeThatHasNone() throws Exception {
        try (SectionStage stage = SectionStage.open(temp)) {
            stage.show(new AmplifierPage());
            stage.press("lowestloads.add");
            assertEquals(
                    Mode.SINGLE,
                    stage.project().amplifier().lowestLoads().get(2).mode());
            stage.press("lowestloads.add");
            assertEquals(3, stage.project().amplifier().lowestLoads().size());
            assertTrue(stage.editTable("lowestloads").message().contains("already"));
        }
    }

    @Test
    void pastesRatingsFromASpreadsheet() throws Exception {
        try (SectionStage stage = SectionStage.open(temp)) {
            stage.show(new AmplifierPage());
            stage.editTable("ratings").select(5, "id");
            stage.clipboard("a\tburst\tstereo\t4\t95\t14.4\t1\t1000\tfirst\n"
                    + "b\tcontinuous\tbridged\t4\t300\t14,4\t10\t40\tsecond\n");
            stage.control(stage.table("ratings"), 'v');
            List<Rating> ratings = stage.project().amplifier().ratings();
            assertEquals(7, ratings.size(), stage.editTable("ratings").message());
            assertEquals(
                    new Rating("a", PowerKind.BURST, Mode.STEREO, 4, 95, 14.4, 0.01, 1000, "first"), ratings.get(5));
            assertEquals(
                    new Rating("b", PowerKind.CONTINUOUS, Mode.BRIDGED, 4, 300, 14.4, 0.1, 40, "second"),
                    ratings.get(6));
            assertEquals(Optional.of("Paste 2 ratings"), stage.undoName());
            stage.undo();
            assertEquals(6, stage.table("ratings").getItemCount());
        }
    }

    @Test
    void copiedStepsPasteAgain() throws Exception {
        try (SectionStage stage = SectionStage.open(temp)) {
            stage.show(new PlanPage());
            stage.editTable("steps").select(0, "id");
            stage.control(stage.table("steps"), 'c');
            String copied = stage.clipboard();
            stage.clipboard(copied.replace("stereo-8ohm-11V5", "pasted"));
            stage.editTable("steps").select(31, "id");
            stage.control(stage.table("steps"), 'v');
            assertEquals(
                    stage.project().plan().get(0).withId("pasted"),
                    stage.project().plan().get(31),
                    stage.editTable("steps").message());
        }
    }
}
