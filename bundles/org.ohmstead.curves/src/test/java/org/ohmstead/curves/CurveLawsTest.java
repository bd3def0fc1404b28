// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import org.ohmstead.metrology.CoverageInterval;
import org.ohmstead.metrology.Verdict;
import org.ohmstead.model.DistortionMeasure;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.Mode;
import org.ohmstead.model.PowerKind;
import org.ohmstead.model.Rating;
import org.ohmstead.model.SheetSettings;
import org.ohmstead.model.VerdictKind;
import org.ohmstead.model.VerdictRule;

/** What must hold for curves through any plausible readings, and for verdicts on them. */
class CurveLawsTest {
    /** An output stage and the readings of it: supply volts in tenths, and how far each lies off, in permille of its power. */
    record Bench(int slopeTenths, int offsetTenths, int loadTenths, List<Integer> volts, List<Integer> scatter) {
        double loadOhms() {
            return loadTenths / 10.0;
        }

        List<PowerPoint> points(double voltsFactor, double powerFactor, double uncertaintyFactor) {
            List<PowerPoint> points = new ArrayList<>();
            for (int i = 0; i < volts.size(); i++) {
                double supply = volts.get(i) / 10.0;
                double peak = slopeTenths / 10.0 * supply - offsetTenths / 10.0;
                double watts = peak * peak / (2 * loadOhms()) * (1 + scatter.get(i % scatter.size()) / 1000.0);
                points.add(new PowerPoint(
                        voltsFactor * supply,
                        powerFactor * watts,
                        powerFactor * uncertaintyFactor * 0.005 * watts,
                        ""));
            }
            return points;
        }

        PowerCurve curve() {
            return PowerCurveFit.fit(points(1, 1, 1), loadOhms());
        }
    }

    @Property(seed = "20261201", tries = 200)
    void powerRisesWithTheSupplyAndLiesBetweenTheEnds(
            @ForAll("benches") Bench bench, @ForAll @DoubleRange(max = 1) double share) {
        PowerCurve curve = bench.curve();
        double low = curve.lowestSupplyVolts();
        double high = curve.highestSupplyVolts();
        double before = curve.predict(low).powerWatts();
        double last = curve.predict(high).powerWatts();
        for (int i = 1; i <= 10; i++) {
            double now = curve.predict(low + (high - low) * i / 10).powerWatts();
            assertTrue(now >= before * (1 - 1e-12), before + " and then " + now);
            before = now;
        }
        Prediction between = curve.predict(low + (high - low) * share);
        assertTrue(between.powerWatts() >= curve.predict(low).powerWatts() * (1 - 1e-12));
        assertTrue(between.powerWatts() <= last * (1 + 1e-12));
        assertTrue(!between.extrapolated());
        assertEquals(
                between.supplyVolts(),
                curve.supplyVoltsFor(between.powerWatts()).orElseThrow(),
                1e-6);
        PowerPoint point = curve.points().get(0);
        assertEquals(
                point.powerWatts(),
                curve.normalize(point, point.supplyVolts()).powerWatts(),
                1e-9 * point.powerWatts());
    }

    @Property(seed = "20261202", tries = 200)
    void intervalsHoldTheEstimateAndNest(
            @ForAll("benches") Bench bench,
            @ForAll @DoubleRange(min = 9, max = 16) double supplyVolts,
            @ForAll @DoubleRange(min = 0.1, max = 0.9) double level) {
        Prediction prediction = bench.curve().predict(supplyVolts);
        CoverageInterval narrow = prediction.confidenceInterval(level);
        CoverageInterval wide = prediction.confidenceInterval(level + 0.09);
        CoverageInterval next = prediction.predictionInterval(level);
        assertTrue(narrow.contains(prediction.powerWatts()));
        assertTrue(wide.lower() <= narrow.lower() && narrow.upper() <= wide.upper());
        assertTrue(next.lower() <= narrow.lower() && narrow.upper() <= next.upper());
    }

