// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology;

import java.util.TreeSet;
import java.util.function.DoubleUnaryOperator;
import org.hipparchus.analysis.solvers.BrentSolver;
import org.ohmstead.metrology.internal.Checks;
import org.ohmstead.metrology.internal.GaussPanels;
import org.ohmstead.metrology.internal.NormalCurve;
import org.ohmstead.metrology.internal.Sentences;
import org.ohmstead.units.text.Messages;

/**
 * How often a test of many items goes wrong, before any of them is measured (JCGM 106:2012, clause 9): true values are
 * normally distributed by the prior, measured values scatter normally about the true ones.
 *
 * @param consumersRisk the fraction of all items that are bad and yet accepted, 0 to 1
 * @param producersRisk the fraction of all items that are good and yet rejected, 0 to 1
 * @param conforming the fraction of all items that are good, 0 to 1
 * @param accepted the fraction of all items that are accepted, 0 to 1
 */
public record GlobalRisks(double consumersRisk, double producersRisk, double conforming, double accepted) {
    private static final Messages TEXTS = Messages.of(GlobalRisks.class);

    private static final double WIDEST = 9;
    private static final int MOST_STEPS = 300;
    private static final int MOST_DOUBLINGS = 200;
    private static final double[] EDGES = {0, 1, 2, 3, 4.5, 6, 8};

    /** Checks that all four lie between 0 and 1. */
    public GlobalRisks {
        checkFraction("consumersRisk", consumersRisk);
        checkFraction("producersRisk", producersRisk);
        checkFraction("conforming", conforming);
        checkFraction("accepted", accepted);
    }

    /**
     * Returns the risks of a test.
     *
     * @param prior the items' true values
     * @param standardUncertainty the standard uncertainty of one measurement, at least 0
     * @param tolerance the allowed true values
     * @param acceptance the accepted measured values
     */
    public static GlobalRisks of(
            NormalPrior prior, double standardUncertainty, ToleranceInterval tolerance, ToleranceInterval acceptance) {
        Checks.notNegative("standardUncertainty", standardUncertainty);
        Ends allowed = Ends.of(tolerance);
        Ends passed = Ends.of(acceptance);
        double[] breaks = breaks(prior, standardUncertainty, allowed, passed);
        DoubleUnaryOperator density =
                x -> NormalCurve.density((x - prior.mean()) / prior.standardDeviation()) / prior.standardDeviation();
        double consumers = GaussPanels.overBreaks(
                x -> allowed.holds(x) ? 0 : density.applyAsDouble(x) * passed.fraction(x, standardUncertainty), breaks);
        double producers = GaussPanels.overBreaks(
                x -> allowed.holds(x) ? density.applyAsDouble(x) * passed.missed(x, standardUncertainty) : 0, breaks);
        double conforming = prior.conforming(tolerance);
        double accepted = acceptance.probabilityWithin(
                Estimate.of(prior.mean(), Math.hypot(prior.standardDeviation(), standardUncertainty)));
        return new GlobalRisks(clipped(consumers), clipped(producers), conforming, accepted);
    }

    /**
     * Returns the narrowest guard band, at least 0, that keeps the global consumer's risk down to a wanted value
     * (guarded acceptance); 0 if simple acceptance does already.
     *
     * @param prior the items' true values
     * @param standardUncertainty the standard uncertainty of one measurement, at least 0
     * @param tolerance the allowed true values
     * @param consumersRisk the wanted risk, strictly between 0 and 1
     */
    public static double guardBandForConsumersRisk(
            NormalPrior prior, double standardUncertainty, ToleranceInterval tolerance, double consumersRisk) {
        Checks.probability("consumersRisk", consumersRisk);
        return narrowest(
                guard -> tolerance
                        .narrowedBy(guard)
                        .map(accepted -> of(prior, standardUncertainty, tolerance, accepted)
                                .consumersRisk())
                        .orElse(0.0),
                consumersRisk,
                Math.max(standardUncertainty, prior.standardDeviation() / 100));
    }

