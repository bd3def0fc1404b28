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
import org.ohmstead.model.SinkSize;

class AmplifierBodyTest {
    private static AmplifierHeat facts(Optional<Range> resistance, Optional<Range> capacity, Optional<SinkSize> size) {
        return new AmplifierHeat(
                OutputClass.CLASS_AB,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.empty(),
                Optional.empty(),
                resistance,
                capacity,
                Optional.of(new Range(0.1, 0.2)),
                OptionalDouble.of(150),
                OptionalDouble.of(80),
                size);
    }

    // Closed form of one body, and Ohm's law of heat for the junction above it.
    @Test
    void warmsAsOneBodyWithTheJunctionAboveIt() {
        AmplifierBody body = AmplifierBody.of(
                        facts(Optional.of(new Range(1, 1.4)), Optional.of(new Range(400, 600)), Optional.empty()),
                        50,
                        25,
                        false)
                .orElseThrow();
        HeatModel model = body.middle();
        double[] watts = {50};
        double[] state = model.cold();
        model.advance(state, watts, 600);
        int outside = model.pointIndex(AmplifierBody.CASE);
        int inside = model.pointIndex(AmplifierBody.JUNCTION);
        assertEquals(62.927234 - 25, model.riseKelvin(outside, state, watts), 1e-6);
        assertEquals(62.927234 - 25 + 7.5, model.riseKelvin(inside, state, watts), 1e-6);
        HeatModel hottest = body.hottest();
        assertEquals(1.4 * 400, hottest.tauSeconds(0), 1e-9);
        assertEquals(70 + 10, hottest.settledCelsius(inside, watts, 0), 1e-9);
        assertTrue(body.remarks().isEmpty());
    }

    // Mass times specific heat: 0.2 x 0.15 m with 10 fins of 30 x 2 mm is 90 cm³ of fins and 90 to 240 cm³ of base,
    // 2.43 J/(K cm³).
    @Test
    void estimatesFromTheSizeAndSaysSo() {
        SinkSize size = new SinkSize(0.2, 0.15, 10, 0.03, 0.002, 0.9);
        AmplifierBody body = AmplifierBody.of(
                        facts(Optional.empty(), Optional.empty(), Optional.of(size)), 40, 25, false)
                .orElseThrow();
        assertEquals(180 * 2.43, body.caseJoulesPerKelvin().low(), 1e-6);
        assertEquals(330 * 2.43, body.caseJoulesPerKelvin().high(), 1e-6);
        assertEquals(SinkEstimate.of(size, 40, 25, false).kelvinPerWatt(), body.caseKelvinPerWatt());
        assertEquals(
                2,
                body.remarks().stream()
                        .filter(remark -> remark.contains("estimated from its size"))
                        .count());
    }

    @Test
    void isNotThereWhenNothingIsKnown() {
        assertTrue(AmplifierBody.of(AmplifierHeat.NONE, 40, 25, false).isEmpty());
        assertTrue(AmplifierBody.of(facts(Optional.of(Range.of(1)), Optional.empty(), Optional.empty()), 40, 25, false)
                .isEmpty());
    }
}
