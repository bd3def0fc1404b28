// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.ohmstead.metrology.internal.StudentT;
import org.ohmstead.metrology.quality.ControlLimits;
import org.ohmstead.metrology.quality.IndividualsChart;
import org.ohmstead.metrology.quality.SubgroupChart;

/** What holds for every uncertainty, interval, verdict and chart. */
class MetrologyLawsTest {
    private static final double RATIO = 1e-9;

    @Property(seed = "20261171", tries = 300)
    void intervalsNestAndHoldTheValue(
            @ForAll("estimates") Estimate estimate,
            @ForAll @DoubleRange(min = 0.01, max = 0.99) double one,
            @ForAll @DoubleRange(min = 0.01, max = 0.99) double other) {
        CoverageInterval narrow = estimate.interval(Math.min(one, other));
        CoverageInterval wide = estimate.interval(Math.max(one, other));
        assertTrue(narrow.contains(estimate.value()));
        assertTrue(wide.lower() <= narrow.lower() && narrow.upper() <= wide.upper());
        assertTrue(estimate.coverageFactor(one) > 0);
        assertEquals(
                2 * estimate.expandedUncertainty(one),
                estimate.interval(one).width(),
                RATIO * (1 + Math.abs(estimate.value())));
    }

    /** The tails of Student's t fall to those of the normal distribution as the degrees of freedom rise, never below. */
    @Property(seed = "20261172", tries = 300)
    void studentsDistributionNarrowsToTheNormalOne(
            @ForAll @DoubleRange(min = 0.51, max = 0.99) double probability,
            @ForAll @IntRange(min = 1, max = 200) int degrees) {
        double few = StudentT.quantile(probability, degrees);
        double more = StudentT.quantile(probability, degrees + 1.0);
        double normal = StudentT.quantile(probability, Double.POSITIVE_INFINITY);
        assertTrue(few >= more - RATIO && more >= normal - RATIO, few + ", " + more + ", " + normal);
        assertEquals(-few, StudentT.quantile(1 - probability, degrees), 1e-7 * (1 + few));
        assertEquals(probability, StudentT.below(few, degrees), 1e-8);
        assertEquals(normal, StudentT.quantile(probability, 1e7), 1e-5);
    }

    @Property(seed = "20261173", tries = 300)
    void variancesOfIndependentContributionsAdd(@ForAll("contributions") List<Contribution> contributions) {
        Estimate combined = new UncertaintyBudget(5, contributions, List.of()).combined();
        double squares = contributions.stream()
                .mapToDouble(each -> each.effect() * each.effect())
                .sum();
        assertEquals(Math.sqrt(squares), combined.standardUncertainty(), RATIO * Math.sqrt(squares));
        double least = contributions.stream()
                .mapToDouble(Contribution::degreesOfFreedom)
                .min()
                .orElseThrow();
        double sum = contributions.stream()
                .mapToDouble(Contribution::degreesOfFreedom)
                .sum();
        // Welch and Satterthwaite: no fewer than the least, no more than all together (JCGM 100 G.4.1).
        if (squares > 0) {
            assertTrue(combined.degreesOfFreedom() >= least * (1 - RATIO));
            assertTrue(combined.degreesOfFreedom() <= sum * (1 + RATIO));
        }
        List<Contribution> turned = new ArrayList<>(contributions);
        Collections.reverse(turned);
        Estimate other = new UncertaintyBudget(5, turned, List.of()).combined();
        assertEquals(combined.standardUncertainty(), other.standardUncertainty(), RATIO * Math.sqrt(squares));
        double shares = new UncertaintyBudget(5, contributions, List.of())
                .rows().stream()
                        .mapToDouble(UncertaintyBudget.Row::varianceShare)
                        .sum();
        assertEquals(squares > 0 ? 1 : 0, shares, RATIO);
    }

