// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.ohmstead.model.Cable;
import org.ohmstead.model.CopperWire;
import org.ohmstead.model.SupplyLimits;

class CableLeadTest {
    private static final double FOUR_GAUGE = CopperWire.gaugeSquareMillimetres(4);

    private static CableLead lead(double squareMillimetres, double loopMetres) {
        return CableLead.of(new Cable(squareMillimetres, loopMetres, OptionalDouble.empty()), SupplyLimits.NONE);
    }

    private static double continuousAmps(CableLead lead, double ambientCelsius) {
        return assertInstanceOf(CableCurrent.Continuous.class, lead.continuous(ambientCelsius))
                .ampsRms();
    }

    private static CableHeating.Settled settled(CableLead lead, double amps, double ambientCelsius) {
        return assertInstanceOf(CableHeating.Settled.class, lead.settled(amps, ambientCelsius));
    }

    @Test
    void losesWhatOhmsLawSays() {
        // 4 AWG (ASTM B258), copper of IEC 60028, 5 m each way, 100 A, 20 degrees: 0.815171 V, 81.517 W.
        CableLead cable = lead(FOUR_GAUGE, 10);
        assertEquals(0.815171, cable.dropVolts(100, 20), 1e-6);
        assertEquals(81.517, cable.lossWatts(100, 20), 1e-3);
        assertEquals(0.815171 * 1.2161500, cable.dropVolts(100, 75), 1e-6);
    }

    @Test
    void takesTheMeasuredResistanceAsThatOfTwentyDegrees() {
        CableLead cable = CableLead.of(new Cable(16, 6, OptionalDouble.of(0.010)), SupplyLimits.NONE);
        assertEquals(0.010, cable.loopOhms(20), 0);
        assertEquals(0.010786, cable.loopOhms(40), 1e-12);
        assertTrue(cable.notes().stream().anyMatch(note -> note.contains("bad contact")));
        // A meter that reads 0 has not seen the cable.
        CableLead unseen = CableLead.of(new Cable(16, 6, OptionalDouble.of(0)), SupplyLimits.NONE);
        assertEquals(6.0 / 58 / 16, unseen.loopOhms(20), 1e-15);
    }

    /**
     * Churchill and Chu's formula worked by hand with the air of a textbook's table at 50 degrees (k 0.02735 W/(m K),
     * nu 1.798e-5 m2/s, Pr 0.7228): cylinder of 60 mm, 70 degrees in air of 30.
     */
    @Test
    void agreesWithAHandCalculationOfConvection() {
        double rayleigh = 9.81 / 323.15 * 40 * Math.pow(0.06, 3) / Math.pow(1.798e-5, 2) * 0.7228;
        double root =
                0.60 + 0.387 * Math.pow(rayleigh, 1.0 / 6) / Math.pow(1 + Math.pow(0.559 / 0.7228, 9.0 / 16), 8.0 / 27);
        double expected = 0.02735 / 0.06 * root * root;
        assertEquals(expected, CableCooling.convection(70, 30, 0.06), 0.02 * expected);
        // McAdams' Nu = 0.53 Ra^(1/4), steam pipe of 100 mm at 170 degrees in air of 30: 8.07 W/(m2 K). Correlations
        // agree within 12 %.
        assertEquals(8.07, CableCooling.convection(170, 30, 0.1), 0.12 * 8.07);
    }

    @Test
    void givesOffNothingToWarmerAir() {
        assertEquals(0, CableCooling.wattsPerMetre(20, 25, 0.01, 0.9), 0);
    }

    /**
     * Single PVC leads apart from one another in free air of 30 degrees, 70 degrees at the wire: the currents of the
     * third group of the table in DIN VDE 0298-4 (as it stood in DIN VDE 0100-523). Up to 35 mm2 the estimate is to
     * be within 10 % of them, above within what its note says.
     */
    @ParameterizedTest
    @CsvSource({
        "1.5, 24", "2.5, 32", "4, 42", "6, 54", "10, 73", "16, 98", "25, 129", "35, 158", "50, 198", "70, 245",
        "95, 292"
    })
    void comesNearThePublishedCurrents(double squareMillimetres, double amps) {
        CableLead cable = lead(squareMillimetres, 2);
        boolean thick = squareMillimetres > 35;
        assertEquals(amps, continuousAmps(cable, 30), (thick ? 0.16 : 0.10) * amps);
        assertEquals(thick, cable.notes().stream().anyMatch(note -> note.contains("16 %")));
    }

