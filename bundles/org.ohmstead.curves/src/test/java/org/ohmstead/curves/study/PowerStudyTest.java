// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.ohmstead.metrology.CoverageInterval;
import org.ohmstead.model.Mode;

class PowerStudyTest {
    private static final double REL_PRINTED = 1e-5;
    private static final double REL_1PPM = 1e-6;

    static PowerStudy study(StudyRequest request) {
        return assertInstanceOf(PowerStudy.class, PowerStudy.of(request));
    }

    static PowerStudy study(List<StudyPoint> points) {
        return study(StudyRequest.of(points));
    }

    static PowerPrediction.Predicted predicted(PowerStudy study, double volts, double ohms, Mode mode) {
        return assertInstanceOf(PowerPrediction.Predicted.class, study.predict(volts, ohms, mode));
    }

    static double value(PowerStudy study, StageParameter parameter) {
        return study.fit().parameter(parameter).value();
    }

    static void assertClose(double expected, double actual, double relative) {
        assertEquals(expected, actual, Math.abs(expected) * relative);
    }

    static boolean says(PowerStudy study, String words) {
        return study.findings().stream().anyMatch(sentence -> sentence.contains(words));
    }

    static StudyPoint point(Mode mode, double ohms, double volts, double watts) {
        return StudyPoint.of(mode, ohms, volts, watts, 0.01 * watts);
    }

    // --- exact data

    @Test
    void exactDataGiveTheirValuesBack() {
        // Closed form with g = 2.8, V_s = 3, R_o = 0.1.
        PowerStudy study = study(StudyData.exact());
        assertEquals(ModelKind.UNREGULATED, study.fit().kind());
        assertTrue(study.choice().clear());
        assertClose(2.8, value(study, StageParameter.GAIN), REL_PRINTED);
        assertClose(3, value(study, StageParameter.SATURATION_VOLTS), REL_PRINTED);
        assertClose(0.1, value(study, StageParameter.OUTPUT_OHMS), REL_PRINTED);
        // 2 x 2.8/(2.8 x 12.7 - 3) = 17.2 % per volt.
        assertTrue(
                says(study, "Unregulated: power follows the supply; each extra volt near 12.7 V gives about 17 %."),
                study.findings().toString());
        assertClose(
                200 * 2.8 / (2.8 * 12.7 - 3),
                study.percentPerVolt(12.7, 4, Mode.STEREO).orElseThrow().value(),
                REL_PRINTED);
        // At 14.4 V bridged into 4 ohm 2 x 315.823673 W.
        assertClose(631.647346, predicted(study, 14.4, 4, Mode.BRIDGED).powerWatts(), REL_PRINTED);
        assertClose(14.4, study.supplyVoltsFor(631.647346, 4, Mode.BRIDGED).orElseThrow(), REL_PRINTED);
        double leverages = study.fit().diagnostics().residuals().stream()
                .mapToDouble(ResidualPoint::leverage)
                .sum();
        // The leverages add up to the number of values found.
        assertEquals(3, leverages, 1e-6);
    }

    @Test
    void naiveScalingGivesTooLittleUpward() {
        // Closed form: the 12.6 V reading into 4 ohm scaled to 14.4 V gives 161.924747 W, truth 165.708792 W, -0.100323
        // dB.
        NaiveScaling naive = NaiveScaling.of(study(StudyData.exact()), 12.6, 14.4, 4, Mode.STEREO)
                .orElseThrow();
        assertClose(161.924747, naive.naiveWatts(), REL_PRINTED);
        assertClose(165.708792, naive.studyWatts(), REL_PRINTED);
        assertEquals(-0.100323, naive.naiveAboveStudyDb(), 1e-5);
    }

    @Test
    void normalisedTableHoldsTheClosedForm() {
        NormalisedTable table = NormalisedTable.of(study(StudyData.exact()), List.of(12.0, 14.4));
        assertEquals(3, table.rows().size());
        assertEquals(8, table.rows().get(0).load().loadOhms());
        PowerPrediction.Predicted last = assertInstanceOf(
                PowerPrediction.Predicted.class,
                table.rows().get(2).predictions().get(1));
        assertClose(315.823673, last.powerWatts(), REL_PRINTED);
        assertEquals(List.of(12.0, 12.6, 13.8, 14.4), NormalisedTable.USUAL_VOLTS);
    }