    @Property(seed = "20261174", tries = 200)
    void correlationLiesBetweenCancellingAndAdding(
            @ForAll @DoubleRange(min = 0.01, max = 100) double one,
            @ForAll @DoubleRange(min = 0.01, max = 100) double other,
            @ForAll @DoubleRange(min = -1, max = 1) double coefficient) {
        UncertaintyBudget budget = UncertaintyBudget.of(
                        0,
                        new Contribution("a", 1, one, Double.POSITIVE_INFINITY),
                        new Contribution("b", 1, other, Double.POSITIVE_INFINITY))
                .withCorrelation("a", "b", coefficient);
        double combined = budget.combined().standardUncertainty();
        assertTrue(combined >= Math.abs(one - other) - 1e-7 && combined <= one + other + 1e-7);
        double expected = Math.sqrt(Math.max(0, one * one + other * other + 2 * coefficient * one * other));
        assertEquals(expected, combined, 1e-7);
    }

    @Property(seed = "20261175", tries = 150)
    void aLinePassesOnItsUncertainties(
            @ForAll @Size(min = 3, max = 9) List<@IntRange(min = -50, max = 50) Integer> scatter,
            @ForAll @DoubleRange(min = 0.1, max = 50) double scale)
            throws FitException {
        int count = scatter.size();
        double[] x = IntStream.range(0, count).mapToDouble(i -> i).toArray();
        double[] y = IntStream.range(0, count)
                .mapToDouble(i -> 3 + 2 * i + scatter.get(i) / 100.0)
                .toArray();
        LinearFit fit = LinearFit.line(x, y);
        Covariance covariance = fit.covariance();
        assertEquals(covariance.get(0, 1), covariance.get(1, 0));
        assertEquals(covariance.correlation(0, 1), covariance.correlation(1, 0));
        assertTrue(Math.abs(covariance.correlation(0, 1)) <= 1 + RATIO);
        assertTrue(covariance.standardUncertainty(0) >= 0 && covariance.standardUncertainty(1) >= 0);
        // Another unit of y changes the coefficients with it; the residuals are at right angles to the line.
        double[] scaled =
                IntStream.range(0, count).mapToDouble(i -> scale * y[i]).toArray();
        LinearFit other = LinearFit.line(x, scaled);
        double sum = 0;
        for (int i = 0; i < count; i++) {
            sum += y[i] - fit.coefficient(0) - fit.coefficient(1) * x[i];
        }
        assertEquals(0, sum, 1e-9);
        for (int k = 0; k < 2; k++) {
            assertEquals(scale * fit.coefficient(k), other.coefficient(k), 1e-8 * scale);
            assertEquals(
                    scale * fit.estimate(k).standardUncertainty(),
                    other.estimate(k).standardUncertainty(),
                    1e-7 * scale);
        }
    }

    @Property(seed = "20261176", tries = 12)
    void drawsAndPropagationAgreeOnLinearModels(
            @ForAll @Size(min = 1, max = 4) List<@IntRange(min = -5, max = 5) Integer> factors,
            @ForAll @IntRange(min = 1, max = 1000) int seed) {
        int count = factors.size();
        double[] means = IntStream.range(0, count).mapToDouble(i -> 10 + i).toArray();
        double[] uncertainties =
                IntStream.range(0, count).mapToDouble(i -> 0.1 * (i + 1)).toArray();
        Propagation gum = Propagation.numericScalar(
                inputs -> sum(factors, inputs), means, Covariance.uncorrelated(uncertainties));
        MonteCarlo draws = MonteCarlo.run(
                inputs -> sum(factors, inputs),
                IntStream.range(0, count)
                        .mapToObj(i -> new Distribution.Normal(means[i], uncertainties[i]))
                        .toList(),
                20_000,
                seed);
        double uncertainty = gum.estimate(0).standardUncertainty();
        assertEquals(sum(factors, means), gum.estimate(0).value(), 1e-9);
        // Five standard errors of a mean and of a standard deviation of so many draws.
        assertEquals(gum.estimate(0).value(), draws.mean(), 5 * uncertainty / Math.sqrt(20_000) + 1e-9);
        assertEquals(uncertainty, draws.standardUncertainty(), 5 * uncertainty / Math.sqrt(40_000) + 1e-6);
        CoverageInterval half = draws.symmetricInterval(0.5);
        CoverageInterval most = draws.symmetricInterval(0.95);
        assertTrue(most.lower() <= half.lower() && half.upper() <= most.upper());
        assertTrue(draws.shortestInterval(0.95).width() <= most.width() + 1e-12);
    }

