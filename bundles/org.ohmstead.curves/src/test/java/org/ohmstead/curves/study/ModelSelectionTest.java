// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import java.util.function.ToDoubleBiFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.ohmstead.metrology.Estimate;
import org.ohmstead.model.Mode;

class ModelSelectionTest {
    private static final double SCATTER = 0.005;
    private static final double[] SEVEN_VOLTS = {11, 11.6, 12.2, 12.8, 13.4, 14, 14.6};
    private static final double[] THREE_LOADS = {8, 4, 2};
    private static final int CHOICES = 300;
    private static final int FITS = 1000;

    private static double regulated(double volts, double ohms) {
        return StudyData.unregulated(Math.min(volts, 12.9), ohms);
    }

    private static double limited(double volts, double ohms) {
        return Math.min(StudyData.unregulated(volts, ohms), 15 * ohms);
    }

    private static double steady(double ohms) {
        return 30 * ohms / (ohms + 0.1);
    }

    private static ToDoubleBiFunction<Double, Double> truth(ModelKind kind) {
        return switch (kind) {
            case REGULATED -> ModelSelectionTest::regulated;
            case CURRENT_LIMITED -> ModelSelectionTest::limited;
            case REGULATED_THROUGHOUT -> (volts, ohms) -> steady(ohms);
            default -> StudyData::unregulated;
        };
    }

    private static PowerStudy study(List<StudyPoint> points) {
        return assertInstanceOf(PowerStudy.class, PowerStudy.of(StudyRequest.of(points)));
    }

    @ParameterizedTest
    @EnumSource(names = {"UNREGULATED", "REGULATED", "REGULATED_THROUGHOUT", "CURRENT_LIMITED"})
    void theRightModelIsChosenWhereTheReadingsCanTell(ModelKind kind) {
        Random random = new Random(20260101);
        int right = 0;
        int clear = 0;
        for (int set = 0; set < CHOICES; set++) {
            PowerStudy study = study(StudyData.noisy(SEVEN_VOLTS, THREE_LOADS, SCATTER, random, truth(kind)));
            right += study.fit().kind() == kind ? 1 : 0;
            clear += study.fit().kind() == kind && study.choice().clear() ? 1 : 0;
        }
        assertTrue(right >= 0.95 * CHOICES, "right in " + right + " of " + CHOICES);
        assertTrue(clear >= 0.90 * CHOICES, "right and clear in " + clear + " of " + CHOICES);
    }

    @Test
    void theRightModelIsChosenForADroop() {
        Random random = new Random(20260102);
        int right = 0;
        int wrongly = 0;
        for (int set = 0; set < CHOICES; set++) {
            right += study(warmed(random, 0.004)).fit().kind() == ModelKind.DROOPING ? 1 : 0;
            wrongly += study(warmed(random, 0)).fit().kind() == ModelKind.UNREGULATED ? 0 : 1;
        }
        assertTrue(right >= 0.95 * CHOICES, "right in " + right + " of " + CHOICES);
        assertTrue(wrongly <= 0.05 * CHOICES, "wrong in " + wrongly + " of " + CHOICES);
    }

    /** Four runs without a rest at each of three voltages and two loads. */
    private static List<StudyPoint> warmed(Random random, double droop) {
        List<StudyPoint> points = new ArrayList<>();
        for (double volts : new double[] {11, 12.6, 14.4}) {
            for (double ohms : new double[] {4, 2}) {
                for (int run = 0; run < 4; run++) {
                    double peak = StudyData.unregulated(volts, ohms) * (1 - droop * run);
                    double watts = peak * peak / (2 * ohms);
                    double read = watts * (1 + SCATTER * random.nextGaussian());
                    points.add(StudyPoint.of(Mode.STEREO, ohms, volts, read, SCATTER * watts)
                            .warmed(OptionalDouble.empty(), OptionalInt.of(run)));
                }
            }
        }
        return points;
    }

    @Test
    void threeVoltagesIntoOneLoadCannotTell() {
        Random random = new Random(20260103);
        for (int set = 0; set < CHOICES; set++) {
            PowerStudy study = study(StudyData.noisy(
                    new double[] {11, 12.6, 14.4}, new double[] {4}, SCATTER, random, StudyData::unregulated));
            assertFalse(study.choice().clear());
            assertTrue(
                    study.choice().sentences().stream().anyMatch(sentence -> sentence.contains("can't be told")),
                    study.choice().sentences().toString());
        }
    }

