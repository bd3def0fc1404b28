// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.gain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class GainFitTest {
    private static final double CERTIFIED = 1e-12;
    private static final double DB_PER_NEPER = 8.685889638;

    // NIST StRD, linear least squares, data set NoInt1: y = b x with x = 60..70, y = 130..140.
    @Test
    void theLineThroughZeroIsThatOfCertifiedData() {
        double[] x = new double[11];
        double[] y = new double[11];
        double[] weights = new double[11];
        Arrays.fill(weights, 1);
        for (int i = 0; i < x.length; i++) {
            x[i] = 60 + i;
            y[i] = 130 + i;
        }
        StraightLine line = StraightLine.throughOrigin(x, y, weights);
        assertEquals(2.07438016528926, line.slope(), CERTIFIED);
        assertEquals(0.0165289256198347, line.slopeUncertainty(), CERTIFIED);
    }

    // NIST StRD, linear least squares, data set Norris (36 pairs y, x).
    @Test
    void theFreeLineIsThatOfCertifiedData() {
        double[] pairs = {
            0.1, 0.2, 338.8, 337.4, 118.1, 118.2, 888.0, 884.6, 9.2, 10.1, 228.1, 226.5, 668.5, 666.3, 998.5, 996.3,
            449.1, 448.6, 778.9, 777.0, 559.2, 558.2, 0.3, 0.4, 0.1, 0.6, 778.1, 775.5, 668.8, 666.9, 339.3, 338.0,
            448.9, 447.5, 10.8, 11.6, 557.7, 556.0, 228.3, 228.1, 998.0, 995.8, 888.8, 887.6, 119.6, 120.2, 0.3, 0.3,
            0.6, 0.3, 557.6, 556.8, 339.3, 339.1, 888.0, 887.2, 998.5, 999.0, 778.9, 779.0, 10.2, 11.1, 117.6, 118.3,
            228.9, 229.2, 668.4, 669.1, 449.2, 448.9, 0.2, 0.5
        };
        double[] x = new double[pairs.length / 2];
        double[] y = new double[pairs.length / 2];
        for (int i = 0; i < x.length; i++) {
            y[i] = pairs[2 * i];
            x[i] = pairs[2 * i + 1];
        }
        StraightLine line = StraightLine.free(x, y);
        assertEquals(1.00211681802045, line.slope(), CERTIFIED);
        assertEquals(0.429796848199937E-03, line.slopeUncertainty(), CERTIFIED);
    }

    @Test
    void anExactAmplifierHasItsGainWithoutScatter() {
        List<GainPoint> points = List.of(new GainPoint(0.1, 2), new GainPoint(0.2, 4), new GainPoint(0.4, 8));
        GainFit fit = GainFit.of(points, 0);
        // Closed form: 20 log10(20).
        assertEquals(26.0205999, fit.gainDb(), 5e-8);
        assertEquals(0, fit.standardUncertaintyRatio().orElseThrow(), 1e-12);
        assertEquals(1, fit.slope().orElseThrow(), 1e-12);
        assertEquals(0, fit.slopeStandardUncertainty().orElseThrow(), 1e-12);
        assertEquals(0, fit.largestDeviationDb(), 1e-12);
        assertEquals(3, fit.levels());
    }

    @Test
    void everyLevelWeighsTheSameInPerCent() {
        // Closed form: with weights 1/x^2 the gain is the mean of the ratios and u their standard deviation of the
        // mean.
        List<GainPoint> points = List.of(new GainPoint(0.01, 0.202), new GainPoint(0.1, 2), new GainPoint(1, 19.8));
        GainFit fit = GainFit.of(points, 0);
        assertEquals(20, fit.gainRatio(), 1e-12);
        assertEquals(0.2 / Math.sqrt(3), fit.standardUncertaintyRatio().orElseThrow(), 1e-12);
        assertEquals(
                DB_PER_NEPER * 0.01 / Math.sqrt(3), fit.standardUncertaintyDb().orElseThrow(), 1e-9);
        assertEquals(20 * Math.log10(20.2 / 20), fit.largestDeviationDb(), 0.001);
    }

    @Test
    void whatAllLevelsShareAddsInSquares() {
        List<GainPoint> points = List.of(new GainPoint(0.01, 0.202), new GainPoint(0.1, 2), new GainPoint(1, 19.8));
        GainFit fit = GainFit.of(points, 0.02);
        assertEquals(
                Math.sqrt(0.04 / 3 + 0.4 * 0.4), fit.standardUncertaintyRatio().orElseThrow(), 1e-12);
    }

    @Test
    void oneLevelHasAGainButNoScatterAndNoSlope() {
        GainFit fit = GainFit.of(List.of(new GainPoint(0.5, 10)), 0);
        assertEquals(20, fit.gainRatio(), 1e-12);
        assertTrue(fit.standardUncertaintyRatio().isEmpty());
        assertTrue(fit.standardUncertaintyDb().isEmpty());
        assertTrue(fit.slope().isEmpty());
        assertEquals(
                0.2,
                GainFit.of(List.of(new GainPoint(0.5, 10)), 0.01)
                        .standardUncertaintyRatio()
                        .orElseThrow(),
                1e-12);
    }

    @Test
    void likeLevelsSayNothingOfTheSlope() {
        GainPoint point = new GainPoint(0.5, 10);
        assertTrue(GainFit.of(List.of(point, point, point), 0).slope().isEmpty());
    }

    @Test
    void anAmplifierThatGivesWayHasASlopeBelowOne() {
        // Closed form: output = input^0.9 rises 0.9 dB for each dB.
        List<GainPoint> points = new ArrayList<>();
        for (double input = 0.01; input < 2; input *= 2) {
            points.add(new GainPoint(input, 20 * Math.pow(input, 0.9)));
        }
        GainFit fit = GainFit.of(points, 0);
        assertEquals(0.9, fit.slope().orElseThrow(), 1e-9);
    }

    @Test
    void theStatedUncertaintyIsHowFarFitsScatter() {
        // Simulation with a known gain and 1 % of noise: the fits' standard deviation must be the u that they state (8
        // levels).
        Random random = new Random(20261126);
        int fits = 4000;
        double squares = 0;
        double stated = 0;
        for (int run = 0; run < fits; run++) {
            List<GainPoint> points = new ArrayList<>();
            for (int level = 0; level < 8; level++) {
                double input = 0.01 * Math.pow(2, level);
                points.add(new GainPoint(input, 20 * input * (1 + 0.01 * random.nextGaussian())));
            }
            GainFit fit = GainFit.of(points, 0);
            squares += (fit.gainRatio() - 20) * (fit.gainRatio() - 20);
            stated += fit.standardUncertaintyRatio().orElseThrow()
                    * fit.standardUncertaintyRatio().orElseThrow();
        }
        // Standard deviation of 4000 squares' mean: about 2.2 %.
        assertEquals(1, Math.sqrt(squares / stated), 0.05);
        assertEquals(0.2 / Math.sqrt(8), Math.sqrt(squares / fits), 0.05 * 0.2 / Math.sqrt(8));
    }

    @Test
    void refusesNoLevelsAndVoltsThatCannotBe() {
        assertThrows(IllegalArgumentException.class, () -> GainFit.of(List.of(), 0));
        assertThrows(IllegalArgumentException.class, () -> new GainPoint(0, 1));
        assertThrows(IllegalArgumentException.class, () -> new GainPoint(1, -1));
        List<GainPoint> one = List.of(new GainPoint(1, 1));
        assertThrows(IllegalArgumentException.class, () -> GainFit.of(one, -0.1));
    }
}
