// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.budget;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.ohmstead.testlog.budget.BudgetSamples.channel;
import static org.ohmstead.testlog.budget.BudgetSamples.part;
import static org.ohmstead.testlog.budget.BudgetSamples.repeatability;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.ohmstead.model.BudgetInput;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.Conditions;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.InstrumentUsed;
import org.ohmstead.model.MeterQuantity;
import org.ohmstead.model.Mode;
import org.ohmstead.model.PartCorrelation;
import org.ohmstead.model.PartShape;
import org.ohmstead.model.Provenance;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Stimulus;
import org.ohmstead.model.UncertaintyPart;
import org.ohmstead.plot.Plot;

class ReadingBudgetTest {
    private static final double EXACT = 1e-12;
    private static final double PRINTED = 1e-6;
    private static final double ROOT_3 = Math.sqrt(3);

    private static void assertClose(double expected, double actual, double relative) {
        assertEquals(expected, actual, relative * Math.abs(expected));
    }

    @Test
    void powerOfVoltsAcrossALoadByTheClosedForm() {
        // Closed form (u_P/P)^2 = (2 u_V/V)^2 + (u_R/R)^2 with V = 20 V +-(0.5 % + 0.03 V) and R = 4 ohm +-1 %, both
        // rectangular:
        // u_V = 0.13/sqrt 3, u_R = 0.04/sqrt 3.
        double outputVolts = 0.13 / ROOT_3;
        double loadOhms = 0.04 / ROOT_3;
        ReadingBudget budget = ReadingBudget.of(channel(List.of(
                part("output volts, specification", BudgetInput.OUTPUT_VOLTS, PartShape.RECTANGULAR, outputVolts),
                part("load resistance", BudgetInput.LOAD_OHMS, PartShape.RECTANGULAR, loadOhms))));
        double expected = 100 * Math.sqrt(Math.pow(2 * outputVolts / 20, 2) + Math.pow(loadOhms / 4, 2));
        assertClose(expected, budget.result().standardUncertainty(), EXACT);
        assertClose(0.9469248, budget.result().standardUncertainty(), PRINTED);
        assertEquals(100, budget.result().value());
        BudgetLine volts = budget.lines().get(0);
        assertClose(outputVolts, volts.inputStandardUncertainty(), EXACT);
        assertClose(10, volts.sensitivity(), EXACT);
        assertEquals("V", volts.inputUnit());
        assertEquals("W/V", volts.sensitivityUnit());
        BudgetLine load = budget.lines().get(1);
        assertClose(loadOhms, load.inputStandardUncertainty(), EXACT);
        assertClose(-25, load.sensitivity(), EXACT);
        assertClose(-25 * loadOhms, load.effectWatts(), EXACT);
        assertClose(1, volts.varianceShare() + load.varianceShare(), EXACT);
        assertClose(Math.pow(10 * outputVolts / expected, 2), volts.varianceShare(), EXACT);
        // The factor of a normal distribution, 1.960 for 95 % (GUM table G.1).
        assertEquals(Double.POSITIVE_INFINITY, budget.effectiveDegreesOfFreedom());
        assertEquals(1.960, budget.coverageFactor(0.95), 5e-4);
    }

    @Test
    void anOldReadingOfTheDemoComesToWhatWasLogged() {
        ChannelReading logged = BudgetSamples.logged();
        ReadingBudget budget = ReadingBudget.of(logged);
        assertClose(logged.standardUncertaintyWatts(), budget.result().standardUncertainty(), EXACT);
        assertEquals(
                List.of(
                        BudgetInput.OUTPUT_VOLTS,
                        BudgetInput.LOAD_OHMS,
                        BudgetInput.SUPPLY_VOLTS,
                        BudgetInput.POWER_WATTS),
                budget.lines().stream().map(BudgetLine::input).toList());
        // Its load had 0.004 ohm, and its recorder +-(0.4 % + 5 mV).
        assertClose(0.004, budget.lines().get(1).inputStandardUncertainty(), EXACT);
        assertClose(
                (0.004 * logged.outputVoltsRms() + 0.005) / ROOT_3,
                budget.lines().get(0).inputStandardUncertainty(),
                EXACT);
        assertTrue(
                budget.notes().get(0).contains("neither their shape nor their input"),
                budget.notes().toString());
    }

