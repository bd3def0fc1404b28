// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.model.Mounting;
import org.ohmstead.model.Part;
import org.ohmstead.model.PartShare;
import org.ohmstead.model.PartTraits;
import org.ohmstead.model.PulseRule;
import org.ohmstead.model.Stimulus;

/**
 * The steady temperatures are those closed forms by which the load's own check judges a hot network, written out here
 * once more.
 */
class LoadSideTest {
    private static final PulseRule MIL_RULE = new PulseRule(5, 5);

    private static Part part(double ratedWatts, PartTraits traits) {
        return new Part("R1", 4, 0.05, ratedWatts, 25, 250, Mounting.FREE_AIR, 1, traits);
    }

    private static PartTraits traits(double sinkKelvinPerWatt, double elementKelvinPerWatt) {
        return PartTraits.NONE
                .withSinkKelvinPerWatt(OptionalDouble.of(sinkKelvinPerWatt))
                .withElementKelvinPerWatt(OptionalDouble.of(elementKelvinPerWatt))
                .withPulseRule(Optional.of(MIL_RULE));
    }

    private static PartHeating heating(Part part, LoadSideDrive drive, double ambientCelsius) {
        PartShare share = new PartShare(part.id(), part.ohms(), 1, Optional.of(part));
        return LoadSide.of(List.of(share), drive, ambientCelsius).parts().get(0);
    }

    private static PartHeating.PlaceHeat at(PartHeating heating, PartHeatingPoint.Place place) {
        return heating.place(place).orElseThrow();
    }

    @Test
    void allowsWhatTheDeratingLineAllowsOnASink() {
        // Self-consistent sink (derating line as in MIL-PRF-39009): P = k (T0 - Ta) / (1 + k R), 100 W, 25 to 250,
        // air 30, 1.2 K/W:
        // 63.768116 W, case 106.521739.
        Part part = part(100, PartTraits.NONE.withSinkKelvinPerWatt(OptionalDouble.of(1.2)));
        PartHeating heating = heating(part, new LoadSideDrive.Steady(63.768116), 30);
        assertEquals(63.768116, heating.allowedWatts().orElseThrow(), 1e-6);
        assertEquals(106.521739, at(heating, PartHeatingPoint.Place.CASE).averageCelsius(), 1e-6);
        // There the hottest spot is where the line ends, and at its limit.
        PartHeating.PlaceHeat spot = at(heating, PartHeatingPoint.Place.RATING);
        assertEquals(250, spot.averageCelsius(), 1e-5);
        assertEquals(250, spot.where().point().limitCelsius().orElseThrow(), 1e-9);
    }

    /** Straight derating lines, 25 to 250 (MIL-PRF-39009), 25 to 275 and 70 to 350 degrees: (T0 - T) / (T0 - Tr), at most 1. */
    @ParameterizedTest
    @CsvSource({
        "20, 1, 1, 1",
        "25, 1, 1, 1",
        "40, .933333, .940000, 1",
        "60, .844444, .860000, 1",
        "85, .733333, .760000, .946429",
        "100, .666667, .700000, .892857"
    })
    void allowsWhatTheDeratingLineAllowsInAir(double ambientCelsius, double first, double second, double third) {
        holdsJustUpTo(first, part(50, PartTraits.NONE), ambientCelsius);
        Part hotter = part(50, PartTraits.NONE).withZeroPowerCelsius(275);
        holdsJustUpTo(second, hotter, ambientCelsius);
        Part hottest = part(50, PartTraits.NONE).withZeroPowerCelsius(350).withRatedToCelsius(70);
        holdsJustUpTo(third, hottest, ambientCelsius);
    }

    private static void holdsJustUpTo(double ratio, Part part, double ambientCelsius) {
        double allowed = new PartHeatingModel(part, ambientCelsius).allowedWatts();
        assertEquals(50 * ratio, allowed, 50 * 1e-6);
        assertTrue(
                heating(part, new LoadSideDrive.Steady(allowed), ambientCelsius).holds());
        assertFalse(heating(part, new LoadSideDrive.Steady(1.001 * allowed), ambientCelsius)
                .holds());
        PartHeating doubled = heating(part, new LoadSideDrive.Steady(2 * allowed), ambientCelsius);
        assertEquals(0.5, doubled.headroomRatio().orElseThrow(), 1e-12);
    }

    @Test
    void findsCaseElementAndLine() {
        // Air 25, 40 W: case 25 + 40 x 1.5, wire 0.8 K/W above it, line (250 - 25) / 100 K/W above it.
        PartHeating heating = heating(part(100, traits(1.5, 0.8)), new LoadSideDrive.Steady(40), 25);
        assertEquals(85, at(heating, PartHeatingPoint.Place.CASE).averageCelsius(), 1e-9);
        assertEquals(117, at(heating, PartHeatingPoint.Place.ELEMENT).averageCelsius(), 1e-9);
        assertEquals(175, at(heating, PartHeatingPoint.Place.RATING).averageCelsius(), 1e-9);
        assertTrue(heating.holds() && heating.pulse().orElseThrow().holds());
    }

