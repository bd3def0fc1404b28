// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.metrology.MonteCarlo;

class PowerCurveFitTest {

    private static final double REL_1PPM = 1e-6;
    private static final double REL_PRINTED = 1e-5;
    private static final double[] SUPPLY_VOLTS = {11, 12, 12.6, 13.8, 14.4};

    private static void assertClose(double expected, double actual, double relative) {
        assertEquals(expected, actual, Math.abs(expected) * relative);
    }

    private static PowerPoint point(double volts, double watts) {
        return new PowerPoint(volts, watts, 0.01 * watts, "");
    }

    private static List<PowerPoint> points(double... watts) {
        List<PowerPoint> points = new ArrayList<>();
        for (int i = 0; i < watts.length; i++) {
            points.add(point(SUPPLY_VOLTS[i], watts[i]));
        }
        return points;
    }

    private static SaturationCurve saturation(List<PowerPoint> points, double loadOhms) {
        return assertInstanceOf(SaturationCurve.class, PowerCurveFit.fit(points, loadOhms));
    }

    // Closed form: V_peak = (2.8 V - 3) R/(R + 0.1), so slope = 2.8 R/(R + 0.1) and offset = 3 R/(R + 0.1).
    @ParameterizedTest
    @CsvSource({
        "8, 47.117208, 57.08642, 63.526804, 77.44, 84.912812",
        "4, 91.95003, 111.405116, 123.973635, 151.125473, 165.708792",
        "2, 175.247166, 212.326531, 236.280816, 288.029388, 315.823673"
    })
    void findsTheLineBehindExactData(double ohms, double p11, double p12, double p126, double p138, double p144) {
        SaturationCurve curve = saturation(points(p11, p12, p126, p138, p144), ohms);
        assertClose(2.8 * ohms / (ohms + 0.1), curve.slopeRatio(), REL_PRINTED);
        assertClose(3 * ohms / (ohms + 0.1), curve.offsetVolts(), REL_PRINTED);
        assertEquals(0, curve.birgeRatio().orElseThrow(), 1e-4);
        assertClose(p138, curve.predict(13.8).powerWatts(), REL_1PPM);
        assertClose(13.8, curve.supplyVoltsFor(p138).orElseThrow(), REL_1PPM);
    }

    // Closed form: bridge-tied output without losses, P = V²/(2R).
    @ParameterizedTest
    @CsvSource({
        "8, 7.5625, 9, 9.9225, 11.9025, 12.96",
        "4, 15.125, 18, 19.845, 23.805, 25.92",
        "2, 30.25, 36, 39.69, 47.61, 51.84",
        "1, 60.5, 72, 79.38, 95.22, 103.68"
    })
    void anIdealOutputLosesNothing(double ohms, double p11, double p12, double p126, double p138, double p144) {
        SaturationCurve curve = saturation(points(p11, p12, p126, p138, p144), ohms);
        assertClose(1, curve.slopeRatio(), REL_1PPM);
        assertEquals(0, curve.offsetVolts(), 1e-5);
        assertClose(200 / 13.0, curve.percentPerVolt(13), REL_1PPM);
    }

    @Test
    void aFixedLossShowsAsOffset() {
        // Closed form: V_sat = 2 V, P = (V - 2)²/(2R): 19.22 W and 38.44 W at 14.4 V.
        SaturationCurve curve = saturation(List.of(point(11, 81 / 8.0), point(13, 121 / 8.0)), 4);
        assertClose(2, curve.offsetVolts(), REL_1PPM);
        assertClose(19.22, curve.predict(14.4).powerWatts(), REL_1PPM);
        SaturationCurve half = saturation(List.of(point(11, 81 / 4.0), point(13, 121 / 4.0)), 2);
        assertClose(38.44, half.predict(14.4).powerWatts(), REL_1PPM);
    }

    // Closed form: 20 log(14.4/V) dB.
    @ParameterizedTest
    @CsvSource({"13.8, 1.088847, 0.369668", "12.6, 1.306122, 1.159839", "12, 1.44, 1.583625", "11, 1.713719, 2.339396"})
    void squareLawMovesByTheSquare(double volts, double factor, double decibels) {
        PowerCurve curve = PowerCurveFit.fit(List.of(point(volts, 100)), 4);
        PowerPoint moved = curve.normalize(point(volts, 50), 14.4);
        assertClose(50 * factor, moved.powerWatts(), REL_1PPM);
        assertEquals(decibels, 10 * Math.log10(moved.powerWatts() / 50), 1e-6);
        assertClose(100 * factor, curve.predict(14.4).powerWatts(), REL_1PPM);
    }

