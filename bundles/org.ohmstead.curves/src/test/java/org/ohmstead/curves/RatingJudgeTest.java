// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.metrology.Verdict;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.Conditions;
import org.ohmstead.model.DistortionMeasure;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.Mode;
import org.ohmstead.model.PowerKind;
import org.ohmstead.model.Provenance;
import org.ohmstead.model.Rating;
import org.ohmstead.model.Reading;
import org.ohmstead.model.SheetSettings;
import org.ohmstead.model.Stimulus;
import org.ohmstead.model.UncertaintyPart;
import org.ohmstead.model.VerdictKind;
import org.ohmstead.model.VerdictRule;

class RatingJudgeTest {
    private static final EndPoint ONE_PERCENT = new EndPoint.DistortionLimit(0.01, DistortionMeasure.THD_F);
    private static final double SHARED_RATIO = 0.005;

    /** Closed form: V_peak = (2.8 V - 3) R / (R + 0.1), P = V_peak^2 / 2R; channel B gives 1 % less power. */
    private static double watts(double supplyVolts, double loadOhms) {
        double peak = (2.8 * supplyVolts - 3) * loadOhms / (loadOhms + 0.1);
        return peak * peak / (2 * loadOhms);
    }

    private static List<Reading> readings(double loadOhms, double... supplyVolts) {
        List<Reading> readings = new ArrayList<>();
        for (double volts : supplyVolts) {
            double watts = watts(volts, loadOhms);
            readings.add(reading(
                    loadOhms,
                    List.of(
                            channel("A", EndPointOutcome.REACHED, loadOhms, watts, volts),
                            channel("B", EndPointOutcome.REACHED, loadOhms, 0.99 * watts, volts))));
        }
        return readings;
    }

    @Test
    void fitsACurveForEachChannelAndKnowsItsWholeUncertainty() {
        List<LoadCurve> curves = LoadCurves.fit(readings(4, 11, 12, 12.6, 13.8));
        assertEquals(List.of("A", "B"), curves.stream().map(LoadCurve::channel).toList());
        LoadCurve curve = curves.get(0);
        assertEquals(165.708792, curve.powerAt(14.4).value(), 1e-4);
        // The meters' share does not average out, however many points there are.
        assertTrue(curve.powerAt(12.6).standardUncertainty() >= SHARED_RATIO * 123.9736);
        assertEquals(SHARED_RATIO, curve.sharedRelativeUncertainty(), 1e-9);
        PowerPoint point = curve.points().get(0);
        assertEquals(
                Math.hypot(SHARED_RATIO, LoadCurves.LEAST_OWN_RELATIVE) * point.powerWatts(),
                curve.totalStandardUncertaintyWatts(point),
                1e-9);
    }

    @Test
    void boundsAreNoPoints() {
        List<Reading> readings = new ArrayList<>(readings(4, 11, 12, 13.8));
        readings.add(reading(4, List.of(channel("A", EndPointOutcome.NOT_REACHED, 4, 20, 14.4))));
        assertEquals(3, LoadCurves.fit(readings).get(0).points().size());
        assertEquals(List.of(), LoadCurves.fit(readings.subList(3, 4)));
    }

    @Test
    void powerIsForTheNominalLoad() {
        // 4.04 ohm instead of 4: at (nearly) the same output voltage the power into 4 ohm is 1 % higher.
        Reading off = reading(4, List.of(channel("A", EndPointOutcome.REACHED, 4.04, 100, 14.4)));
        LoadCurve curve = LoadCurves.fit(List.of(off)).get(0);
        assertEquals(101, curve.points().get(0).powerWatts(), 1e-9);
        assertEquals(Math.hypot(SHARED_RATIO, 0.5 * 0.01 / Math.sqrt(3)), curve.sharedRelativeUncertainty(), 1e-9);
    }