    @Test
    void sharesTheBranchesPower() {
        // 3.9 beside (6.8 + 10), 100 W: 81.159420, 7.625949, 11.214631 W (closed form).
        double[] shares = {0.81159420, 0.07625949, 0.11214631};
        List<PartShare> parts = List.of(
                new PartShare("a", 3.9, shares[0], Optional.of(part(100, PartTraits.NONE))),
                new PartShare("b", 6.8, shares[1], Optional.of(part(25, PartTraits.NONE))),
                new PartShare("c", 10, shares[2], Optional.empty()));
        LoadSide load = LoadSide.of(parts, new LoadSideDrive.Steady(100), 25);
        assertEquals(81.159420, load.parts().get(0).drive().averageWatts(), 1e-9);
        assertEquals(25 + 81.159420 * 2.25, load.hottestCelsius().orElseThrow(), 1e-9);
        // 123.214286 W is the limit of that network with ratings of 100, 25, 50 W; the first resistor is at its limit
        // there.
        assertTrue(LoadSide.of(parts, new LoadSideDrive.Steady(123.2142), 25).holds());
        assertFalse(LoadSide.of(parts, new LoadSideDrive.Steady(123.215), 25).holds());
        PartHeating mere = load.parts().get(2);
        assertTrue(mere.places().isEmpty()
                && mere.allowedWatts().isEmpty()
                && mere.headroomRatio().isEmpty());
        assertTrue(mere.notes().get(0).contains("cannot be told"));
    }

    /**
     * MIL-PRF-39009: 5 times rated power for 5 s. First order, tau = -5 / ln(1 - 1/5) = 22.407101 s and t = -tau ln(1
     * - 1/x); by constant energy 25 / x.
     */
    @ParameterizedTest
    @CsvSource({"1.5, 24.6167", "2, 15.5314", "3, 9.0853", "5, 5.0000", "10, 2.36082"})
    void lastsAsTheShortOverloadSays(double overload, double seconds) {
        PartHeatingPulse pulse = PartHeatingPulse.of(MIL_RULE, 50, new LoadSideDrive.Steady(50 * overload));
        assertEquals(22.407101, PartHeatingPulse.tauSeconds(MIL_RULE), 1e-6);
        assertEquals(seconds, pulse.firstOrderSeconds().orElseThrow(), 5e-5);
        assertEquals(25 / overload, pulse.energySeconds().orElseThrow(), 1e-12);
        assertFalse(pulse.holds());
        // The same time from the temperatures: the hottest spot of a part in air is at its limit then.
        PartHeating heating = heating(
                part(50, PartTraits.NONE.withPulseRule(Optional.of(MIL_RULE))),
                new LoadSideDrive.Steady(50 * overload),
                25);
        FosterChain chain = at(heating, PartHeatingPoint.Place.RATING).where().chain();
        assertEquals(
                250,
                LoadSide.celsiusAfter(
                        chain, heating.drive(), pulse.firstOrderSeconds().orElseThrow(), 25),
                1e-6);
    }

    @Test
    void holdsForEverUpToThePowerAllowed() {
        PartHeatingPulse pulse = PartHeatingPulse.of(MIL_RULE, 50, new LoadSideDrive.Steady(50));
        assertTrue(pulse.holds()
                && pulse.energySeconds().isEmpty()
                && pulse.firstOrderSeconds().isEmpty());
        assertEquals(1, pulse.firstOrderPeakRatio(), 1e-12);
    }

    /**
     * ngspice 39, transient of 600 s with steps of at most 10 ms: stages of 1.2 K/W with 60 s and 2.25 K/W with
     * 22.407101 s (C = tau / R), 200 W for 2 s in every 10 s, 20 W between, from cold.
     */
    @Test
    void agreesWithACircuitSimulatorInBursts() {
        FosterChain chain = new FosterChain(List.of(new FosterStage(1.2, 60), new FosterStage(2.25, 22.407101)));
        LoadSideDrive.Bursts drive = new LoadSideDrive.Bursts(200, 20, 2, 10);
        assertEquals(46.29358, LoadSide.celsiusAfter(chain, drive, 2, 0), 0.01);
        assertEquals(143.3659, LoadSide.celsiusAfter(chain, drive, 33, 0), 0.01);
        assertEquals(211.1872, LoadSide.celsiusAfter(chain, drive, 592, 0), 0.01);
        assertEquals(211.1872, LoadSide.burstEndKelvin(chain, drive), 0.02);
    }

    @Test
    void peaksAtTheEndOfEachBurst() {
        Part part = part(100, traits(1.5, 0.8));
        LoadSideDrive drive = LoadSideDrive.of(new Stimulus.ToneBurst(1000, 0.02, 0.5, -20), 300);
        // 4 % of the time 300 W, else a hundredth: 12 + 2.88 W.
        assertEquals(14.88, drive.averageWatts(), 1e-9);
        PartHeating heating = heating(part, drive, 25);
        for (PartHeating.PlaceHeat place : heating.places()) {
            assertTrue(place.peakCelsius() > place.averageCelsius());
            double walked = LoadSide.celsiusAfter(place.where().chain(), drive, 20_000 * 0.5 + 0.02, 25);
            assertEquals(walked, place.peakCelsius(), 1e-6);
            assertTrue(LoadSide.celsiusAfter(place.where().chain(), drive, 20_000 * 0.5 + 0.03, 25) < walked);
        }
    }

