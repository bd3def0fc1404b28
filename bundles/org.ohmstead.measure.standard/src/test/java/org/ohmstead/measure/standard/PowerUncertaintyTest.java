// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.ohmstead.model.Accuracy;
import org.ohmstead.model.Bench;
import org.ohmstead.model.BudgetInput;
import org.ohmstead.model.Cable;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.LoadBranch;
import org.ohmstead.model.Meter;
import org.ohmstead.model.MeterQuantity;
import org.ohmstead.model.MeterStability;
import org.ohmstead.model.Mounting;
import org.ohmstead.model.Part;
import org.ohmstead.model.PartCorrelation;
import org.ohmstead.model.PartShape;
import org.ohmstead.model.PartShare;
import org.ohmstead.model.PartSharing;
import org.ohmstead.model.PartTraits;
import org.ohmstead.model.Repeatability;
import org.ohmstead.model.Stimulus;
import org.ohmstead.model.Supply;
import org.ohmstead.model.SupplyType;
import org.ohmstead.model.UncertaintyPart;

class PowerUncertaintyTest {
    private static final double EXACT = 1e-12;
    private static final double ROOT_3 = Math.sqrt(3);
    private static final LocalDate CALIBRATED = LocalDate.of(2026, 1, 20);
    /** 20 V into 4 ohms: 100 W, interpolated to 0.09 W, at 14.4 V. */
    private static final EndPointResult RESULT =
            new EndPointResult(EndPointOutcome.REACHED, 100, 20, 0.01, 14.4, OptionalDouble.of(12), 5, 0.09);

    private static final LoadBranch BRANCH = new LoadBranch(4, 0.004, 0, "8R||8R");
    private static final Meter OUTPUT = new Meter(
            "rec",
            MeterQuantity.OUTPUT_VOLTS,
            "Recorder",
            "R-1",
            new Accuracy(0.004, 0.005, 0, 0),
            Optional.of(CALIBRATED),
            Optional.empty(),
            "C-1");
    private static final Meter SUPPLY = new Meter(
            "dcv",
            MeterQuantity.SUPPLY_VOLTS,
            "Meter at the terminals",
            "M-2",
            new Accuracy(0.0003, 0.002, 0.001, 0),
            Optional.of(CALIBRATED),
            Optional.empty(),
            "C-2");

    private static Bench bench(Meter... meters) {
        return new Bench(
                "",
                new Supply("supply", 0, 16, 100),
                new Cable(35, 5, OptionalDouble.empty()),
                List.of(meters),
                List.of(),
                OptionalDouble.empty());
    }

    private static BudgetSetting setting(Bench bench) {
        return new BudgetSetting(
                bench,
                SupplyType.UNREGULATED,
                CALIBRATED.plusDays(100),
                OptionalDouble.of(23),
                1,
                BudgetSetting.NO_SHARING);
    }

    private static double watts(PowerBudget budget, String source) {
        return part(budget, source).standardUncertaintyWatts();
    }

    private static UncertaintyPart part(PowerBudget budget, String source) {
        return budget.parts().stream()
                .filter(part -> part.source().equals(source))
                .findFirst()
                .orElseThrow(() -> new AssertionError(source + " is not among " + budget.parts()));
    }

    @Test
    void withoutStabilityTheSumIsWhatItWasBefore() throws EvaluationException {
        PowerBudget budget = PowerUncertainty.of(RESULT, BRANCH, setting(bench(OUTPUT, SUPPLY)));
        // GUM 5.1.2 with one uncertainty for each meter: specification and resolution in squares.
        double output = 2 * 100 / 20.0 * OUTPUT.accuracy().standardUncertainty(20);
        double supply = 2 * 100 / 14.4 * SUPPLY.accuracy().standardUncertainty(14.4);
        double load = 100 / 4.0 * 0.004;
        double interpolation = 0.09 / ROOT_3;
        double before = Math.sqrt(output * output + supply * supply + load * load + interpolation * interpolation);
        assertEquals(before, budget.combinedWatts(), EXACT * before);
        assertEquals(
                List.of(
                        "output volts, specification",
                        "load resistance",
                        "supply volts, specification",
                        "supply volts, resolution",
                        "interpolation between levels"),
                budget.parts().stream().map(UncertaintyPart::source).toList());
        assertEquals(List.of(), budget.correlations());
        assertEquals(List.of(), budget.notes());
        // GUM F.2.2.1: a display's step over 2 sqrt 3.
        assertEquals(2 * 100 / 14.4 * 0.001 / (2 * ROOT_3), watts(budget, "supply volts, resolution"), EXACT);
        assertEquals(false, part(budget, "supply volts, resolution").shared());
        assertEquals(true, part(budget, "supply volts, specification").shared());
        assertEquals(
                PartShape.RECTANGULAR,
                part(budget, "output volts, specification").shape());
        assertEquals(
                Optional.of(BudgetInput.SUPPLY_VOLTS),
                part(budget, "supply volts, resolution").input());
    }

