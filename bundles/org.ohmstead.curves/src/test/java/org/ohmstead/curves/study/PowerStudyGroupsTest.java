// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.ohmstead.curves.study.PowerStudyTest.assertClose;
import static org.ohmstead.curves.study.PowerStudyTest.point;
import static org.ohmstead.curves.study.PowerStudyTest.predicted;
import static org.ohmstead.curves.study.PowerStudyTest.says;
import static org.ohmstead.curves.study.PowerStudyTest.study;
import static org.ohmstead.curves.study.PowerStudyTest.value;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.ohmstead.metrology.DecisionRule;
import org.ohmstead.metrology.Verdict;
import org.ohmstead.model.Mode;
import org.ohmstead.model.PowerKind;
import org.ohmstead.model.Rating;

class PowerStudyGroupsTest {
    private static final double REL_PRINTED = 1e-5;

    @Test
    void oneChannelOnlyLeavesTheOthersOut() {
        List<StudyPoint> points = new ArrayList<>();
        StudyData.exact().forEach(point -> points.add(point.in("set", "A")));
        StudyData.exact()
                .forEach(point ->
                        points.add(point(point.mode(), point.loadOhms(), point.supplyVolts(), 0.8 * point.powerWatts())
                                .in("set", "B")));
        PowerStudy study = study(StudyRequest.of(points).withChannels(new ChannelChoice.One("B")));
        assertClose(2.8 * Math.sqrt(0.8), value(study, StageParameter.GAIN), REL_PRINTED);
        assertEquals(15, study.refused().size());
    }

    @Test
    void aChannelThatGivesLessIsNamed() {
        List<StudyPoint> points = new ArrayList<>();
        StudyData.exact().forEach(point -> points.add(point.in("set", "A")));
        StudyData.exact()
                .forEach(point ->
                        points.add(point(point.mode(), point.loadOhms(), point.supplyVolts(), 0.98 * point.powerWatts())
                                .in("set", "B")));
        PowerStudy study = study(points);
        List<GroupOffset> offsets = GroupOffset.of(study);
        assertEquals(2, offsets.size());
        // Channel A has 0.5 % uncertainty, B 1 % of slightly less: the curve lies 4 times nearer to A.
        assertEquals(0.2, -offsets.get(0).meanRelative() / offsets.get(1).meanRelative() * 0.8, 0.02);
        assertTrue(offsets.get(1).clear());
        assertTrue(
                says(study, "The 15 readings with channel B lie"),
                study.findings().toString());
    }

    @Test
    void twoReadingsIntoTwoLoadsAreScaledBySquareLaw() {
        PowerStudy study = study(List.of(point(Mode.STEREO, 4, 12.37, 91), point(Mode.BRIDGED, 4, 12.5, 261)));
        assertEquals(ModelKind.PROPORTIONAL, study.fit().kind());
        assertTrue(says(study, "into the same load"));
    }

    @Test
    void eachDataSetHasItsOwnStudy() {
        List<StudyPoint> points = new ArrayList<>();
        StudyData.exact().forEach(point -> points.add(point.in("first", "A")));
        points.add(StudyPoint.of(Mode.STEREO, 4, 0, 1, 1).in("second", "A"));
        Map<String, StudyOutcome> each = PowerStudy.ofEach(StudyRequest.of(points));
        assertEquals(List.of("first", "second"), List.copyOf(each.keySet()));
        assertInstanceOf(PowerStudy.class, each.get("first"));
        assertInstanceOf(StudyOutcome.Refused.class, each.get("second"));
    }

    @Test
    void aBoundThatHoldsIsSaid() {
        PowerStudy study = study(StudyRequest.of(StudyData.exact())
                .withAllowed(Set.of(ModelKind.UNREGULATED))
                .withBounds(StageParameter.OUTPUT_OHMS, 0.15, 1));
        assertEquals(0.15, value(study, StageParameter.OUTPUT_OHMS));
        assertEquals(0, study.fit().parameter(StageParameter.OUTPUT_OHMS).standardUncertainty());
        assertTrue(says(study, "ended on its bound"), study.findings().toString());
    }

