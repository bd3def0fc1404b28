// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import java.util.ArrayList;
import java.util.List;
import org.ohmstead.model.Accuracy;
import org.ohmstead.model.Bench;
import org.ohmstead.model.LoadBranch;
import org.ohmstead.model.Meter;
import org.ohmstead.model.MeterQuantity;
import org.ohmstead.model.SupplyType;
import org.ohmstead.model.UncertaintyPart;

/**
 * The uncertainty budget of an output power P = V^2 / R, by the law of propagation (JCGM 100, GUM, equation 10): sensitivities
 * 2P/V to the output volts and P/R to the load. The supply volts matter too, since a power is stated for them: an unregulated
 * amplifier's power goes with their square (first order), so the sensitivity is 2P/V_supply; a regulated one's hardly moves.
 */
public final class PowerUncertainty {
    private PowerUncertainty() {}

    /**
     * Returns the parts of the power's standard uncertainty.
     *
     * @param result power, output volts and supply volts at the end point
     * @param branch the load worked into
     * @param bench whose meters read them
     * @param supplyType what the amplifier does with its supply volts
     * @throws EvaluationException when the bench lacks a meter that the budget needs
     */
    public static List<UncertaintyPart> parts(
            EndPointResult result, LoadBranch branch, Bench bench, SupplyType supplyType) throws EvaluationException {
        double powerWatts = result.powerWatts();
        List<UncertaintyPart> parts = new ArrayList<>();
        double outputVolts = accuracy(bench, MeterQuantity.OUTPUT_VOLTS).standardUncertainty(result.outputVoltsRms());
        if (result.outputVoltsRms() > 0) {
            parts.add(new UncertaintyPart(
                    "output volts (meter)", 2 * powerWatts / result.outputVoltsRms() * outputVolts, true));
        }
        parts.add(new UncertaintyPart(
                "load resistance", powerWatts / branch.ohms() * branch.standardUncertaintyOhms(), true));
        if (supplyType != SupplyType.REGULATED) {
            double supplyVolts = accuracy(bench, MeterQuantity.SUPPLY_VOLTS).standardUncertainty(result.supplyVolts());
            parts.add(new UncertaintyPart(
                    "supply volts (meter)", 2 * powerWatts / result.supplyVolts() * supplyVolts, true));
        }
        // A bound without a better reason for any value inside it: rectangular (GUM 4.3.7).
        parts.add(new UncertaintyPart(
                "interpolation between levels", result.interpolationHalfWidthWatts() / Math.sqrt(3), false));
        return List.copyOf(parts);
    }

    /** Returns the parts added in squares, in watts. */
    public static double combinedWatts(List<UncertaintyPart> parts) {
        return Math.sqrt(parts.stream()
                .mapToDouble(part -> part.standardUncertaintyWatts() * part.standardUncertaintyWatts())
                .sum());
    }

    private static Accuracy accuracy(Bench bench, MeterQuantity quantity) throws EvaluationException {
        return bench.meterFor(quantity)
                .map(Meter::accuracy)
                .orElseThrow(
                        () -> new EvaluationException(
                                "The bench lists no meter for "
                                        + (quantity == MeterQuantity.OUTPUT_VOLTS ? "output volts" : "supply volts")
                                        + ", so no uncertainty can be stated. Add the instrument with its specification to the project."));
    }
}
