// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.ui.internal;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.ohmstead.curves.RatingOutcome;
import org.ohmstead.curves.RatingResult;
import org.ohmstead.curves.VerdictWords;
import org.ohmstead.model.Rating;
import org.ohmstead.model.VerdictRule;
import org.ohmstead.workbench.look.Coverage;
import org.ohmstead.workbench.look.Numbers;

/**
 * A rating beside what was measured, as texts.
 *
 * @param mark the verdict
 * @param rating the maker's wording, or what the rating says
 * @param supplyVolts at which it holds
 * @param ratedWatts what is promised
 * @param measuredWatts what was measured with its expanded uncertainty; empty when it was not
 * @param probability that the rating is met, in percent; empty when it was not tested
 * @param risk of the verdict, in percent; empty where there is no verdict
 * @param hover everything about it in sentences
 */
record RatingLine(
        VerdictMark mark,
        String rating,
        String supplyVolts,
        String ratedWatts,
        String measuredWatts,
        String probability,
        String risk,
        String hover) {
    private static final int UNCERTAINTY_DIGITS = 2;
    private static final double NEARLY_CERTAIN = 0.999;

    static RatingLine of(RatingResult result) {
        Rating rating = result.rating();
        return new RatingLine(
                VerdictMark.of(result.outcome()),
                name(rating),
                Numbers.shown(rating.supplyVolts()),
                Numbers.shown(rating.powerWatts()),
                result.outcome().map(RatingLine::measured).orElse(""),
                result.outcome()
                        .map(outcome -> percent(outcome.probabilityMet()))
                        .orElse(""),
                result.outcome().map(RatingLine::risk).orElse(""),
                hover(result));
    }

    private static String risk(RatingOutcome outcome) {
        OptionalDouble risk = outcome.consumersRisk().isPresent() ? outcome.consumersRisk() : outcome.producersRisk();
        return risk.isPresent() ? percent(risk.getAsDouble()) : "";
    }

    private static String name(Rating rating) {
        if (!rating.wording().isBlank()) {
            return rating.wording();
        }
        return terms(rating);
    }

    private static String terms(Rating rating) {
        return Texts.say(
                "rating.terms",
                Texts.say("mode." + rating.mode()),
                Numbers.shown(rating.loadOhms()),
                Numbers.percent(rating.distortionRatio()),
                Texts.say("kind." + rating.kind()));
    }

    /** The uncertainty has two significant digits and the value ends at the same place (GUM 7.2.6). */
    private static String measured(RatingOutcome outcome) {
        double expanded = Coverage.expanded(outcome.standardUncertaintyWatts());
        if (!(expanded > 0)) {
            return fixed(outcome.powerWatts(), 1);
        }
        BigDecimal rounded =
                BigDecimal.valueOf(expanded).round(new MathContext(UNCERTAINTY_DIGITS, RoundingMode.HALF_UP));
        int places = Math.max(0, UNCERTAINTY_DIGITS - (rounded.precision() - rounded.scale()));
        return fixed(outcome.powerWatts(), places) + "\u00a0\u00b1\u00a0" + fixed(expanded, places);
    }

    private static String fixed(double value, int places) {
        return Numbers.localised(
                BigDecimal.valueOf(value).setScale(places, RoundingMode.HALF_UP).toPlainString());
    }

    private static String percent(double probability) {
        if (probability > NEARLY_CERTAIN) {
            return Numbers.localised("> 99.9");
        }
        return probability < 1 - NEARLY_CERTAIN ? Numbers.localised("< 0.1") : fixed(100 * probability, 1);
    }

    private static String hover(RatingResult result) {
        List<String> lines = new ArrayList<>();
        lines.add(Texts.say(
                "rating.hover",
                name(result.rating()),
                terms(result.rating()),
                Numbers.shown(result.rating().supplyVolts())));
        result.outcome().ifPresent(outcome -> {
            lines.add(Texts.say(
                    "rating.hover.measured",
                    measured(outcome),
                    Coverage.words(),
                    outcome.channel(),
                    fixed(outcome.standardUncertaintyWatts(), 2)));
            lines.add(Texts.say("rating.hover.difference", Numbers.format("%+.2f", outcome.differenceDb())));
            lines.add(Numbers.inSentence(VerdictWords.risk(outcome)));
        });
        if (!result.remark().isBlank()) {
            lines.add(Numbers.inSentence(result.remark()));
        }
        return String.join("\n", lines);
    }

    /** Returns the verdicts in one sentence. */
    static String conclusion(List<RatingLine> lines, VerdictRule rule) {
        if (lines.isEmpty()) {
            return Texts.say("conclusion.none");
        }
        List<String> parts = new ArrayList<>();
        for (VerdictMark mark : VerdictMark.values()) {
            long count = lines.stream().filter(line -> line.mark() == mark).count();
            if (count > 0) {
                parts.add(Texts.counted("conclusion." + mark, count));
            }
        }
        return Texts.counted(
                "conclusion", lines.size(), String.join(", ", parts), Numbers.inSentence(VerdictWords.name(rule)));
    }
}