    // --- practice values (common practice, no source)

    private static List<StudyPoint> practice() {
        return List.of(
                point(Mode.STEREO, 4, 12.37, 91),
                point(Mode.STEREO, 4, 13.57, 110),
                point(Mode.BRIDGED, 4, 12.5, 261),
                point(Mode.BRIDGED, 4, 13.53, 313),
                point(Mode.BRIDGED, 4, 14.16, 350));
    }

    @Test
    void practiceValuesPredictEachOtherWithinThreePercent() {
        PowerStudy study = study(StudyRequest.of(practice()).withAllowed(Set.of(ModelKind.UNREGULATED)));
        CurveMembership membership = CurveMembership.of(study);
        for (CurveMembership.Check check : membership.checks()) {
            assertTrue(check.predicted().isPresent(), check.sentence());
            assertEquals(0, check.relativeDeviation(), 0.03, check.sentence());
            assertTrue(check.onCurve(), check.sentence());
        }
    }

    @Test
    void thePracticeValueOffTheCurveIsNamed() {
        List<StudyPoint> points = new ArrayList<>(practice());
        StudyPoint off = point(Mode.STEREO, 4, 14.2, 112);
        points.add(off);
        CurveMembership membership =
                CurveMembership.of(study(StudyRequest.of(points).withAllowed(Set.of(ModelKind.UNREGULATED))));
        assertEquals(1, membership.offCurve().size(), membership.toString());
        CurveMembership.Check check = membership.offCurve().get(0);
        assertEquals(off, check.point());
        assertTrue(
                check.sentence().contains("112 W into 4 ohm at 14.2 V does not lie on the same curve as the others"),
                check.sentence());
        // SciPy curve_fit of the five others gives 122.7796 W there.
        assertEquals(122.7796, check.predicted().orElseThrow().value(), 0.001);
        assertTrue(says(study(points), "112 W into 4 ohm at 14.2 V does not lie on the same curve"));
    }

    // --- against SciPy

    // power_fit.py beside the tests, on the readings of StudyData.sixty(): values, standard errors, correlations 01,
    // 02,
    // 12, chi², power and standard error at 13 V into 4 ohm and at 16 V bridged into 2 ohm.
    private static final double[] SCIPY = {
        2.78863129216, 2.85676095141, 0.0999066203014, 0.00990663648054, 0.122342495302, 0.00211859638404,
                0.97996947157,
        0.196774666694, 0.0163230336182, 41.5143748194, 132.695610486, 0.102020276647, 1441.57490358, 4.28852358399
    };

    private static void assertAgrees(double[] scipy, PowerStudy study) {
        List<FittedParameter> found = study.fit().parameters();
        for (int j = 0; j < 3; j++) {
            assertClose(scipy[j], found.get(j).estimate().value(), REL_1PPM);
            assertClose(scipy[3 + j], found.get(j).estimate().standardUncertainty(), REL_1PPM);
        }
        assertClose(scipy[6], study.fit().covariance().correlation(0, 1), REL_1PPM);
        assertClose(scipy[7], study.fit().covariance().correlation(0, 2), REL_1PPM);
        assertClose(scipy[8], study.fit().covariance().correlation(1, 2), 1e-4);
        assertClose(scipy[9], study.fit().chiSquared(), REL_1PPM);
        PowerPrediction.Predicted inside = predicted(study, 13, 4, Mode.STEREO);
        assertClose(scipy[10], inside.powerWatts(), REL_1PPM);
        assertClose(scipy[11], inside.curveUncertaintyWatts(), REL_PRINTED);
        // Chi² is below its degrees of freedom, so the interval is normal: 1.959964 u.
        CoverageInterval interval = inside.confidenceInterval(0.95);
        assertClose(scipy[10] - 1.959964 * scipy[11], interval.lower(), REL_1PPM);
        assertClose(scipy[10] + 1.959964 * scipy[11], interval.upper(), REL_1PPM);
        CoverageInterval one = inside.predictionInterval(0.95);
        // The readings' relative uncertainty is 0.5 % of the exact power; about that of the reading.
        assertClose(2 * 1.959964 * Math.hypot(scipy[11], 0.005 * scipy[10]), one.width(), 2e-3);
        PowerPrediction.Predicted outside = predicted(study, 16, 2, Mode.BRIDGED);
        assertClose(scipy[12], outside.powerWatts(), REL_1PPM);
        // The square of a normal peak voltage has a little more variance than the linear formula, by u²/(2V²).
        assertClose(scipy[13], outside.curveUncertaintyWatts(), 2e-5);
        assertEquals(1.5, outside.distance().voltsOutside(), 1e-9);
        assertEquals(1, outside.distance().channelOhmsOutside(), 1e-9);
        assertTrue(outside.distance().outside());
        assertTrue(outside.distance().leverageRatio() > 1);
        assertTrue(inside.distance().sentence().isEmpty());
    }

