// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Stream;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.ohmstead.model.PaperSize;
import org.ohmstead.model.Project;
import org.ohmstead.model.SheetDesign;
import org.ohmstead.model.SupplyType;
import org.ohmstead.workbench.section.SectionPage;

/** Every field of the forms: what is typed reaches the project under a name of its own, and undo takes it back. */
class FormFieldsTest {
    @TempDir
    Path temp;

    private static Arguments field(
            SectionPage page,
            String id,
            String typed,
            String undoName,
            Object expected,
            Function<Project, Object> get) {
        return Arguments.of(page, id, typed, undoName, expected, get);
    }

    static Stream<Arguments> fields() {
        SectionPage amplifier = new AmplifierPage();
        SectionPage bench = new BenchPage();
        SectionPage sheet = new SheetPage();
        return Stream.of(
                field(amplifier, "amplifier.maker", "Made-up", "Set amplifier maker", "Made-up", p -> p.amplifier()
                        .maker()),
                field(amplifier, "amplifier.model", "M-2", "Set amplifier model", "M-2", p -> p.amplifier()
                        .model()),
                field(amplifier, "amplifier.serial", "7", "Set amplifier serial number", "7", p -> p.amplifier()
                        .serialNumber()),
                field(amplifier, "amplifier.channels", "4", "Set amplifier channel count", 4, p -> p.amplifier()
                        .channelCount()),
                field(
                        amplifier,
                        "amplifier.heatsink",
                        "",
                        "Set amplifier heat sink",
                        OptionalDouble.empty(),
                        p -> p.amplifier().heatSinkKelvinPerWatt()),
                field(amplifier, "amplifier.notes", "None.", "Set amplifier notes", "None.", p -> p.amplifier()
                        .notes()),
                field(bench, "bench.place.place", "Bench 3", "Set bench place", "Bench 3", p -> p.bench()
                        .place()),
                field(
                        bench,
                        "bench.place.ambient",
                        "25 \u00b0C",
                        "Set bench air temperature",
                        OptionalDouble.of(25),
                        p -> p.bench().ambientCelsius()),
                field(bench, "bench.supply.name", "Other", "Set supply name", "Other", p -> p.bench()
                        .supply()
                        .name()),
                field(bench, "bench.supply.lowest", "1", "Set supply lowest output", 1.0, p -> p.bench()
                        .supply()
                        .lowestVolts()),
                field(bench, "bench.supply.highest", "15,5 V", "Set supply highest output", 15.5, p -> p.bench()
                        .supply()
                        .highestVolts()),
                field(bench, "bench.supply.limit", "90", "Set supply current limit", 90.0, p -> p.bench()
                        .supply()
                        .currentLimitAmps()),
                field(bench, "bench.cable.section", "50", "Set cable cross-section", 50.0, p -> p.bench()
                        .cable()
                        .crossSectionSquareMillimetres()),
                field(bench, "bench.cable.loop", "6", "Set cable loop length", 6.0, p -> p.bench()
                        .cable()
                        .loopMetres()),
                field(
                        bench,
                        "bench.cable.measured",
                        "4",
                        "Set cable measured loop resistance",
                        OptionalDouble.of(0.004),
                        p -> p.bench().cable().measuredLoopOhms()),
                field(sheet, "sheet.title", "Other title", "Set project title", "Other title", Project::title),
                field(sheet, "sheet.laboratory", "Lab", "Set sheet laboratory", "Lab", p -> p.sheet()
                        .laboratory()),
                field(sheet, "sheet.preparedby", "Me", "Set sheet prepared by", "Me", p -> p.sheet()
                        .preparedBy()),
                field(sheet, "sheet.remarks", "Well.", "Set sheet remarks", "Well.", p -> p.sheet()
                        .remarks()),
                field(
                        sheet,
                        "sheet.address",
                        "1 Example Street",
                        "Set sheet address",
                        "1 Example Street",
                        p -> p.sheet().layout().address()),
                field(sheet, "sheet.contact", "lab@example.org", "Set sheet contact", "lab@example.org", p -> p.sheet()
                        .layout()
                        .contact()),
                field(sheet, "sheet.accreditation", "None.", "Set sheet accreditation", "None.", p -> p.sheet()
                        .layout()
                        .accreditation()),
                field(sheet, "sheet.look.logo", "sheets/logo.svg", "Set sheet logo", "sheets/logo.svg", p -> p.sheet()
                        .layout()
                        .logoFile()),
                field(
                        sheet,
                        "sheet.compare.projects",
                        "../heron.ohmstead\n\n ../kestrel.ohmstead ",
                        "Set sheet compared projects",
                        List.of("../heron.ohmstead", "../kestrel.ohmstead"),
                        p -> p.sheet().layout().comparedProjects()),
                field(
                        sheet,
                        "sheet.compare.periods",
                        "2024",
                        "Set sheet compared periods",
                        List.of("2024"),
                        p -> p.sheet().layout().comparedPeriods()),
                field(sheet, "sheet.verdicts.confidence", "99", "Set sheet confidence", 0.99, p -> p.sheet()
                        .confidence()));
    }