    @Test
    void normalizingAlongTheCurveFindsWhatTheSquareLawMisses() {
        // Closed form (g = 2.8, V_s = 3, R_s = 0.1, 4 ohm): 123.973635 W at 12.6 V are 165.708792 W at 14.4 V; the
        // square law says 161.924747 W, 0.100323 dB too little.
        SaturationCurve curve = saturation(points(91.95003, 111.405116, 123.973635, 151.125473, 165.708792), 4);
        PowerPoint reading = point(12.6, 123.973635);
        PowerPoint moved = curve.normalize(reading, 14.4);
        assertClose(165.708792, moved.powerWatts(), REL_1PPM);
        assertEquals(14.4, moved.supplyVolts());
        PowerCurve naive = PowerCurveFit.fit(List.of(reading), 4);
        PowerPoint naively = naive.normalize(reading, 14.4);
        assertClose(161.924747, naively.powerWatts(), REL_1PPM);
        assertEquals(-0.100323, 10 * Math.log10(naively.powerWatts() / moved.powerWatts()), 1e-6);
        double bias = moved.powerWatts() - naively.powerWatts();
        assertTrue(naively.standardUncertaintyWatts() > bias, "the fallback's uncertainty must cover its bias");
        PowerPoint unmoved = curve.normalize(reading, 12.6);
        assertClose(reading.powerWatts(), unmoved.powerWatts(), 1e-12);
        assertClose(reading.standardUncertaintyWatts(), unmoved.standardUncertaintyWatts(), 1e-12);
    }

    // Common practice, no source: an unregulated amplifier into 2 ohm. Each is predicted from the other two.
    @ParameterizedTest
    @CsvSource({
        "12.3, 137, 13.46, 166, 14.09, 182",
        "13.46, 166, 12.3, 137, 14.09, 182",
        "14.09, 182, 12.3, 137, 13.46, 166"
    })
    void predictsPracticalReadingsFromTheOthers(
            double volts, double watts, double volts1, double watts1, double volts2, double watts2) {
        List<PowerPoint> others = List.of(
                new PowerPoint(volts1, watts1, 0.01 * watts1, "a"), new PowerPoint(volts2, watts2, 0.01 * watts2, "b"));
        Prediction prediction = saturation(others, 2).predict(volts);
        assertClose(watts, prediction.powerWatts(), 0.03);
        assertTrue(prediction.predictionInterval(0.95).contains(watts));
        assertEquals(volts < 13 || volts > 14, prediction.extrapolated());
    }

    // Five readings and what SciPy 1.10.1 makes of them:
    //   f = lambda V, g, o: (g*V - o)**2/8
    //   p, c = curve_fit(f, V, P, [2.7, 2.9], u, absolute_sigma=True, xtol=1e-15, ftol=1e-15, gtol=1e-15)
    // and the same with absolute_sigma=False; j = [V, -1]*(p[0]*V - p[1])/4; sqrt(j @ c @ j) for the curve.
    // scipy.odr with fit_type=2 gives the same parameters and covariance to five digits.
    private static final List<PowerPoint> SCIPY = List.of(
            new PowerPoint(11.0, 91.0, 1.0, ""),
            new PowerPoint(12.0, 112.6, 1.2, ""),
            new PowerPoint(12.6, 123.1, 1.1, ""),
            new PowerPoint(13.8, 152.9, 1.5, ""),
            new PowerPoint(14.4, 164.2, 1.6, ""));

    private static final double BIRGE = 1.241112659;

    @Test
    void agreesWithSciPy() {
        SaturationCurve curve = saturation(SCIPY, 4);
        assertClose(2.74994304719, curve.slopeRatio(), REL_1PPM);
        assertClose(3.17878231633, curve.offsetVolts(), REL_1PPM);
        assertClose(BIRGE, curve.birgeRatio().orElseThrow(), REL_1PPM);
        // The scatter is larger than the uncertainties explain, so the scaled covariance counts.
        assertClose(0.005416067696, curve.covariance().get(0, 0), REL_1PPM);
        assertClose(0.0683002597, curve.covariance().get(0, 1), REL_1PPM);
        assertClose(0.8689559268, curve.covariance().get(1, 1), REL_1PPM);
        assertEquals(3, curve.degreesOfFreedom());
        Prediction inside = curve.predict(13);
        assertClose(132.6044989, inside.powerWatts(), REL_1PPM);
        assertClose(0.60361014 * BIRGE, inside.standardUncertaintyWatts(), 1e-4);
        Prediction outside = curve.predict(16);
        assertClose(208.2871772, outside.powerWatts(), REL_1PPM);
        assertClose(2.1733133 * BIRGE, outside.standardUncertaintyWatts(), 1e-4);
        assertTrue(outside.extrapolated() && !inside.extrapolated());
        assertEquals(1.6, outside.extrapolationVolts(), 1e-12);
    }