    @Test
    void agreesWithSciPy() {
        assertAgrees(SCIPY, study(StudyData.sixty()));
    }

    @Test
    void robustFitAgreesWithSciPyAndNamesTheOutliers() {
        // huber_fit.py beside the tests: readings 10 and 33 of the sixty changed by +10 % and -8 %.
        double[] scipy = {2.78204009669, 2.78593271585, 0.0986944383431, 1.09219101529, 131.396769344};
        List<StudyPoint> points = new ArrayList<>(StudyData.sixty());
        change(points, 10, 1.1);
        change(points, 33, 0.92);
        PowerStudy plain = study(StudyRequest.of(points).withAllowed(Set.of(ModelKind.UNREGULATED)));
        PowerStudy robust = study(StudyRequest.of(points)
                .withAllowed(Set.of(ModelKind.UNREGULATED))
                .withRobust(true));
        for (int j = 0; j < 3; j++) {
            double value = robust.fit().parameters().get(j).estimate().value();
            assertClose(scipy[j], value, 1e-5);
            assertTrue(Math.abs(value - SCIPY[j])
                    < Math.abs(plain.fit().parameters().get(j).estimate().value() - SCIPY[j]));
        }
        assertClose(scipy[4], robust.fit().chiSquared(), 1e-4);
        List<ResidualPoint> outliers = robust.fit().diagnostics().outliers();
        assertEquals(2, outliers.size(), outliers.toString());
        assertEquals(points.get(10), outliers.get(0).point());
        assertEquals(points.get(33), outliers.get(1).point());
        assertTrue(outliers.get(0).weight() < 0.2);
        assertTrue(says(robust, "above the curve"), robust.findings().toString());
    }

    private static void change(List<StudyPoint> points, int index, double factor) {
        StudyPoint old = points.get(index);
        points.set(
                index,
                StudyPoint.of(
                        old.mode(),
                        old.loadOhms(),
                        old.supplyVolts(),
                        factor * old.powerWatts(),
                        old.standardUncertaintyWatts()));
    }

    // --- what cannot be told

    @Test
    void oneLoadGivesReducedValuesAndSaysSo() {
        PowerStudy study = study(StudyData.exact(4, StudyData.FOUR_OHM));
        // g R/(R + R_o) and V_s R/(R + R_o) with R = 4, R_o = 0.1.
        assertClose(2.8 * 4 / 4.1, value(study, StageParameter.GAIN), REL_PRINTED);
        assertClose(3 * 4 / 4.1, value(study, StageParameter.SATURATION_VOLTS), REL_PRINTED);
        assertTrue(study.fit().model().outputOhms().isEmpty());
        assertTrue(says(study, "cannot be separated with one load"));
        assertClose(165.708792, predicted(study, 14.4, 4, Mode.STEREO).powerWatts(), REL_PRINTED);
        // A bridged 8 ohm load is the same for each channel; another load is not.
        assertClose(2 * 165.708792, predicted(study, 14.4, 8, Mode.BRIDGED).powerWatts(), REL_PRINTED);
        PowerPrediction.Unknown other =
                assertInstanceOf(PowerPrediction.Unknown.class, study.predict(14.4, 2, Mode.STEREO));
        assertTrue(other.reason().contains("second load"), other.reason());
        assertTrue(study.supplyVoltsFor(100, 2, Mode.STEREO).isEmpty());
    }