    @Test
    void aSpecificationWithACoverageFactorIsNormal() throws EvaluationException {
        Meter normal = OUTPUT.withAccuracy(new Accuracy(0.004, 0.005, 0, 2));
        PowerBudget budget = PowerUncertainty.of(RESULT, BRANCH, setting(bench(normal, SUPPLY)));
        UncertaintyPart part = part(budget, "output volts, specification");
        // GUM 4.3.3: U / k.
        assertEquals(10 * 0.085 / 2, part.standardUncertaintyWatts(), EXACT);
        assertEquals(PartShape.NORMAL, part.shape());
    }

    @Test
    void calibrationDriftAndTemperatureAreParts() throws EvaluationException {
        // 0.1 % with k = 2, 0.2 % in a year, 50 ppm/K outside 18 to 28 degrees; 100 days later at 33 degrees.
        Meter stable = OUTPUT.withStability(new MeterStability(0.001, 2, 0.002, 50e-6, 18, 28));
        BudgetSetting hot = new BudgetSetting(
                bench(stable, SUPPLY),
                SupplyType.UNREGULATED,
                CALIBRATED.plusDays(100),
                OptionalDouble.of(33),
                1,
                BudgetSetting.NO_SHARING);
        PowerBudget budget = PowerUncertainty.of(RESULT, BRANCH, hot);
        // A power moves by twice the ratio of its volts: 200 W times the ratio.
        assertEquals(200 * 0.001 / 2, watts(budget, "output volts, calibration"), EXACT);
        assertEquals(200 * 0.002 * 100 / 365.25 / ROOT_3, watts(budget, "output volts, drift"), EXACT);
        assertEquals(200 * 50e-6 * 5 / ROOT_3, watts(budget, "output volts, meter temperature"), EXACT);
        assertEquals(PartShape.NORMAL, part(budget, "output volts, calibration").shape());
        // Within 18 to 28 degrees the specification holds by itself.
        PowerBudget cool = PowerUncertainty.of(RESULT, BRANCH, setting(bench(stable, SUPPLY)));
        assertTrue(cool.parts().stream().noneMatch(part -> part.source().contains("temperature")));
    }

    @Test
    void saysWhatCouldNotBeStated() throws EvaluationException {
        Meter unknown = OUTPUT.withStability(new MeterStability(0, 2, 0.002, 50e-6, 18, 28))
                .withCalibratedOn(Optional.empty());
        BudgetSetting blind = new BudgetSetting(
                bench(unknown, SUPPLY),
                SupplyType.UNREGULATED,
                CALIBRATED,
                OptionalDouble.empty(),
                1,
                BudgetSetting.NO_SHARING);
        assertEquals(
                List.of(
                        "The drift of Recorder since its calibration is not in the uncertainty, because the day of the"
                                + " calibration is not known.",
                        "What temperature does to Recorder is not in the uncertainty, because no air temperature is known."),
                PowerUncertainty.of(RESULT, BRANCH, blind).notes());
    }

    @Test
    void oneInstrumentForBothVoltagesCancelsItsOwnError() throws EvaluationException {
        Accuracy onePercent = new Accuracy(0.01, 0, 0, 0);
        Meter output = OUTPUT.withAccuracy(onePercent).withSerialNumber("M-2");
        Meter supply = SUPPLY.withAccuracy(onePercent);
        PowerBudget budget = PowerUncertainty.of(RESULT, BRANCH, setting(bench(output, supply)));
        assertEquals(
                List.of(new PartCorrelation("output volts, specification", "supply volts, specification", 1)),
                budget.correlations());
        // P (V/V0)^2 (Us0/Us)^2 does not change when both are off by the same ratio: load and interpolation are left.
        assertEquals(Math.hypot(0.1, 0.09 / ROOT_3), budget.combinedWatts(), 1e-9);
        PowerBudget apart = PowerUncertainty.of(RESULT, BRANCH, setting(bench(output.withSerialNumber("R-1"), supply)));
        assertEquals(List.of(), apart.correlations());
        assertEquals(Math.sqrt(2 * Math.pow(2 / ROOT_3, 2) + 0.01 + 0.0027), apart.combinedWatts(), 1e-9);
    }