    // --- ratings

    private static Rating rating(double watts, double volts, double ohms) {
        return new Rating("r", PowerKind.CONTINUOUS, Mode.STEREO, ohms, watts, volts, 0.01, 1000, "");
    }

    @Test
    void ratingsAreJudgedAtTheirOwnVoltage() {
        PowerStudy study = study(StudyRequest.of(StudyData.exact()).withSharedRelativeUncertainty(0.01));
        List<StudyRating> results = StudyRating.of(
                study, List.of(rating(150, 14.4, 4), rating(180, 14.4, 4), rating(165, 14.4, 4)), DecisionRule.DEFAULT);
        StudyRating.Finding meets = results.get(0).finding().orElseThrow();
        assertEquals(Verdict.MEETS, meets.assessment().verdict());
        // Closed form: 165.708792 W; 150 W where (2.8 V - 3)² 4/(2 x 4.1²) = 150.
        assertEquals(15.708792, meets.excessWatts(), 1e-3);
        assertEquals(10 * Math.log10(165.708792 / 150), meets.differenceDb(), 1e-5);
        double volts = (Math.sqrt(150 * 2 * 4.1 * 4.1 / 4) + 3) / 2.8;
        assertEquals(volts, meets.justMetSupplyVolts().orElseThrow(), 1e-4);
        assertEquals(
                Verdict.FALLS_SHORT,
                results.get(1).finding().orElseThrow().assessment().verdict());
        StudyRating.Finding close = results.get(2).finding().orElseThrow();
        assertEquals(Verdict.UNDECIDED, close.assessment().verdict());
        // The shared 1 % dominates: 1.657 W.
        assertEquals(1.657, close.prediction().wholeUncertaintyWatts(), 0.1);
        assertTrue(results.get(0).sentence().startsWith("Meets its rating of 150 W at 14.4 V: 165.7 W, +15.7 W"));
        StudyRating unknown = StudyRating.of(
                        study(StudyData.exact(4, StudyData.FOUR_OHM)),
                        List.of(rating(300, 14.4, 2)),
                        DecisionRule.DEFAULT)
                .get(0);
        assertTrue(unknown.finding().isEmpty());
        assertTrue(unknown.sentence().startsWith("Not judged."), unknown.sentence());
    }

    // --- drooping

    @Test
    void droopWithTemperatureIsFound() {
        // Closed form: peak volts (2.8 V - 3)(1 - 0.002 (T - 30)) into 4 and 2 ohm with 0.1 ohm.
        List<StudyPoint> points = new ArrayList<>();
        for (int k = 0; k < 20; k++) {
            double ohms = k % 2 == 0 ? 4 : 2;
            double volts = 11 + 0.5 * (k % 8);
            double celsius = 30 + 2.5 * ((7 * k) % 20);
            double peak = (2.8 * volts - 3) * (1 - 0.002 * (celsius - 30)) * ohms / (ohms + 0.1);
            double watts = peak * peak / (2 * ohms);
            points.add(StudyPoint.of(Mode.STEREO, ohms, volts, watts, 0.005 * watts)
                    .warmed(OptionalDouble.of(celsius), OptionalInt.empty()));
        }
        PowerStudy study = study(points);
        assertEquals(ModelKind.DROOPING, study.fit().kind());
        SupplyModel.Drooping model =
                assertInstanceOf(SupplyModel.Drooping.class, study.fit().model());
        assertClose(0.002, model.droopRatio(), REL_PRINTED);
        assertClose(2.8, model.gainRatio(), REL_PRINTED);
        assertEquals(30, model.coldAt());
        assertEquals(SupplyModel.WarmingMeasure.CASE_CELSIUS, model.by());
        // 1 - (1 - 0.002)² = 0.4 % of power per kelvin.
        assertTrue(says(study, "each kelvin of case temperature changes the power by about -0.4 %"));
        assertClose(
                Math.pow((2.8 * 14 - 3) * 4 / 4.1, 2) / 8,
                predicted(study, 14, 4, Mode.STEREO).powerWatts(),
                1e-5);
    }
}