    @ParameterizedTest
    @ValueSource(doubles = {10, 60, 110, 150})
    void balancesHeatAgainstCooling(double amps) {
        CableLead cable = lead(FOUR_GAUGE, 10);
        CableHeating.Settled end = settled(cable, amps, 25);
        double watts = 10 * CableCooling.wattsPerMetre(end.surfaceCelsius(), 25, cable.outerMetres(), 0.9);
        assertEquals(watts, amps * amps * cable.loopOhms(end.conductorCelsius()), 1e-6 * watts);
        assertEquals(watts, end.lossWatts(), 1e-6 * watts);
        // Conduction through a cylinder's wall: q ln(D/d) / (2 pi k).
        double wire = 2e-3 * Math.sqrt(FOUR_GAUGE / 0.75 / Math.PI);
        double through = watts / 10 * Math.log(cable.outerMetres() / wire) / (2 * Math.PI * 0.17);
        assertEquals(through, end.conductorCelsius() - end.surfaceCelsius(), 1e-6 * through);
        assertEquals(end.lossWatts(), end.dropVolts() * amps, 1e-12 * watts);
    }

    @Test
    void isAtTheLimitWithTheContinuousCurrent() {
        CableLead cable = lead(16, 8);
        double amps = continuousAmps(cable, 35);
        assertEquals(70, settled(cable, amps, 35).conductorCelsius(), 1e-6);
        assertEquals(0, settled(cable, 0, 35).lossWatts(), 0);
        assertEquals(35, settled(cable, 0, 35).conductorCelsius(), 1e-9);
    }

    @Test
    void getsWarmerWithMoreCurrentWarmerAirAndThinnerWire() {
        double before = 25;
        for (double amps = 5; amps <= 150; amps += 5) {
            double now = settled(lead(16, 8), amps, 25).conductorCelsius();
            assertTrue(now > before, amps + " A");
            assertTrue(settled(lead(16, 8), amps, 30).conductorCelsius() > now);
            assertTrue(settled(lead(10, 8), Math.min(amps, 100), 25).conductorCelsius()
                    > settled(lead(16, 8), Math.min(amps, 100), 25).conductorCelsius());
            before = now;
        }
        assertTrue(continuousAmps(lead(16, 8).withMaterial(ConductorMaterial.COPPER_CLAD_ALUMINIUM), 25)
                < continuousAmps(lead(16, 8), 25));
    }

    /** Against a fourth-order Runge-Kutta walk in small steps. */
    @ParameterizedTest
    @ValueSource(doubles = {1.001, 1.05, 1.5, 3, 6})
    void reachesTheLimitWhenAFineIntegrationDoes(double overload) {
        CableLead cable = lead(FOUR_GAUGE, 10);
        double amps = overload * continuousAmps(cable, 25);
        double seconds = assertInstanceOf(CableDuration.Reaches.class, cable.untilLimit(amps, 30, 25))
                .seconds();
        double celsius = 30;
        int steps = 2000;
        double step = seconds / steps;
        for (int i = 0; i < steps; i++) {
            double one = slope(cable, amps, celsius);
            double two = slope(cable, amps, celsius + step / 2 * one);
            double three = slope(cable, amps, celsius + step / 2 * two);
            double four = slope(cable, amps, celsius + step * three);
            celsius += step / 6 * (one + 2 * two + 2 * three + four);
        }
        assertEquals(70, celsius, 1e-4);
    }

    private static double slope(CableLead cable, double amps, double conductorCelsius) {
        double low = 25;
        double high = conductorCelsius;
        double wire = 2e-3 * Math.sqrt(cable.squareMillimetres() / 0.75 / Math.PI);
        double wall = Math.log(cable.outerMetres() / wire) / (2 * Math.PI * 0.17);
        for (int i = 0; i < 60; i++) {
            double middle = (low + high) / 2;
            double inside = middle + wall * CableCooling.wattsPerMetre(middle, 25, cable.outerMetres(), 0.9);
            if (inside < conductorCelsius) {
                low = middle;
            } else {
                high = middle;
            }
        }
        double away = cable.loopMetres() * CableCooling.wattsPerMetre(low, 25, cable.outerMetres(), 0.9);
        return (cable.lossWatts(amps, conductorCelsius) - away) / cable.joulesPerKelvin();
    }

    @Test
    void heatsWithoutLossWhenTheOverloadIsShort() {
        // Adiabatic law with rising resistance: t = C / (I^2 R20 alpha) ln((1 + alpha dT2) / (1 + alpha dT1)), the
        // closed form behind IEC 60949.
        CableLead cable = lead(FOUR_GAUGE, 10);
        double amps = 8000;
        double seconds = assertInstanceOf(CableDuration.Reaches.class, cable.untilLimit(amps, 20, 20))
                .seconds();
        double alpha = 0.00393;
        double expected =
                cable.joulesPerKelvin() / (amps * amps * cable.loopOhms(20) * alpha) * Math.log(1 + alpha * 50);
        assertEquals(expected, seconds, 1e-3 * expected);
    }

