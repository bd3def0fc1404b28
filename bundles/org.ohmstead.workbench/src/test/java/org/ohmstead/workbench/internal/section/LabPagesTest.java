// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.reflect.RecordComponent;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.ohmstead.model.CheckStandard;
import org.ohmstead.model.MeterStability;
import org.ohmstead.model.Price;
import org.ohmstead.model.Project;
import org.ohmstead.model.Severity;
import org.ohmstead.model.SharedLog;
import org.ohmstead.model.VerdictKind;
import org.ohmstead.model.VerdictRule;
import org.ohmstead.workbench.section.SectionPage;
import org.ohmstead.workbench.table.Column;

/** The fields and tables of the laboratory around a test: stability, repeatability, verdict rule, price, check standards, shared log. */
class LabPagesTest {
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
                field(amplifier, "amplifier.price", "249,50", "Set amplifier price", 249.5, p -> price(p).amount()),
                field(amplifier, "amplifier.currency", "USD", "Set amplifier currency", "USD", p -> price(p)
                        .currency()),
                field(
                        amplifier,
                        "amplifier.priceon",
                        "2026-04-01",
                        "Set amplifier day of the price",
                        LocalDate.of(2026, 4, 1),
                        p -> price(p).on()),
                field(amplifier, "amplifier.price", "", "Set amplifier price", Optional.empty(), p -> p.amplifier()
                        .price()),
                field(bench, "bench.place.repeatability", "0.2", "Set bench repeatability", 0.002, p -> p.bench()
                        .repeatability()
                        .orElseThrow()
                        .ratio()),
                field(bench, "bench.place.freedom", "19", "Set bench degrees of freedom", 19.0, p -> p.bench()
                        .repeatability()
                        .orElseThrow()
                        .degreesOfFreedom()),
                field(
                        bench,
                        "bench.place.origin",
                        "study",
                        "Set bench origin of the repeatability",
                        "study",
                        p -> p.bench().repeatability().orElseThrow().origin()),
                field(
                        bench,
                        "bench.place.repeatability",
                        "",
                        "Set bench repeatability",
                        Optional.empty(),
                        p -> p.bench().repeatability()),
                field(sheet, "sheet.verdicts.risk", "2.5", "Set sheet risk of a wrong verdict", 0.025, p -> p.sheet()
                        .rule()
                        .riskRatio()));
    }

    private static Price price(Project project) {
        return project.amplifier().price().orElseThrow();
    }

    @ParameterizedTest(name = "{1} {2}")
    @MethodSource("fields")
    void setsAValueUnderItsNameAndTakesItBack(
            SectionPage page, String id, String typed, String undoName, Object expected, Function<Project, Object> get)
            throws Exception {
        try (SectionStage stage = SectionStage.open(temp)) {
            stage.show(page);
            Project before = stage.project();
            stage.type(id, typed);
            assertEquals(expected, get.apply(stage.project()));
            assertEquals(Optional.of(undoName), stage.undoName());
            stage.undo();
            assertEquals(before, stage.project());
        }
    }

    static Stream<Arguments> refusals() {
        return Stream.of(
                Arguments.of(new AmplifierPage(), "amplifier.price", "-1", "at least 0"),
                Arguments.of(new AmplifierPage(), "amplifier.currency", "euro", "three capital letters"),
                Arguments.of(new AmplifierPage(), "amplifier.priceon", "", "the day for which the price holds"),
                Arguments.of(new BenchPage(), "bench.place.repeatability", "101 %", "between"),
                Arguments.of(new BenchPage(), "bench.place.freedom", "0", "at least 1"),
                Arguments.of(new SheetPage(), "sheet.verdicts.risk", "0", "above 0 % and at most 50 %"),
                Arguments.of(new SheetPage(), "sheet.verdicts.risk", "60", "above 0 % and at most 50 %"));
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
        }
    }

    @Test
    void whatBelongsToAnUnknownPriceIsHiddenUntilThePriceIsKnown() throws Exception {
        try (SectionStage stage = SectionStage.open(temp)) {
            stage.show(new AmplifierPage());
            assertTrue(stage.find("amplifier.currency", Text.class).isVisible());
            stage.type("amplifier.price", "");
            assertFalse(stage.find("amplifier.currency", Text.class).isVisible());
            assertFalse(stage.find("amplifier.priceon", Text.class).isVisible());
            stage.type("amplifier.price", "99");
            assertTrue(stage.find("amplifier.currency", Text.class).isVisible());
            assertEquals(LocalDate.now(), price(stage.project()).on());
        }
    }

    // ISO 4217: the yen is Japan's currency; English as such belongs to no country.
    @Test
    void theCurrencyIsThatOfTheCountry() {
        assertEquals("JPY", PriceFields.currencyOf(Locale.JAPAN));
        assertEquals("EUR", PriceFields.currencyOf(Locale.ENGLISH));
    }

    @Test
    void choosesTheVerdictRuleAndSaysItsRiskInWords() throws Exception {
        try (SectionStage stage = SectionStage.open(temp)) {
            stage.show(new SheetPage());
            Label words = stage.find("sheet.verdicts.words", Label.class);
            assertTrue(words.getText().contains("falls short in truth with a chance of at most 5 %"), words.getText());
            stage.choose("sheet.verdicts.rule", "simple acceptance");
            assertEquals(
                    Optional.of(new VerdictRule(VerdictKind.SIMPLE_ACCEPTANCE, 0.05)),
                    stage.project().sheet().verdictRule());
            assertEquals(Optional.of("Set sheet verdict rule"), stage.undoName());
            assertTrue(words.getText().contains("up to 50 %"), words.getText());
            assertFalse(stage.find("sheet.verdicts.risk", Text.class).isVisible());
            stage.choose("sheet.verdicts.rule", "guarded rejection");
            stage.type("sheet.verdicts.risk", "10");
            assertTrue(words.getText().contains("is met in truth with a chance of at most 10 %"), words.getText());
            assertTrue(words.getText().contains("up to 90 %"), words.getText());
            stage.choose("sheet.verdicts.rule", "as the confidence says");
            assertEquals(Optional.empty(), stage.project().sheet().verdictRule());
            stage.type("sheet.verdicts.confidence", "99");
            assertTrue(words.getText().contains("at most 1 %"), words.getText());
        }
    }

    @ParameterizedTest
    @CsvSource({
        "stability.certificateExpandedRatio, 0.05, Set meter certificate uncertainty",
        "stability.certificateCoverageFactor, 2.1, Set meter certificate coverage factor",
        "stability.driftRatioPerYear, 0.1, Set meter drift",
        "stability.temperatureRatioPerKelvin, 80, Set meter temperature coefficient",
        "stability.fromCelsius, 20, Set meter lowest temperature",
        "stability.toCelsius, 26, Set meter highest temperature"
    })
    void editsTheStabilityOfAMeter(String column, String typed, String undoName) throws Exception {
        try (SectionStage stage = SectionStage.open(temp)) {
            stage.show(new BenchPage());
            MeterStability before = stage.project().bench().meters().get(0).stability();
            stage.edit("meters", 0, column, typed);
            MeterStability after = stage.project().bench().meters().get(0).stability();
            MeterStability expected =
                    switch (column) {
                        case "stability.certificateExpandedRatio" -> before.withCertificateExpandedRatio(0.0005);
                        case "stability.certificateCoverageFactor" -> before.withCertificateCoverageFactor(2.1);
                        case "stability.driftRatioPerYear" -> before.withDriftRatioPerYear(0.001);
                        case "stability.temperatureRatioPerKelvin" -> before.withTemperatureRatioPerKelvin(0.00008);
                        case "stability.fromCelsius" -> before.withFromCelsius(20);
                        default -> before.withToCelsius(26);
                    };
            assertEquals(expected, after);
            assertEquals(Optional.of(undoName), stage.undoName());
            stage.edit("meters", 0, column, column.endsWith("toCelsius") ? "5" : "-70");
            assertEquals(after, stage.project().bench().meters().get(0).stability());
        }
    }

    @Test
    void everyComponentOfTheStabilityAndOfACheckStandardHasItsColumn() {
        assertEquals(
                names(MeterStability.class, "stability."),
                StabilityColumns.all().stream().map(Column::id).collect(Collectors.toSet()));
        assertEquals(
                names(CheckStandard.class, ""),
                CheckStandardTable.spec(Optional::empty).columns().stream()
                        .map(Column::id)
                        .collect(Collectors.toSet()));
    }

    private static Set<String> names(Class<?> type, String before) {
        return Arrays.stream(type.getRecordComponents())
                .map(RecordComponent::getName)
                .map(name -> before + name)
                .collect(Collectors.toSet());
    }

    @Test
    void addsACheckStandardThatAStepGivesItsValues() throws Exception {
        try (SectionStage stage = SectionStage.open(temp)) {
            stage.show(new CheckStandardsPage());
            assertEquals(1, stage.table("checkstandards").getItemCount());
            stage.press("checkstandards.add");
            assertEquals(2, stage.project().checkStandards().size());
            String step = stage.project().plan().get(0).id();
            stage.edit("checkstandards", 1, "stepId", step);
            stage.edit("checkstandards", 1, "referenceValue", "10");
            CheckStandard made = stage.project().checkStandards().get(1);
            assertEquals(step, made.stepId());
            assertEquals(OptionalDouble.of(10), made.referenceValue());
            assertEquals(CheckStandard.POWER, made.figureId());
            stage.edit("checkstandards", 1, "baselineCount", "3");
            stage.edit("checkstandards", 1, "id", "ten-ohm");
            assertEquals(made, stage.project().checkStandards().get(1));
        }
    }

    @Test
    void marksACheckStandardWhoseStepIsGone() throws Exception {
        try (SectionStage stage =
                SectionStage.open(temp, text -> text.replace("\"stepId\": \"\"", "\"stepId\": \"gone\""))) {
            stage.show(new CheckStandardsPage());
            assertEquals(
                    Severity.WARNING,
                    stage.problemAt("$.checkStandards[0].stepId").severity());
            stage.reveal("$.checkStandards[0].stepId");
            assertEquals(0, stage.table("checkstandards").getSelectionIndex());
            stage.edit("checkstandards", 0, "stepId", "typed in");
            assertEquals("", stage.project().checkStandards().get(0).stepId());
        }
    }

    @Test
    void setsTheSharedLogUpAndWarnsOfCredentials() throws Exception {
        try (SectionStage stage = SectionStage.open(temp)) {
            stage.show(new SharedLogPage());
            Text host = stage.find("sharedlog.place.host", Text.class);
            Label caution = stage.find("sharedlog.caution", Label.class);
            assertFalse(host.isVisible());
            assertFalse(caution.isVisible());
            stage.check("sharedlog.used", true);
            assertTrue(host.isVisible());
            assertTrue(caution.isVisible());
            assertTrue(caution.getText().contains("Never write a user name or a password here"), caution.getText());
            stage.problemAt("$.sharedLog.host");
            stage.type("sharedlog.place.host", "lab.example.org");
            stage.type("sharedlog.place.port", "5433");
            stage.type("sharedlog.place.database", "log");
            stage.type("sharedlog.place.certificate", "lab.pem");
            assertEquals(
                    Optional.of(new SharedLog("lab.example.org", 5433, "log", "Bench 2, simulated", "lab.pem")),
                    stage.project().sharedLog());
            stage.type("sharedlog.place.bench", "Bench 2");
            assertEquals(Optional.of("Set shared log name of the bench"), stage.undoName());
            stage.type("sharedlog.place.host", "me:secret@lab.example.org");
            stage.waitFor(() -> stage.desk.problems().stream()
                    .anyMatch(problem ->
                            problem.where().equals("$.sharedLog.host") && problem.severity() == Severity.ERROR));
            stage.check("sharedlog.used", false);
            assertEquals(Optional.empty(), stage.project().sharedLog());
            assertFalse(host.isVisible());
        }
    }
}
