// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.random.RandomGenerator;
import org.ohmstead.metrology.internal.Checks;
import org.ohmstead.metrology.internal.Sentences;
import org.ohmstead.metrology.internal.Well;
import org.ohmstead.units.text.Messages;

/**
 * A Monte Carlo calculation that draws until its figures stand still (JCGM 101:2008, 7.9.4): blocks of trials are added
 * until twice the standard deviation of the blocks' mean, standard uncertainty and interval ends is within the
 * numerical tolerance of the standard uncertainty.
 *
 * @param result all trials together
 * @param interval the coverage interval of all trials
 * @param tolerance the numerical tolerance that was wanted, in the unit of the result, at least 0 (0 only if the result
 *     has no uncertainty)
 * @param blocks the number of blocks drawn, at least 2
 * @param settled whether the figures stand still; if not, the largest allowed number of trials was reached first
 */
public record AdaptiveMonteCarlo(
        MonteCarlo result, CoverageInterval interval, double tolerance, int blocks, boolean settled) {
    private static final Messages TEXTS = Messages.of(AdaptiveMonteCarlo.class);

    private static final int SMALLEST_BLOCK = 10_000;
    private static final int FIGURES = 4;

    /**
     * What is wanted of the calculation.
     *
     * @param probability the coverage probability of the interval, strictly between 0 and 1
     * @param significantDigits the digits of the standard uncertainty that are to stand still, 1 to 15; every further
     *     digit takes a hundred times the trials
     * @param kind which interval is meant
     * @param mostTrials where to give up, at least two blocks (a block is 10000 trials, more for a probability above
     *     0.99)
     */
    public record Settings(double probability, int significantDigits, IntervalKind kind, int mostTrials) {

        /** Two digits, the shortest 95 % interval, at most five million trials. */
        public static final Settings USUAL = new Settings(0.95, 2, IntervalKind.SHORTEST, 5_000_000);

        /** Checks the ranges given above. */
        public Settings {
            Checks.probability("probability", probability);
            NumericalTolerance.of(1, significantDigits);
            if (mostTrials / 2 < blockTrials(probability)) {
                throw new IllegalArgumentException("mostTrials is " + mostTrials + " but must be at least "
                        + 2 * blockTrials(probability) + ", two blocks for this probability.");
            }
        }

        private int blockTrials() {
            return blockTrials(probability);
        }

        private static int blockTrials(double probability) {
            double fewest = Math.ceil(100 / (1 - probability));
            return (int) Math.max(SMALLEST_BLOCK, Math.min(fewest, Integer.MAX_VALUE / 4));
        }
    }

    /** Checks the ranges given above. */
    public AdaptiveMonteCarlo {
        Checks.notNegative("tolerance", tolerance);
        if (blocks < 2) {
            throw new IllegalArgumentException("blocks is " + blocks + " but must be at least 2.");
        }
    }

    /**
     * Runs the model with independent inputs; the same seed, settings, model and inputs always give the same numbers,
     * those that {@link MonteCarlo#run(ToDoubleFunction, List, int, long)} gives for as many trials.
     */
    public static AdaptiveMonteCarlo run(
            ToDoubleFunction<double[]> model, List<? extends Distribution> inputs, Settings settings, long seed) {
        return run(model, MonteCarlo.independent(inputs), settings, seed);
    }

    /** Runs the model with inputs that have a joint normal distribution (JCGM 101 6.4.8). */
    public static AdaptiveMonteCarlo run(
            ToDoubleFunction<double[]> model, double[] means, Covariance covariance, Settings settings, long seed) {
        return run(model, MonteCarlo.jointNormal(means, covariance), settings, seed);
    }

    /** Returns the number of trials of all blocks together. */
    public int trials() {
        return result.trials();
    }

    /** Returns in a whole sentence how many trials were drawn and whether the figures stand still. */
    public String sentence(String unit) {
        return TEXTS.text(
                settled ? "draws.settled" : "draws.moving",
                String.valueOf(trials()),
                Sentences.quantity(tolerance, unit));
    }

    private static AdaptiveMonteCarlo run(
            ToDoubleFunction<double[]> model,
            Function<RandomGenerator, double[]> source,
            Settings settings,
            long seed) {
        RandomGenerator random = new Well(seed);
        int blockTrials = settings.blockTrials();
        Figures figures = new Figures();
        List<double[]> blocks = new ArrayList<>();
        double tolerance = 0;
        boolean settled = false;
        while (!settled && (blocks.size() + 1L) * blockTrials <= settings.mostTrials()) {
            double[] block = MonteCarlo.draws(model, source, random, blockTrials);
            blocks.add(block);
            MonteCarlo partial = MonteCarlo.ofDraws(block.clone());
            CoverageInterval interval = settings.kind().of(partial, settings.probability());
            figures.add(partial.mean(), partial.standardUncertainty(), interval.lower(), interval.upper());
            if (blocks.size() > 1) {
                double uncertainty = figures.overallDeviation(blockTrials);
                tolerance = uncertainty > 0
                        ? NumericalTolerance.of(uncertainty, settings.significantDigits())
                                .value()
                        : 0;
                settled = figures.largestDoubledDeviation() <= tolerance;
            }
        }
        MonteCarlo result = MonteCarlo.ofDraws(
                blocks.stream().flatMapToDouble(Arrays::stream).toArray());
        CoverageInterval interval = settings.kind().of(result, settings.probability());
        return new AdaptiveMonteCarlo(result, interval, tolerance, blocks.size(), settled);
    }

    /** Running means and squares of the four figures of the blocks (Welford's recurrence). */
    private static final class Figures {

        private final double[] means = new double[FIGURES];
        private final double[] squares = new double[FIGURES];
        private double variances;
        private int count;

        void add(double... figures) {
            count++;
            variances += figures[1] * figures[1];
            for (int i = 0; i < FIGURES; i++) {
                double distance = figures[i] - means[i];
                means[i] += distance / count;
                squares[i] += distance * (figures[i] - means[i]);
            }
        }

        /** Returns the standard deviation of all draws so far, from the blocks' means and deviations. */
        double overallDeviation(int blockTrials) {
            double squaresWithin = (blockTrials - 1.0) * variances;
            double squaresBetween = blockTrials * squares[0];
            return Math.sqrt((squaresWithin + squaresBetween) / ((double) blockTrials * count - 1));
        }

        double largestDoubledDeviation() {
            double largest = Arrays.stream(squares).max().orElseThrow();
            return 2 * Math.sqrt(largest / ((double) count * (count - 1)));
        }
    }
}