    @Property(seed = "20261177", tries = 400)
    void whatIsAcceptedWithAGuardBandIsAcceptedWithout(
            @ForAll("estimates") Estimate measured,
            @ForAll @DoubleRange(min = -3, max = 3) double offset,
            @ForAll @DoubleRange(min = 0.5, max = 0.99) double one,
            @ForAll @DoubleRange(min = 0.5, max = 0.99) double other) {
        double limit = measured.value() - offset * measured.standardUncertainty();
        double lax = Math.min(one, other);
        double strict = Math.max(one, other);
        Verdict plain = least(measured, limit, new DecisionRule.SimpleAcceptance());
        Verdict guarded = least(measured, limit, new DecisionRule.GuardedAcceptance(strict));
        Verdict laxer = least(measured, limit, new DecisionRule.GuardedAcceptance(lax));
        Verdict rejected = least(measured, limit, new DecisionRule.GuardedRejection(strict));
        implies(guarded == Verdict.MEETS, plain == Verdict.MEETS);
        implies(guarded == Verdict.MEETS, laxer == Verdict.MEETS);
        implies(guarded == Verdict.FALLS_SHORT, laxer == Verdict.FALLS_SHORT || strict == lax);
        implies(plain == Verdict.MEETS, rejected == Verdict.MEETS);
        implies(rejected == Verdict.FALLS_SHORT, plain == Verdict.FALLS_SHORT);
        double met = Conformity.assessAtLeast(measured, limit, new DecisionRule.SimpleAcceptance())
                .probabilityMet();
        double kept = Conformity.assessAtMost(measured, limit, new DecisionRule.SimpleAcceptance())
                .probabilityMet();
        assertEquals(1, met + kept, 1e-9);
    }

    @Property(seed = "20261178", tries = 400)
    void aHigherLimitNeverMakesTheVerdictBetter(
            @ForAll("estimates") Estimate measured,
            @ForAll @DoubleRange(min = -4, max = 4) double offset,
            @ForAll @DoubleRange(min = 0, max = 5) double higher,
            @ForAll("rules") DecisionRule rule) {
        double limit = measured.value() + offset * measured.standardUncertainty();
        double raised = limit + higher * measured.standardUncertainty();
        Assessment low = Conformity.assessAtLeast(measured, limit, rule);
        Assessment high = Conformity.assessAtLeast(measured, raised, rule);
        assertTrue(rank(high.verdict()) <= rank(low.verdict()));
        assertTrue(high.probabilityMet() <= low.probabilityMet() + 1e-12);
    }

    @Property(seed = "20261179", tries = 200)
    void limitsOfChartsStandInOrderAndFollowTheUnit(
            @ForAll @Size(min = 4, max = 30) List<@IntRange(min = -500, max = 500) Integer> drawn,
            @ForAll @IntRange(min = -100, max = 100) int shift,
            @ForAll @DoubleRange(min = 0.1, max = 10) double scale) {
        double[] values = drawn.stream().mapToDouble(each -> each / 10.0).toArray();
        if (drawn.stream().distinct().count() < 2) {
            return;
        }
        IndividualsChart chart = IndividualsChart.of(values);
        ordered(chart.readings());
        ordered(chart.ranges());
        assertTrue(chart.ranges().lower() >= 0 && chart.sigma() > 0);
        double[] moved =
                drawn.stream().mapToDouble(each -> shift + scale * each / 10.0).toArray();
        IndividualsChart other = IndividualsChart.of(moved);
        assertEquals(shift + scale * chart.readings().centre(), other.readings().centre(), 1e-8);
        assertEquals(shift + scale * chart.readings().upper(), other.readings().upper(), 1e-8);
        assertEquals(scale * chart.ranges().upper(), other.ranges().upper(), 1e-8);
    }

