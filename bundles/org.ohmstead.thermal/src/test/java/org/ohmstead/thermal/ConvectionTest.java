// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.model.SinkSize;

class ConvectionTest {
    // Textbook formulas c (dT/L)^(1/4), worked out with 30 digits.
    @ParameterizedTest
    @CsvSource({
        "50, 0.1, 6.71477, 6.24189, 2.78994",
        "40, 0.2, 5.34006, 4.96400, 2.21876",
        "60, 0.05, 8.35764, 7.76907, 3.47254"
    })
    void followsTheSimplifiedFormulas(double kelvin, double metres, double vertical, double up, double down) {
        assertEquals(vertical, Convection.verticalPlate(kelvin, metres), 5e-6);
        assertEquals(up, Convection.plateFacingUp(kelvin, metres), 5e-6);
        assertEquals(down, Convection.plateFacingDown(kelvin, metres), 5e-6);
        assertEquals(up, Convection.levelCylinder(kelvin, metres), 5e-6);
    }

    // The formula of Churchill and Chu for all Ra with tabulated air; the simplified one agrees with it within about 10
    // %.
    @ParameterizedTest
    @CsvSource({"50, 0.1, 6.36", "40, 0.2, 5.42", "60, 0.05, 7.61"})
    void agreesWithTheFormulaForAllFlows(double kelvin, double metres, double tabulated) {
        double all = Convection.verticalPlateAllFlows(25 + kelvin, 25, metres);
        assertEquals(tabulated, all, 0.02 * tabulated);
        assertEquals(all, Convection.verticalPlate(kelvin, metres), 0.1 * all);
    }

    // e sigma (T1² + T2²)(T1 + T2).
    @ParameterizedTest
    @CsvSource({"0.9, 75, 25, 6.929761", "0.05, 75, 25, 0.384987", "0.85, 100, 40, 7.849635"})
    void radiatesByTheLawOfStefanAndBoltzmann(double emissivity, double surface, double around, double expected) {
        assertEquals(expected, Convection.radiation(emissivity, surface, around), 1e-6 * expected);
    }

    // tanh(mL)/(mL) with mL = 5.477226 x 0.03.
    @Test
    void knowsTheEfficiencyOfAFin() {
        assertEquals(0.991096, Convection.finEfficiency(6, 200, 0.002, 0.03), 1e-6);
        assertEquals(1, Convection.finEfficiency(6, 200, 0.002, 0), 0);
    }

    // An exercise of heat transfer textbooks, its figures from memory: 18 cm high fins at 80 °C in air of 30 °C: best
    // spacing 7.5 mm, there 4.83 W/(m² K). Tables of the conductivity of air differ by some 2 %.
    @Test
    void knowsTheBestSpacingOfFins() {
        double spacing = Convection.bestSpacingMetres(80, 30, 0.18);
        assertEquals(0.0075, spacing, 0.00006);
        assertEquals(4.83, Convection.channel(80, 30, spacing, 0.18), 0.03 * 4.83);
    }

    // Limits of Bar-Cohen and Rohsenow: Nu = El/24 in narrow channels; in wide ones (1/sqrt 2.873) El^(1/4), whatever
    // the spacing.
    @Test
    void chokesNarrowChannelsAndLeavesWideOnesAlone() {
        double narrow = Convection.channel(60, 25, 0.0005, 0.1);
        assertEquals(8 * narrow, Convection.channel(60, 25, 0.001, 0.1), 0.02 * 8 * narrow);
        double wide = Convection.channel(60, 25, 0.1, 0.1);
        assertEquals(wide, Convection.channel(60, 25, 0.2, 0.1), 1e-3 * wide);
        assertEquals(wide, Convection.verticalPlate(35, 0.1), 0.1 * wide);
    }

    // By hand: a plate of 0.2 x 0.2 m, both faces, 75 °C in 25 °C, e = 0.9: h = 12.576183, 50.304734 W.
    @Test
    void findsTheTemperatureAtWhichAPlateCarriesItsPowerOff() {
        SinkSize plate = new SinkSize(0.2, 0.2, 0, 0, 0.002, 0.9);
        assertEquals(50.304734, SinkEstimate.watts(plate, 50, 25), 1e-5);
        SinkEstimate estimate = SinkEstimate.of(plate, 50.304734, 25, false);
        assertTrue(estimate.kelvinPerWatt().low() < 0.993942
                && estimate.kelvinPerWatt().high() > 0.993942);
        assertEquals(50.304734, estimate.convectionWatts() + estimate.radiationWatts(), 1e-9);
        assertEquals(
                1.1, estimate.kelvinPerWatt().high() / estimate.kelvinPerWatt().low(), 0.06);
    }

    // The same exercise: 12 cm wide, 14 fins of 1 mm standing out 2.4 cm carry off 34.2 W (without radiation).
    @Test
    void agreesWithATextbookSink() {
        SinkSize sink = new SinkSize(0.12, 0.18, 14, 0.024, 0.001, 0);
        assertEquals(34.2, SinkEstimate.watts(sink, 50, 30), 0.1 * 34.2);
    }

    @Test
    void isCoolerAnodisedAndWithAFan() {
        SinkSize bare = new SinkSize(0.2, 0.15, 12, 0.03, 0.002, 0.05);
        SinkSize black = new SinkSize(0.2, 0.15, 12, 0.03, 0.002, 0.9);
        double bareKelvin = SinkEstimate.of(bare, 60, 25, false).kelvinPerWatt().middle();
        double blackKelvin =
                SinkEstimate.of(black, 60, 25, false).kelvinPerWatt().middle();
        assertTrue(blackKelvin < 0.9 * bareKelvin, blackKelvin + " against " + bareKelvin);
        SinkEstimate fan = SinkEstimate.of(black, 60, 25, true);
        assertTrue(fan.kelvinPerWatt().high() < blackKelvin);
        assertTrue(fan.remarks().stream().anyMatch(remark -> remark.contains("common practice, no source")));
        assertTrue(SinkEstimate.of(black, 10, 25, false).kelvinPerWatt().middle() > blackKelvin);
    }

    @Test
    void saysWhatCannotBe() {
        SinkSize stamp = new SinkSize(0.01, 0.01, 0, 0, 0.001, 0.9);
        IllegalArgumentException hot =
                assertThrows(IllegalArgumentException.class, () -> SinkEstimate.of(stamp, 500, 25, false));
        assertTrue(hot.getMessage().contains("more than 600 K"), hot.getMessage());
        SinkSize full = new SinkSize(0.1, 0.1, 50, 0.02, 0.002, 0.9);
        IllegalArgumentException gap =
                assertThrows(IllegalArgumentException.class, () -> SinkEstimate.of(full, 5, 25, false));
        assertTrue(gap.getMessage().contains("no gap"), gap.getMessage());
    }
}