    @Test
    void saysWhereThereIsNoLimit() {
        CableLead cable = lead(16, 8);
        CableDuration.Unlimited end = assertInstanceOf(CableDuration.Unlimited.class, cable.untilLimit(40, 25, 25));
        assertEquals(settled(cable, 40, 25).conductorCelsius(), end.settledCelsius(), 1e-9);
        assertInstanceOf(CableDuration.Unlimited.class, cable.untilLimit(continuousAmps(cable, 25), 25, 25));
    }

    @Test
    void storesTheHeatOfCopperAndInsulation() {
        // 10 m of 16 mm2: copper 8890 kg/m3 (IEC 60028) times 385 J/(kg K), insulation 1.7 MJ/(m3 K) between 5.212
        // and 7.212 mm.
        double insulation = Math.PI / 4 * (7.212e-3 * 7.212e-3 - 5.212e-3 * 5.212e-3) * 10 * 1.7e6;
        assertEquals(8890 * 385 * 16e-6 * 10 + insulation, lead(16, 10).joulesPerKelvin(), 0.5);
    }

    @Test
    void givesAChainThatIsNotBoldNearTheLimit() {
        CableLead cable = lead(16, 8);
        FosterChain chain = cable.chain(25);
        assertEquals(
                cable.joulesPerKelvin() * chain.kelvinPerWatt(),
                chain.stages().get(0).tauSeconds(),
                1e-9);
        double forEver = continuousAmps(cable, 25);
        for (double ratio = 0.05; ratio <= 1; ratio += 0.05) {
            double real = settled(cable, ratio * forEver, 25).conductorCelsius() - 25;
            double model = chain.kelvinPerWatt() * cable.chainWatts(ratio * forEver);
            assertTrue(model >= real - 1, ratio + ": " + model + " for " + real);
        }
        // And not so cautious as to be useless: at most 20 % of the current is given away.
        double allowed = Math.sqrt(45 / (chain.kelvinPerWatt() * cable.chainWatts(1)));
        assertTrue(allowed > 0.8 * forEver && allowed <= forEver, allowed + " of " + forEver);
    }

    @Test
    void fitsIntoAHeatModel() {
        CableLead cable = lead(16, 8);
        HeatModel model = new HeatModel.Builder()
                .chain(cable.point(), CableLead.ID, cable.chain(25))
                .build();
        double[] state = model.settled(new double[] {10});
        assertEquals(10 * cable.chain(25).kelvinPerWatt(), model.riseKelvin(0, state, new double[] {10}), 1e-9);
        assertEquals(70, model.points().get(0).limitCelsius().orElseThrow(), 0);
    }

    @Test
    void saysWhyThereIsNoAnswer() {
        CableLead cable = lead(1.5, 8);
        SupplyNoSolution melted = assertInstanceOf(SupplyNoSolution.class, cable.settled(500, 25));
        assertTrue(melted.reason().contains("400") && melted.remedy().contains("thicker"));
        SupplyNoSolution hot = assertInstanceOf(SupplyNoSolution.class, cable.continuous(80));
        assertTrue(hot.reason().contains("80.0") && hot.remedy().contains("cooler"), hot.reason());
        assertInstanceOf(SupplyNoSolution.class, cable.untilLimit(10, 25, 70));
        SupplyNoSolution already = assertInstanceOf(SupplyNoSolution.class, cable.untilLimit(10, 75, 25));
        assertTrue(already.remedy().contains("cool down"));
    }

    @Test
    void saysWhatItTookForGranted() {
        assertEquals(3, lead(16, 8).notes().size());
        SupplyLimits known = new SupplyLimits(
                false,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.of(105),
                OptionalDouble.of(0.009));
        CableLead cable = CableLead.of(new Cable(16, 8, OptionalDouble.empty()), known);
        assertEquals(0.009, cable.outerMetres(), 0);
        assertEquals(105, cable.limitCelsius(), 0);
        assertEquals(1, cable.notes().size());
        assertTrue(cable.withMaterial(ConductorMaterial.COPPER_CLAD_ALUMINIUM)
                .notes()
                .get(0)
                .contains("from memory"));
    }

    @Test
    void rejectsWhatCannotBe() {
        SupplyLimits thin = new SupplyLimits(
                false,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.of(0.004));
        Cable cable = new Cable(16, 8, OptionalDouble.empty());
        assertTrue(assertThrows(IllegalArgumentException.class, () -> CableLead.of(cable, thin))
                .getMessage()
                .contains("outerMetres"));
        assertThrows(IllegalArgumentException.class, () -> lead(16, 8).settled(-1, 25));
        assertThrows(IllegalArgumentException.class, () -> lead(16, 8).settled(1, 200));
        assertThrows(IllegalArgumentException.class, () -> lead(16, 8).chain(70));
    }
}