    @Test
    void fewReadingsWidenTheInterval() {
        // Welch-Satterthwaite, GUM G.4.1: 0.3 W with 4 degrees of freedom beside an exactly known 0.4 W gives
        // 0.5^4 / (0.3^4 / 4) = 30.864; Student's t at 97.5 % there is 2.03988 (SciPy 1.17.1, stats.t.ppf).
        ReadingBudget budget = ReadingBudget.of(channel(List.of(
                repeatability(0.3, 4), part("load resistance", BudgetInput.LOAD_OHMS, PartShape.NORMAL, 0.4 / 25))));
        assertClose(30.8641975308642, budget.effectiveDegreesOfFreedom(), EXACT);
        assertClose(2.0398772272372754, budget.coverageFactor(0.95), 1e-9);
        assertClose(2.0398772272372754 * 0.5, budget.expandedWatts(0.95), 1e-9);
        assertClose(100 - budget.expandedWatts(0.95), budget.interval(0.95).lower(), EXACT);
        // GUM table G.2: t for 4 degrees of freedom and 95 % is 2.78, for 99 % 4.60.
        ReadingBudget alone = ReadingBudget.of(channel(List.of(repeatability(0.3, 4))));
        assertEquals(2.78, alone.coverageFactor(0.95), 0.005);
        assertEquals(4.60, alone.coverageFactor(0.99), 0.005);
    }

    @Test
    void anErrorCommonToOutputAndSupplyVoltsCancels() {
        // P (V/V0)^2 (Us0/Us)^2: with V and Us both too high by the same ratio, nothing changes.
        String output = "output volts, specification";
        String supply = "supply volts, specification";
        List<UncertaintyPart> parts = List.of(
                part(output, BudgetInput.OUTPUT_VOLTS, PartShape.RECTANGULAR, 0.01 * BudgetSamples.VOLTS),
                part(supply, BudgetInput.SUPPLY_VOLTS, PartShape.RECTANGULAR, 0.01 * BudgetSamples.SUPPLY),
                repeatability(0.3, 4));
        PartCorrelation same = new PartCorrelation(output, supply, 1);
        ReadingBudget together = ReadingBudget.of(channel(parts, same));
        assertClose(0.3, together.result().standardUncertainty(), 1e-9);
        assertClose(4, together.effectiveDegreesOfFreedom(), 1e-9);
        assertTrue(together.notes().stream().anyMatch(note -> note.contains("go together (r = 1.00)")));
        // Uncorrelated: sqrt(2^2 + 2^2 + 0.3^2).
        ReadingBudget apart = ReadingBudget.of(channel(parts));
        assertClose(Math.sqrt(8.09), apart.result().standardUncertainty(), EXACT);
        // r = 0.5: variance 4 + 4 - 2 * 0.5 * 2 * 2 + 0.09; the group of 2 W counts as exactly known.
        ReadingBudget half = ReadingBudget.of(channel(parts, new PartCorrelation(output, supply, 0.5)));
        assertClose(Math.sqrt(4.09), half.result().standardUncertainty(), EXACT);
        assertClose(4.09 * 4.09 / (0.0081 / 4), half.effectiveDegreesOfFreedom(), EXACT);
        assertClose(
                1, half.lines().stream().mapToDouble(BudgetLine::varianceShare).sum(), EXACT);
    }

    @Test
    void impossibleCorrelationsAreLeftOutAndSaidToBe() {
        // 1 with 2 wholly, 1 with 3 wholly, but 2 with 3 not at all: no three quantities are like that.
        ChannelReading channel = channel(
                List.of(
                        part("one", BudgetInput.POWER_WATTS, PartShape.NORMAL, 1),
                        part("two", BudgetInput.POWER_WATTS, PartShape.NORMAL, 1),
                        part("three", BudgetInput.POWER_WATTS, PartShape.NORMAL, 1)),
                new PartCorrelation("one", "two", 1),
                new PartCorrelation("one", "three", 1),
                new PartCorrelation("one", "nothing", 1),
                new PartCorrelation("two", "one", 0.5));
        ReadingBudget budget = ReadingBudget.of(channel);
        assertEquals(List.of(), budget.correlations());
        assertClose(Math.sqrt(3), budget.result().standardUncertainty(), EXACT);
        assertTrue(budget.notes().stream().anyMatch(note -> note.contains("contradict one another")));
    }

