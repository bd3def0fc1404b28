// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology.quality;

import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.ohmstead.metrology.internal.Checks;
import org.ohmstead.metrology.internal.Sentences;
import org.ohmstead.units.text.Messages;

/**
 * A control chart of the means of small groups of readings with its chart of their spread (ISO 7870-2): groups taken
 * within minutes show what the bench scatters, their means what it does from day to day.
 *
 * @param spread how the spread within a group is measured
 * @param groupSize the number of readings in each group, 2 to 100
 * @param groupCount how many groups set the lines
 * @param means the lines of the chart of means
 * @param spreads the lines of the chart of spreads
 * @param sigma the standard deviation of single readings within a group, at least 0
 */
public record SubgroupChart(
        Spread spread, int groupSize, int groupCount, ControlLimits means, ControlLimits spreads, double sigma) {
    private static final Messages TEXTS = Messages.of(SubgroupChart.class);

    /** How the spread within a group is measured. */
    public enum Spread {
        /** The range, largest minus smallest; for groups of at most about ten. */
        RANGE,
        /** The sample standard deviation. */
        DEVIATION;

        /** Returns the spread of the readings. */
        public double of(double... readings) {
            if (this == RANGE) {
                double lowest = Double.POSITIVE_INFINITY;
                double highest = Double.NEGATIVE_INFINITY;
                for (double reading : readings) {
                    lowest = Math.min(lowest, reading);
                    highest = Math.max(highest, reading);
                }
                return highest - lowest;
            }
            return Math.sqrt(Group.of(readings).squares() / (readings.length - 1));
        }
    }

    /** Checks that there is at least one group of two and that sigma is not negative. */
    public SubgroupChart {
        Checks.notNegative("sigma", sigma);
        if (groupCount < 1 || groupSize < 2) {
            throw new IllegalArgumentException("groupCount and groupSize are " + groupCount + " and " + groupSize
                    + " but must be at least 1 and 2.");
        }
    }

    /**
     * Returns the chart whose lines these groups set.
     *
     * @param groups at least one group, all of the same size of 2 to 100 finite readings; 20 groups or more are advised
     * @param spread how the spread within a group is measured
     */
    public static SubgroupChart of(List<double[]> groups, Spread spread) {
        if (groups.isEmpty()) {
            throw new IllegalArgumentException("groups is empty but at least one group is needed.");
        }
        int size = groups.get(0).length;
        ChartConstants constants = ChartConstants.of(size);
        double meanSum = 0;
        double spreadSum = 0;
        for (double[] group : groups) {
            Checks.sameLength("a group", group.length, "the first group", size);
            meanSum += Group.of(group).mean();
            spreadSum += spread.of(group);
        }
        double centre = meanSum / groups.size();
        double meanSpread = spreadSum / groups.size();
        boolean range = spread == Spread.RANGE;
        double reach = meanSpread * (range ? constants.a2() : constants.a3());
        double low = range ? constants.lowerRangeFactor() : constants.lowerDeviationFactor();
        double high = range ? constants.upperRangeFactor() : constants.upperDeviationFactor();
        return new SubgroupChart(
                spread,
                size,
                groups.size(),
                new ControlLimits(centre - reach, centre, centre + reach),
                new ControlLimits(low * meanSpread, meanSpread, high * meanSpread),
                meanSpread / (range ? constants.d2() : constants.c4()));
    }

    /** Returns the patterns among the means of these groups, in the order taken. */
    public List<RunSignal> signalsOfMeans(List<double[]> groups, Set<RunRule> rules) {
        double step = (means.upper() - means.centre()) / 3;
        double[] standardised = new double[groups.size()];
        for (int i = 0; i < standardised.length; i++) {
            double distance = Group.of(groups.get(i)).mean() - means.centre();
            double ratio = distance == 0 ? 0 : distance / step;
            standardised[i] = Double.isFinite(ratio) ? ratio : Math.copySign(Double.MAX_VALUE, distance);
        }
        return RunSignal.find(standardised, rules);
    }

    /** Returns the groups, counted from 0, whose spread lies outside the limits. */
    public List<Integer> oddSpreads(List<double[]> groups) {
        return IntStream.range(0, groups.size())
                .filter(i -> spreads.excludes(spread.of(groups.get(i))))
                .boxed()
                .toList();
    }

    /** Returns in a whole sentence what the chart expects; the unit may be empty. */
    public String sentence(String unit) {
        return TEXTS.text(
                spread == Spread.RANGE ? "subgroups.range" : "subgroups.deviation",
                Integer.toString(groupSize),
                Sentences.number(means.lower()),
                Sentences.quantity(means.upper(), unit),
                Sentences.number(spreads.lower()),
                Sentences.quantity(spreads.upper(), unit));
    }
}
