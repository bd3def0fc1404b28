// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LabChecksTest {
    private static final LocalDate TODAY = LocalDate.of(2026, 3, 2);

    private final Project sound = SampleProject.sound();
    private final CheckStandard standard = sound.checkStandards().get(0);

    private static Problem only(Project project, LocalDate day) {
        List<Problem> problems = ProjectChecks.check(project, day);
        assertEquals(1, problems.size(), problems.toString());
        return problems.get(0);
    }

    // The sample's calibration runs out on 2027-01-15; 30 days before that is 2026-12-16.
    @ParameterizedTest
    @CsvSource({
        "2026-12-16, NOTE, in 30 days",
        "2027-01-14, NOTE, tomorrow",
        "2027-01-15, NOTE, today",
        "2027-01-16, WARNING, ran out on 2027-01-15"
    })
    void tellsOfACalibrationThatRunsOut(LocalDate day, Severity severity, String words) {
        Problem problem = only(sound, day);
        assertEquals("$.bench.meters[0].calibrationDueOn", problem.where());
        assertEquals(severity, problem.severity());
        assertTrue(problem.what().contains(words), problem.what());
    }

    @Test
    void isSilentLongBeforeTheCalibrationRunsOut() {
        assertEquals(List.of(), ProjectChecks.check(sound, LocalDate.of(2026, 12, 15)));
    }

    @Test
    void aDriftNeedsTheDayFromWhichItCounts() {
        Meter meter = sound.bench().meters().get(0).withCalibratedOn(Optional.empty());
        Project project = sound.withBench(
                sound.bench().withMeters(List.of(meter, sound.bench().meters().get(1))));
        assertEquals("$.bench.meters[0].calibratedOn", only(project, TODAY).where());
    }

    @Test
    void idsOfCheckStandardsAreUnique() {
        Problem problem = only(sound.withCheckStandards(List.of(standard, standard)), TODAY);
        assertEquals("$.checkStandards[1].id", problem.where());
        assertEquals("The id \"ten\" is used twice.", problem.what());
    }

    @Test
    void aCheckStandardNamesAStepOfThePlanOrNone() {
        assertEquals(
                List.of(), ProjectChecks.check(sound.withCheckStandards(List.of(standard.withStepId("s1"))), TODAY));
        Problem problem = only(sound.withCheckStandards(List.of(standard.withStepId("s9"))), TODAY);
        assertEquals("$.checkStandards[0].stepId", problem.where());
        assertTrue(problem.what().contains("the step \"s9\", which the plan does not have"), problem.what());
    }

    @Test
    void anUncertaintyNeedsItsValue() {
        Problem problem =
                only(sound.withCheckStandards(List.of(standard.withReferenceValue(OptionalDouble.empty()))), TODAY);
        assertEquals("$.checkStandards[0].referenceValue", problem.where());
    }

    @Test
    void aLargeRiskIsPointedOutUnlessItIsIgnored() {
        VerdictRule large = new VerdictRule(VerdictKind.GUARDED_REJECTION, 0.25);
        Problem problem = only(sound.withSheet(sound.sheet().withVerdictRule(Optional.of(large))), TODAY);
        assertEquals("$.sheet.verdictRule.riskRatio", problem.where());
        assertTrue(problem.what().contains("up to 25.0 %"), problem.what());
        VerdictRule simple = large.withKind(VerdictKind.SIMPLE_ACCEPTANCE);
        assertEquals(
                List.of(),
                ProjectChecks.check(sound.withSheet(sound.sheet().withVerdictRule(Optional.of(simple))), TODAY));
    }

    @ParameterizedTest
    @CsvSource({"0, EUR, amount", "249, euro, currency", "249, eur, currency"})
    void aPriceNeedsAnAmountAndACurrency(double amount, String currency, String field) {
        Price price = new Price(amount, currency, TODAY);
        Problem problem = only(sound.withAmplifier(sound.amplifier().withPrice(Optional.of(price))), TODAY);
        assertEquals("$.amplifier.price." + field, problem.where());
    }

    @ParameterizedTest
    @CsvSource(
            value = {
                "'', lab, b1, WARNING, host",
                "db, '', b1, WARNING, database",
                "db, lab, ' ', WARNING, bench",
                "me:secret@db, lab, b1, ERROR, host",
                "jdbc:postgresql://db/lab, lab, b1, ERROR, host",
                "db, lab?password=secret, b1, ERROR, database"
            })
    void theSharedLogNeedsItsNamesAndNoCredentials(
            String host, String database, String bench, Severity severity, String field) {
        SharedLog shared = new SharedLog(host, SharedLog.USUAL_PORT, database, bench, "");
        Problem problem = only(sound.withSharedLog(Optional.of(shared)), TODAY);
        assertEquals("$.sharedLog." + field, problem.where());
        assertEquals(severity, problem.severity());
    }

    @Test
    void refusesWhatCannotBe() {
        refused("riskRatio is 0.0; it must be above 0", () -> new VerdictRule(VerdictKind.GUARDED_ACCEPTANCE, 0));
        refused("riskRatio is 0.51", () -> new VerdictRule(VerdictKind.SIMPLE_ACCEPTANCE, 0.51));
        refused("riskRatio is NaN", () -> new VerdictRule(VerdictKind.SIMPLE_ACCEPTANCE, Double.NaN));
        refused("second is \"a\", the same as first", () -> new PartCorrelation("a", "a", 0.5));
        refused("coefficient is 1.5", () -> new PartCorrelation("a", "b", 1.5));
        refused("degreesOfFreedom is 0.5", () -> new Repeatability(0.001, 0.5, ""));
        refused("toCelsius is 10.0", () -> MeterStability.NONE.withToCelsius(10));
        refused("baselineCount is 3.0", () -> standard.withBaselineCount(3));
        refused("significanceRatio is 0.0", () -> standard.withSignificanceRatio(0));
        refused("everyDays is -1.0", () -> standard.withEveryDays(-1));
        refused("port is 0.0", () -> new SharedLog("h", 0, "d", "b", ""));
        refused("amount is -1.0", () -> new Price(-1, "EUR", TODAY));
        refused("amplifier is blank", () -> new Specimen(" ", "", ""));
        refused(
                "degreesOfFreedom is 0.0",
                () -> new UncertaintyPart(
                        "x", 1, true, PartShape.NORMAL, OptionalDouble.of(0), Optional.of(BudgetInput.LOAD_OHMS)));
    }

    private static void refused(String words, Runnable making) {
        IllegalArgumentException refused = assertThrows(IllegalArgumentException.class, making::run);
        assertTrue(refused.getMessage().startsWith(words), refused.getMessage());
    }

    @Test
    void temperatureCountsOnlyOutsideItsRange() {
        MeterStability stability = MeterStability.NONE.withFromCelsius(20).withToCelsius(26);
        assertEquals(0, stability.kelvinOutside(20));
        assertEquals(0, stability.kelvinOutside(26));
        assertEquals(4, stability.kelvinOutside(30), 1e-12);
        assertEquals(5, stability.kelvinOutside(15), 1e-12);
    }

    @Test
    void theRuleFollowsFromTheConfidenceUntilSomebodyChooses() {
        SheetSettings settings = new SheetSettings("", "", 0.99, "");
        assertEquals(VerdictKind.GUARDED_ACCEPTANCE, settings.rule().kind());
        assertEquals(0.01, settings.rule().riskRatio(), 1e-15);
        VerdictRule chosen = new VerdictRule(VerdictKind.SIMPLE_ACCEPTANCE, 0.5);
        assertEquals(chosen, settings.withVerdictRule(Optional.of(chosen)).rule());
    }

    @Test
    void theSpecimenIsTheProjectsAmplifierOnItsBench() {
        assertEquals(new Specimen("Made-up Workshop M-1", "0001", "Bench 1"), Specimen.of(sound));
        assertEquals("M-1", sound.amplifier().withMaker(" ").fullName());
    }
}
