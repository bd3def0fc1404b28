// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.ohmstead.metrology.internal.Checks;

/**
 * A result with everything that makes it uncertain, combined by the law of propagation of uncertainty (GUM 5.1.2 and
 * 5.2.2): u² = sum of (c u)² + 2 sum over pairs of c(i) u(i) c(j) u(j) r(i,j).
 *
 * @param value the result itself
 * @param contributions at least one line; names are unique
 * @param correlations pairs of lines that depend on each other; pairs not named are uncorrelated
 */
public record UncertaintyBudget(double value, List<Contribution> contributions, List<Correlation> correlations) {

    private static final double ROUNDING = 1e-12;

    /**
     * The correlation of two lines.
     *
     * @param first the name of one line
     * @param second the name of another line
     * @param coefficient the correlation coefficient r, -1 to 1
     */
    public record Correlation(String first, String second, double coefficient) {

        /** Checks the ranges given above. */
        public Correlation {
            if (!(Math.abs(coefficient) <= 1)) {
                throw new IllegalArgumentException("coefficient is " + coefficient + " but must lie between -1 and 1.");
            }
            if (first.equals(second)) {
                throw new IllegalArgumentException("first and second are both \"" + first
                        + "\" but a correlation is between two different contributions.");
            }
        }
    }

    /**
     * A line as it is printed.
     *
     * @param contribution the line
     * @param effect c u(x) with its sign, in the unit of the result
     * @param varianceShare the part of the combined variance, as a ratio; the shares of a budget sum to 1 (all are 0
     *     if nothing is uncertain). With correlations a line's share is c(i)u(i) times the sum over j of
     *     c(j)u(j)r(i,j), and may be negative.
     */
    public record Row(Contribution contribution, double effect, double varianceShare) {}

    /** Checks the ranges given above, and that every correlation names two lines, no pair twice. */
    public UncertaintyBudget {
        Checks.finite("value", value);
        contributions = List.copyOf(contributions);
        correlations = List.copyOf(correlations);
        if (contributions.isEmpty()) {
            throw new IllegalArgumentException("contributions is empty but a budget needs at least one.");
        }
        Set<String> names = new HashSet<>();
        for (Contribution contribution : contributions) {
            if (!names.add(contribution.name())) {
                throw new IllegalArgumentException(
                        "contributions names \"" + contribution.name() + "\" twice; names must be unique.");
            }
        }
        Set<Set<String>> pairs = new HashSet<>();
        for (Correlation correlation : correlations) {
            Set<String> pair = Set.of(correlation.first(), correlation.second());
            if (!names.containsAll(pair) || !pairs.add(pair)) {
                throw new IllegalArgumentException("The correlation between \"" + correlation.first() + "\" and \""
                        + correlation.second() + "\" must name two contributions of this budget, and each pair once.");
            }
        }
    }

    /** Returns the budget of uncorrelated contributions. */
    public static UncertaintyBudget of(double value, Contribution... contributions) {
        return new UncertaintyBudget(value, List.of(contributions), List.of());
    }

    /** Returns this budget with one more correlation between two of its lines. */
    public UncertaintyBudget withCorrelation(String first, String second, double coefficient) {
        List<Correlation> more = new ArrayList<>(correlations);
        more.add(new Correlation(first, second, coefficient));
        return new UncertaintyBudget(value, contributions, more);
    }

    /**
     * Returns the result with its combined standard uncertainty.
     *
     * <p>Its degrees of freedom are the effective ones of the Welch-Satterthwaite formula, u⁴ / sum of (c u)⁴/nu (GUM
     * G.4.1, eq. G.2b), not cut off to a whole number. The formula holds for uncorrelated lines only; if any lines are
     * correlated (r not zero), the smallest degrees of freedom of the lines that matter are taken instead, which errs
     * to the wide side (a choice of this program).
     *
     * @throws IllegalArgumentException if the correlations contradict one another, so that the variance would be
     * negative
     */
    public Estimate combined() {
        double variance = variance();
        return new Estimate(value, Math.sqrt(variance), degreesOfFreedom(variance));
    }

    /** Returns the lines with their effect and share, in the order given. */
    public List<Row> rows() {
        double variance = variance();
        double[] pieces = variancePieces();
        List<Row> rows = new ArrayList<>();
        for (int i = 0; i < pieces.length; i++) {
            Contribution contribution = contributions.get(i);
            rows.add(new Row(contribution, contribution.effect(), variance > 0 ? pieces[i] / variance : 0));
        }
        return List.copyOf(rows);
    }

    private double[] variancePieces() {
        int count = contributions.size();
        double[] pieces = new double[count];
        for (int i = 0; i < count; i++) {
            pieces[i] = Math.pow(contributions.get(i).effect(), 2);
        }
        for (Correlation correlation : correlations) {
            int i = indexOf(correlation.first());
            int j = indexOf(correlation.second());
            double piece = contributions.get(i).effect() * contributions.get(j).effect() * correlation.coefficient();
            pieces[i] += piece;
            pieces[j] += piece;
        }
        return pieces;
    }

    private double variance() {
        double variance = 0;
        for (double piece : variancePieces()) {
            variance += piece;
        }
        double scale = 0;
        for (Contribution contribution : contributions) {
            scale += Math.abs(contribution.effect());
        }
        if (variance < -ROUNDING * scale * scale) {
            throw new IllegalArgumentException(
                    "The correlations of this budget contradict one another: the combined variance would be " + variance
                            + ". Check the correlation coefficients.");
        }
        return Math.max(0, variance);
    }

    private double degreesOfFreedom(double variance) {
        boolean correlated = correlations.stream().anyMatch(c -> c.coefficient() != 0);
        if (correlated || variance <= 0) {
            return contributions.stream()
                    .filter(c -> Math.abs(c.effect()) > 0)
                    .mapToDouble(Contribution::degreesOfFreedom)
                    .min()
                    .orElse(Double.POSITIVE_INFINITY);
        }
        double sum = 0;
        for (Contribution contribution : contributions) {
            double share = contribution.effect() * contribution.effect() / variance;
            sum += share * share / contribution.degreesOfFreedom();
        }
        return sum > 0 ? 1 / sum : Double.POSITIVE_INFINITY;
    }

    private int indexOf(String name) {
        for (int i = 0; i < contributions.size(); i++) {
            if (contributions.get(i).name().equals(name)) {
                return i;
            }
        }
        throw new IllegalArgumentException("name is \"" + name + "\" but must be one of the budget's contributions.");
    }
}
