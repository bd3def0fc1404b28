// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.metrology.quality;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.ohmstead.metrology.internal.Checks;
import org.ohmstead.metrology.internal.Sentences;
import org.ohmstead.units.text.Messages;

/**
 * A control chart of single readings with its chart of moving ranges (ISO 7870-2; NIST/SEMATECH e-Handbook 6.3.2.2):
 * sigma is the mean distance between successive readings over d2 of two, the limits lie three sigma from the mean, and
 * a moving range may reach D4 of two times the mean one.
 *
 * @param readings the lines of the chart of readings
 * @param ranges the lines of the chart of moving ranges; the lower limit is 0
 * @param baselineCount how many readings set the lines
 */
public record IndividualsChart(ControlLimits readings, ControlLimits ranges, int baselineCount) {
    private static final Messages TEXTS = Messages.of(IndividualsChart.class);

    private static final int ENOUGH = 20;
    private static final ChartConstants PAIR = ChartConstants.of(2);

    /** Checks that at least two readings set the lines. */
    public IndividualsChart {
        if (baselineCount < 2) {
            throw new IllegalArgumentException("baselineCount is " + baselineCount + " but must be at least 2.");
        }
    }

    /**
     * Returns the chart whose lines these readings set, taken when the bench was known to be in order.
     *
     * @param baseline at least two finite readings in the order taken; 20 or more are advised
     */
    public static IndividualsChart of(double... baseline) {
        if (baseline.length < 2) {
            throw new IllegalArgumentException(
                    "baseline has " + baseline.length + " readings but at least two are needed.");
        }
        double sum = 0;
        for (double reading : baseline) {
            sum += Checks.finite("baseline reading", reading);
        }
        double centre = sum / baseline.length;
        double rangeSum = 0;
        for (double range : movingRanges(baseline)) {
            rangeSum += range;
        }
        double meanRange = rangeSum / (baseline.length - 1);
        double reach = PAIR.e2() * meanRange;
        return new IndividualsChart(
                new ControlLimits(centre - reach, centre, centre + reach),
                new ControlLimits(0, meanRange, PAIR.upperRangeFactor() * meanRange),
                baseline.length);
    }

    /** Returns the distances between successive readings, one fewer than readings. */
    public static double[] movingRanges(double... values) {
        double[] distances = new double[Math.max(0, values.length - 1)];
        for (int i = 0; i < distances.length; i++) {
            distances[i] = Math.abs(values[i + 1] - values[i]);
        }
        return distances;
    }

    /** Returns the standard deviation that the moving ranges tell, at least 0. */
    public double sigma() {
        return (readings.upper() - readings.centre()) / 3;
    }

    /**
     * Returns a reading's distance from the centre line in sigma. If sigma is 0 it is the largest finite number, with
     * its sign, for any reading off the centre line.
     */
    public double standardised(double reading) {
        double distance = Checks.finite("reading", reading) - readings.centre();
        if (distance == 0) {
            return 0;
        }
        double ratio = distance / sigma();
        return Double.isFinite(ratio) ? ratio : Math.copySign(Double.MAX_VALUE, distance);
    }

    /** Returns the patterns among these readings in the order taken, the baseline included if it is to be judged. */
    public List<RunSignal> signals(double[] values, Set<RunRule> rules) {
        double[] standardised = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            standardised[i] = standardised(values[i]);
        }
        return RunSignal.find(standardised, rules);
    }

    /**
     * Returns the readings, counted from 0, that lie farther from the one before than the upper limit of the moving
     * ranges. Run rules are not applied to moving ranges, as successive ones share a reading.
     */
    public List<Integer> jumps(double[] values) {
        double[] distances = movingRanges(values);
        List<Integer> jumps = new ArrayList<>();
        for (int i = 0; i < distances.length; i++) {
            if (ranges.excludes(distances[i])) {
                jumps.add(i + 1);
            }
        }
        return List.copyOf(jumps);
    }

    /** Returns in whole sentences what the chart expects and what its baseline lacks; the unit may be empty. */
    public String sentence(String unit) {
        String sentence = TEXTS.text(
                "individuals",
                Sentences.number(readings.lower()),
                Sentences.quantity(readings.upper(), unit),
                Sentences.quantity(ranges.upper(), unit));
        if (sigma() <= 0) {
            return TEXTS.text("individuals.equal", sentence);
        }
        if (baselineCount < ENOUGH) {
            return TEXTS.text("individuals.few", sentence, Integer.toString(baselineCount), Integer.toString(ENOUGH));
        }
        return sentence;
    }
}
