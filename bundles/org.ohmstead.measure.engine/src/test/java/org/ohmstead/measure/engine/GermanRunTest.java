// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.ohmstead.measure.Ability;
import org.ohmstead.testlog.LogQuery;
import org.ohmstead.units.text.Language;
import org.ohmstead.units.text.Messages;

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

    /** The log says of a bench what it cannot do in the words of the ability itself. */
    @ParameterizedTest
    @EnumSource(Ability.class)
    void saysInEnglishWhatTheAbilitySays(Ability ability) {
        assertEquals(
                ability.words(), Messages.of(BenchRun.class, Locale.ENGLISH).text("ability." + ability.name()));
    }
}