    // Probabilities: standard normal distribution, Phi(-2) = 0.02275, Phi(0) = 0.5, Phi(2) = 0.97725 (any table); the
    // rated power is
    // set z standard uncertainties (0.5 % of the power) below the true one. The own scatter of 0.05 % moves them by
    // less than 0.005.
    @ParameterizedTest
    @CsvSource({"2, 0.97725, MEETS", "0, 0.5, UNDECIDED", "-2, 0.02275, FALLS_SHORT", "1, 0.84134, UNDECIDED"})
    void theWeakestChannelDecidesAtTheRatingsOwnVoltage(double z, double probability, Verdict verdict) {
        List<LoadCurve> curves = LoadCurves.fit(readings(4, 11, 12, 12.6, 13.8, 14.4));
        double truth = 0.99 * watts(13.2, 4);
        Rating rating = rating(truth * (1 - z * SHARED_RATIO), 4, 13.2, 0.01);
        RatingResult result = RatingJudge.judge(List.of(rating), curves, 0.95).get(0);
        RatingOutcome outcome = result.outcome().orElseThrow();
        assertEquals("B", outcome.channel());
        assertEquals(truth, outcome.powerWatts(), 1e-4 * truth);
        assertEquals(probability, outcome.probabilityMet(), 0.005);
        assertEquals(verdict, outcome.verdict());
        assertFalse(outcome.extrapolated());
        assertEquals("", result.remark());
    }

    // JCGM 106, clause 8: simple acceptance looks at the value alone; guarded acceptance needs 95 % to be met and 5 %
    // to be missed;
    // guarded rejection calls missed only what is met with less than 5 %. Probabilities as above, Phi(-1) = 0.15866;
    // the risk of a
    // verdict is the probability of its contrary (clause 9).
    @ParameterizedTest
    @CsvSource({
        "SIMPLE_ACCEPTANCE, 1, MEETS, 0.15866",
        "SIMPLE_ACCEPTANCE, -1, FALLS_SHORT, 0.15866",
        "GUARDED_ACCEPTANCE, 2, MEETS, 0.02275",
        "GUARDED_ACCEPTANCE, 1, UNDECIDED, NaN",
        "GUARDED_ACCEPTANCE, -1, UNDECIDED, NaN",
        "GUARDED_ACCEPTANCE, -2, FALLS_SHORT, 0.02275",
        "GUARDED_REJECTION, 1, MEETS, 0.15866",
        "GUARDED_REJECTION, -1, MEETS, 0.84134",
        "GUARDED_REJECTION, -2, FALLS_SHORT, 0.02275"
    })
    void theUsersRuleDecidesAndItsRiskIsStated(VerdictKind kind, double z, Verdict verdict, double risk) {
        List<LoadCurve> curves = LoadCurves.fit(readings(4, 11, 12, 12.6, 13.8, 14.4));
        double truth = 0.99 * watts(13.2, 4);
        Rating rating = rating(truth * (1 - z * SHARED_RATIO), 4, 13.2, 0.01);
        SheetSettings settings =
                new SheetSettings("", "", 0.95, "").withVerdictRule(Optional.of(new VerdictRule(kind, 0.05)));
        RatingOutcome outcome = RatingJudge.judge(List.of(rating), curves, settings)
                .get(0)
                .outcome()
                .orElseThrow();
        assertEquals(verdict, outcome.verdict());
        OptionalDouble stated = verdict == Verdict.MEETS ? outcome.consumersRisk() : outcome.producersRisk();
        assertEquals(risk, stated.orElse(Double.NaN), 0.005);
        OptionalDouble other = verdict == Verdict.MEETS ? outcome.producersRisk() : outcome.consumersRisk();
        assertEquals(OptionalDouble.empty(), other);
        // The stated interval keeps the sheet's confidence whatever the rule.
        assertEquals(1.96, outcome.coverageFactor(), 0.001);
    }