    @ParameterizedTest(name = "{1}")
    @MethodSource("fields")
    void setsAValueUnderItsNameAndTakesItBack(
            SectionPage page, String id, String typed, String undoName, Object expected, Function<Project, Object> get)
            throws Exception {
        try (SectionStage stage = SectionStage.open(temp)) {
            stage.show(page);
            Project before = stage.project();
            String shownBefore = stage.find(id, Text.class).getText();
            stage.type(id, typed);
            assertEquals(expected, get.apply(stage.project()));
            assertEquals(Optional.of(undoName), stage.undoName());
            stage.undo();
            assertEquals(before, stage.project());
            assertEquals(shownBefore, stage.find(id, Text.class).getText());
            stage.redo();
            assertEquals(expected, get.apply(stage.project()));
        }
    }

    @Test
    void choosesTheSupplyType() throws Exception {
        try (SectionStage stage = SectionStage.open(temp)) {
            stage.show(new AmplifierPage());
            stage.choose("amplifier.supplytype", "regulated");
            assertEquals(SupplyType.REGULATED, stage.project().amplifier().supplyType());
            assertEquals(Optional.of("Set amplifier supply type"), stage.undoName());
        }
    }

    @Test
    void choosesDesignAndPaperOfTheSheet() throws Exception {
        try (SectionStage stage = SectionStage.open(temp)) {
            stage.show(new SheetPage());
            stage.choose("sheet.look.design", "bench sheet, one page");
            assertEquals(SheetDesign.BENCH, stage.project().sheet().layout().design());
            assertEquals(Optional.of("Set sheet design"), stage.undoName());
            stage.choose("sheet.look.paper", "Letter");
            assertEquals(PaperSize.LETTER, stage.project().sheet().layout().paper());
            assertEquals(Optional.of("Set sheet paper"), stage.undoName());
        }
    }

    @ParameterizedTest
    @MethodSource("refusals")
    void keepsWhatDoesNotFitOutOfTheProjectAndSaysWhy(SectionPage page, String id, String typed, String words)
            throws Exception {
        try (SectionStage stage = SectionStage.open(temp)) {
            stage.show(page);
            Project before = stage.project();
            stage.type(id, typed);
            assertEquals(before, stage.project());
            String message = stage.find(id + ".message", Label.class).getText();
            assertTrue(message.contains(words), message);
            assertTrue(stage.find(id + ".message", Label.class).isVisible());
        }
    }

    static Stream<Arguments> refusals() {
        return Stream.of(
                Arguments.of(new AmplifierPage(), "amplifier.model", " ", "must not be empty"),
                Arguments.of(new AmplifierPage(), "amplifier.channels", "0", "from 1 to 16"),
                Arguments.of(new AmplifierPage(), "amplifier.heatsink", "-1", "above 0"),
                Arguments.of(new BenchPage(), "bench.supply.lowest", "16", "below the highest output, 16 V"),
                Arguments.of(new BenchPage(), "bench.supply.highest", "0", "above the lowest output, 0 V"),
                Arguments.of(new BenchPage(), "bench.cable.loop", "long", "1 m"),
                Arguments.of(new SheetPage(), "sheet.look.logo", "../logo.svg", "within the folder of the project"),
                Arguments.of(new SheetPage(), "sheet.verdicts.confidence", "30", "between 50 % and 99.99 %"));
    }

    @Test
    void tellsTheDropOfTheCableAndTheDangerOfTheSupply() throws Exception {
        try (SectionStage stage = SectionStage.open(temp)) {
            stage.show(new BenchPage());
            Label result = stage.find("bench.cable.result", Label.class);
            assertTrue(result.getText().contains("drops 275 mV"), result.getText());
            stage.type("bench.cable.measured", "10 m\u03a9");
            assertTrue(result.getText().contains("drops 500 mV"), result.getText());
            Label caution = stage.find("bench.caution", Label.class);
            assertTrue(caution.getText().contains("120 A"), caution.getText());
            stage.type("bench.supply.limit", "10");
            assertFalse(caution.isVisible());
        }
    }
}
