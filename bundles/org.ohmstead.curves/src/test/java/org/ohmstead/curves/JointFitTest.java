// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class JointFitTest {

    private static final double REL_1PPM = 1e-6;
    private static final double REL_PRINTED = 1e-5;
    private static final double[] SUPPLY_VOLTS = {11, 12, 12.6, 13.8, 14.4};

    // Closed form with g = 2.8, V_s = 3, R_s = 0.1: P = R (2.8 V - 3)²/(2 (R + 0.1)²).
    private static final double[] EIGHT_OHM = {47.117208, 57.08642, 63.526804, 77.44, 84.912812};
    private static final double[] FOUR_OHM = {91.95003, 111.405116, 123.973635, 151.125473, 165.708792};
    private static final double[] TWO_OHM = {175.247166, 212.326531, 236.280816, 288.029388, 315.823673};

    private static void assertClose(double expected, double actual, double relative) {
        assertEquals(expected, actual, Math.abs(expected) * relative);
    }

    private static List<LoadedPoint> into(double loadOhms, boolean bridged, double... watts) {
        List<LoadedPoint> points = new ArrayList<>();
        for (int i = 0; i < watts.length; i++) {
            points.add(loaded(SUPPLY_VOLTS[i], watts[i], 0.01 * watts[i], loadOhms, bridged));
        }
        return points;
    }

    private static LoadedPoint loaded(double volts, double watts, double uncertainty, double ohms, boolean bridged) {
        return new LoadedPoint(new PowerPoint(volts, watts, uncertainty, ""), ohms, bridged);
    }

    @SafeVarargs
    private static List<LoadedPoint> all(List<LoadedPoint>... parts) {
        List<LoadedPoint> points = new ArrayList<>();
        for (List<LoadedPoint> part : parts) {
            points.addAll(part);
        }
        return points;
    }

    private static JointFit.OutputStage stage(List<LoadedPoint> points) {
        return assertInstanceOf(JointFit.OutputStage.class, JointFit.fit(points));
    }

    @Test
    void exactDataGiveAllThreeParametersBack() {
        JointFit.OutputStage stage =
                stage(all(into(8, false, EIGHT_OHM), into(4, false, FOUR_OHM), into(2, false, TWO_OHM)));
        assertClose(2.8, stage.gainRatio(), REL_PRINTED);
        assertClose(3, stage.saturationVolts(), REL_PRINTED);
        assertClose(0.1, stage.outputOhms(), REL_PRINTED);
        // Closed form: P2/P4 = 1.905896, P4/P8 = 1.951517 instead of 2.
        double p8 = stage.predict(13, 8, false).powerWatts();
        double p4 = stage.predict(13, 4, false).powerWatts();
        double p2 = stage.predict(13, 2, false).powerWatts();
        assertClose(1.905896, p2 / p4, REL_1PPM);
        assertClose(1.951517, p4 / p8, REL_1PPM);
    }

    @Test
    void bridgedPowerIsTwiceThatOfHalfTheLoad() {
        // Closed form: at 14.4 V bridged into 4 ohm 2 x 315.823673 = 631.647 W, not 4 x 165.708792 = 662.835 W.
        JointFit.OutputStage stage = stage(all(into(8, false, EIGHT_OHM), into(4, false, FOUR_OHM)));
        assertClose(631.647346, stage.predict(14.4, 4, true).powerWatts(), REL_PRINTED);
        double naive = 4 * stage.predict(14.4, 4, false).powerWatts();
        assertEquals(-0.209, 10 * Math.log10(631.647346 / naive), 0.0005);
        double[] bridged = TWO_OHM.clone();
        for (int i = 0; i < bridged.length; i++) {
            bridged[i] *= 2;
        }
        JointFit.OutputStage mixed = stage(all(into(4, true, bridged), into(4, false, FOUR_OHM)));
        assertClose(0.1, mixed.outputOhms(), REL_PRINTED);
        assertClose(2.8, mixed.gainRatio(), REL_PRINTED);
    }

    @Test
    void agreesWithSciPy() {
        // SciPy 1.10.1, r = ohms per channel, m = channels:
        //   f = lambda x, g, s, o: m*r*(g*V - s)**2/(2*(r + o)**2)
        //   p, c = curve_fit(f, V, P, [2.8, 3, .1], u, absolute_sigma=True, xtol=1e-15, ftol=1e-15, gtol=1e-15)
        JointFit.OutputStage stage = stage(List.of(
                loaded(11, 92.5, 1, 4, false),
                loaded(14.4, 164.9, 1.6, 4, false),
                loaded(11, 174.0, 1.7, 2, false),
                loaded(14.4, 317.1, 3.2, 2, false),
                loaded(12.6, 124.6, 1.2, 4, false),
                loaded(12.6, 235.0, 2.4, 2, false),
                loaded(14.4, 633.0, 6.0, 4, true)));
        assertClose(2.817002861, stage.gainRatio(), REL_1PPM);
        assertClose(3.127231968, stage.saturationVolts(), REL_1PPM);
        assertClose(0.1075139344, stage.outputOhms(), REL_PRINTED);
        assertClose(0.6368160559, stage.birgeRatio().orElseThrow(), REL_1PPM);
        // SciPy differentiates numerically, hence the wider tolerance of the covariance.
        assertClose(0.04808879, stage.gainEstimate().standardUncertainty(), 1e-4);
        assertClose(0.54987119, stage.saturationVoltsEstimate().standardUncertainty(), 1e-4);
        assertClose(0.016525623, stage.outputOhmsEstimate().standardUncertainty(), 1e-4);
        assertEquals(0.9385507, stage.covariance().correlation(0, 1), 1e-4);
        assertEquals(0.4511216, stage.covariance().correlation(0, 2), 1e-4);
        assertEquals(0.1318961, stage.covariance().correlation(1, 2), 1e-4);
        assertEquals(Double.POSITIVE_INFINITY, stage.degreesOfFreedom());
        Prediction prediction = stage.predict(16, 4, false);
        assertEquals(1.6, prediction.extrapolationVolts(), 1e-12);
        assertTrue(prediction.standardUncertaintyWatts()
                > stage.predict(13, 4, false).standardUncertaintyWatts());
    }

    @Test
    void saysWhyParametersCannotBeSeparated() {
        JointFit.NotSeparable oneLoad =
                assertInstanceOf(JointFit.NotSeparable.class, JointFit.fit(into(4, false, FOUR_OHM)));
        assertTrue(oneLoad.reason().contains("one load alone cannot separate"), oneLoad.reason());
        // A bridged 8 ohm load is 4 ohm per channel: no second load either.
        JointFit.NotSeparable disguised = assertInstanceOf(
                JointFit.NotSeparable.class,
                JointFit.fit(all(into(4, false, FOUR_OHM), into(8, true, 183.9, 222.81, 247.95))));
        assertTrue(disguised.reason().contains("one load alone cannot separate"), disguised.reason());
        JointFit.NotSeparable oneVoltage = assertInstanceOf(
                JointFit.NotSeparable.class,
                JointFit.fit(List.of(
                        loaded(13, 50, 1, 8, false), loaded(13, 95, 1, 4, false), loaded(13, 170, 1, 2, false))));
        assertTrue(oneVoltage.reason().contains("one supply voltage alone"), oneVoltage.reason());
        JointFit.NotSeparable few =
                assertInstanceOf(JointFit.NotSeparable.class, JointFit.fit(into(4, false, 91.95003, 111.405116)));
        assertTrue(few.reason().contains("only 2 readings"), few.reason());
        assertInstanceOf(JointFit.NotSeparable.class, JointFit.fit(List.of()));
    }

    @Test
    void threeReadingsAreEnoughIfTheyDiffer() {
        JointFit.OutputStage stage = stage(List.of(
                loaded(11, 91.95003, 1, 4, false),
                loaded(14.4, 165.708792, 1, 4, false),
                loaded(14.4, 315.823673, 2, 2, false)));
        assertClose(0.1, stage.outputOhms(), REL_PRINTED * 10);
        assertTrue(stage.birgeRatio().isEmpty());
        assertTrue(stage.outputOhmsEstimate().standardUncertainty() > 0.001);
    }
}
