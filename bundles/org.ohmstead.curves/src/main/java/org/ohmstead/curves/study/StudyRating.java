// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.curves.VerdictWords;
import org.ohmstead.metrology.Assessment;
import org.ohmstead.metrology.Conformity;
import org.ohmstead.metrology.DecisionRule;
import org.ohmstead.metrology.Estimate;
import org.ohmstead.metrology.Verdict;
import org.ohmstead.model.Rating;
import org.ohmstead.units.Decibels;
import org.ohmstead.units.text.Messages;

/**
 * A rating held against a study, at the rating's own supply voltage. Whether the study's end point is the rating's is
 * for the caller to see to.
 *
 * @param rating the maker's claim
 * @param finding what was found; empty when the study does not say
 * @param sentence the result in words, or why there is none
 */
public record StudyRating(Rating rating, Optional<Finding> finding, String sentence) {
    private static final Messages TEXTS = Messages.of(StudyRating.class);

    /**
     * What was found.
     *
     * @param prediction the power there
     * @param assessment the verdict with its probability
     * @param excessWatts found minus rated
     * @param powerRatio found over rated
     * @param differenceDb the same in dB
     * @param justMetSupplyVolts where the rating would just be met, when there is such a voltage
     */
    public record Finding(
            PowerPrediction.Predicted prediction,
            Assessment assessment,
            double excessWatts,
            double powerRatio,
            double differenceDb,
            OptionalDouble justMetSupplyVolts) {}

    /**
     * Returns a result for each rating, in their order.
     *
     * @param study of the amplifier, at the ratings' end point
     * @param ratings the claims
     * @param rule how sure a verdict must be
     */
    public static List<StudyRating> of(PowerStudy study, List<Rating> ratings, DecisionRule rule) {
        return ratings.stream().map(rating -> of(study, rating, rule)).toList();
    }

    private static StudyRating of(PowerStudy study, Rating rating, DecisionRule rule) {
        PowerPrediction prediction = study.predict(rating.supplyVolts(), rating.loadOhms(), rating.mode());
        if (prediction instanceof PowerPrediction.Unknown unknown) {
            return new StudyRating(rating, Optional.empty(), TEXTS.text("rating.notJudged", unknown.reason()));
        }
        PowerPrediction.Predicted predicted = (PowerPrediction.Predicted) prediction;
        if (predicted.powerWatts() <= 0) {
            return new StudyRating(
                    rating,
                    Optional.empty(),
                    TEXTS.text("rating.noPower", StudyWords.say("%.4g", rating.supplyVolts())));
        }
        Estimate power = predicted.wholeEstimate();
        double ratio = power.value() / rating.powerWatts();
        Finding finding = new Finding(
                predicted,
                Conformity.assessAtLeast(power, rating.powerWatts(), rule),
                power.value() - rating.powerWatts(),
                ratio,
                Decibels.ofPowerRatio(ratio),
                study.supplyVoltsFor(rating.powerWatts(), rating.loadOhms(), rating.mode()));
        return new StudyRating(rating, Optional.of(finding), sentence(rating, finding));
    }

    private static String sentence(Rating rating, Finding finding) {
        List<String> sentences = new ArrayList<>();
        String verdict = TEXTS.text("rating." + finding.assessment().verdict().name());
        sentences.add(TEXTS.text(
                "rating.sentence",
                verdict,
                StudyWords.say("%.4g", rating.powerWatts()),
                StudyWords.say("%.4g", rating.supplyVolts()),
                StudyWords.say("%.4g", finding.prediction().powerWatts()),
                StudyWords.say("%+.3g", finding.excessWatts()),
                StudyWords.say("%+.1f", 100 * (finding.powerRatio() - 1)),
                StudyWords.say("%+.2f", finding.differenceDb()),
                StudyWords.say("%.0f", 100 * finding.assessment().probabilityMet())));
        if (finding.assessment().verdict() != Verdict.UNDECIDED) {
            sentences.add(VerdictWords.risk(
                    finding.assessment().verdict(), finding.assessment().probabilityMet()));
        }
        if (finding.justMetSupplyVolts().isPresent()) {
            sentences.add(TEXTS.text(
                    "rating.justMet",
                    StudyWords.say("%.2f", finding.justMetSupplyVolts().getAsDouble())));
        } else {
            sentences.add(TEXTS.text("rating.notJust"));
        }
        String distance = finding.prediction().distance().sentence();
        if (!distance.isEmpty()) {
            sentences.add(distance);
        }
        return String.join(" ", sentences);
    }
}