    @Test
    void aKneeAndACurrentLimitCannotBeToldApartWithOneLoad() {
        Random random = new Random(20260104);
        PowerStudy study =
                study(StudyData.noisy(SEVEN_VOLTS, new double[] {4}, SCATTER, random, ModelSelectionTest::regulated));
        assertFalse(study.choice().clear());
        assertEquals(1, study.choice().rivals().size());
        assertTrue(
                study.choice().sentences().get(0).contains("Take readings into a second load"),
                study.choice().sentences().toString());
    }

    @Test
    void theKneeAndTheLimitAreFoundFromExactReadings() {
        Random unused = new Random(1);
        PowerStudy knee =
                study(StudyData.noisy(SEVEN_VOLTS, THREE_LOADS, 0, unused, ModelSelectionTest::regulated).stream()
                        .map(point -> StudyPoint.of(
                                point.mode(),
                                point.loadOhms(),
                                point.supplyVolts(),
                                point.powerWatts(),
                                SCATTER * point.powerWatts()))
                        .toList());
        SupplyModel.Regulated regulated =
                assertInstanceOf(SupplyModel.Regulated.class, knee.fit().model());
        assertEquals(12.9, regulated.kneeVolts(), 1e-5);
        assertEquals(2.8, regulated.gainRatio(), 1e-5);
        assertEquals(0, knee.percentPerVolt(14, 4, Mode.STEREO).orElseThrow().value());
        assertTrue(knee.supplyVoltsFor(1000, 4, Mode.STEREO).isEmpty());
        PowerStudy limit =
                study(StudyData.noisy(SEVEN_VOLTS, THREE_LOADS, 0, unused, ModelSelectionTest::limited).stream()
                        .map(point -> StudyPoint.of(
                                point.mode(),
                                point.loadOhms(),
                                point.supplyVolts(),
                                point.powerWatts(),
                                SCATTER * point.powerWatts()))
                        .toList());
        SupplyModel.CurrentLimited limited =
                assertInstanceOf(SupplyModel.CurrentLimited.class, limit.fit().model());
        assertEquals(15, limited.limitAmps(), 1e-5);
        // Into 2 ohm at most 15² x 2/2 W.
        assertEquals(225, ((PowerPrediction.Predicted) limit.predict(16, 2, Mode.STEREO)).powerWatts(), 1e-3);
    }

    @ParameterizedTest
    @EnumSource
    void valuesAreUnbiasedAndIntervalsCover(UncertaintyBasis basis) {
        Random random = new Random(20260105);
        StageParameter[] parameters = {StageParameter.GAIN, StageParameter.SATURATION_VOLTS, StageParameter.OUTPUT_OHMS
        };
        double[] truth = {2.8, 3, 0.1};
        double[] sums = new double[3];
        double[] uncertainties = new double[3];
        int[] covered = new int[5];
        double exact = Math.pow(StudyData.unregulated(13.2, 4), 2) / 8;
        for (int set = 0; set < FITS; set++) {
            PowerStudy study = (PowerStudy) PowerStudy.of(StudyRequest.of(StudyData.noisy(
                            StudyData.SUPPLY_VOLTS, THREE_LOADS, SCATTER, random, StudyData::unregulated))
                    .withBasis(basis));
            assertEquals(ModelKind.UNREGULATED, study.fit().kind());
            for (int j = 0; j < 3; j++) {
                Estimate estimate = study.fit().parameter(parameters[j]);
                sums[j] += estimate.value();
                uncertainties[j] += estimate.standardUncertainty();
                covered[j] += estimate.interval(0.95).contains(truth[j]) ? 1 : 0;
            }
            PowerPrediction.Predicted there = (PowerPrediction.Predicted) study.predict(13.2, 4, Mode.STEREO);
            covered[3] += there.confidenceInterval(0.95).contains(exact) ? 1 : 0;
            double next = exact * (1 + SCATTER * random.nextGaussian());
            covered[4] += there.predictionInterval(0.95).contains(next) ? 1 : 0;
        }
        for (int j = 0; j < 3; j++) {
            // The mean of 1,000 scatters by u/sqrt(1000); 3.3 of these are exceeded by chance once in 1,000.
            assertEquals(
                    truth[j], sums[j] / FITS, 3.3 * uncertainties[j] / FITS / Math.sqrt(FITS), parameters[j].words());
        }
        for (int share : covered) {
            assertTrue(share >= 930 && share <= 970, "covered " + share + " of " + FITS);
        }
    }
}