    @Test
    void judgesBurstsByMeanAndPeak() {
        // Closed form of a first-order body: rise over the rise allowed at the end of a burst, x (1 - e^-a) / (1 -
        // e^-b).
        double tau = 22.407101;
        LoadSideDrive.Bursts drive = new LoadSideDrive.Bursts(250, 0, 2, 20);
        PartHeatingPulse pulse = PartHeatingPulse.of(MIL_RULE, 50, drive);
        double expected = 5 * Math.expm1(-2 / tau) / Math.expm1(-20 / tau);
        assertEquals(expected, pulse.firstOrderPeakRatio(), 1e-6);
        assertEquals(0.5, pulse.averageRatio(), 1e-12);
        assertTrue(pulse.holds());
        // Mean too high, though each burst is short.
        assertFalse(PartHeatingPulse.of(MIL_RULE, 50, new LoadSideDrive.Bursts(250, 0, 2, 9))
                .holds());
        // Mean allowed, but the burst is longer than 5 times for 5 s.
        assertFalse(PartHeatingPulse.of(MIL_RULE, 50, new LoadSideDrive.Bursts(250, 0, 6, 100))
                .holds());
        // Mean allowed and burst short enough from cold, but not from where the bursts before have left it.
        PartHeatingPulse warm = PartHeatingPulse.of(MIL_RULE, 50, new LoadSideDrive.Bursts(250, 0, 4.9, 25));
        assertTrue(warm.averageRatio() < 1 && warm.firstOrderPeakRatio() > 1);
        assertFalse(warm.holds());
    }

    @Test
    void estimatesTimeConstantsAndSaysSo() {
        PartHeatingModel known = new PartHeatingModel(part(100, traits(1.5, 0.8)), 25);
        assertEquals(22.407101, known.elementTauSeconds(), 1e-6);
        assertEquals(150, known.caseTauSeconds().orElseThrow(), 1e-9);
        PartHeatingModel unknown = new PartHeatingModel(part(100, PartTraits.NONE), 25);
        assertEquals(30, unknown.elementTauSeconds(), 0);
        assertTrue(unknown.caseTauSeconds().isEmpty());
        assertTrue(unknown.notes().stream().anyMatch(note -> note.contains("common practice")));
        assertTrue(unknown.notes().stream().anyMatch(note -> note.contains("derating line implies")));
        double shorter = 0;
        for (double watts : new double[] {5, 25, 200, 1000}) {
            double tau = new PartHeatingModel(part(watts, PartTraits.NONE), 25).elementTauSeconds();
            assertTrue(tau > shorter);
            shorter = tau;
        }
    }

    @Test
    void givesPointsForAModel() {
        PartHeatingModel model = new PartHeatingModel(part(100, traits(1.5, 0.8)), 25);
        HeatModel.Builder builder = new HeatModel.Builder();
        model.points("left.1").forEach(place -> builder.chain(place.point(), "left.1", place.chain()));
        HeatModel heat = builder.build();
        assertEquals(3, heat.points().size());
        double[] state = heat.settled(new double[] {40});
        assertEquals(60, heat.riseKelvin(heat.pointIndex("left.1.case"), state, new double[] {40}), 1e-9);
        assertEquals(92, heat.riseKelvin(heat.pointIndex("left.1.element"), state, new double[] {40}), 1e-9);
        assertEquals(150, heat.riseKelvin(heat.pointIndex("left.1.rating"), state, new double[] {40}), 1e-9);
        assertEquals(250, heat.points().get(0).limitCelsius().orElseThrow(), 0);
    }

    @Test
    void allowsNothingInAirAsHotAsTheLinesEnd() {
        Part weak = new Part(
                "R2", 4, 0.05, 10, 25, 100, Mounting.FREE_AIR, 1, PartTraits.NONE.withPulseRule(Optional.of(MIL_RULE)));
        PartHeating heating = heating(weak, new LoadSideDrive.Steady(0.1), 110);
        assertEquals(0, heating.allowedWatts().orElseThrow(), 0);
        assertFalse(heating.holds());
        assertTrue(heating.pulse().isEmpty());
    }

    @Test
    void rejectsWhatCannotBe() {
        assertThrows(IllegalArgumentException.class, () -> new LoadSideDrive.Steady(-1));
        assertThrows(IllegalArgumentException.class, () -> new LoadSideDrive.Bursts(1, 2, 1, 2));
        assertTrue(assertThrows(IllegalArgumentException.class, () -> new LoadSideDrive.Bursts(2, 1, 1, 1))
                .getMessage()
                .contains("periodSeconds"));
        assertThrows(IllegalArgumentException.class, () -> LoadSide.of(List.of(), new LoadSideDrive.Steady(1), 500));
    }
}