    @Property(seed = "20261180", tries = 100)
    void limitsOfSubgroupsStandInOrder(
            @ForAll @IntRange(min = 2, max = 10) int size,
            @ForAll @IntRange(min = 2, max = 12) int groups,
            @ForAll SubgroupChart.Spread spread,
            @ForAll Random random) {
        List<double[]> drawn = IntStream.range(0, groups)
                .mapToObj(i -> random.doubles(size, 9, 11).toArray())
                .toList();
        SubgroupChart chart = SubgroupChart.of(drawn, spread);
        ordered(chart.means());
        ordered(chart.spreads());
        assertTrue(chart.spreads().lower() >= 0 && chart.sigma() > 0);
        assertEquals(
                drawn.stream().flatMapToDouble(Arrays::stream).average().orElseThrow(),
                chart.means().centre(),
                1e-9);
    }

    @Provide
    Arbitrary<Estimate> estimates() {
        return Combinators.combine(
                        Arbitraries.integers().between(-9999, 9999),
                        Arbitraries.integers().between(1, 999),
                        Arbitraries.of(1.0, 2.0, 3.0, 5.0, 9.0, 50.0, Double.POSITIVE_INFINITY))
                .as((value, uncertainty, degrees) -> new Estimate(value / 10.0, uncertainty / 100.0, degrees));
    }

    @Provide
    Arbitrary<DecisionRule> rules() {
        return Arbitraries.of(
                new DecisionRule.SimpleAcceptance(),
                new DecisionRule.GuardedAcceptance(0.95),
                new DecisionRule.GuardedAcceptance(0.6),
                new DecisionRule.GuardedRejection(0.95),
                new DecisionRule.GuardedRejection(0.5));
    }

    @Provide
    Arbitrary<List<Contribution>> contributions() {
        return Combinators.combine(
                        Arbitraries.integers().between(-20, 20),
                        Arbitraries.integers().between(0, 500),
                        Arbitraries.of(1.0, 4.0, 9.0, Double.POSITIVE_INFINITY))
                .as((sensitivity, uncertainty, degrees) ->
                        new Contribution("c", sensitivity / 4.0, uncertainty / 100.0, degrees))
                .list()
                .ofMinSize(1)
                .ofMaxSize(6)
                .map(MetrologyLawsTest::named);
    }

    private static List<Contribution> named(List<Contribution> drawn) {
        return IntStream.range(0, drawn.size())
                .mapToObj(i -> new Contribution(
                        "c" + i,
                        drawn.get(i).sensitivity(),
                        drawn.get(i).standardUncertainty(),
                        drawn.get(i).degreesOfFreedom()))
                .toList();
    }

    private static double sum(List<Integer> factors, double[] inputs) {
        return IntStream.range(0, inputs.length)
                .mapToDouble(i -> factors.get(i) * inputs[i])
                .sum();
    }

    private static Verdict least(Estimate measured, double limit, DecisionRule rule) {
        return Conformity.assessAtLeast(measured, limit, rule).verdict();
    }

    private static int rank(Verdict verdict) {
        return switch (verdict) {
            case MEETS -> 2;
            case UNDECIDED -> 1;
            default -> 0;
        };
    }

    private static void implies(boolean given, boolean then) {
        assertTrue(!given || then);
    }

    private static void ordered(ControlLimits limits) {
        assertTrue(limits.lower() <= limits.centre() && limits.centre() <= limits.upper(), limits.toString());
    }
}
