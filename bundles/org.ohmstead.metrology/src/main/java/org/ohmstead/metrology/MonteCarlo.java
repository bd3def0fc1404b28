// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology;

import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.random.RandomGenerator;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RectangularCholeskyDecomposition;
import org.ohmstead.metrology.internal.Checks;
import org.ohmstead.metrology.internal.Well;

/**
 * The distribution of a result y = f(x), found by drawing the inputs many times (JCGM 101:2008). The same seed,
 * trials, model and inputs always give the same numbers.
 */
public final class MonteCarlo {

    private static final int FEWEST_TRIALS = 100;

    private final double[] sorted;
    private final double mean;
    private final double standardUncertainty;

    private MonteCarlo(double[] draws) {
        double sum = 0;
        for (double draw : draws) {
            sum += draw;
        }
        mean = sum / draws.length;
        double squares = 0;
        for (double draw : draws) {
            squares += (draw - mean) * (draw - mean);
        }
        standardUncertainty = Math.sqrt(squares / (draws.length - 1));
        Arrays.sort(draws);
        sorted = draws;
    }

    /**
     * Runs the model with independent inputs.
     *
     * @param model y as a function of the inputs; must give finite values
     * @param inputs the inputs' distributions
     * @param trials how many draws, at least 100; JCGM 101 7.2 advises 1e6 for an interval with two significant digits
     * @param seed the seed of the random numbers
     */
    public static MonteCarlo run(
            ToDoubleFunction<double[]> model, List<? extends Distribution> inputs, int trials, long seed) {
        return run(model, independent(inputs), trials, seed);
    }

    /**
     * Runs the model with inputs that have a joint normal distribution (JCGM 101 6.4.8).
     *
     * @param model y as a function of the inputs; must give finite values
     * @param means the inputs' values
     * @param covariance the inputs' covariance matrix, of the same size; inputs without uncertainty stay at their value
     * @param trials how many draws, at least 100
     * @param seed the seed of the random numbers
     */
    public static MonteCarlo run(
            ToDoubleFunction<double[]> model, double[] means, Covariance covariance, int trials, long seed) {
        return run(model, jointNormal(means, covariance), trials, seed);
    }

    /** Returns the number of draws. */
    public int trials() {
        return sorted.length;
    }

    /** Returns the mean of the draws, the estimate of y (JCGM 101 7.6). */
    public double mean() {
        return mean;
    }

    /** Returns the standard deviation of the draws, the standard uncertainty of y (JCGM 101 7.6). */
    public double standardUncertainty() {
        return standardUncertainty;
    }

    /** Returns mean and standard uncertainty as an estimate. */
    public Estimate estimate() {
        return Estimate.of(mean, standardUncertainty);
    }

    /** Returns the interval that leaves equally many draws out below and above (JCGM 101 7.7.2). */
    public CoverageInterval symmetricInterval(double probability) {
        int covered = coveredDraws(probability);
        int first = (sorted.length - covered + 1) / 2;
        return interval(first, covered, probability);
    }

    /** Returns the shortest interval that holds the stated fraction of the draws (JCGM 101 7.7.3). */
    public CoverageInterval shortestInterval(double probability) {
        int covered = coveredDraws(probability);
        int best = 1;
        double shortest = Double.POSITIVE_INFINITY;
        for (int first = 1; first + covered <= sorted.length; first++) {
            double width = sorted[first + covered - 1] - sorted[first - 1];
            if (width < shortest) {
                shortest = width;
                best = first;
            }
        }
        return interval(best, covered, probability);
    }

    /** Returns the fraction of draws that are at least the limit, e.g. the probability that a rating is met. */
    public double fractionAtLeast(double limit) {
        Checks.finite("limit", limit);
        int below = 0;
        int above = sorted.length;
        while (below < above) {
            int middle = (below + above) >>> 1;
            if (sorted[middle] < limit) {
                below = middle + 1;
            } else {
                above = middle;
            }
        }
        return (sorted.length - below) / (double) sorted.length;
    }

    /** Returns how independent inputs are drawn. */
    static Function<RandomGenerator, double[]> independent(List<? extends Distribution> inputs) {
        List<Distribution> distributions = List.copyOf(inputs);
        return random -> {
            double[] draw = new double[distributions.size()];
            for (int i = 0; i < draw.length; i++) {
                draw[i] = distributions.get(i).draw(random);
            }
            return draw;
        };
    }

    /** Returns how inputs with a joint normal distribution are drawn. */
    static Function<RandomGenerator, double[]> jointNormal(double[] means, Covariance covariance) {
        Checks.sameLength("means", means.length, "the covariance matrix", covariance.size());
        double[] centre = means.clone();
        double[][] root = new double[centre.length][0];
        if (Arrays.stream(covariance.standardUncertainties()).anyMatch(u -> u > 0)) {
            root = new RectangularCholeskyDecomposition(MatrixUtils.createRealMatrix(correlations(covariance)), 1e-12)
                    .getRootMatrix()
                    .getData();
        }
        double[][] factor = root;
        double[] uncertainties = covariance.standardUncertainties();
        return random -> {
            double[] normals = new double[factor[0].length];
            Arrays.setAll(normals, k -> random.nextGaussian());
            double[] draw = centre.clone();
            for (int i = 0; i < draw.length; i++) {
                for (int k = 0; k < normals.length; k++) {
                    draw[i] += uncertainties[i] * factor[i][k] * normals[k];
                }
            }
            return draw;
        };
    }

    /** Returns that many draws of the model's result, in the order drawn. */
    static double[] draws(
            ToDoubleFunction<double[]> model,
            Function<RandomGenerator, double[]> source,
            RandomGenerator random,
            int trials) {
        double[] draws = new double[trials];
        for (int trial = 0; trial < trials; trial++) {
            draws[trial] = Checks.finite("result of the model", model.applyAsDouble(source.apply(random)));
        }
        return draws;
    }

    /** Returns the distribution of these draws; the array is taken over and sorted. */
    static MonteCarlo ofDraws(double[] draws) {
        return new MonteCarlo(draws);
    }

    private static double[][] correlations(Covariance covariance) {
        double[][] correlations = new double[covariance.size()][covariance.size()];
        for (int i = 0; i < correlations.length; i++) {
            for (int j = 0; j < correlations.length; j++) {
                correlations[i][j] = covariance.correlation(i, j);
            }
        }
        return correlations;
    }

    private static MonteCarlo run(
            ToDoubleFunction<double[]> model, Function<RandomGenerator, double[]> source, int trials, long seed) {
        if (trials < FEWEST_TRIALS) {
            throw new IllegalArgumentException(
                    "trials is " + trials + " but must be at least " + FEWEST_TRIALS + "; 1000000 is usual.");
        }
        return new MonteCarlo(draws(model, source, new Well(seed), trials));
    }

    private int coveredDraws(double probability) {
        Checks.probability("probability", probability);
        int covered = (int) Math.floor(probability * sorted.length + 0.5);
        return Math.min(covered, sorted.length - 1);
    }

    private CoverageInterval interval(int first, int covered, double probability) {
        int clipped = Math.max(1, Math.min(first, sorted.length - covered));
        return new CoverageInterval(sorted[clipped - 1], sorted[clipped + covered - 1], probability);
    }
}
