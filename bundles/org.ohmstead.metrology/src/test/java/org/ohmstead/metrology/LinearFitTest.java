// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.ohmstead.metrology.Tolerances.REL_1PPM;
import static org.ohmstead.metrology.Tolerances.REL_EXACT;
import static org.ohmstead.metrology.Tolerances.assertClose;

import java.io.IOException;
import java.util.Arrays;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.ohmstead.units.text.Language;

class LinearFitTest {

    private static void assertDigits(double digits, double certified, double actual) {
        double found = NistProblem.correctDigits(actual, certified);
        assertTrue(found >= digits, () -> actual + " has only " + found + " digits of " + certified);
    }

    @Test
    void certifiedNorris() throws IOException, FitException {
        // NIST StRD Norris.
        double[][] table = NistProblem.readTable("Norris.csv");
        LinearFit fit = LinearFit.line(column(table, 1), column(table, 0));
        assertEquals(36, table.length);
        assertDigits(11, -0.262323073774029, fit.coefficient(0));
        assertDigits(12, 1.00211681802045, fit.coefficient(1));
        assertDigits(11, 0.232818234301152, fit.estimate(0).standardUncertainty());
        assertDigits(11, 0.429796848199937E-03, fit.estimate(1).standardUncertainty());
        assertDigits(11, 0.884796396144373, fit.residualStandardDeviation());
        assertDigits(11, 26.6173985294224, fit.rss());
        assertDigits(13, 0.999993745883712, fit.rSquared());
    }

    @Test
    void certifiedLongley() throws IOException, FitException {
        // NIST StRD Longley: highly collinear.
        double[][] table = NistProblem.readTable("Longley.csv");
        double[][] design = Arrays.stream(table)
                .map(row -> {
                    double[] regressors = row.clone();
                    regressors[0] = 1;
                    return regressors;
                })
                .toArray(double[][]::new);
        LinearFit fit = LinearFit.of(design, column(table, 0));
        double[] certified = {
            -3482258.63459582,
            15.0618722713733,
            -0.358191792925910E-01,
            -2.02022980381683,
            -1.03322686717359,
            -0.511041056535807E-01,
            1829.15146461355
        };
        double[] deviations = {
            890420.383607373,
            84.9149257747669,
            0.334910077722432E-01,
            0.488399681651699,
            0.214274163161675,
            0.226073200069370,
            455.478499142212
        };
        for (int j = 0; j < certified.length; j++) {
            assertDigits(11, certified[j], fit.coefficient(j));
            assertDigits(8, deviations[j], fit.estimate(j).standardUncertainty());
        }
        assertDigits(11, 836424.055505915, fit.rss());
        assertDigits(11, 304.854073561965, fit.residualStandardDeviation());
        assertDigits(12, 0.995479004577296, fit.rSquared());
    }

    @Test
    void certifiedLinesThroughTheOrigin() throws FitException {
        // NIST StRD NoInt1 and NoInt2.
        double[][] x1 = new double[11][1];
        double[] y1 = new double[11];
        for (int i = 0; i < 11; i++) {
            x1[i][0] = 60 + i;
            y1[i] = 130 + i;
        }
        LinearFit first = LinearFit.of(x1, y1);
        assertDigits(13, 2.07438016528926, first.coefficient(0));
        assertDigits(12, 0.0165289256198347, first.estimate(0).standardUncertainty());
        assertDigits(12, 127.272727272727, first.rss());
        // Closed form about zero: 1 - 127.2727/200585, where 200585 is the sum of y².
        assertDigits(12, 1 - 127.272727272727 / 200585, first.rSquared());
        LinearFit second = LinearFit.of(new double[][] {{4}, {5}, {6}}, new double[] {3, 4, 4});
        assertDigits(14, 0.727272727272727, second.coefficient(0));
    }

    @Test
    void certifiedWampler1() throws FitException {
        // NIST StRD Wampler1: y = 1 + x + ... + x^5, exactly.
        double[] x = new double[21];
        double[] y = new double[21];
        for (int i = 0; i < x.length; i++) {
            x[i] = i;
            y[i] = 1 + i * (1 + i * (1 + i * (1 + i * (1.0 + i))));
        }
        LinearFit fit = LinearFit.polynomial(x, y, 5);
        for (double coefficient : fit.coefficients()) {
            assertDigits(12, 1, coefficient);
        }
        assertEquals(0, fit.rss(), 1e-10);
        assertDigits(14, 1, fit.rSquared());
    }

