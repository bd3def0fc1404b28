// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.ohmstead.measure.Ability;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.model.Precaution;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.model.Severity;
import org.ohmstead.model.Step;
import org.ohmstead.model.StopLimit;
import org.ohmstead.testlog.LogQuery;
import org.ohmstead.units.text.Language;
import org.ohmstead.units.text.Said;

@Timeout(60)
class GermanRunTest {
    private final String before = System.getProperty(Language.PROPERTY);

    @TempDir
    private Path folder;

    @BeforeEach
    void speakGerman() {
        System.setProperty(Language.PROPERTY, "de");
    }

    @AfterEach
    void speakAsBefore() {
        if (before == null) {
            System.clearProperty(Language.PROPERTY);
        } else {
            System.setProperty(Language.PROPERTY, before);
        }
    }

    @Test
    void showsGermanAndLogsEnglish() throws Exception {
        FakeMeasurement measurement = new FakeMeasurement(Stage.BAD, (bench, progress) -> {
            throw new IllegalStateException("again");
        });
        try (Stage stage = new Stage(folder, measurement)) {
            for (int i = 0; i < Catalog.FAULTS_UNTIL_SET_ASIDE; i++) {
                assertInstanceOf(RunOutcome.Failed.class, stage.plan.run(stage.first));
            }
            String logged = stage.log
                    .entries(LogQuery.everything())
                    .get(0)
                    .note()
                    .orElseThrow()
                    .text();
            assertTrue(logged.startsWith("Step \"s1\", " + Stage.BAD + ": The measurement \""), logged);
            assertTrue(logged.contains("failed with IllegalStateException (again)."), logged);
            RunOutcome refused = stage.plan.run(stage.first);
            assertTrue(refused.sentence().startsWith("Die Messung „"), refused.sentence());
            assertTrue(
                    refused.sentence()
                            .endsWith("(" + Stage.BAD + ") wurde nach Fehlern beiseitegelegt. Zurückholen, um es noch"
                                    + " einmal zu versuchen."),
                    refused.sentence());
            assertTrue(stage.plan.run(stage.second).sentence().endsWith(" wurde im Schritt s2 gemessen."));
        }
    }

    @Test
    void saysWhichOfTwoIsNotUsed() {
        Catalog catalog = new Catalog();
        catalog.bindMeasurement(FakeMeasurement.good("org.example.same"));
        catalog.bindMeasurement(FakeMeasurement.good("org.example.same"));
        assertEquals(
                "Die Messung " + FakeMeasurement.class.getName()
                        + " wird nicht verwendet, denn die Kennung org.example.same war schon vorher vergeben.",
                catalog.view().problems().get(0).what());
    }

    private static String note(Stage stage, int index) throws Exception {
        return stage.log
                .entries(LogQuery.everything())
                .get(index)
                .note()
                .orElseThrow()
                .text();
    }

    @Test
    void aFailureThatIsMadeInTwoLanguagesIsLoggedInEnglishAndShownInGerman() throws Exception {
        FakeMeasurement measurement = new FakeMeasurement(Stage.BAD, (bench, progress) -> {
            throw MeasurementException.of(() -> Language.current().equals(Locale.ENGLISH) ? "No tone." : "Kein Ton.");
        });
        try (Stage stage = new Stage(folder, measurement)) {
            RunOutcome outcome = stage.plan.run(stage.first);
            String title = "„Fake " + Stage.BAD + "“ (" + Stage.BAD + ")";
            assertEquals("Die Messung " + title + " konnte nicht weitermachen. Kein Ton.", outcome.sentence());
            assertEquals(outcome.sentence(), stage.plan.state().items().get(0).sentence());
            assertEquals(
                    "Step \"s1\", " + Stage.BAD + ": The measurement \"Fake " + Stage.BAD + "\" (" + Stage.BAD
                            + ") could not go on. No tone.",
                    note(stage, 0));
        }
    }

