// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ohmstead.metrology.CoverageInterval;
import org.ohmstead.metrology.Estimate;
import org.ohmstead.units.Decibels;
import org.ohmstead.units.text.Messages;

/**
 * How much more power one group gives than another: channels, loads, end points or amplifiers.
 *
 * @param differenceWatts first minus second
 * @param relative first over second, minus 1 (0.05 is 5 %)
 * @param differenceDb the same in dB
 * @param intervalDb where the true difference lies, in dB
 * @param nearest what the difference found would be like to hear
 * @param most what the far end of the interval would be like to hear
 * @param sentence in words, with care
 */
public record PowerDifference(
        Estimate differenceWatts,
        Estimate relative,
        Estimate differenceDb,
        CoverageInterval intervalDb,
        Audibility nearest,
        Audibility most,
        String sentence) {
    private static final Messages TEXTS = Messages.of(PowerDifference.class);

    /**
     * Returns the difference of two powers that were found independently.
     *
     * @param firstName the first group as it is to be called in the sentence
     * @param first its power in watts, above 0
     * @param secondName the second group
     * @param second its power, above 0
     * @param level of confidence, strictly between 0 and 1
     */
    public static PowerDifference of(
            String firstName, Estimate first, String secondName, Estimate second, double level) {
        if (!(first.value() > 0) || !(second.value() > 0)) {
            throw new IllegalArgumentException("first is " + first.value() + " and second is " + second.value()
                    + " but both powers must be above zero.");
        }
        double ratio = first.value() / second.value();
        double firstRelative = first.standardUncertainty() / first.value();
        double secondRelative = second.standardUncertainty() / second.value();
        double relative = Math.hypot(firstRelative, secondRelative);
        double freedom = freedom(firstRelative, first.degreesOfFreedom(), secondRelative, second.degreesOfFreedom());
        double perDecibel = 10 / Math.log(10);
        Estimate decibels = new Estimate(Decibels.ofPowerRatio(ratio), perDecibel * relative, freedom);
        CoverageInterval interval = decibels.interval(level);
        Estimate watts = new Estimate(
                first.value() - second.value(),
                Math.hypot(first.standardUncertainty(), second.standardUncertainty()),
                freedom(
                        first.standardUncertainty(),
                        first.degreesOfFreedom(),
                        second.standardUncertainty(),
                        second.degreesOfFreedom()));
        Audibility nearest = Audibility.of(decibels.value());
        Audibility most = Audibility.of(Math.max(Math.abs(interval.lower()), Math.abs(interval.upper())));
        String sentence = sentence(firstName, secondName, watts.value(), ratio, interval, decibels.value());
        return new PowerDifference(
                watts, new Estimate(ratio - 1, ratio * relative, freedom), decibels, interval, nearest, most, sentence);
    }

    /**
     * Returns the difference of two predictions, or nothing when one of the studies does not say or gives no power. Only
     * the curves' own uncertainties count: what the readings have in common cancels when both were taken with the same
     * meters. If they were not, compare {@link PowerPrediction.Predicted#wholeEstimate()} of both.
     */
    public static Optional<PowerDifference> of(
            String firstName, PowerPrediction first, String secondName, PowerPrediction second, double level) {
        if (first instanceof PowerPrediction.Predicted one
                && second instanceof PowerPrediction.Predicted other
                && one.powerWatts() > 0
                && other.powerWatts() > 0) {
            return Optional.of(of(firstName, one.estimate(), secondName, other.estimate(), level));
        }
        return Optional.empty();
    }

    /** Welch and Satterthwaite (GUM G.4). */
    private static double freedom(double first, double firstFreedom, double second, double secondFreedom) {
        double sum = first * first + second * second;
        double parts = Math.pow(first, 4) / firstFreedom + Math.pow(second, 4) / secondFreedom;
        return parts > 0 ? sum * sum / parts : Double.POSITIVE_INFINITY;
    }

    private static String sentence(
            String firstName,
            String secondName,
            double watts,
            double ratio,
            CoverageInterval interval,
            double differenceDb) {
        String figures = TEXTS.text(
                "difference.figures",
                firstName,
                StudyWords.say("%.3g", Math.abs(watts)),
                TEXTS.text(watts < 0 ? "difference.less" : "difference.more"),
                secondName,
                StudyWords.say("%+.1f", 100 * (ratio - 1)),
                StudyWords.say("%+.2f", differenceDb),
                StudyWords.say("%.0f", 100 * interval.probability()),
                StudyWords.say("%+.2f", interval.lower()),
                StudyWords.say("%+.2f", interval.upper()));
        Audibility nearest = Audibility.of(differenceDb);
        Audibility most = Audibility.of(Math.max(Math.abs(interval.lower()), Math.abs(interval.upper())));
        List<String> sentences = new ArrayList<>(List.of(figures));
        if (interval.contains(0)) {
            sentences.add(TEXTS.text("difference.none"));
        }
        sentences.add(TEXTS.text("difference.heard", nearest.words()));
        if (most != nearest) {
            sentences.add(TEXTS.text("difference.farEnd", most.words()));
        }
        return String.join(" ", sentences);
    }
}