    @Test
    void calibrationLineOfTheGum() throws FitException {
        // GUM H.3: correction of a thermometer, fitted about 20 degrees Celsius.
        double[] celsius = {21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511};
        double[] kelvin = {-.171, -.169, -.166, -.159, -.164, -.165, -.156, -.157, -.159, -.161, -.160};
        LinearFit fit = LinearFit.line(Arrays.stream(celsius).map(t -> t - 20).toArray(), kelvin);
        assertClose(-0.1712038, fit.coefficient(0), REL_1PPM);
        assertClose(0.0021826977, fit.coefficient(1), REL_1PPM);
        assertEquals(0.0028776, fit.estimate(0).standardUncertainty(), 5e-8);
        assertClose(0.00066793877, fit.estimate(1).standardUncertainty(), REL_1PPM);
        assertEquals(-0.930430, fit.covariance().correlation(0, 1), REL_1PPM);
        assertEquals(0.00349756, fit.residualStandardDeviation(), 5e-9);
        assertClose(1.10096583e-4, fit.rss(), REL_1PPM);
        Estimate atThirty = fit.predict(1, 10);
        assertClose(-0.1493768, atThirty.value(), REL_1PPM);
        assertEquals(0.0041386, atThirty.standardUncertainty(), 5e-8);
        assertEquals(9, atThirty.degreesOfFreedom());
    }

    @Test
    void weightedMeanHasItsClosedForm() throws FitException {
        // y = (1/1 x 10 + 1/4 x 20)/(1/1 + 1/4) = 12, u² = 1/(1.25) = 0.8; chi² = (2/1)² + (8/2)² = 20.
        LinearFit fit = LinearFit.weighted(
                new double[][] {{1}, {1}},
                new double[] {10, 20},
                new double[] {1, 2},
                CovarianceBasis.GIVEN_UNCERTAINTIES);
        assertClose(12, fit.coefficient(0), REL_EXACT);
        assertClose(Math.sqrt(0.8), fit.estimate(0).standardUncertainty(), REL_EXACT);
        assertEquals(Double.POSITIVE_INFINITY, fit.estimate(0).degreesOfFreedom());
        assertClose(20, fit.rss(), REL_EXACT);
        assertClose(0.8 * 20, fit.covariance(CovarianceBasis.RESIDUAL_SCATTER).get(0, 0), REL_EXACT);
    }

    @Test
    void saysWhatTheDataCannotTell() throws FitException {
        FitException same = assertThrows(
                FitException.class, () -> LinearFit.line(new double[] {13, 13, 13}, new double[] {1, 2, 3}));
        assertTrue(same.getMessage().contains("coefficient 2"), same.getMessage());
        assertThrows(
                FitException.class,
                () -> LinearFit.of(new double[][] {{1, 2, 3}, {2, 0, 2}, {3, 1, 4}, {4, 1, 5}}, new double[4]));
        LinearFit exact = LinearFit.line(new double[] {1, 2}, new double[] {3, 5});
        assertClose(2, exact.coefficient(1), REL_EXACT);
        assertThrows(IllegalStateException.class, exact::covariance);
    }

    @Test
    void saysInGermanWhatTheDataCannotTell() {
        FitException same = Language.speaking(
                Locale.GERMAN,
                () -> assertThrows(
                        FitException.class, () -> LinearFit.line(new double[] {13, 13, 13}, new double[] {1, 2, 3})));
        assertEquals(
                "Die Daten können den Koeffizienten 2 der Anpassung nicht von denen davor unterscheiden. Ablesungen bei"
                        + " verschiedeneren Bedingungen nehmen, oder ihn weglassen.",
                same.getMessage());
    }

    private static double[] column(double[][] table, int index) {
        return Arrays.stream(table).mapToDouble(row -> row[index]).toArray();
    }
}
