// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class CombinedPartsTest {
    private static final double EXACT = 1e-12;

    private static UncertaintyPart part(String source, double watts, boolean shared, BudgetInput input) {
        return new UncertaintyPart(source, watts, shared, PartShape.NORMAL, OptionalDouble.empty(), Optional.of(input));
    }

    private static final List<UncertaintyPart> PARTS = List.of(
            part("output", 3, true, BudgetInput.OUTPUT_VOLTS),
            part("supply", 2, true, BudgetInput.SUPPLY_VOLTS),
            part("load", 1, true, BudgetInput.LOAD_OHMS),
            part("own", 4, false, BudgetInput.POWER_WATTS),
            new UncertaintyPart("old", 5, false));

    @Test
    void uncorrelatedPartsAddInSquares() {
        // GUM 5.1.2: 9 + 4 + 1 + 16 + 25.
        assertEquals(Math.sqrt(55), new CombinedParts(PARTS, List.of()).watts(), EXACT);
        assertEquals(0, new CombinedParts(List.of(), List.of()).watts());
    }

    @Test
    void correlationsCountWithTheDirectionOfTheirInputs() {
        // GUM 5.2.2, eq. 16: more supply volts mean less power at the volts stated, more output volts more power.
        assertEquals(
                Math.sqrt(55 - 2 * 3 * 2),
                new CombinedParts(PARTS, List.of(new PartCorrelation("output", "supply", 1))).watts(),
                EXACT);
        assertEquals(
                Math.sqrt(55 + 2 * 2 * 1 * 0.5),
                new CombinedParts(PARTS, List.of(new PartCorrelation("load", "supply", 0.5))).watts(),
                EXACT);
        assertEquals(
                Math.sqrt(55 + 2 * 4 * 5),
                new CombinedParts(PARTS, List.of(new PartCorrelation("own", "old", 1))).watts(),
                EXACT);
        assertEquals(
                Math.sqrt(55), new CombinedParts(PARTS, List.of(new PartCorrelation("own", "gone", 1))).watts(), EXACT);
    }

    @Test
    void sharedPartsAreApartFromTheOthers() {
        ChannelReading channel = new ChannelReading(
                "A",
                EndPointOutcome.REACHED,
                4,
                100,
                Math.sqrt(43),
                20,
                1000,
                0.01,
                14.4,
                OptionalDouble.empty(),
                PARTS,
                List.of(),
                List.of(),
                List.of(new PartCorrelation("output", "supply", 1)));
        assertEquals(Math.sqrt(14 - 12), CombinedParts.of(channel).watts(true), EXACT);
        assertEquals(Math.sqrt(41), CombinedParts.of(channel).watts(false), EXACT);
        assertEquals(
                channel.standardUncertaintyWatts(), CombinedParts.of(channel).watts(), EXACT);
    }
}