    @Test
    void instrumentsAreTheSameByNumberElseByNameAndCertificate() {
        assertTrue(MeterParts.sameInstrument(OUTPUT, SUPPLY.withSerialNumber("R-1")));
        assertEquals(false, MeterParts.sameInstrument(OUTPUT, SUPPLY));
        Meter nameless = OUTPUT.withSerialNumber("");
        assertTrue(MeterParts.sameInstrument(nameless, OUTPUT));
        assertEquals(false, MeterParts.sameInstrument(nameless, OUTPUT.withCertificate("C-9")));
        assertEquals(false, MeterParts.sameInstrument(nameless.withCertificate(""), nameless.withCertificate("")));
    }

    @Test
    void theRepeatabilityOfTheBenchHasItsDegreesOfFreedom() throws EvaluationException {
        Bench bench = bench(OUTPUT, SUPPLY).withRepeatability(Optional.of(new Repeatability(0.003, 9, "study")));
        UncertaintyPart part = part(PowerUncertainty.of(RESULT, BRANCH, setting(bench)), "repeatability of the bench");
        assertEquals(0.3, part.standardUncertaintyWatts(), EXACT);
        assertEquals(OptionalDouble.of(9), part.degreesOfFreedom());
        assertEquals(false, part.shared());
    }

    @Test
    void aRegulatedAmplifierHasNoSupplyPartAndNeedsNoSupplyMeter() throws EvaluationException {
        BudgetSetting regulated = new BudgetSetting(
                bench(OUTPUT), SupplyType.REGULATED, CALIBRATED, OptionalDouble.empty(), 1, BudgetSetting.NO_SHARING);
        PowerBudget budget = PowerUncertainty.of(RESULT, BRANCH, regulated);
        assertTrue(budget.parts().stream().noneMatch(part -> part.source().startsWith("supply")));
        EvaluationException missing = assertThrows(
                EvaluationException.class, () -> PowerUncertainty.of(RESULT, BRANCH, setting(bench(OUTPUT))));
        assertTrue(missing.getMessage().contains("no meter for supply volts"), missing.getMessage());
    }

    /** Two resistors of 8 ohms across one another, each with half the power. */
    private static PartSharing halves(PartTraits... traits) {
        return (stock, branch) -> {
            List<PartShare> shares = new ArrayList<>();
            for (PartTraits each : traits) {
                Part part = new Part("8R", 8, 0.01, 100, 25, 250, Mounting.HEAT_SINK, 2, each);
                shares.add(new PartShare("8R", 8, 1.0 / traits.length, Optional.of(part)));
            }
            return shares;
        };
    }

    private static PartTraits warm(double perKelvin, double sinkKelvinPerWatt, double elementKelvinPerWatt) {
        return PartTraits.NONE
                .withTemperatureCoefficientPerKelvin(OptionalDouble.of(perKelvin))
                .withSinkKelvinPerWatt(OptionalDouble.of(sinkKelvinPerWatt))
                .withElementKelvinPerWatt(OptionalDouble.of(elementKelvinPerWatt));
    }

    @Test
    void theLoadsOwnHeatIsABound() throws EvaluationException {
        // Each resistor takes 50 W at 1.5 K/W: 75 K, at 100 ppm/K 0.75 %; so does the pair (dR/R of equal parts).
        PartTraits traits = warm(100e-6, 0.5, 1);
        BudgetSetting setting = new BudgetSetting(
                bench(OUTPUT, SUPPLY),
                SupplyType.UNREGULATED,
                CALIBRATED,
                OptionalDouble.of(23),
                1,
                halves(traits, traits));
        PowerBudget budget = PowerUncertainty.of(RESULT, BRANCH, setting);
        assertEquals(100 * 0.0075 / ROOT_3, watts(budget, "load resistance, heating"), 1e-9);
        assertEquals(1, budget.notes().size());
        assertTrue(budget.notes().get(0).contains("75.0 K"), budget.notes().get(0));
        assertTrue(budget.notes().get(0).contains("0.75 %"), budget.notes().get(0));
        // Of one of the two nothing is known: half of the change, and a sentence that says so.
        BudgetSetting half = new BudgetSetting(
                setting.bench(),
                SupplyType.UNREGULATED,
                CALIBRATED,
                OptionalDouble.of(23),
                1,
                halves(traits, PartTraits.NONE));
        PowerBudget partly = PowerUncertainty.of(RESULT, BRANCH, half);
        assertEquals(100 * 0.00375 / ROOT_3, watts(partly, "load resistance, heating"), 1e-9);
        assertTrue(
                partly.notes().get(0).contains("of 1 of its 2 resistors"),
                partly.notes().get(0));
    }

