// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.metrology.Estimate;
import org.ohmstead.model.Bench;
import org.ohmstead.model.BudgetInput;
import org.ohmstead.model.LoadBranch;
import org.ohmstead.model.Meter;
import org.ohmstead.model.MeterQuantity;
import org.ohmstead.model.PartCorrelation;
import org.ohmstead.model.PartShape;
import org.ohmstead.model.SupplyType;
import org.ohmstead.model.UncertaintyPart;

/**
 * The uncertainty budget of an output power P = V^2 / R, by the law of propagation (JCGM 100, GUM, equations 10 and 13): sensitivities 2P/V
 * to the output volts and -P/R to the load. The supply volts matter too, since a power is stated for them: an unregulated amplifier's power
 * goes with their square (first order), so the sensitivity is -2P/V_supply; a regulated one's hardly moves.
 *
 * <p>Each meter gives its specification, resolution, calibration, drift and temperature as parts of their own. The resistance of a load is
 * that seen from the amplifier's terminals with the leads in place, and the output volts are read there; where the load was measured
 * elsewhere, its branch states what leads and contacts add, which is a part of its own. Another one is the load's own heat: reckoned from
 * its resistors where the bench knows them, else the bound that the branch states.
 */
public final class PowerUncertainty {
    private PowerUncertainty() {}

    /**
     * Returns the budget of a power.
     *
     * @param result power, output volts and supply volts at the end point
     * @param branch the load worked into
     * @param setting what else it depends on
     * @throws EvaluationException when the bench lacks a meter that the budget needs
     */
    public static PowerBudget of(EndPointResult result, LoadBranch branch, BudgetSetting setting)
            throws EvaluationException {
        double powerWatts = result.powerWatts();
        List<UncertaintyPart> parts = new ArrayList<>();
        List<String> notes = new ArrayList<>();
        Optional<MeterParts> output = Optional.empty();
        Meter outputMeter = meter(setting.bench(), MeterQuantity.OUTPUT_VOLTS);
        if (result.outputVoltsRms() > 0) {
            output = Optional.of(new MeterParts(
                    outputMeter,
                    "output volts",
                    BudgetInput.OUTPUT_VOLTS,
                    result.outputVoltsRms(),
                    2 * powerWatts / result.outputVoltsRms(),
                    setting));
            parts.addAll(output.get().parts());
            notes.addAll(output.get().notes());
        }
        addLoad(powerWatts, branch, setting, parts, notes);
        List<PartCorrelation> correlations = new ArrayList<>();
        if (setting.supplyType() != SupplyType.REGULATED) {
            MeterParts supply = new MeterParts(
                    meter(setting.bench(), MeterQuantity.SUPPLY_VOLTS),
                    "supply volts",
                    BudgetInput.SUPPLY_VOLTS,
                    result.supplyVolts(),
                    2 * powerWatts / result.supplyVolts(),
                    setting);
            parts.addAll(supply.parts());
            notes.addAll(supply.notes());
            output.ifPresent(read -> correlations.addAll(MeterParts.correlations(read, supply)));
        }
        addPower(result, setting, parts);
        return new PowerBudget(parts, correlations, notes);
    }

    private static void addLoad(
            double powerWatts,
            LoadBranch branch,
            BudgetSetting setting,
            List<UncertaintyPart> parts,
            List<String> notes) {
        double wattsPerOhm = powerWatts / branch.ohms();
        parts.add(load("load resistance", wattsPerOhm * branch.standardUncertaintyOhms(), PartShape.NORMAL));
        if (branch.leadStandardUncertaintyOhms() > 0) {
            parts.add(load(
                    "load leads and contacts", wattsPerOhm * branch.leadStandardUncertaintyOhms(), PartShape.NORMAL));
        }
        Optional<LoadWarming> warming = LoadWarming.of(powerWatts * setting.dutyRatio(), branch, setting);
        if (LoadWarming.isStatedInstead(warming, branch)) {
            parts.add(heating("load heating", powerWatts, branch.heatingRatio()));
            notes.add(LoadWarming.statedSentence(branch));
        } else if (warming.isPresent() && warming.get().ratio() != 0) {
            parts.add(heating(
                    "load resistance, heating", powerWatts, warming.get().ratio()));
            notes.add(warming.get().sentence());
        }
    }

    private static UncertaintyPart heating(String source, double powerWatts, double ratio) {
        return load(
                source,
                powerWatts * Estimate.rectangular(0, Math.abs(ratio)).standardUncertainty(),
                PartShape.RECTANGULAR);
    }

    private static UncertaintyPart load(String source, double standardUncertaintyWatts, PartShape shape) {
        return new UncertaintyPart(
                source,
                standardUncertaintyWatts,
                true,
                shape,
                OptionalDouble.empty(),
                Optional.of(BudgetInput.LOAD_OHMS));
    }

    private static void addPower(EndPointResult result, BudgetSetting setting, List<UncertaintyPart> parts) {
        // A bound without a better reason for any value inside it: rectangular (GUM 4.3.7).
        parts.add(new UncertaintyPart(
                "interpolation between levels",
                Estimate.rectangular(0, result.interpolationHalfWidthWatts()).standardUncertainty(),
                false,
                PartShape.RECTANGULAR,
                OptionalDouble.empty(),
                Optional.of(BudgetInput.POWER_WATTS)));
        setting.bench()
                .repeatability()
                .filter(repeats -> repeats.ratio() > 0)
                .ifPresent(repeats -> parts.add(new UncertaintyPart(
                        "repeatability of the bench",
                        result.powerWatts() * repeats.ratio(),
                        false,
                        PartShape.NORMAL,
                        OptionalDouble.of(repeats.degreesOfFreedom()),
                        Optional.of(BudgetInput.POWER_WATTS))));
    }

    private static Meter meter(Bench bench, MeterQuantity quantity) throws EvaluationException {
        return bench.meterFor(quantity)
                .orElseThrow(() ->
                        Faults.evaluation(quantity == MeterQuantity.OUTPUT_VOLTS ? "noOutputMeter" : "noSupplyMeter"));
    }
}
