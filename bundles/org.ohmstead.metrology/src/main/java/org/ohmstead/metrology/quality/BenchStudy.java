// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology.quality;

import org.ohmstead.metrology.internal.Sentences;
import org.ohmstead.units.text.Messages;

/**
 * What operators and benches each add to the scatter of one check standard: every operator measures it several times on
 * every bench.
 *
 * @param anova the analysis: operators are its rows, benches its columns
 * @param components the variance components
 */
public record BenchStudy(TwoWayAnova anova, TwoWayAnova.Components components) {
    private static final Messages TEXTS = Messages.of(BenchStudy.class);

    private static final double PROBABLE = 0.95;

    /**
     * Returns the study.
     *
     * @param cells readings by operator, bench and repeat: at least two of each, the same number of repeats everywhere
     * @param poolAbove see {@link TwoWayAnova#components}
     */
    public static BenchStudy of(double[][][] cells, double poolAbove) {
        TwoWayAnova anova = TwoWayAnova.of(cells);
        return new BenchStudy(anova, anova.components(poolAbove));
    }

    /** Returns the standard deviation of repeats by one operator on one bench. */
    public double repeatability() {
        return Math.sqrt(components.repeatability());
    }

    /** Returns the standard deviation of a reading by any operator on any bench. */
    public double reproducibility() {
        return Math.sqrt(components.total());
    }

    /** Returns the operators' share of the whole variance, 0 to 1; 0 if nothing scatters. */
    public double operatorShare() {
        return share(components.rows());
    }

    /** Returns the benches' share of the whole variance, 0 to 1; 0 if nothing scatters. */
    public double benchShare() {
        return share(components.columns());
    }

    /** Returns the share of what single operators do on single benches, 0 to 1; 0 if nothing scatters. */
    public double interactionShare() {
        return share(components.interaction());
    }

    /** Returns the repeats' share of the whole variance, 0 to 1; 0 if nothing scatters. */
    public double repeatabilityShare() {
        return share(components.repeatability());
    }

    /** Returns the repeatability limit r = 2.77 s(r), see {@link PrecisionStudy#repeatabilityLimit}. */
    public double repeatabilityLimit() {
        return PrecisionStudy.limit(repeatability(), PROBABLE);
    }

    /** Returns the reproducibility limit R = 2.77 s(R), see {@link PrecisionStudy#reproducibilityLimit}. */
    public double reproducibilityLimit() {
        return PrecisionStudy.limit(reproducibility(), PROBABLE);
    }

    /** Returns the result in whole sentences; the unit may be empty. */
    public String sentence(String unit) {
        return TEXTS.text(
                "bench.sentence",
                Sentences.quantity(repeatabilityLimit(), unit),
                Sentences.quantity(reproducibilityLimit(), unit),
                Sentences.percent(operatorShare()),
                Sentences.percent(benchShare()),
                Sentences.percent(interactionShare()),
                Sentences.percent(repeatabilityShare()));
    }

    private double share(double variance) {
        return components.total() > 0 ? variance / components.total() : 0;
    }
}
