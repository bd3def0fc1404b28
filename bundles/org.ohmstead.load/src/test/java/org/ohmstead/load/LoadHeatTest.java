// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.model.PartTraits;

class LoadHeatTest {
    private static final LoadHeat.Air AIR = LoadHeat.Air.of(25);

    private static Network part(double ohms, double perKelvin, double elementKelvinPerWatt) {
        return Network.of(new Resistor(
                "A",
                ohms,
                0.05,
                Optional.of(new PowerRating(100, 25, 275)),
                PartTraits.NONE
                        .withTemperatureCoefficientPerKelvin(OptionalDouble.of(perKelvin))
                        .withElementKelvinPerWatt(OptionalDouble.of(elementKelvinPerWatt))));
    }

    @Test
    void heatsItselfAtConstantVoltageAsTheQuadraticEquationSays() {
        // R = (R0 + sqrt(R0^2 + 4 R0 alpha Rth V^2)) / 2 with R0 = 4, alpha = 300e-6, Rth = 1.5, V = 20.
        assertEquals(4.1725561, LoadHeat.hotOhmsAtVolts(4, 300e-6, 1.5, 20).orElseThrow(), 1e-7);
        LoadHeat heat = LoadHeat.atVolts(part(4, 300e-6, 1.5), 20, AIR).orElseThrow();
        assertEquals(4.1725561, heat.hotOhms(), 1e-7);
        assertEquals(95.864499, heat.powerWatts(), 1e-6);
        assertEquals(25 + 143.796749, heat.parts().get(0).elementCelsius().orElseThrow(), 1e-6);
        assertEquals(20, heat.voltsRms(), 1e-10);
        assertEquals(95.864499 / 100 - 1, heat.powerChangeRatio(), 1e-8);
        assertEquals(100 / 95.864499 - 1, heat.overstatementRatio(), 1e-8);
        assertEquals(100 / 95.864499, heat.headroomRatio().orElseThrow(), 1e-7);
    }

    @Test
    void heatsItselfAtConstantCurrentAsTheLinearEquationSays() {
        // R0 / (1 - alpha R0 Rth I^2) at 5 A.
        assertEquals(4.1884817, LoadHeat.hotOhmsAtAmps(4, 300e-6, 1.5, 5).orElseThrow(), 1e-7);
        LoadHeat heat = LoadHeat.atAmps(part(4, 300e-6, 1.5), 5, AIR).orElseThrow();
        assertEquals(4.1884817, heat.hotOhms(), 1e-7);
        assertEquals(5, heat.ampsRms(), 1e-11);
    }

    /** Change of the power at constant voltage for a rise of 150 K: 1 / (1 + 150 alpha) - 1. */
    @ParameterizedTest
    @CsvSource({"50e-6, 1.0075, -.00744417", "100e-6, 1.015, -.01477833", "260e-6, 1.039, -.03753609"})
    void statesThePowerErrorOfAHotLoad(double perKelvin, double factor, double change) {
        LoadHeat heat = LoadHeat.atWatts(part(4, perKelvin, 1.5), 100, AIR).orElseThrow();
        assertEquals(4 * factor, heat.hotOhms(), 1e-9);
        assertEquals(change, heat.powerChangeRatio(), 1e-8);
    }

    @ParameterizedTest
    @CsvSource({"0.02, 5, 40", "0.1, 8, 100", "-300e-6, 1.5, 20", "-0.004, 0.1, 10"})
    void settlesHoweverStrongTheCoefficient(double perKelvin, double kelvinPerWatt, double volts) {
        double expected =
                LoadHeat.hotOhmsAtVolts(4, perKelvin, kelvinPerWatt, volts).orElseThrow();
        LoadHeat heat =
                LoadHeat.atVolts(part(4, perKelvin, kelvinPerWatt), volts, AIR).orElseThrow();
        assertEquals(expected, heat.hotOhms(), 1e-9 * expected);
    }