    @Test
    void withoutAChoiceItIsGuardedAcceptanceAtTheSheetsConfidence() {
        List<LoadCurve> curves = LoadCurves.fit(readings(4, 11, 12, 12.6, 13.8, 14.4));
        List<Rating> ratings = new ArrayList<>();
        for (double z = -3; z <= 3; z += 0.5) {
            ratings.add(rating(0.99 * watts(13.2, 4) * (1 - z * SHARED_RATIO), 4, 13.2, 0.01));
        }
        assertEquals(
                RatingJudge.judge(ratings, curves, 0.9),
                RatingJudge.judge(ratings, curves, new SheetSettings("", "", 0.9, "")));
    }

    @Test
    void saysAtWhichVoltageTheRatingIsJustMet() {
        List<LoadCurve> curves = LoadCurves.fit(readings(4, 11, 12, 13.8, 14.4));
        RatingOutcome outcome = RatingJudge.judge(List.of(rating(0.99 * watts(13.1, 4), 4, 14.4, 0.01)), curves, 0.95)
                .get(0)
                .outcome()
                .orElseThrow();
        assertEquals(13.1, outcome.justMetSupplyVolts().orElseThrow(), 1e-3);
    }

    @Test
    void saysWhatItCouldNotJudge() {
        List<LoadCurve> curves = LoadCurves.fit(readings(4, 11, 12, 12.5));
        List<RatingResult> results = RatingJudge.judge(
                List.of(
                        rating(100, 2, 14.4, 0.01),
                        rating(100, 4, 14.4, 0.1),
                        rating(100, 4, 14.4, 0.01),
                        rating(100, 4, 1.0, 0.01)),
                curves,
                0.95);
        assertTrue(results.get(0).outcome().isEmpty(), "another load");
        assertTrue(results.get(1).outcome().isEmpty(), "another distortion limit");
        assertTrue(results.get(2).outcome().orElseThrow().extrapolated());
        assertTrue(
                results.get(2).remark().contains("1.9 V outside the measured range"),
                results.get(2).remark());
        assertTrue(
                results.get(3).remark().contains("gives no power at 1.000 V"),
                results.get(3).remark());
    }

    @Test
    void saysWhenOneVoltageHadToDo() {
        List<LoadCurve> curves = LoadCurves.fit(readings(4, 12.6));
        RatingResult result = RatingJudge.judge(List.of(rating(100, 4, 14.4, 0.01)), curves, 0.95)
                .get(0);
        assertTrue(result.remark().contains("square law"), result.remark());
        // Naive scaling of 123.973635 W from 12.6 V to 14.4 V gives 161.924747 W (closed form); channel B has 99 % of
        // it.
        assertEquals(0.99 * 161.924747, result.outcome().orElseThrow().powerWatts(), 1e-4);
    }

    private static Rating rating(double powerWatts, double loadOhms, double supplyVolts, double distortionRatio) {
        return new Rating(
                "r", PowerKind.CONTINUOUS, Mode.STEREO, loadOhms, powerWatts, supplyVolts, distortionRatio, 1000, "");
    }

    private static ChannelReading channel(
            String name, EndPointOutcome outcome, double loadOhms, double powerWatts, double supplyVolts) {
        return new ChannelReading(
                name,
                outcome,
                loadOhms,
                powerWatts,
                SHARED_RATIO * powerWatts,
                Math.sqrt(powerWatts * loadOhms),
                1000,
                0.01,
                supplyVolts,
                OptionalDouble.empty(),
                List.of(new UncertaintyPart("meters", SHARED_RATIO * powerWatts, true)),
                List.of(),
                List.of());
    }

    private static Reading reading(double nominalOhms, List<ChannelReading> channels) {
        return new Reading(
                "s",
                Mode.STEREO,
                "l",
                nominalOhms,
                new Stimulus.ContinuousSine(1000),
                ONE_PERCENT,
                Instant.EPOCH,
                new Conditions(OptionalDouble.empty(), OptionalDouble.empty()),
                channels,
                new Provenance("0", "p", "1", "1", "", List.of(), List.of()),
                List.of());
    }
}
