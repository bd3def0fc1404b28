// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.units.text.Language;

class GermanProblemsTest {
    private final String before = System.getProperty(Language.PROPERTY);

    private static Problem only(String language, Project project, LocalDate day) {
        System.setProperty(Language.PROPERTY, language);
        List<Problem> problems = ProjectChecks.check(project, day);
        assertEquals(1, problems.size(), problems.toString());
        return problems.get(0);
    }

    @AfterEach
    void speakAsBefore() {
        if (before == null) {
            System.clearProperty(Language.PROPERTY);
        } else {
            System.setProperty(Language.PROPERTY, before);
        }
    }

    // The sample's calibration runs out on 2027-01-15.
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "en|2027-01-13|The calibration of \"Recorder\" runs out on 2027-01-15, in 2 days.",
                "de|2027-01-13|Die Kalibrierung von „Recorder“ läuft am 2027-01-15 ab, in 2 Tagen.",
                "de|2027-01-14|Die Kalibrierung von „Recorder“ läuft am 2027-01-15 ab, morgen.",
                "de|2027-01-15|Die Kalibrierung von „Recorder“ läuft am 2027-01-15 ab, heute.",
                "de|2027-01-16|Die Kalibrierung von „Recorder“ ist am 2027-01-15 abgelaufen."
            })
    void saysWhenACalibrationRunsOut(String language, LocalDate day, String sentence) {
        assertEquals(sentence, only(language, SampleProject.sound(), day).what());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "en|The step \"x\" wants 19.00 V, outside the supply's range of 0.000 V to 16.00 V."
                        + "|Choose a voltage within the range, or another supply.",
                "de|Der Schritt „x“ will 19,00 V, außerhalb des Bereichs der Versorgung von 0,000 V bis 16,00 V."
                        + "|Eine Spannung innerhalb des Bereichs wählen, oder eine andere Versorgung."
            })
    void writesNumbersWithTheMarkOfTheLanguage(String language, String what, String remedy) {
        Project project = SampleProject.sound().withHeat(HeatData.NONE);
        Step step = project.plan().get(0);
        Step tooHigh = new Step("x", step.mode(), step.loadId(), 19, step.stimulus(), step.endPoint(), false);
        Problem problem = only(language, project.withPlan(List.of(step, tooHigh)), LocalDate.of(2026, 3, 2));
        assertEquals(what, problem.what());
        assertEquals(remedy, problem.remedy());
    }

    @Test
    void saysWhichMeterTheBenchLacks() {
        Project project = SampleProject.sound();
        Project blind = project.withBench(
                project.bench().withMeters(List.of(project.bench().meters().get(0))));
        LocalDate day = LocalDate.of(2026, 3, 2);
        assertEquals(
                "The bench has no meter for supply volts.",
                only("en", blind, day).what());
        assertEquals(
                "Der Messplatz hat kein Messgerät für die Versorgungsspannung.",
                only("de", blind, day).what());
    }
}