    /**
     * Returns the narrowest guard band outside the limits, at least 0, that keeps the global producer's risk down to a
     * wanted value (guarded rejection: widen the tolerance by it, {@link ToleranceInterval#narrowedBy} with its
     * negative); 0 if simple acceptance does already.
     *
     * @param prior the items' true values
     * @param standardUncertainty the standard uncertainty of one measurement, at least 0
     * @param tolerance the allowed true values
     * @param producersRisk the wanted risk, strictly between 0 and 1
     */
    public static double guardBandForProducersRisk(
            NormalPrior prior, double standardUncertainty, ToleranceInterval tolerance, double producersRisk) {
        Checks.probability("producersRisk", producersRisk);
        return narrowest(
                guard -> of(
                                prior,
                                standardUncertainty,
                                tolerance,
                                tolerance.narrowedBy(-guard).orElseThrow())
                        .producersRisk(),
                producersRisk,
                Math.max(standardUncertainty, prior.standardDeviation() / 100));
    }

    /** Returns the two risks in whole sentences, counted in items of ten thousand tested. */
    public String sentence() {
        return TEXTS.text(
                "risks",
                Sentences.number(1e4 * consumersRisk),
                Sentences.number(1e4 * producersRisk),
                Sentences.percent(conforming),
                Sentences.percent(accepted));
    }

    private static double narrowest(DoubleUnaryOperator riskOfGuard, double wanted, double firstStep) {
        if (riskOfGuard.applyAsDouble(0) <= wanted) {
            return 0;
        }
        double wide = firstStep;
        for (int i = 0; i < MOST_DOUBLINGS && riskOfGuard.applyAsDouble(wide) > wanted; i++) {
            wide *= 2;
        }
        return new BrentSolver(1e-13, 1e-12 * wide)
                .solve(MOST_STEPS, guard -> riskOfGuard.applyAsDouble(guard) - wanted, 0, wide);
    }

    private static double[] breaks(NormalPrior prior, double uncertainty, Ends allowed, Ends passed) {
        double low = prior.mean() - WIDEST * prior.standardDeviation();
        double high = prior.mean() + WIDEST * prior.standardDeviation();
        TreeSet<Double> breaks = new TreeSet<>();
        for (int i = (int) -WIDEST; i <= WIDEST; i++) {
            breaks.add(prior.mean() + i * prior.standardDeviation());
        }
        for (double end : new double[] {allowed.lower, allowed.upper, passed.lower, passed.upper}) {
            for (double edge : EDGES) {
                breaks.add(end - edge * uncertainty);
                breaks.add(end + edge * uncertainty);
            }
        }
        return breaks.stream()
                .mapToDouble(Double::doubleValue)
                .filter(x -> x >= low && x <= high)
                .toArray();
    }

    private static double clipped(double fraction) {
        return Math.max(0, Math.min(1, fraction));
    }

    private static void checkFraction(String name, double fraction) {
        if (!(fraction >= 0 && fraction <= 1)) {
            throw new IllegalArgumentException(name + " is " + fraction + " but must lie between 0 and 1.");
        }
    }

    /** The two ends of an interval, infinite where there is no limit. */
    private record Ends(double lower, double upper) {

        static Ends of(ToleranceInterval interval) {
            if (interval instanceof ToleranceInterval.AtLeast atLeast) {
                return new Ends(atLeast.limit(), Double.POSITIVE_INFINITY);
            }
            if (interval instanceof ToleranceInterval.AtMost atMost) {
                return new Ends(Double.NEGATIVE_INFINITY, atMost.limit());
            }
            ToleranceInterval.Within within = (ToleranceInterval.Within) interval;
            return new Ends(within.lower(), within.upper());
        }

        boolean holds(double value) {
            return value >= lower && value <= upper;
        }

        double fraction(double trueValue, double uncertainty) {
            if (uncertainty <= 0) {
                return holds(trueValue) ? 1 : 0;
            }
            return NormalCurve.between((lower - trueValue) / uncertainty, (upper - trueValue) / uncertainty);
        }

        double missed(double trueValue, double uncertainty) {
            if (uncertainty <= 0) {
                return holds(trueValue) ? 0 : 1;
            }
            return NormalCurve.below((lower - trueValue) / uncertainty)
                    + NormalCurve.below((trueValue - upper) / uncertainty);
        }
    }
}
