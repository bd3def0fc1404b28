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
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.model.PartTraits;

class NetworkAnalysisTest {
    /** Printed digits of the hand-worked examples. */
    private static final double PRINTED = 1e-6;

    private static final double EXACT = 1e-12;

    private static Network rated(String id, double ohms, double watts, double toleranceRatio) {
        return Network.of(
                new Resistor(id, ohms, toleranceRatio, Optional.of(new PowerRating(watts, 25, 250)), PartTraits.NONE));
    }

    private static Network plain(double ohms) {
        return Network.of(Resistor.of(Double.toString(ohms), ohms, 0.01));
    }

    private static NetworkAnalysis threeParts() {
        return NetworkAnalysis.of(
                Network.parallel(List.of(
                        rated("A", 3.9, 100, 0.01),
                        Network.series(List.of(rated("B", 6.8, 25, 0.01), rated("C", 10, 50, 0.01))))),
                25);
    }

    @Test
    void sharesThePowerOfThreeResistorsByKirchhoffsLaws() {
        // By hand: 3.9 || (6.8 + 10) = 3.9 * 16.8 / 20.7; 100 W lie across 17.791058 V.
        NetworkAnalysis analysis = threeParts();
        assertEquals(3.9 * 16.8 / 20.7, analysis.ohms(), EXACT);
        assertEquals(17.791058, analysis.voltsRms(100), PRINTED);
        assertEquals(81.159420, analysis.powerWatts(0, 100), PRINTED);
        assertEquals(7.625949, analysis.powerWatts(1, 100), PRINTED);
        assertEquals(11.214631, analysis.powerWatts(2, 100), PRINTED);
        assertEquals(100, analysis.voltsRms(100) * analysis.ampsRms(100), 1e-9);
    }

    @Test
    void weighsTolerancesByTheShares() {
        NetworkAnalysis analysis = threeParts();
        assertEquals(analysis.ohms() * 0.99, analysis.worstCaseLowOhms(), EXACT * 10);
        assertEquals(analysis.ohms() * 1.01, analysis.worstCaseHighOhms(), EXACT * 10);
        assertEquals(0.01, analysis.worstCaseToleranceRatio(), EXACT);
        // sqrt(0.8115942^2 + 0.07625949^2 + 0.11214631^2) %
        assertEquals(0.008228472, analysis.rssToleranceRatio(), 1e-9);
        assertEquals(0.004750710, analysis.standardToleranceRatio(), 1e-9);
    }

    @Test
    void findsThePartThatLimitsThePower() {
        // 100 W / 0.8115942 = 123.214286 W; the others would allow 25 / 0.07625949 = 327.8 W and 50 / 0.1121463 = 445.8
        // W.
        NetworkAnalysis analysis = threeParts();
        assertEquals(123.214286, analysis.powerLimitWatts().orElseThrow(), PRINTED);
        assertEquals("A", analysis.limitingPart().orElseThrow().id());
        assertEquals(0, analysis.limitingIndex().orElseThrow());
        assertEquals(1.23214286, analysis.headroomRatio(0, 100).orElseThrow(), PRINTED);
    }

    @Test
    void statesNoLimitWhenOneResistorHasNoRating() {
        NetworkAnalysis analysis =
                NetworkAnalysis.of(Network.series(List.of(plain(1), rated("A", 1, 50, 0.05), plain(2))), 25);
        assertTrue(analysis.powerLimitWatts().isEmpty());
        assertTrue(analysis.limitingPart().isEmpty());
        assertTrue(analysis.allowedWatts(0).isEmpty());
        assertTrue(analysis.headroomRatio(2, 10).isEmpty());
        assertEquals(50, analysis.allowedWatts(1).orElseThrow(), EXACT);
    }

    @ParameterizedTest
    @CsvSource({"2s2p, 8", "4p, 2", "4s, 32"})
    void sharesEquallyAmongEqualResistors(String wiring, double ohms) {
        Network eight = plain(8);
        Network pair = Network.series(List.of(eight, eight));
        Network network =
                switch (wiring) {
                    case "2s2p" -> Network.parallel(List.of(pair, pair));
                    case "4p" -> Network.parallel(List.of(eight, eight, eight, eight));
                    default -> Network.series(List.of(pair, pair));
                };
        NetworkAnalysis analysis = NetworkAnalysis.of(network, 25);
        assertEquals(ohms, analysis.ohms(), EXACT * ohms);
        for (int i = 0; i < 4; i++) {
            assertEquals(0.25, analysis.share(i), EXACT);
        }
        // n equal resistors: the tolerances shrink with the square root of n.
        assertEquals(0.01 / 2, analysis.rssToleranceRatio(), EXACT);
    }