    private static BudgetSetting setting(PartSharing sharing) {
        return new BudgetSetting(
                bench(OUTPUT, SUPPLY), SupplyType.UNREGULATED, CALIBRATED, OptionalDouble.of(23), 1, sharing);
    }

    private static boolean has(PowerBudget budget, String source) {
        return budget.parts().stream().anyMatch(part -> part.source().equals(source));
    }

    @Test
    void theStatedHeatAndLeadsArePartsWhereThePartsTellNothing() throws EvaluationException {
        // Up to 0.6 % when hot, 3 milliohms of leads and contacts on 4 ohms.
        LoadBranch stated = BRANCH.withHeatingRatio(0.006).withLeadStandardUncertaintyOhms(0.003);
        PowerBudget before = PowerUncertainty.of(RESULT, BRANCH, setting(BudgetSetting.NO_SHARING));
        PowerBudget budget = PowerUncertainty.of(RESULT, stated, setting(BudgetSetting.NO_SHARING));
        // P = V^2 / R: |dP| = P dR / R; a bound is rectangular with a / sqrt 3 (GUM 4.3.7).
        double heating = 100 * 0.006 / ROOT_3;
        double leads = 100 / 4.0 * 0.003;
        assertEquals(heating, watts(budget, "load heating"), EXACT);
        assertEquals(leads, watts(budget, "load leads and contacts"), EXACT);
        assertEquals(PartShape.RECTANGULAR, part(budget, "load heating").shape());
        assertEquals(PartShape.NORMAL, part(budget, "load leads and contacts").shape());
        for (String source : List.of("load heating", "load leads and contacts")) {
            assertEquals(
                    Optional.of(BudgetInput.LOAD_OHMS), part(budget, source).input());
            assertEquals(true, part(budget, source).shared());
        }
        // Independent of the rest: squares add (GUM 5.1.2).
        double combined = Math.sqrt(Math.pow(before.combinedWatts(), 2) + heating * heating + leads * leads);
        assertEquals(combined, budget.combinedWatts(), EXACT * combined);
        assertEquals(before.parts().size() + 2, budget.parts().size());
        assertEquals(
                List.of(
                        "The load's resistance is taken to change by anything up to 0.60 % when it is hot, as stated for it;"
                                + " the power is not corrected for it, the bound is in its uncertainty."),
                budget.notes());
    }

    @Test
    void aStatedHeatGivesWayToWhatAllPartsTell() throws EvaluationException {
        // As above: 0.75 % from both resistors, half of it from one.
        PartTraits traits = warm(100e-6, 0.5, 1);
        LoadBranch stated = BRANCH.withHeatingRatio(0.02);
        PowerBudget told = PowerUncertainty.of(RESULT, stated, setting(halves(traits, traits)));
        assertEquals(100 * 0.0075 / ROOT_3, watts(told, "load resistance, heating"), 1e-9);
        assertEquals(false, has(told, "load heating"));
        // One resistor is unknown: the greater of the two bounds.
        PowerBudget partly = PowerUncertainty.of(RESULT, stated, setting(halves(traits, PartTraits.NONE)));
        assertEquals(100 * 0.02 / ROOT_3, watts(partly, "load heating"), 1e-9);
        assertEquals(false, has(partly, "load resistance, heating"));
        PowerBudget small =
                PowerUncertainty.of(RESULT, BRANCH.withHeatingRatio(0.001), setting(halves(traits, PartTraits.NONE)));
        assertEquals(100 * 0.00375 / ROOT_3, watts(small, "load resistance, heating"), 1e-9);
        assertEquals(false, has(small, "load heating"));
        // A coefficient without a thermal resistance tells no warming.
        PartTraits cold = PartTraits.NONE.withTemperatureCoefficientPerKelvin(OptionalDouble.of(100e-6));
        PowerBudget unknown = PowerUncertainty.of(RESULT, stated, setting(halves(cold, cold)));
        assertEquals(100 * 0.02 / ROOT_3, watts(unknown, "load heating"), 1e-9);
    }

    @Test
    void burstsWarmTheLoadWithTheirMeanPower() {
        // 20 ms of 500 ms at -20 dB between: 0.04 + 0.96 * 0.01.
        assertEquals(0.0496, BudgetSetting.dutyRatio(new Stimulus.ToneBurst(1000, 0.02, 0.5, -20)), EXACT);
        assertEquals(1, BudgetSetting.dutyRatio(new Stimulus.ContinuousSine(1000)));
        assertThrows(
                IllegalArgumentException.class,
                () -> new BudgetSetting(
                        bench(OUTPUT),
                        SupplyType.UNKNOWN,
                        CALIBRATED,
                        OptionalDouble.empty(),
                        0,
                        BudgetSetting.NO_SHARING));
    }
}
