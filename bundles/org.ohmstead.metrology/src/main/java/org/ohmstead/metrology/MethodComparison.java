// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology;

import java.util.Optional;
import org.ohmstead.metrology.internal.Checks;
import org.ohmstead.metrology.internal.Sentences;
import org.ohmstead.units.text.Messages;

/**
 * The GUM's law of propagation set against a Monte Carlo calculation of the same result (JCGM 101:2008, clause 8): the
 * law of propagation is validated in this instance if both ends of its coverage interval lie within the numerical
 * tolerance of the Monte Carlo ends. The Monte Carlo figures should themselves be steady to a fifth of the tolerance.
 *
 * @param gum the result by the law of propagation
 * @param gumInterval its coverage interval
 * @param monteCarlo mean and standard uncertainty by Monte Carlo
 * @param monteCarloInterval the Monte Carlo interval with the same coverage probability
 * @param tolerance the numerical tolerance of the Monte Carlo standard uncertainty, in the unit of the result, at least
 *     0 (0 only if the result has no uncertainty)
 */
public record MethodComparison(
        Estimate gum,
        CoverageInterval gumInterval,
        Estimate monteCarlo,
        CoverageInterval monteCarloInterval,
        double tolerance) {
    private static final Messages TEXTS = Messages.of(MethodComparison.class);

    private static final double ROUNDING = 1e-9;

    /** Checks the ranges given above, and that both intervals have the same coverage probability. */
    public MethodComparison {
        Checks.notNegative("tolerance", tolerance);
        if (Math.abs(gumInterval.probability() - monteCarloInterval.probability()) > ROUNDING) {
            throw new IllegalArgumentException("gumInterval has the coverage probability " + gumInterval.probability()
                    + " but must have that of monteCarloInterval, " + monteCarloInterval.probability() + ".");
        }
    }

    /**
     * Returns the comparison.
     *
     * @param gum the result by the law of propagation; its interval uses its degrees of freedom
     * @param monteCarlo the same result by Monte Carlo
     * @param kind which Monte Carlo interval to compare with
     * @param probability the coverage probability, strictly between 0 and 1
     * @param significantDigits the digits of the standard uncertainty that matter, 1 to 15; 1 or 2 are usual
     */
    public static MethodComparison of(
            Estimate gum, MonteCarlo monteCarlo, IntervalKind kind, double probability, int significantDigits) {
        double uncertainty = monteCarlo.standardUncertainty();
        double tolerance = uncertainty > 0
                ? NumericalTolerance.of(uncertainty, significantDigits).value()
                : 0;
        return new MethodComparison(
                gum, gum.interval(probability), monteCarlo.estimate(), kind.of(monteCarlo, probability), tolerance);
    }

    /** Returns how far apart the lower ends lie, at least 0 (d low in JCGM 101, clause 8). */
    public double lowerDifference() {
        return Math.abs(gumInterval.lower() - monteCarloInterval.lower());
    }

    /** Returns how far apart the upper ends lie, at least 0 (d high in JCGM 101, clause 8). */
    public double upperDifference() {
        return Math.abs(gumInterval.upper() - monteCarloInterval.upper());
    }

    /** Returns whether both differences are within the tolerance, so that the law of propagation may be used. */
    public boolean agrees() {
        double rounding = ROUNDING * Math.max(Math.abs(gumInterval.lower()), Math.abs(gumInterval.upper()));
        double allowed = tolerance > 0 ? tolerance : rounding;
        return lowerDifference() <= allowed && upperDifference() <= allowed;
    }

    /** Returns in whole sentences what the comparison says; the unit may be empty. */
    public String sentence(String unit) {
        String percent = Sentences.percent(gumInterval.probability());
        if (agrees()) {
            return TEXTS.text("methods.agree", percent, Sentences.quantity(tolerance, unit));
        }
        String width = gumInterval.width() > monteCarloInterval.width() ? "methods.wide" : "methods.narrow";
        boolean aside = Math.abs(gumInterval.width() - monteCarloInterval.width()) <= 2 * tolerance;
        return TEXTS.text(
                aside ? "methods.aside" : width,
                percent,
                Sentences.number(gumInterval.lower()),
                Sentences.quantity(gumInterval.upper(), unit),
                Sentences.number(monteCarloInterval.lower()),
                Sentences.quantity(monteCarloInterval.upper(), unit),
                Sentences.quantity(tolerance, unit));
    }

    /** Returns the note for the report if the two disagree, or nothing if they agree; the unit may be empty. */
    public Optional<String> note(String unit) {
        return agrees() ? Optional.empty() : Optional.of(sentence(unit));
    }
}