    @Test
    void largerGivenUncertaintiesAreKept() {
        List<PowerPoint> doubtful = SCIPY.stream()
                .map(p -> new PowerPoint(p.supplyVolts(), p.powerWatts(), 2 * p.standardUncertaintyWatts(), ""))
                .toList();
        SaturationCurve curve = saturation(doubtful, 4);
        // SciPy with absolute_sigma=True and u doubled: covariance four times that of u.
        assertClose(BIRGE / 2, curve.birgeRatio().orElseThrow(), REL_1PPM);
        assertClose(4 * 0.003516103683, curve.covariance().get(0, 0), REL_1PPM);
        assertClose(4 * 0.56412499, curve.covariance().get(1, 1), REL_1PPM);
        assertEquals(Double.POSITIVE_INFINITY, curve.degreesOfFreedom());
    }

    @Test
    void twoVoltagesGiveTheExactLineWithTheReadingsUncertainty() {
        SaturationCurve curve = saturation(List.of(point(12, 100), point(14, 144)), 2);
        // V_peak = sqrt(4 x 100) = 20 and 24 V: slope 2, offset 4. u(V_peak) = V_peak x 0.005 = 0.1 and 0.12 V.
        assertClose(2, curve.slopeRatio(), REL_1PPM);
        assertClose(4, curve.offsetVolts(), REL_1PPM);
        assertTrue(curve.birgeRatio().isEmpty());
        assertClose(Math.hypot(0.1, 0.12) / 2, curve.covariance().standardUncertainty(0), REL_1PPM);
        Prediction at = curve.predict(12);
        assertClose(1, at.standardUncertaintyWatts(), 2e-5);
        assertClose(Math.sqrt(2), at.predictionStandardUncertaintyWatts(), 2e-5);
        // Normal quantile 1.95996.
        assertEquals(100 + 1.95996, at.confidenceInterval(0.95).upper(), 1e-3);
        assertEquals(100 - 1.95996 * Math.sqrt(2), at.predictionInterval(0.95).lower(), 1e-3);
    }

    @Test
    void uncertaintyNearZeroPowerAgreesWithMonteCarlo() {
        SaturationCurve curve = saturation(SCIPY, 4);
        for (double volts : new double[] {1.3, 2, 5, 16}) {
            MonteCarlo simulated = MonteCarlo.run(
                    x -> Math.pow(x[0] * volts - x[1], 2) / 8,
                    new double[] {curve.slopeRatio(), curve.offsetVolts()},
                    curve.covariance(),
                    200_000,
                    5);
            assertClose(simulated.standardUncertainty(), curve.predict(volts).standardUncertaintyWatts(), 0.02);
        }
    }

    @Test
    void belowItsOffsetTheCurveGivesNoPowerAndSaysSo() {
        SaturationCurve curve = saturation(SCIPY, 4);
        assertEquals(0, curve.predict(1).powerWatts());
        assertEquals(0, curve.predict(1).confidenceInterval(0.95).lower());
        assertThrows(IllegalArgumentException.class, () -> curve.percentPerVolt(1));
        PowerPoint reading = SCIPY.get(0);
        assertThrows(IllegalArgumentException.class, () -> curve.normalize(reading, 1));
    }

    private static double covered(double trueScatterRatio, boolean newReading) {
        // Ten readings of slope 2.7, offset 3 into 4 ohm; stated uncertainty 1 %, true scatter as asked.
        Random random = new Random(42);
        int inside = 0;
        int trials = 2000;
        for (int trial = 0; trial < trials; trial++) {
            List<PowerPoint> points = new ArrayList<>();
            for (int i = 0; i < 10; i++) {
                double volts = 11 + 0.35 * i;
                double truth = Math.pow(2.7 * volts - 3, 2) / 8;
                double watts = truth * (1 + 0.01 * trueScatterRatio * random.nextGaussian());
                points.add(new PowerPoint(volts, watts, 0.01 * truth, ""));
            }
            double truth = Math.pow(2.7 * 14.8 - 3, 2) / 8;
            Prediction prediction = PowerCurveFit.fit(points, 4).predict(14.8);
            double reading = truth * (1 + 0.01 * trueScatterRatio * random.nextGaussian());
            boolean hit = newReading
                    ? prediction.predictionInterval(0.95).contains(reading)
                    : prediction.confidenceInterval(0.95).contains(truth);
            inside += hit ? 1 : 0;
        }
        return inside / (double) trials;
    }

    @Test
    void ninetyFivePercentIntervalsContainTheTruthAboutThatOften() {
        // Binomial standard deviation of 2000 trials: 0.5 %. The larger of two uncertainties errs to the wide side.
        for (boolean newReading : new boolean[] {false, true}) {
            assertEquals(0.965, covered(1, newReading), 0.025);
            assertEquals(0.95, covered(3, newReading), 0.02);
        }
    }