    @Test
    void aStatedUncertaintyWithoutPartsIsOneLine() {
        ReadingBudget budget = ReadingBudget.of(channel(0.7, List.of()));
        assertEquals(0.7, budget.result().standardUncertainty());
        assertEquals(1, budget.lines().size());
        assertEquals("stated standard uncertainty", budget.lines().get(0).source());
        assertEquals(List.of("The reading states its standard uncertainty only as a whole."), budget.notes());
    }

    @Test
    void saysWhenThePartsDoNotComeToWhatWasLogged() {
        ReadingBudget budget =
                ReadingBudget.of(channel(0.7, List.of(new UncertaintyPart("output volts (meter)", 0.5, true))));
        assertEquals(0.5, budget.result().standardUncertainty());
        assertTrue(
                budget.notes()
                        .contains(
                                "The parts come to a standard uncertainty of 0.5000 W, but 0.7000 W was logged; what was"
                                        + " logged counts in curves and verdicts."),
                budget.notes().toString());
        assertFalse(ReadingBudget.agrees(budget.channel()));
    }

    @Test
    void aSilentChannelHasABudgetInWatts() {
        ChannelReading silent = new ChannelReading(
                "A",
                BudgetSamples.logged().outcome(),
                4,
                0,
                0.01,
                0,
                1000,
                0,
                14.4,
                OptionalDouble.empty(),
                List.of(new UncertaintyPart(
                        "load resistance",
                        0.01,
                        true,
                        PartShape.NORMAL,
                        OptionalDouble.empty(),
                        Optional.of(BudgetInput.LOAD_OHMS))),
                List.of(),
                List.of());
        ReadingBudget budget = ReadingBudget.of(silent);
        assertEquals(0.01, budget.result().standardUncertainty());
        assertEquals(BudgetInput.POWER_WATTS, budget.lines().get(0).input());
    }

    @Test
    void instrumentsThatWereOverdueAreNamed() {
        ChannelReading channel = BudgetSamples.logged();
        Reading reading = new Reading(
                "4ohm-14V4",
                Mode.STEREO,
                "4ohm",
                4,
                new Stimulus.ContinuousSine(1000),
                new EndPoint.ClippingOnset(),
                Instant.parse("2026-03-02T09:31:37Z"),
                new Conditions(OptionalDouble.empty(), OptionalDouble.empty()),
                List.of(channel),
                new Provenance(
                        "cd".repeat(32),
                        "power",
                        "1.0.0",
                        "0.1.0",
                        "",
                        List.of(
                                new InstrumentUsed(
                                        "rec",
                                        MeterQuantity.OUTPUT_VOLTS,
                                        "Recorder",
                                        Optional.of(LocalDate.of(2024, 1, 20)),
                                        true),
                                new InstrumentUsed(
                                        "dcv", MeterQuantity.SUPPLY_VOLTS, "Meter", Optional.empty(), false)),
                        List.of()),
                List.of());
        List<String> notes = ReadingBudget.of(reading, channel).notes();
        assertTrue(
                notes.get(0)
                        .startsWith(
                                "The calibration of Recorder (output volts), last on 2024-01-20, had run out when the"
                                        + " reading was taken"),
                notes.get(0));
        assertEquals(ReadingBudget.of(channel).notes(), notes.subList(1, notes.size()));
    }

    @Test
    void linesWithTheSameNameAreToldApart() {
        ReadingBudget budget = ReadingBudget.of(
                channel(List.of(new UncertaintyPart("probe", 0.3, true), new UncertaintyPart("probe", 0.4, true))));
        assertEquals(
                List.of("probe", "probe (2)"),
                budget.lines().stream().map(BudgetLine::source).toList());
        assertClose(0.5, budget.result().standardUncertainty(), EXACT);
    }

    @Test
    void barsAreAsLongAsTheEffects() {
        Plot bars = ReadingBudget.of(BudgetSamples.logged()).bars();
        assertEquals(5, bars.bands().size());
        assertEquals(
                List.of(
                        "combined",
                        "supply volts (meter)",
                        "interpolation between levels",
                        "load resistance",
                        "output volts (meter)"),
                bars.y().ticks().stream().map(tick -> tick.label()).toList());
        assertEquals(0.503524403429649, bars.bands().get(0).points().get(1).x(), 1e-9);
        assertEquals(0.48245766012106234, bars.bands().get(4).points().get(1).x(), 1e-9);
        assertEquals(4 - 0.36, bars.bands().get(4).points().get(1).lower(), EXACT);
    }
}
