// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.ohmstead.load.Network;
import org.ohmstead.load.NetworkImpedance;
import org.ohmstead.load.PowerRating;
import org.ohmstead.load.Resistor;
import org.ohmstead.model.PartTraits;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.PlotPoint;

class PlotsTest {
    private static final double SAME = 1e-9;

    private static Network resistor(double ohms, double watts, OptionalDouble henries) {
        return Network.of(new Resistor(
                ohms + "R",
                ohms,
                0.01,
                Optional.of(new PowerRating(watts, 25, 250)),
                PartTraits.NONE.withInductanceHenries(henries)));
    }

    private static FoundNetwork found(double ohms, double watts) {
        return FoundNetwork.of(resistor(ohms, watts, OptionalDouble.empty()), Target.USUAL.withOhms(4), false);
    }

    @Test
    void placesNetworksByErrorAndPower() {
        FoundNetwork exact = found(4, 100);
        FoundNetwork off = found(4.04, 300);
        FoundNetwork pair = FoundNetwork.of(
                Network.series(
                        List.of(resistor(2, 50, OptionalDouble.empty()), resistor(2, 50, OptionalDouble.empty()))),
                Target.USUAL.withOhms(4),
                true);
        ErrorPowerPlot plot = ErrorPowerPlot.of(List.of(exact, off, pair), Optional.of(off), Target.USUAL)
                .orElseThrow();
        assertEquals(
                List.of("1 part", "2 parts"),
                plot.plot().series().stream().map(series -> series.name()).toList());
        PlotPoint one = plot.plot().series().get(0).points().get(0);
        assertEquals(0.001, one.x(), SAME);
        assertEquals(100, one.y(), SAME);
        assertEquals(1, plot.plot().series().get(0).points().get(1).x(), SAME);
        assertEquals(Optional.of(off), plot.networkOf("1 part", 1));
        assertEquals(Optional.of(pair), plot.networkOf("2 parts", 0));
        assertEquals(Optional.empty(), plot.networkOf("2 parts", 1));
    }

    @Test
    void withoutRatingsThereIsNothingToPlace() {
        FoundNetwork unrated = FoundNetwork.of(Network.of(Resistor.of("4R", 4, 0.05)), Target.USUAL, false);
        assertEquals(Optional.empty(), ErrorPowerPlot.of(List.of(unrated), Optional.empty(), Target.USUAL));
    }

    /** |Z| = sqrt(R^2 + (2 pi f L)^2): 3 ohm with 4 ohm of reactance at 20 kHz is 5 ohm, 53.1 degrees. */
    @Test
    void drawsTheMagnitudeOverTheAudioBand() {
        double henries = 4 / (2 * Math.PI * 20_000);
        Network network = resistor(3, 100, OptionalDouble.of(henries));
        NetworkImpedance impedance = NetworkImpedance.of(network);
        Plot plot = ImpedancePlot.magnitude(impedance);
        List<PlotPoint> points = plot.series().get(0).points();
        assertEquals(20, points.get(0).x(), SAME);
        assertEquals(3, points.get(0).y(), 1e-5);
        assertEquals(20_000, points.get(points.size() - 1).x(), 1e-6);
        assertEquals(5, points.get(points.size() - 1).y(), SAME);
        List<PlotPoint> phases = ImpedancePlot.phase(impedance).series().get(0).points();
        assertEquals(
                Math.toDegrees(Math.atan2(4, 3)), phases.get(phases.size() - 1).y(), SAME);
        assertEquals(Math.toDegrees(Math.atan2(4e-3, 3)), phases.get(0).y(), SAME);
        String note = ImpedancePlot.note(impedance, false);
        assertTrue(note.contains("At 20 kHz 5.000 \u03a9 at 53.1\u00b0"), note);
        // The power is 1 % off where (2 pi f L / R)^2 is 0.01 / 0.99: at 20 kHz * 3 / 4 * 0.1005 = 1.508 kHz.
        assertTrue(note.contains("up to 1.51 kHz"), note);
    }

    /** IEC 60028: copper has 1/58 ohm square millimetre per metre; 14.5 m there and back of 5 mm2 are 0.1 ohm. */
    @Test
    void leadsAddToTheLoadAndToWhatAMeterReads() {
        LeadPair leads = new LeadPair(5, 14.5);
        assertEquals(0.1, leads.ohms(), SAME);
        // A pair of round wires has mu0 l / pi (arcosh(d / 2 r) + 1/4); with d = 4 r, arcosh 2 is ln(2 + sqrt 3).
        assertEquals(4e-7 * 14.5 * (Math.log(2 + Math.sqrt(3)) + 0.25), leads.henries(), 1e-15);
        NetworkImpedance seen = leads.before(resistor(4, 100, OptionalDouble.empty()));
        double reactance = 2 * Math.PI * 20_000 * leads.henries();
        List<PlotPoint> points = ImpedancePlot.magnitude(seen).series().get(0).points();
        assertEquals(Math.hypot(4.1, reactance), points.get(points.size() - 1).y(), SAME);
        String words = leads.words(4);
        assertTrue(words.contains("reads 4.1 \u03a9;"), words);
        // (4.1 / 4)^2 is 1.050625.
        assertTrue(words.contains("4 \u03a9 is 5.1 % more than the load gets."), words);
        assertTrue(ImpedancePlot.note(seen, true).contains("R with the leads"), ImpedancePlot.note(seen, true));
    }

    /** ASTM B258: AWG 10 has 5.261 mm2, 4/0 has 107.2 mm2. */
    @ParameterizedTest
    @CsvSource({"2.5, 2.5", "'1,5 mm2', 1.5", "4 mm\u00b2, 4", "AWG 10, 5.261", "10awg, 5.261", "awg 4/0, 107.2"})
    void readsCrossSections(String text, double squareMillimetres) {
        assertEquals(squareMillimetres, LeadPair.readSquareMillimetres(text).orElseThrow(), 2e-4 * squareMillimetres);
    }

    @ParameterizedTest
    @ValueSource(strings = {"thick", "0", "-2", "900", "AWG 41", "2.5 m"})
    void refusesWhatIsNoCrossSection(String text) {
        assertThrows(IllegalArgumentException.class, () -> LeadPair.readSquareMillimetres(text));
    }

    @Test
    void theBranchHasTheInductanceOfTheNetwork() {
        // In parallel two equal ones halve, in series they add.
        Network one = resistor(4, 100, OptionalDouble.of(10e-6));
        assertEquals(5e-6, LoadUse.inductanceHenries(Network.parallel(List.of(one, one))), 1e-12);
        assertEquals(20e-6, LoadUse.inductanceHenries(Network.series(List.of(one, one))), 1e-12);
    }
}