    @Test
    void oneVoltageGivesTheLabelledFallback() {
        List<PowerPoint> points = List.of(
                new PowerPoint(13.80, 100, 1, "a"),
                new PowerPoint(13.80, 106, 2, "b"),
                new PowerPoint(13.80, 101, 1, "c"));
        SquareLawFallback curve = assertInstanceOf(SquareLawFallback.class, PowerCurveFit.fit(points, 4));
        // Weighted mean (100 + 106/4 + 101)/2.25 = 101.1111; chi² = 1.2346 + 5.9753 + 0.0123 = 7.2222; Birge² = 3.6111.
        assertClose(227.5 / 2.25, curve.meanPowerWatts().value(), REL_1PPM);
        assertClose(Math.sqrt(3.611111111 / 2.25), curve.meanPowerWatts().standardUncertainty(), REL_1PPM);
        assertEquals(2, curve.meanPowerWatts().degreesOfFreedom());
        assertTrue(curve.describe().contains(SquareLawFallback.note()));
        assertClose(200 / 13.8, curve.percentPerVolt(13.8), 1e-12);
        assertClose(13.8 * Math.sqrt(2), curve.supplyVoltsFor(2 * 227.5 / 2.25).orElseThrow(), 1e-9);
        Prediction here = curve.predict(13.8);
        assertClose(curve.meanPowerWatts().standardUncertainty(), here.standardUncertaintyWatts(), 1e-9);
        // Elsewhere the unknown offset of up to 2 V counts: |(12.4/11.8)² - (14.4/13.8)²|/sqrt3 of the mean.
        double model = 227.5 / 2.25 * Math.abs(Math.pow(12.4 / 11.8, 2) - Math.pow(14.4 / 13.8, 2)) / Math.sqrt(3);
        double readings = curve.meanPowerWatts().standardUncertainty() * Math.pow(14.4 / 13.8, 2);
        Prediction there = curve.predict(14.4);
        assertClose(Math.hypot(model, readings), there.standardUncertaintyWatts(), REL_1PPM);
        assertEquals(0.6, there.extrapolationVolts(), 1e-9);
    }

    @Test
    void saysInWordsHowPowerDependsOnTheSupply() {
        // Common practice, no source: one more volt gives an unregulated amplifier about 15 to 17 % more near 13 V.
        SaturationCurve steep = saturation(points(91.95003, 111.405116, 123.973635, 151.125473, 165.708792), 4);
        String unregulated = steep.describe();
        String expected = "Unregulated: near 12.7 V each extra volt gives about 17 % more";
        assertTrue(unregulated.startsWith(expected), unregulated);
        SaturationCurve regulated = saturation(points(100, 100.3, 100.1, 100.4, 100.2), 4);
        assertTrue(regulated.describe().startsWith("Regulated:"), regulated.describe());
        assertTrue(regulated.supplyVoltsFor(200).isEmpty());
        SaturationCurve between = saturation(points(100, 107, 111, 120, 124), 4);
        assertTrue(between.describe().startsWith("Partly regulated:"), between.describe());
        SaturationCurve unclear =
                saturation(List.of(new PowerPoint(13.8, 100, 5, ""), new PowerPoint(14.2, 103, 5, "")), 4);
        assertTrue(unclear.describe().contains("too uncertain"), unclear.describe());
    }

    @Test
    void readingsCloserThanATenthOfAVoltCountAsOneVoltage() {
        assertInstanceOf(SquareLawFallback.class, PowerCurveFit.fit(List.of(point(13.80, 100), point(13.89, 110)), 4));
        assertInstanceOf(SaturationCurve.class, PowerCurveFit.fit(List.of(point(13.80, 100), point(13.95, 102)), 4));
    }

    @Test
    void aFallingCurveIsFittedToo() {
        SaturationCurve curve = saturation(List.of(point(12, 100), point(14, 81)), 2);
        assertClose(-1, curve.slopeRatio(), REL_1PPM);
        assertFalse(curve.supplyVoltsFor(90).isPresent());
    }

    @Test
    void rejectsWhatIsNoReading() {
        assertThrows(IllegalArgumentException.class, () -> new PowerPoint(0, 1, 1, ""));
        assertThrows(IllegalArgumentException.class, () -> new PowerPoint(12, 0, 1, ""));
        assertThrows(IllegalArgumentException.class, () -> new PowerPoint(12, 1, 0, ""));
        assertThrows(IllegalArgumentException.class, () -> new PowerPoint(12, Double.NaN, 1, ""));
        assertThrows(IllegalArgumentException.class, () -> PowerCurveFit.fit(List.of(), 4));
        assertThrows(IllegalArgumentException.class, () -> PowerCurveFit.fit(SCIPY, 0));
    }
}