    @Property(seed = "20261203", tries = 150)
    void neitherOrderNorUnitsOfTheReadingsMatter(
            @ForAll("benches") Bench bench,
            @ForAll @DoubleRange(min = 9, max = 16) double supplyVolts,
            @ForAll @DoubleRange(min = 0.1, max = 10) double factor,
            @ForAll Random random) {
        Prediction plain = bench.curve().predict(supplyVolts);
        List<PowerPoint> shuffled = new ArrayList<>(bench.points(1, 1, 1));
        Collections.shuffle(shuffled, random);
        same(plain, 1, PowerCurveFit.fit(shuffled, bench.loadOhms()).predict(supplyVolts));
        same(
                plain,
                factor,
                PowerCurveFit.fit(bench.points(1, factor, 1), bench.loadOhms()).predict(supplyVolts));
        // With all voltages in another unit; the choice of the model has a voltage in it, so that this holds for fitted
        // ones.
        PowerCurve scaled = PowerCurveFit.fit(bench.points(1 + factor, 1, 1), bench.loadOhms());
        if (bench.curve() instanceof SaturationCurve) {
            same(plain, 1, scaled.predict((1 + factor) * supplyVolts));
        }
        Prediction doubtful = PowerCurveFit.fit(bench.points(1, 1, 1 + factor), bench.loadOhms())
                .predict(supplyVolts);
        assertEquals(plain.powerWatts(), doubtful.powerWatts(), 1e-5 * (1 + plain.powerWatts()));
        assertTrue(doubtful.standardUncertaintyWatts() >= plain.standardUncertaintyWatts() * (1 - 1e-5));
    }

    @Property(seed = "20261204", tries = 200)
    void aHigherRatingNeverGetsABetterVerdict(
            @ForAll("benches") Bench bench,
            @ForAll @DoubleRange(min = 11, max = 15) double supplyVolts,
            @ForAll @DoubleRange(min = 0.9, max = 1.1) double share,
            @ForAll @DoubleRange(min = 1, max = 1.2) double higher,
            @ForAll VerdictKind kind) {
        double watts = share * bench.curve().predict(supplyVolts).powerWatts();
        SheetSettings settings =
                new SheetSettings("", "", 0.95, "").withVerdictRule(Optional.of(new VerdictRule(kind, 0.05)));
        RatingOutcome low = judged(bench, watts, supplyVolts, settings);
        RatingOutcome high = judged(bench, higher * watts, supplyVolts, settings);
        assertTrue(rank(high.verdict()) <= rank(low.verdict()));
        assertTrue(high.probabilityMet() <= low.probabilityMet() + 1e-12);
        assertEquals(low.powerWatts(), high.powerWatts());
        // What is accepted with a guard band is accepted without.
        SheetSettings simple =
                settings.withVerdictRule(Optional.of(new VerdictRule(VerdictKind.SIMPLE_ACCEPTANCE, 0.05)));
        if (kind == VerdictKind.GUARDED_ACCEPTANCE && low.verdict() == Verdict.MEETS) {
            assertEquals(
                    Verdict.MEETS, judged(bench, watts, supplyVolts, simple).verdict());
        }
    }

    @Provide
    Arbitrary<Bench> benches() {
        return Combinators.combine(
                        Arbitraries.integers().between(8, 40),
                        Arbitraries.integers().between(0, 40),
                        Arbitraries.integers().between(5, 80),
                        Arbitraries.integers()
                                .between(110, 150)
                                .list()
                                .ofMinSize(2)
                                .ofMaxSize(7),
                        Arbitraries.integers()
                                .between(-2, 2)
                                .list()
                                .ofMinSize(1)
                                .ofMaxSize(7))
                .as(Bench::new)
                .filter(CurveLawsTest::farEnoughApart);
    }

    /** Readings of a permille of scatter need some volts between them, or their line may fall. */
    private static boolean farEnoughApart(Bench bench) {
        int span = Collections.max(bench.volts()) - Collections.min(bench.volts());
        return span == 0 || span >= 10;
    }

    private static RatingOutcome judged(Bench bench, double watts, double supplyVolts, SheetSettings settings) {
        EndPoint endPoint = new EndPoint.DistortionLimit(0.01, DistortionMeasure.THD_F);
        LoadCurve curve = new LoadCurve(
                PowerKind.CONTINUOUS,
                Mode.STEREO,
                bench.loadOhms(),
                "A",
                endPoint,
                1000,
                bench.points(1, 1, 1),
                0.01,
                bench.curve());
        Rating rating = new Rating(
                "r", PowerKind.CONTINUOUS, Mode.STEREO, bench.loadOhms(), watts, supplyVolts, 0.01, 1000, "");
        return RatingJudge.judge(List.of(rating), List.of(curve), settings)
                .get(0)
                .outcome()
                .orElseThrow();
    }

    private static int rank(Verdict verdict) {
        return switch (verdict) {
            case MEETS -> 2;
            case UNDECIDED -> 1;
            default -> 0;
        };
    }

    private static void same(Prediction expected, double factor, Prediction actual) {
        double watts = factor * expected.powerWatts();
        assertEquals(watts, actual.powerWatts(), 1e-5 * (factor + watts));
        double uncertainty = factor * expected.standardUncertaintyWatts();
        assertEquals(uncertainty, actual.standardUncertaintyWatts(), 1e-3 * (uncertainty + 1e-3 * factor));
    }
}