    @Test
    void whatABenchDoesNotDoByItselfIsARemarkInBothLanguages() throws Exception {
        try (Stage stage = new Stage(folder, FakeMeasurement.good(Stage.BAD))) {
            stage.driver.abilities = Set.of(Ability.TONE, Ability.WAVEFORM);
            RunOutcome outcome = stage.plan.run(stage.first);
            assertEquals(
                    List.of(
                            "Der Messplatz schließt keine Lasten an; die Last „" + loadId(stage)
                                    + "“ wurde als angeschlossen angenommen.",
                            "Der Messplatz stellt die Versorgungsspannung nicht ein; sie wurde als eingestellt"
                                    + " angenommen."),
                    outcome.remarks());
            List<String> notes = stage.log
                    .entries(LogQuery.everything())
                    .get(0)
                    .figures()
                    .orElseThrow()
                    .notes();
            assertTrue(
                    notes.contains("The bench does not set the supply volts; they were taken as set."),
                    notes.toString());
            assertTrue(notes.stream().noneMatch(text -> text.contains("Messplatz")), notes.toString());
        }
    }

    private static String loadId(Stage stage) {
        return stage.setup.subject(stage.first).load().id();
    }

    @Test
    void aBenchThatLacksSomethingIsRefusedInBothLanguages() throws Exception {
        try (Stage stage = new Stage(folder, FakeMeasurement.good(Stage.BAD))) {
            stage.driver.abilities = Set.of();
            RunOutcome outcome = stage.plan.run(stage.first);
            assertTrue(
                    outcome.sentence().contains("einen Sinus einspeisen oder den Ausgang aufnehmen"),
                    outcome.sentence());
            assertTrue(
                    outcome.said().kept().contains(" cannot feed a sine in, or record the output, which "),
                    outcome.said().kept());
        }
    }

    /** A precaution speaks the language of whoever asks. */
    private record Speaking() implements Precaution {
        private static String said(String english, String german) {
            return Language.current().getLanguage().equals("de") ? german : english;
        }

        @Override
        public String id() {
            return "org.example.speaking";
        }

        @Override
        public List<Problem> check(Project project, Step step) {
            return List.of(new Problem(
                    Severity.WARNING,
                    step.id(),
                    said("The load gets hot.", "Die Last wird heiß."),
                    said("Wait.", "Warten.")));
        }

        @Override
        public List<StopLimit> stopLimits(Project project, Step step) {
            return List.of(new StopLimit(
                    StopLimit.Quantity.SUPPLY_AMPS, 1, said("The fuse would blow.", "Die Sicherung löst aus.")));
        }
    }

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void aConfirmedWarningAndAPassedLimitAreLoggedInEnglish(boolean asPlugin) throws Exception {
        try (Stage stage = new Stage(folder, FakeMeasurement.good(Stage.BAD))) {
            PlanSetup setup = asPlugin ? stage.setup : stage.setup.withPrecautions(List.of(new Speaking()));
            if (asPlugin) {
                stage.catalog.bindPrecaution(new Speaking());
            }
            PlanRun plan = new PlanRun(setup, stage.catalog, stage.runner, stage.log, Rests.NONE);
            Problem warning = plan.dryRun().steps().get(0).unconfirmed().get(0);
            assertEquals("Die Last wird heiß.", warning.what());
            plan.confirm("s1", warning, "N. N.", "nass gekühlt");
            assertEquals("Confirmed for the step \"s1\": The load gets hot. Reason: nass gekühlt", note(stage, 0));

            RunOutcome outcome = plan.run(stage.first);
            assertEquals(
                    "Der Schritt wurde abgebrochen. Der Versorgungsstrom von 5,000 A liegt über der Grenze von 1,000 A."
                            + " Die Sicherung löst aus.",
                    outcome.sentence());
            assertEquals(
                    "Step \"s1\", " + Stage.BAD
                            + ": The step was stopped. The supply current of 5.000 A is above the limit"
                            + " of 1.000 A. The fuse would blow.",
                    note(stage, 1));
            assertTrue(stage.catalog.view().problems().isEmpty());
        }
    }

    @ParameterizedTest
    @EnumSource(Ability.class)
    void saysOfEachAbilityWhatItIsInBothLanguages(Ability ability) {
        Said said = Said.of(ability::words);
        assertEquals(said.shown(), ability.words());
        assertNotEquals(said.kept(), said.shown());
    }
}
