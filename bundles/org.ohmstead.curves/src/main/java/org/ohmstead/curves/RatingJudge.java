// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.ohmstead.metrology.Assessment;
import org.ohmstead.metrology.Conformity;
import org.ohmstead.metrology.DecisionRule;
import org.ohmstead.metrology.Estimate;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.Rating;
import org.ohmstead.model.SheetSettings;
import org.ohmstead.units.Decibels;
import org.ohmstead.units.text.Messages;

/**
 * Holds ratings against the fitted curves, each at its own supply voltage. The channel with the least power decides,
 * since a rating per channel is a claim about every channel.
 */
public final class RatingJudge {
    private static final Messages TEXTS = Messages.of(RatingJudge.class);

    /** A load counts as the rated one within this share; the curve's powers are for its nominal value. */
    private static final double SAME_LOAD_RATIO = 0.05;

    private static final double SET_WITHIN_VOLTS = 0.05;

    /** Distortion limits that differ by less than this share are the same limit. */
    private static final double SAME_LIMIT_RATIO = 1e-6;

    private RatingJudge() {}

    /**
     * Returns a result for each rating, in their order.
     *
     * @param ratings the maker's claims
     * @param curves fitted to the valid readings
     * @param confidence sureness that a verdict needs and coverage of the stated interval, above 0.5 and below 1
     */
    public static List<RatingResult> judge(List<Rating> ratings, List<LoadCurve> curves, double confidence) {
        return judge(ratings, curves, confidence, new DecisionRule.GuardedAcceptance(confidence));
    }

    /**
     * Returns a result for each rating, in their order, by the rule that the sheet's settings name.
     *
     * @param ratings the maker's claims
     * @param curves fitted to the valid readings
     * @param settings their confidence is the coverage of the stated interval
     */
    public static List<RatingResult> judge(List<Rating> ratings, List<LoadCurve> curves, SheetSettings settings) {
        return judge(ratings, curves, settings.confidence(), VerdictWords.rule(settings.rule()));
    }

    /**
     * Returns a result for each rating, in their order.
     *
     * @param ratings the maker's claims
     * @param curves fitted to the valid readings
     * @param confidence coverage of the stated interval, above 0 and below 1
     * @param rule how sure a verdict must be
     */
    public static List<RatingResult> judge(
            List<Rating> ratings, List<LoadCurve> curves, double confidence, DecisionRule rule) {
        return ratings.stream()
                .map(rating -> judge(rating, curves, rule, confidence))
                .toList();
    }

    private static RatingResult judge(Rating rating, List<LoadCurve> curves, DecisionRule rule, double confidence) {
        List<LoadCurve> fitting =
                curves.stream().filter(curve -> fits(curve, rating)).toList();
        Optional<LoadCurve> weakest = fitting.stream()
                .min(Comparator.comparingDouble(
                        curve -> curve.powerAt(rating.supplyVolts()).value()));
        if (weakest.isEmpty()) {
            return new RatingResult(rating, Optional.empty(), TEXTS.text("judge.notTested"));
        }
        LoadCurve curve = weakest.get();
        Estimate power = curve.powerAt(rating.supplyVolts());
        if (power.value() <= 0) {
            return new RatingResult(
                    rating, Optional.empty(), TEXTS.text("judge.noPower", Figures.of("%.4g", rating.supplyVolts())));
        }
        Assessment assessment = Conformity.assessAtLeast(power, rating.powerWatts(), rule);
        Prediction prediction = curve.curve().predict(rating.supplyVolts());
        RatingOutcome outcome = new RatingOutcome(
                curve.channel(),
                power.value(),
                power.standardUncertainty(),
                power.expandedUncertainty(confidence),
                power.coverageFactor(confidence),
                power.value() / rating.powerWatts(),
                Decibels.ofPowerRatio(power.value() / rating.powerWatts()),
                assessment.verdict(),
                assessment.probabilityMet(),
                outside(prediction),
                curve.curve().supplyVoltsFor(rating.powerWatts()));
        return new RatingResult(rating, Optional.of(outcome), remark(rating, curve, prediction));
    }

    /** A supply is seldom set closer than this, so a rating's voltage within it of the readings counts as measured. */
    private static boolean outside(Prediction prediction) {
        return prediction.extrapolationVolts() > SET_WITHIN_VOLTS;
    }

    private static boolean fits(LoadCurve curve, Rating rating) {
        return curve.kind() == rating.kind()
                && curve.mode() == rating.mode()
                && sameLoad(rating, curve.nominalLoadOhms())
                && curve.endPoint() instanceof EndPoint.DistortionLimit limit
                && sameLimit(limit, rating);
    }

    static boolean sameLoad(Rating rating, double nominalLoadOhms) {
        return Math.abs(nominalLoadOhms - rating.loadOhms()) < SAME_LOAD_RATIO * rating.loadOhms();
    }

    static boolean sameLimit(EndPoint.DistortionLimit limit, Rating rating) {
        return Math.abs(limit.ratio() - rating.distortionRatio()) <= SAME_LIMIT_RATIO * rating.distortionRatio();
    }

    private static String remark(Rating rating, LoadCurve curve, Prediction prediction) {
        List<String> remarks = new ArrayList<>();
        if (curve.curve() instanceof SquareLawFallback) {
            remarks.add(TEXTS.text("judge.oneVoltage"));
        }
        if (outside(prediction)) {
            remarks.add(TEXTS.text(
                    "judge.outside",
                    Figures.of("%.4g", rating.supplyVolts()),
                    Figures.of("%.2g", Math.abs(prediction.extrapolationVolts()))));
        }
        if (Math.abs(curve.frequencyHz() - rating.frequencyHz()) > 1e-3 * rating.frequencyHz()) {
            remarks.add(TEXTS.text(
                    "judge.frequency",
                    Figures.of("%.4g", curve.frequencyHz()),
                    Figures.of("%.4g", rating.frequencyHz())));
        }
        return String.join(" ", remarks);
    }
}