    @Test
    void saysWhenItNeverSettles() {
        // The root R0^2 + 4 R0 alpha Rth V^2 is below 0; at constant current 1 - alpha R0 Rth I^2 is.
        assertTrue(LoadHeat.hotOhmsAtVolts(4, -0.01, 2, 20).isEmpty());
        assertTrue(LoadHeat.atVolts(part(4, -0.01, 2), 20, AIR).isEmpty());
        assertTrue(LoadHeat.hotOhmsAtAmps(4, 0.01, 2, 5).isEmpty());
        assertTrue(LoadHeat.atAmps(part(4, 0.01, 2), 5, AIR).isEmpty());
    }

    @Test
    void settlesNetworksWhereEveryResistorAgreesWithItsOwnPower() {
        Random random = new Random(5);
        for (int trial = 0; trial < 100; trial++) {
            Network network = RandomNetworks.mapped(
                    RandomNetworks.next(random, 1 + random.nextInt(8)),
                    resistor -> new Resistor(
                            resistor.id(),
                            resistor.ohms(),
                            0.05,
                            Optional.empty(),
                            PartTraits.NONE
                                    .withTemperatureCoefficientPerKelvin(
                                            OptionalDouble.of((random.nextDouble() - 0.1) * 1e-3))
                                    .withSinkKelvinPerWatt(OptionalDouble.of(0.1 + random.nextDouble()))
                                    .withElementKelvinPerWatt(OptionalDouble.of(0.1 + random.nextDouble()))));
            LoadHeat heat =
                    LoadHeat.atVolts(network, 15, new LoadHeat.Air(35, 20)).orElseThrow();
            double power = 0;
            for (PartHeat part : heat.parts()) {
                PartTraits traits = part.resistor().traits();
                double caseCelsius =
                        35 + part.powerWatts() * traits.sinkKelvinPerWatt().orElseThrow();
                assertEquals(caseCelsius, part.caseCelsius().orElseThrow(), 1e-9 * caseCelsius);
                double element = caseCelsius
                        + part.powerWatts() * traits.elementKelvinPerWatt().orElseThrow();
                assertEquals(element, part.elementCelsius().orElseThrow(), 1e-9 * element);
                double ohms = part.resistor().ohms()
                        * (1 + traits.temperatureCoefficientPerKelvin().orElseThrow() * (element - 20));
                assertEquals(ohms, part.hotOhms(), 1e-9 * ohms);
                power += part.powerWatts();
            }
            assertEquals(225 / heat.hotOhms(), power, 1e-9 * power);
            assertTrue(heat.headroomRatio().isEmpty());
        }
    }

    @Test
    void showsWhatTheDeratingLineImplies() {
        // At the rated power and the rated air the hottest spot is at the end of the line, 275 degrees; at half of it
        // halfway there.
        Network network =
                Network.of(new Resistor("A", 4, 0.05, Optional.of(new PowerRating(100, 25, 275)), PartTraits.NONE));
        PartHeat full =
                LoadHeat.atWatts(network, 100, AIR).orElseThrow().parts().get(0);
        assertEquals(275, full.lineCelsius().orElseThrow(), 1e-9);
        assertEquals(275, full.surfaceCelsius().orElseThrow(), 1e-9);
        LoadHeat half = LoadHeat.atWatts(network, 50, AIR).orElseThrow();
        assertEquals(150, half.hottestSurfaceCelsius().orElseThrow(), 1e-9);
        assertTrue(full.caseCelsius().isEmpty());
        assertTrue(full.elementCelsius().isEmpty());
        assertEquals(1, full.headroomRatio().orElseThrow(), 1e-12);
    }

    @Test
    void namesTheResistorWithTheLeastHeadroom() {
        Network network = Network.parallel(List.of(part(8, 1e-4, 1), part(3, 1e-4, 1), part(10, 1e-4, 1)));
        LoadHeat heat = LoadHeat.atWatts(network, 120, AIR).orElseThrow();
        assertEquals(1, heat.limitingIndex().orElseThrow());
        assertThrows(IllegalArgumentException.class, () -> LoadHeat.atWatts(network, 0, AIR));
    }
}
