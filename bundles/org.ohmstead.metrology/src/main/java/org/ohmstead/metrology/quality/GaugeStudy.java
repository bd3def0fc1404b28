// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology.quality;

import java.util.OptionalDouble;
import org.ohmstead.metrology.internal.Checks;
import org.ohmstead.metrology.internal.Sentences;
import org.ohmstead.units.text.Messages;

/**
 * Whether the bench can tell items apart: several items, each measured several times by every operator (or on every
 * bench). The gauge's scatter is repeatability and reproducibility together (R. K. Burdick, C. M. Borror and D. C.
 * Montgomery, Journal of Quality Technology 35, 2003).
 *
 * @param anova the analysis: items are its rows, operators or benches its columns
 * @param components the variance components
 */
public record GaugeStudy(TwoWayAnova anova, TwoWayAnova.Components components) {
    private static final Messages TEXTS = Messages.of(GaugeStudy.class);

    /** The usual probability above which an interaction is counted as repeatability. */
    public static final double USUAL_POOLING = 0.25;

    private static final double GOOD = 0.1;
    private static final double USABLE = 0.3;
    private static final double SPREAD_SIGMAS = 6;

    /**
     * Returns the study.
     *
     * @param cells readings by item, operator and repeat: at least two of each, the same number of repeats everywhere
     * @param poolAbove see {@link TwoWayAnova#components}
     */
    public static GaugeStudy of(double[][][] cells, double poolAbove) {
        TwoWayAnova anova = TwoWayAnova.of(cells);
        return new GaugeStudy(anova, anova.components(poolAbove));
    }

    /** Returns the standard deviation of one operator's repeats. */
    public double repeatability() {
        return Math.sqrt(components.repeatability());
    }

    /** Returns the standard deviation between operators, their interaction with the items included. */
    public double reproducibility() {
        return Math.sqrt(components.columns() + components.interaction());
    }

    /** Returns the gauge's standard deviation: repeatability and reproducibility together. */
    public double gauge() {
        return Math.sqrt(components.repeatability() + components.columns() + components.interaction());
    }

    /** Returns the standard deviation between the items. */
    public double items() {
        return Math.sqrt(components.rows());
    }

    /** Returns the gauge's share of the whole standard deviation, 0 to 1; nothing if nothing scatters. */
    public OptionalDouble gaugeShare() {
        return ratio(gauge(), Math.sqrt(components.total()));
    }

    /** Returns the gauge's share of the whole variance, 0 to 1; nothing if nothing scatters. */
    public OptionalDouble varianceShare() {
        return ratio(gauge() * gauge(), components.total());
    }

    /**
     * Returns six gauge standard deviations over the width of a tolerance.
     *
     * @param toleranceWidth greater than 0, in the unit of the readings
     */
    public double toleranceShare(double toleranceWidth) {
        return SPREAD_SIGMAS * gauge() / Checks.positive("toleranceWidth", toleranceWidth);
    }

    /**
     * Returns how many classes of items the gauge tells apart, sqrt(2) items/gauge cut off to a whole number, at least
     * 1; the largest whole number if the gauge does not scatter.
     */
    public int distinctClasses() {
        if (items() <= 0) {
            return 1;
        }
        return (int) Math.max(1, Math.floor(Math.sqrt(2) * items() / gauge()));
    }

    /**
     * Returns the result in whole sentences. Common practice calls a gauge good up to a tenth of the whole standard
     * deviation and usable up to three tenths.
     *
     * @param what one column in words, e.g. "operator" or "bench"
     * @param unit the unit of the readings, may be empty
     */
    public String sentence(String what, String unit) {
        double share = gaugeShare().orElse(0);
        String verdict = TEXTS.text(share <= GOOD ? "gauge.good" : share <= USABLE ? "gauge.usable" : "gauge.bad");
        String worse = components.repeatability() >= components.columns() + components.interaction()
                ? TEXTS.text("gauge.repeating")
                : TEXTS.text(Sentences.keyOf(TEXTS, "gauge.between", what), Sentences.plural(what));
        return TEXTS.text(
                "gauge.sentence",
                Sentences.quantity(gauge(), unit),
                Sentences.percent(share),
                verdict,
                Integer.toString(distinctClasses()),
                worse);
    }

    private static OptionalDouble ratio(double part, double whole) {
        return whole > 0 ? OptionalDouble.of(part / whole) : OptionalDouble.empty();
    }
}