    @Test
    void oneVoltageGivesTheSquareLawAndSaysSo() {
        PowerStudy study = study(List.of(
                point(Mode.STEREO, 8, 12.6, 63.526804),
                point(Mode.STEREO, 4, 12.6, 123.973635),
                point(Mode.STEREO, 2, 12.6, 236.280816)));
        assertEquals(ModelKind.PROPORTIONAL, study.fit().kind());
        assertClose(0.1, value(study, StageParameter.OUTPUT_OHMS), 1e-4);
        assertClose(
                123.973635 * Math.pow(14.4 / 12.6, 2),
                predicted(study, 14.4, 4, Mode.STEREO).powerWatts(),
                1e-5);
        assertTrue(says(study, "square law"));
        assertTrue(says(study, "Take readings at a second voltage into the same load"));
        assertEquals(1.8, predicted(study, 14.4, 4, Mode.STEREO).distance().voltsOutside(), 1e-9);
    }

    @Test
    void oneReadingIsScaledAndNoMore() {
        PowerStudy study = study(List.of(point(Mode.STEREO, 4, 12, 100)));
        assertClose(144, predicted(study, 14.4, 4, Mode.STEREO).powerWatts(), REL_1PPM);
        // The only uncertainty is the reading's 1 %.
        assertClose(1.44, predicted(study, 14.4, 4, Mode.STEREO).curveUncertaintyWatts(), 1e-4);
        assertTrue(study.choice().sentences().get(0).contains("is assumed"));
    }

    @Test
    void impossibleReadingsAreRefusedWithTheRemedyAndTheRestIsUsed() {
        List<StudyPoint> points = new ArrayList<>(StudyData.exact());
        points.add(StudyPoint.of(Mode.STEREO, 4, 12, 0, 1));
        points.add(StudyPoint.of(Mode.STEREO, 4, 12, -5, 1));
        points.add(StudyPoint.of(Mode.STEREO, 4, 0, 100, 1));
        points.add(StudyPoint.of(Mode.STEREO, 4, 12600, 124, 1));
        points.add(StudyPoint.of(Mode.STEREO, 4, 12.6, 124_000, 100));
        points.add(StudyPoint.of(Mode.STEREO, 0, 12.6, 124, 1));
        points.add(StudyPoint.of(Mode.STEREO, 4, 12.6, 124, 0));
        points.add(StudyPoint.of(Mode.STEREO, 4, 12.6, 124, 1000));
        PowerStudy study = study(points);
        assertEquals(15, study.points().size());
        assertClose(2.8, value(study, StageParameter.GAIN), REL_PRINTED);
        List<String> reasons =
                study.refused().stream().map(RefusedPoint::reason).toList();
        assertEquals(8, reasons.size(), reasons.toString());
        assertTrue(reasons.get(0).contains("Void the reading"), reasons.toString());
        assertTrue(reasons.get(2).contains("Enter the voltage at the amplifier's terminals"), reasons.toString());
        assertTrue(reasons.get(3).contains("millivolts"), reasons.toString());
        assertTrue(reasons.stream().anyMatch(reason -> reason.contains("about 1000 times above")), reasons.toString());
        assertTrue(reasons.stream().anyMatch(reason -> reason.contains("Enter the resistance")), reasons.toString());
        assertTrue(reasons.stream().anyMatch(reason -> reason.contains("no uncertainty")), reasons.toString());
        assertTrue(reasons.stream().anyMatch(reason -> reason.contains("Enter both in watts")), reasons.toString());
    }

    @Test
    void nothingUsableIsRefused() {
        StudyOutcome.Refused none =
                assertInstanceOf(StudyOutcome.Refused.class, PowerStudy.of(StudyRequest.of(List.of())));
        assertTrue(none.reason().contains("no readings"), none.reason());
        StudyOutcome.Refused bad = assertInstanceOf(
                StudyOutcome.Refused.class,
                PowerStudy.of(StudyRequest.of(List.of(StudyPoint.of(Mode.STEREO, 4, 0, 1, 1)))));
        assertEquals(1, bad.refused().size());
        StudyOutcome.Refused model = assertInstanceOf(
                StudyOutcome.Refused.class,
                PowerStudy.of(StudyRequest.of(List.of(point(Mode.STEREO, 4, 12, 100)))
                        .withAllowed(Set.of(ModelKind.REGULATED))));
        assertTrue(model.reason().contains("Allow more models"), model.reason());
        assertThrows(IllegalArgumentException.class, () -> StudyPoint.of(Mode.STEREO, 4, Double.NaN, 1, 1));
        assertThrows(
                IllegalArgumentException.class, () -> StudyRequest.of(List.of()).withAllowed(Set.of()));
    }
}
