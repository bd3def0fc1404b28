// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology.quality;

import java.util.List;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.ohmstead.metrology.internal.Checks;
import org.ohmstead.metrology.internal.FisherF;
import org.ohmstead.metrology.internal.Sentences;
import org.ohmstead.units.text.Messages;

/**
 * Repeatability and reproducibility of readings of the same thing, taken in groups: by operators, on benches or on days
 * (ISO 5725-2:2019, one-way analysis of variance, groups of unequal size allowed).
 *
 * @param groups the number of groups, at least 2
 * @param readings the number of all readings
 * @param mean the mean of all readings
 * @param repeatability the standard deviation s(r) within a group, at least 0
 * @param between the standard deviation s(L) of the groups' true means, at least 0; 0 if the means scatter no more than
 *     repeatability explains
 * @param withinMeanSquare the mean square within groups, s(r)²
 * @param betweenMeanSquare the mean square between groups
 * @param pValue how likely chance alone makes the groups differ as much (F test), 0 to 1
 */
public record PrecisionStudy(
        int groups,
        int readings,
        double mean,
        double repeatability,
        double between,
        double withinMeanSquare,
        double betweenMeanSquare,
        double pValue) {
    private static final Messages TEXTS = Messages.of(PrecisionStudy.class);

    private static final double PROBABLE = 0.95;
    private static final double SELDOM = 0.05;

    /** Checks the ranges given above. */
    public PrecisionStudy {
        Checks.finite("mean", mean);
        Checks.notNegative("repeatability", repeatability);
        Checks.notNegative("between", between);
        Checks.notNegative("withinMeanSquare", withinMeanSquare);
        Checks.notNegative("betweenMeanSquare", betweenMeanSquare);
        Checks.notNegative("pValue", pValue);
        if (groups < 2 || readings <= groups) {
            throw new IllegalArgumentException("groups is " + groups + " with " + readings
                    + " readings but there must be at least two groups and more readings than groups.");
        }
    }

    /**
     * Returns the study.
     *
     * @param groups at least two groups of at least one finite reading, more readings than groups
     */
    public static PrecisionStudy of(List<double[]> groups) {
        int count = 0;
        double sum = 0;
        double sizeSquares = 0;
        double squaresWithin = 0;
        List<Group> sums = groups.stream().map(Group::of).toList();
        for (Group group : sums) {
            count += group.count();
            sum += group.count() * group.mean();
            sizeSquares += (double) group.count() * group.count();
            squaresWithin += group.squares();
        }
        int groupCount = sums.size();
        if (groupCount < 2 || count <= groupCount) {
            throw new IllegalArgumentException("groups has " + groupCount + " groups with " + count
                    + " readings but there must be at least two groups and more readings than groups.");
        }
        double mean = sum / count;
        double squaresBetween = 0;
        for (Group group : sums) {
            squaresBetween += group.count() * (group.mean() - mean) * (group.mean() - mean);
        }
        double within = squaresWithin / (count - groupCount);
        double between = squaresBetween / (groupCount - 1);
        double typicalSize = (count - sizeSquares / count) / (groupCount - 1);
        return new PrecisionStudy(
                groupCount,
                count,
                mean,
                Math.sqrt(within),
                Math.sqrt(Math.max(0, (between - within) / typicalSize)),
                within,
                between,
                FisherF.above(between, groupCount - 1.0, within, count - (double) groupCount));
    }

    /** Returns the reproducibility standard deviation s(R) = sqrt(s(r)² + s(L)²). */
    public double reproducibility() {
        return Math.hypot(repeatability, between);
    }

    /**
     * Returns the repeatability limit r = 2.77 s(r), which two readings of the same group differ by with a probability
     * of at most 5 % (ISO 5725-6; that rounds the factor to 2.8).
     */
    public double repeatabilityLimit() {
        return limit(repeatability, PROBABLE);
    }

    /** Returns the reproducibility limit R = 2.77 s(R), the same for two readings of different groups. */
    public double reproducibilityLimit() {
        return limit(reproducibility(), PROBABLE);
    }

    /**
     * Returns the difference of two readings that is exceeded with probability 1 - confidence: sqrt(2) times the
     * two-sided normal quantile times their standard deviation.
     *
     * @param standardDeviation of one reading, at least 0
     * @param confidence strictly between 0 and 1
     */
    public static double limit(double standardDeviation, double confidence) {
        Checks.notNegative("standardDeviation", standardDeviation);
        Checks.probability("confidence", confidence);
        double quantile = new NormalDistribution(0, 1).inverseCumulativeProbability(0.5 + confidence / 2);
        return Math.sqrt(2) * quantile * standardDeviation;
    }

    /** Returns whether the groups differ by more than chance makes them, at a risk of a false alarm of 5 %. */
    public boolean groupsDiffer() {
        return pValue < SELDOM;
    }

    /**
     * Returns the result in whole sentences.
     *
     * @param what one group in words, e.g. "operator" or "bench"
     * @param unit the unit of the readings, may be empty
     */
    public String sentence(String what, String unit) {
        String differ = TEXTS.text(
                Sentences.keyOf(TEXTS, groupsDiffer() ? "precision.differ" : "precision.alike", what),
                Sentences.plural(what));
        return TEXTS.text(
                Sentences.keyOf(TEXTS, "precision", what),
                Sentences.quantity(repeatabilityLimit(), unit),
                Sentences.quantity(reproducibilityLimit(), unit),
                differ,
                what,
                Sentences.plural(what));
    }
}
