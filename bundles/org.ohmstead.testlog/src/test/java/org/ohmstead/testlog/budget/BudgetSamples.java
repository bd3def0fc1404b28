// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.budget;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.model.BudgetInput;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.CombinedParts;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.PartCorrelation;
import org.ohmstead.model.PartShape;
import org.ohmstead.model.UncertaintyPart;

/** Channels with a budget: 20 V across 4 ohms at 14.4 V of supply, so 100 W. */
final class BudgetSamples {
    static final double VOLTS = 20;
    static final double OHMS = 4;
    static final double SUPPLY = 14.4;
    static final double WATTS = 100;

    private BudgetSamples() {}

    /** A part whose input has a standard uncertainty, in the unit of the input. */
    static UncertaintyPart part(String source, BudgetInput input, PartShape shape, double standardUncertainty) {
        double sensitivity =
                switch (input) {
                    case OUTPUT_VOLTS -> 2 * WATTS / VOLTS;
                    case LOAD_OHMS -> WATTS / OHMS;
                    case SUPPLY_VOLTS -> 2 * WATTS / SUPPLY;
                    case POWER_WATTS -> 1;
                };
        return new UncertaintyPart(
                source, sensitivity * standardUncertainty, true, shape, OptionalDouble.empty(), Optional.of(input));
    }

    static UncertaintyPart repeatability(double watts, double degreesOfFreedom) {
        return new UncertaintyPart(
                "repeatability of the bench",
                watts,
                false,
                PartShape.NORMAL,
                OptionalDouble.of(degreesOfFreedom),
                Optional.of(BudgetInput.POWER_WATTS));
    }

    static ChannelReading channel(List<UncertaintyPart> parts, PartCorrelation... correlations) {
        return channel(new CombinedParts(parts, List.of(correlations)).watts(), parts, correlations);
    }

    static ChannelReading channel(double loggedWatts, List<UncertaintyPart> parts, PartCorrelation... correlations) {
        return new ChannelReading(
                "A",
                EndPointOutcome.REACHED,
                OHMS,
                WATTS,
                loggedWatts,
                VOLTS,
                1000,
                0.01,
                SUPPLY,
                OptionalDouble.empty(),
                parts,
                List.of(),
                List.of(),
                List.of(correlations));
    }

    /** A channel of the demo's reading at 14.4 V into 4 ohms as version 0.1.0 of the program logged it. */
    static ChannelReading logged() {
        return new ChannelReading(
                "A",
                EndPointOutcome.REACHED,
                4,
                98.2597683920902,
                0.503524403429649,
                19.825213077502113,
                1000.0000177343768,
                0.01,
                14.399352673587938,
                OptionalDouble.of(23.183670071437405),
                List.of(
                        new UncertaintyPart("output volts (meter)", 0.48245766012106234, true),
                        new UncertaintyPart("load resistance", 0.09825976839209019, true),
                        new UncertaintyPart("supply volts (meter)", 0.04995291582072847, true),
                        new UncertaintyPart("interpolation between levels", 0.09285017585461751, false)),
                List.of(),
                List.of());
    }
}
