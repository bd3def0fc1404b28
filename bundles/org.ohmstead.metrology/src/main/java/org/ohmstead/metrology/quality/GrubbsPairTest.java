// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology.quality;

import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.hipparchus.analysis.solvers.BrentSolver;
import org.ohmstead.metrology.GrubbsTest;
import org.ohmstead.metrology.internal.Checks;
import org.ohmstead.metrology.internal.GaussPanels;
import org.ohmstead.metrology.internal.LargestDeviation;
import org.ohmstead.metrology.internal.Sentences;
import org.ohmstead.metrology.internal.StudentT;
import org.ohmstead.units.text.Messages;

/**
 * Grubbs' test for two outliers on the same side, for when two odd readings hide each other from {@link GrubbsTest}
 * (ISO 5725-2; F. E. Grubbs and G. Beck, Technometrics 14, 1972). The statistic is the sum of squares without the two
 * over that of all readings; small values are suspicious. Critical values are calculated by integration over the joint
 * distribution of the two largest deviations.
 */
public final class GrubbsPairTest {
    private static final Messages TEXTS = Messages.of(GrubbsPairTest.class);

    private static final int FEWEST_READINGS = 4;
    private static final int MOST_READINGS = 100;
    private static final int PANELS = 64;
    private static final int MOST_STEPS = 200;

    /**
     * What the test found.
     *
     * @param indices the places of the two suspected readings, the farther one first, counted from 0
     * @param statistic the sum of squares without them over that of all readings, 0 to 1; 1 if all readings are equal
     * @param criticalValue the smallest statistic to be expected from scatter alone
     * @param outliers whether the statistic is below the critical value
     */
    public record Outcome(List<Integer> indices, double statistic, double criticalValue, boolean outliers) {

        /** Copies the list. */
        public Outcome {
            indices = List.copyOf(indices);
        }

        /** Returns the outcome in a whole sentence that counts readings from 1. */
        public String sentence() {
            String one = Integer.toString(indices.get(0) + 1);
            String other = Integer.toString(indices.get(1) + 1);
            return outliers
                    ? TEXTS.text("pair.outliers", one, other)
                    : TEXTS.text("pair.none", one, other, Sentences.number(statistic), Sentences.number(criticalValue));
        }
    }

    private GrubbsPairTest() {}

    /**
     * Returns the critical value, to about five digits.
     *
     * @param count the number of readings, 4 to 100
     * @param significance the risk of a false alarm, strictly between 0 and 1, e.g. 0.05
     * @param side which pair is suspected; {@link GrubbsTest.Side#EITHER} shares the risk between the two ends, as ISO
     *     5725-2 does
     */
    public static double criticalValue(int count, double significance, GrubbsTest.Side side) {
        if (count < FEWEST_READINGS || count > MOST_READINGS) {
            throw new IllegalArgumentException(
                    "count is " + count + " but must lie between " + FEWEST_READINGS + " and " + MOST_READINGS + ".");
        }
        Checks.probability("significance", significance);
        double wanted = side == GrubbsTest.Side.EITHER ? significance / 2 : significance;
        LargestDeviation others = LargestDeviation.of(count - 2);
        // On a logarithmic scale: for few readings the critical value is very small.
        double log = new BrentSolver(1e-12, 1e-9)
                .solve(MOST_STEPS, x -> probabilityBelow(Math.exp(x), count, others) - wanted, -60, 0);
        return Math.exp(log);
    }

    /**
     * Returns the outcome for the suspected pair; with {@link GrubbsTest.Side#EITHER} the more suspicious of the two
     * ends.
     *
     * @param readings 4 to 100 finite readings
     * @param significance the risk of a false alarm, strictly between 0 and 1
     * @param side which pair is suspected
     */
    public static Outcome test(double[] readings, double significance, GrubbsTest.Side side) {
        double critical = criticalValue(readings.length, significance, side);
        List<Integer> ascending = IntStream.range(0, readings.length)
                .boxed()
                .sorted(Comparator.comparingDouble(i -> readings[i]))
                .toList();
        int last = readings.length - 1;
        List<Integer> highest = List.of(ascending.get(last), ascending.get(last - 1));
        List<Integer> lowest = List.of(ascending.get(0), ascending.get(1));
        double high = statistic(readings, highest);
        double low = statistic(readings, lowest);
        boolean takeHigh = side == GrubbsTest.Side.HIGHEST || side == GrubbsTest.Side.EITHER && high <= low;
        double statistic = takeHigh ? high : low;
        return new Outcome(takeHigh ? highest : lowest, statistic, critical, statistic < critical);
    }

    private static double statistic(double[] readings, List<Integer> dropped) {
        double all = Group.of(readings).squares();
        double[] kept = IntStream.range(0, readings.length)
                .filter(i -> !dropped.contains(i))
                .mapToDouble(i -> readings[i])
                .toArray();
        return all > 0 ? Group.of(kept).squares() / all : 1;
    }

    /** Returns the probability that the two highest of normal readings give a statistic of at most this. */
    private static double probabilityBelow(double statistic, int count, LargestDeviation others) {
        // The highest lies at the angle a, the second among the rest at b: the statistic is cos²(a) cos²(b).
        double root = Math.sqrt(statistic);
        double kink = Math.acos(Math.min(1, root));
        double[] breaks = IntStream.concat(IntStream.rangeClosed(0, PANELS), IntStream.of(-1))
                .mapToDouble(i -> i < 0 ? kink : Math.PI / 2 * i / PANELS)
                .sorted()
                .toArray();
        double probability = GaussPanels.overBreaks(
                b -> {
                    double second = (count - 1)
                            * LargestDeviation.density(b, count - 1)
                            * others.below(LargestDeviation.remaining(b, count - 1));
                    double order = Math.atan(Math.sin(b) * Math.sqrt((count - 2.0) / count));
                    double cosine = root / Math.cos(b);
                    double start = cosine >= 1 ? order : Math.max(order, Math.acos(cosine));
                    return second * count * tail(start, count);
                },
                breaks);
        return Math.min(1, probability);
    }

    /** Returns the probability that one deviation lies at a larger angle than this. */
    private static double tail(double angle, int count) {
        if (angle >= Math.PI / 2) {
            return 0;
        }
        return StudentT.below(-Math.tan(angle) * Math.sqrt(count - 2.0), count - 2.0);
    }
}
