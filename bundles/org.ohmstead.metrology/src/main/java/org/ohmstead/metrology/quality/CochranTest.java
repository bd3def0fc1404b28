// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology.quality;

import java.util.List;
import org.ohmstead.metrology.internal.Checks;
import org.ohmstead.metrology.internal.FisherF;
import org.ohmstead.metrology.internal.Sentences;
import org.ohmstead.units.text.Messages;

/**
 * Cochran's test whether one group of readings scatters more than the others (ISO 5725-2): C is its share of the sum of
 * all variances. Critical values are 1/(1 + (p - 1)/F) with F exceeded with probability significance/p at n - 1 and (p
 * - 1)(n - 1) degrees of freedom, which is exact to the first Bonferroni bound. Groups of unequal size are weighted by
 * their degrees of freedom, and the one least likely by chance is suspected (R. U. E. 't Lam, Analytica Chimica Acta
 * 659, 2010).
 */
public final class CochranTest {
    private static final Messages TEXTS = Messages.of(CochranTest.class);

    /**
     * What the test found.
     *
     * @param index the suspected group, counted from 0
     * @param standardDeviation the standard deviation within it
     * @param statistic its share of the sum of variances, each weighted by its degrees of freedom, 0 to 1; 0 if no
     *     group scatters at all
     * @param criticalValue the largest share to be expected from chance alone
     * @param pValue how likely chance alone makes a share as large, 0 to 1 (at most this, by Bonferroni's bound)
     * @param outlier whether the share exceeds the critical value
     */
    public record Outcome(
            int index,
            double standardDeviation,
            double statistic,
            double criticalValue,
            double pValue,
            boolean outlier) {

        /**
         * Returns the outcome in a whole sentence that counts groups from 1.
         *
         * @param what one group in words, e.g. "operator"
         * @param unit the unit of the readings, may be empty
         */
        public String sentence(String what, String unit) {
            String deviation = Sentences.quantity(standardDeviation, unit);
            return outlier
                    ? TEXTS.text("cochran.outlier", what, Integer.toString(index + 1), deviation)
                    : TEXTS.text("cochran.none", what, deviation);
        }
    }

    private CochranTest() {}

    /**
     * Returns the critical value for groups of equal size.
     *
     * @param groups the number of groups p, at least 2
     * @param readings the number of readings n in each, at least 2
     * @param significance the risk of a false alarm, strictly between 0 and 1, e.g. 0.05
     */
    public static double criticalValue(int groups, int readings, double significance) {
        Checks.probability("significance", significance);
        if (groups < 2 || readings < 2) {
            throw new IllegalArgumentException(
                    "groups and readings are " + groups + " and " + readings + " but must each be at least 2.");
        }
        return critical(readings - 1.0, groups * (readings - 1.0), significance / groups);
    }

    /**
     * Returns the outcome for the group that scatters most.
     *
     * @param groups at least two groups of at least two finite readings each
     * @param significance the risk of a false alarm, strictly between 0 and 1
     */
    public static Outcome test(List<double[]> groups, double significance) {
        Checks.probability("significance", significance);
        if (groups.size() < 2) {
            throw new IllegalArgumentException("groups has " + groups.size() + " groups but needs at least two.");
        }
        List<Group> sums = groups.stream().map(Group::of).toList();
        double allSquares = 0;
        double allFreedom = 0;
        for (Group group : sums) {
            if (group.freedom() < 1) {
                throw new IllegalArgumentException("A group has one reading but each needs at least two.");
            }
            allSquares += group.squares();
            allFreedom += group.freedom();
        }
        int suspect = 0;
        double smallest = Double.POSITIVE_INFINITY;
        for (int i = 0; i < sums.size(); i++) {
            Group group = sums.get(i);
            double chance = FisherF.above(
                    group.squares() / group.freedom(),
                    group.freedom(),
                    Math.max(0, allSquares - group.squares()) / (allFreedom - group.freedom()),
                    allFreedom - group.freedom());
            if (chance < smallest) {
                smallest = chance;
                suspect = i;
            }
        }
        Group group = sums.get(suspect);
        double statistic = allSquares > 0 ? group.squares() / allSquares : 0;
        double critical = critical(group.freedom(), allFreedom, significance / sums.size());
        return new Outcome(
                suspect,
                Math.sqrt(group.squares() / group.freedom()),
                statistic,
                critical,
                Math.min(1, sums.size() * smallest),
                statistic > critical);
    }

    private static double critical(double freedom, double allFreedom, double tail) {
        double ratio = FisherF.upperQuantile(tail, freedom, allFreedom - freedom);
        return 1 / (1 + (allFreedom / freedom - 1) / ratio);
    }
}
