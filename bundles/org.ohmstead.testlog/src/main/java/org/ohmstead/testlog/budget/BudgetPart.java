// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.budget;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import org.ohmstead.metrology.Contribution;
import org.ohmstead.model.BudgetInput;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.PartShape;
import org.ohmstead.model.UncertaintyPart;

/**
 * A part of a reading with its place in the model of the power.
 *
 * @param name unique within the reading
 * @param input which input it is about
 * @param shape how its values are distributed
 * @param degreesOfFreedom empty when its standard uncertainty is taken as exactly known
 * @param sensitivity dP/dx in watts for each unit of the input
 * @param watts its share of the power's standard uncertainty, at least 0
 * @param shared whether other readings have the same error
 */
record BudgetPart(
        String name,
        BudgetInput input,
        PartShape shape,
        OptionalDouble degreesOfFreedom,
        double sensitivity,
        double watts,
        boolean shared) {
    static final String WHOLE = "stated standard uncertainty";

    /** Returns the parts of a channel; a single one for a channel that states only its standard uncertainty. */
    static List<BudgetPart> of(ChannelReading channel) {
        if (channel.uncertaintyParts().isEmpty()) {
            return List.of(new BudgetPart(
                    WHOLE,
                    BudgetInput.POWER_WATTS,
                    PartShape.NORMAL,
                    OptionalDouble.empty(),
                    1,
                    channel.standardUncertaintyWatts(),
                    true));
        }
        List<BudgetPart> parts = new ArrayList<>();
        Set<String> names = new HashSet<>();
        for (UncertaintyPart part : channel.uncertaintyParts()) {
            String name = part.source();
            for (int copy = 2; !names.add(name); copy++) {
                name = part.source() + " (" + copy + ")";
            }
            BudgetInput input = part.input().orElseGet(() -> inputOf(part.source()));
            double sensitivity = sensitivity(channel, input);
            parts.add(new BudgetPart(
                    name,
                    sensitivity == 0 ? BudgetInput.POWER_WATTS : input,
                    part.shape(),
                    part.degreesOfFreedom(),
                    sensitivity == 0 ? 1 : sensitivity,
                    part.standardUncertaintyWatts(),
                    part.shared()));
        }
        return List.copyOf(parts);
    }

    /** Readings from before inputs were logged have one part for each meter; their names say which. */
    static BudgetInput inputOf(String source) {
        if (source.startsWith("output volts")) {
            return BudgetInput.OUTPUT_VOLTS;
        }
        if (source.startsWith("supply volts")) {
            return BudgetInput.SUPPLY_VOLTS;
        }
        return source.startsWith("load resistance") ? BudgetInput.LOAD_OHMS : BudgetInput.POWER_WATTS;
    }

    private static double sensitivity(ChannelReading channel, BudgetInput input) {
        double powerWatts = channel.powerWatts();
        return switch (input) {
            case OUTPUT_VOLTS -> channel.outputVoltsRms() > 0 ? 2 * powerWatts / channel.outputVoltsRms() : 0;
            case LOAD_OHMS -> -powerWatts / channel.loadOhms();
            case SUPPLY_VOLTS -> -2 * powerWatts / channel.supplyVolts();
            case POWER_WATTS -> 1;
        };
    }

    /** Returns the standard uncertainty of the input in the input's unit. */
    double inputUncertainty() {
        return watts / Math.abs(sensitivity);
    }

    Contribution contribution() {
        return new Contribution(
                name, sensitivity, inputUncertainty(), degreesOfFreedom.orElse(Double.POSITIVE_INFINITY));
    }
}