    @Test
    void shareEqualsTheNumericDerivativeForRandomNetworks() {
        Random random = new Random(20260101);
        for (int trial = 0; trial < 300; trial++) {
            Network network = RandomNetworks.next(random, 1 + random.nextInt(9));
            NetworkAnalysis analysis = NetworkAnalysis.of(network, 25);
            double sum = 0;
            for (int i = 0; i < analysis.size(); i++) {
                double step = 1e-5;
                double up = RandomNetworks.scaled(network, i, 1 + step).ohms();
                double down = RandomNetworks.scaled(network, i, 1 - step).ohms();
                // Central difference of ln R by ln R_i, good to about step squared.
                assertEquals((up - down) / (2 * step) / network.ohms(), analysis.share(i), 1e-9);
                sum += analysis.share(i);
            }
            assertEquals(1, sum, EXACT);
            assertEquals(network.ohms(), NetworkAnalysis.ohms(network), 1e-13 * network.ohms());
            assertEquals(network.resistors(), analysis.resistors());
        }
    }

    @Test
    void worstCaseEqualsTheExtremesOverAllCornersOfTheTolerances() {
        Random random = new Random(7);
        for (int trial = 0; trial < 20; trial++) {
            Network network = RandomNetworks.next(random, 2 + random.nextInt(5));
            TreeSet<Double> corners = new TreeSet<>();
            int count = network.resistors().size();
            for (int corner = 0; corner < 1 << count; corner++) {
                Network moved = network;
                for (int i = 0; i < count; i++) {
                    double tolerance = network.resistors().get(i).toleranceRatio();
                    moved = RandomNetworks.scaled(moved, i, 1 + ((corner >> i & 1) == 0 ? -tolerance : tolerance));
                }
                corners.add(moved.ohms());
            }
            NetworkAnalysis analysis = NetworkAnalysis.of(network, 25);
            assertEquals(corners.first(), analysis.worstCaseLowOhms(), EXACT * network.ohms());
            assertEquals(corners.last(), analysis.worstCaseHighOhms(), EXACT * network.ohms());
            assertEquals(corners.first(), NetworkAnalysis.worstCaseLowOhms(network), EXACT * network.ohms());
            assertEquals(corners.last(), NetworkAnalysis.worstCaseHighOhms(network), EXACT * network.ohms());
        }
    }

    /** Straight line between the two ends: (T0 - T) / (T0 - Tr), by hand. MIL-PRF-39009 ends at 250 degrees, other parts at 275 or 350. */
    @ParameterizedTest
    @CsvSource({
        "40, .933333, .940000, 1",
        "60, .844444, .860000, 1",
        "85, .733333, .760000, .946429",
        "100, .666667, .700000, .892857",
        "150, .444444, .500000, .714286",
        "200, .222222, .300000, .535714",
        "20, 1, 1, 1",
        "400, 0, 0, 0"
    })
    void deratesAlongAStraightLine(double celsius, double to250, double to275, double from70To350) {
        assertEquals(to250, Derating.watts(new PowerRating(1, 25, 250), celsius), PRINTED);
        assertEquals(to275, Derating.watts(new PowerRating(1, 25, 275), celsius), PRINTED);
        assertEquals(from70To350, Derating.watts(new PowerRating(1, 70, 350), celsius), PRINTED);
    }

    @Test
    void findsThePowerThatASinkAllowsItself() {
        // k = 100 W / 225 K; P = k (250 - 30) / (1 + 1.2 k); the case is then at 30 + 1.2 P.
        double watts = Derating.wattsOnSink(new PowerRating(100, 25, 250), 30, 1.2);
        assertEquals(63.768116, watts, PRINTED);
        assertEquals(106.521739, 30 + 1.2 * watts, PRINTED);
        // The derating line itself, taken at that case temperature, must give the same power.
        assertEquals(watts, Derating.watts(new PowerRating(100, 25, 250), 30 + 1.2 * watts), 1e-12 * watts);
        assertEquals(100, Derating.wattsOnSink(new PowerRating(100, 85, 250), 20, 0.1), EXACT);
        assertEquals(0, Derating.wattsOnSink(new PowerRating(100, 25, 250), 250, 1.2), EXACT);
    }

    @Test
    void usesTheSinkOfAResistorThatHasOne() {
        PartTraits traits = PartTraits.NONE.withSinkKelvinPerWatt(OptionalDouble.of(1.2));
        Resistor resistor = new Resistor("A", 4, 0.05, Optional.of(new PowerRating(100, 25, 250)), traits);
        NetworkAnalysis analysis =
                NetworkAnalysis.of(Network.series(List.of(Network.of(resistor), Network.of(resistor))), 30);
        assertEquals(2 * 63.768116, analysis.powerLimitWatts().orElseThrow(), PRINTED * 2);
    }

    @Test
    void allowsNoPowerInAirAtTheEndOfTheLine() {
        assertEquals(
                0,
                NetworkAnalysis.of(rated("A", 4, 100, 0.05), 250)
                        .powerLimitWatts()
                        .orElseThrow());
    }

    @Test
    void rejectsAnAmbientThatIsNoNumber() {
        assertThrows(IllegalArgumentException.class, () -> NetworkAnalysis.of(plain(4), Double.NaN));
    }
}
