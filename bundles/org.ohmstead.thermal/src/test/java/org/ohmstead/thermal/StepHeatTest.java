// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.ohmstead.model.AmplifierHeat;
import org.ohmstead.model.OutputClass;
import org.ohmstead.model.Range;

class StepHeatTest {
    private static AmplifierHeat facts(OutputClass outputClass, OptionalDouble railVolts) {
        return new AmplifierHeat(
                outputClass,
                railVolts,
                OptionalDouble.of(14.4),
                Optional.of(new Range(0.8, 0.9)),
                Optional.of(Range.of(12)),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.empty());
    }

    private static StepDemand demand(double watts, double supplyVolts, OptionalDouble measured) {
        StageLoad load = StageLoad.resistor(4);
        return new StepDemand(
                new Drive.Sine(load.voltsRms(watts)), load, 2, false, supplyVolts, OptionalDouble.empty(), measured);
    }

    // Two channels of +-30 V at 1/8 power: 36.580293 W each by the closed form of class B, 50.642793 W in; then the
    // converter and idle.
    @Test
    void addsStageConverterAndIdle() {
        HeatEstimate heat = StepHeat.of(
                facts(OutputClass.CLASS_AB, OptionalDouble.of(30)), demand(14.0625, 14.4, OptionalDouble.empty()));
        double stages = 2 * 36.580293;
        assertEquals(
                stages + 2 * 50.642793 * (1 / 0.9 - 1) + 12, heat.heatWatts().low(), 1e-5);
        assertEquals(
                stages + 2 * 50.642793 * (1 / 0.8 - 1) + 12, heat.heatWatts().high(), 1e-5);
        assertEquals(28.125, heat.outputWatts(), 1e-9);
        assertEquals(2 * 50.642793 / 0.8 + 12, heat.supplyWatts().high(), 1e-5);
        assertEquals(HeatEstimate.Basis.RAILS, heat.basis());
        assertTrue(heat.remarks().isEmpty(), heat.remarks().toString());
    }

    @Test
    void prefersMeasuredInput() {
        HeatEstimate heat = StepHeat.of(
                facts(OutputClass.CLASS_AB, OptionalDouble.of(30)), demand(100, 14.4, OptionalDouble.of(338.4)));
        assertEquals(Range.of(138.4), roundTo(heat.heatWatts()));
        assertEquals(HeatEstimate.Basis.MEASURED, heat.basis());
        HeatEstimate absurd = StepHeat.of(
                facts(OutputClass.CLASS_AB, OptionalDouble.of(30)), demand(100, 14.4, OptionalDouble.of(150)));
        assertEquals(HeatEstimate.Basis.RAILS, absurd.basis());
        assertTrue(absurd.remarks().get(absurd.remarks().size() - 1).contains("check both readings"));
    }

    @Test
    void coversRegulatedAndFollowingRails() {
        AmplifierHeat facts = facts(OutputClass.CLASS_AB, OptionalDouble.of(30));
        Range both = StepHeat.of(facts, demand(40, 12, OptionalDouble.empty())).heatWatts();
        Range fixed =
                StepHeat.of(facts, demand(40, 14.4, OptionalDouble.empty())).heatWatts();
        assertEquals(fixed.high(), both.high(), 1e-9);
        ClassAbStage lower = ClassAbStage.splitRails(25);
        PowerSplit split = lower.split(new Drive.Sine(Math.sqrt(160)), StageLoad.resistor(4))
                .times(2);
        assertEquals(new Converter(0.9, false, 14.4).balance(split, 12).heatWatts(), both.low(), 1e-9);
    }

    @Test
    void saysWhatItAssumes() {
        HeatEstimate unknown = StepHeat.of(AmplifierHeat.NONE, demand(50, 14.4, OptionalDouble.empty()));
        assertEquals(HeatEstimate.Basis.COMMON_PRACTICE, unknown.basis());
        assertEquals(100 * (1 / 0.9 - 1), unknown.heatWatts().low(), 1e-9);
        assertEquals(100 * (1 / 0.25 - 1), unknown.heatWatts().high(), 1e-9);
        assertTrue(unknown.remarks().stream().anyMatch(remark -> remark.contains("class of the output stage")));
        assertTrue(unknown.remarks().stream().anyMatch(remark -> remark.contains("idle power is not known")));
    }

    @Test
    void takesRailsFromTheMostPowerWhenTheyAreNotKnown() {
        StageLoad load = StageLoad.resistor(4);
        StepDemand step = new StepDemand(
                new Drive.Sine(load.voltsRms(14.0625)),
                load,
                1,
                false,
                14.4,
                OptionalDouble.of(30 / Math.sqrt(2)),
                OptionalDouble.empty());
        HeatEstimate heat = StepHeat.of(facts(OutputClass.CLASS_AB, OptionalDouble.empty()), step);
        assertEquals(
                36.580293 + 50.642793 * (1 / 0.9 - 1) + 12, heat.heatWatts().low(), 1e-5);
        assertEquals(HeatEstimate.Basis.MOST_POWER, heat.basis());
    }

    @Test
    void usesRailsThatReachWhenThoseGivenDoNot() {
        HeatEstimate heat = StepHeat.of(
                facts(OutputClass.CLASS_AB, OptionalDouble.of(10)), demand(100, 14.4, OptionalDouble.empty()));
        assertTrue(heat.remarks().stream().anyMatch(remark -> remark.contains("Check the rails")));
        assertEquals(
                200 * (4 / Math.PI - 1) + 200 * 4 / Math.PI * (1 / 0.9 - 1) + 12,
                heat.heatWatts().low(),
                1e-9);
    }

    @Test
    void givesTheLoudPartOfABurst() {
        StageLoad load = StageLoad.resistor(4);
        StepDemand step = new StepDemand(
                new Drive.Burst(15, 0.02, 0, 0.48),
                load,
                1,
                false,
                14.4,
                OptionalDouble.empty(),
                OptionalDouble.empty());
        HeatEstimate heat = StepHeat.of(facts(OutputClass.CLASS_AB, OptionalDouble.of(30)), step);
        assertEquals(
                12 + 0.04 * (heat.loudHeatWatts().high() - 12), heat.heatWatts().high(), 1e-9);
    }

    // Definitions of a converter's efficiency and of rails in proportion.
    @Test
    void convertsSupplyIntoRails() {
        assertEquals(30, new Converter(0.85, true, 14.4).railVolts(30, 12), 0);
        assertEquals(25, new Converter(0.85, false, 14.4).railVolts(30, 12), 1e-12);
        AmplifierBalance balance = new Converter(0.8, true, 14.4).balance(new PowerSplit(60, 100), 5);
        assertEquals(25, balance.converterWatts(), 1e-12);
        assertEquals(70, balance.heatWatts(), 1e-12);
        assertEquals(130, balance.supplyWatts(), 1e-12);
        assertEquals(60.0 / 130, balance.efficiencyRatio().orElseThrow(), 1e-12);
        assertEquals(130 / 13.0, balance.supplyAmps(13), 1e-12);
    }

    private static Range roundTo(Range range) {
        return new Range(Math.rint(range.low() * 1e9) / 1e9, Math.rint(range.high() * 1e9) / 1e9);
    }
}
