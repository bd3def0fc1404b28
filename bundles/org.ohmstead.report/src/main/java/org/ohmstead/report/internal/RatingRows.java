// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.ohmstead.curves.RatingOutcome;
import org.ohmstead.curves.RatingResult;
import org.ohmstead.curves.VerdictWords;
import org.ohmstead.metrology.Verdict;
import org.ohmstead.model.Rating;
import org.ohmstead.model.VerdictRule;

/** The maker's ratings beside what was measured, and the sentence that sums them up. */
final class RatingRows {
    private RatingRows() {}

    static List<RatingRow> of(List<RatingResult> results) {
        return results.stream().map(RatingRows::row).toList();
    }

    private static RatingRow row(RatingResult result) {
        Rating rating = result.rating();
        String claim = rating.wording().isBlank() ? "Rating " + rating.id() : rating.wording();
        String terms = terms(rating);
        String rated = Figures.brief(rating.powerWatts(), 5);
        if (result.outcome().isEmpty()) {
            String none = Figures.NONE;
            return new RatingRow(
                    claim, terms, rated, none, none, none, none, none, "not tested", "untested", result.remark());
        }
        RatingOutcome outcome = result.outcome().get();
        return new RatingRow(
                claim,
                terms,
                rated,
                Rounding.of(outcome.powerWatts(), outcome.expandedUncertaintyWatts())
                        .text(),
                outcome.channel(),
                Figures.signed((outcome.powerRatio() - 1) * 100, 1),
                Figures.signed(outcome.differenceDb(), 2),
                probability(outcome.probabilityMet()),
                Words.of(outcome.verdict()),
                Words.mark(outcome.verdict()),
                remark(result, outcome));
    }

    private static String terms(Rating rating) {
        return Words.of(rating.kind()) + ", " + Words.of(rating.mode()).toLowerCase(Locale.ROOT) + ", "
                + Figures.ohms(rating.loadOhms()) + ", " + Figures.volts(rating.supplyVolts()) + ", "
                + Figures.percent(rating.distortionRatio(), 3) + "\u00a0% distortion, "
                + Figures.hertz(rating.frequencyHz());
    }

    private static String remark(RatingResult result, RatingOutcome outcome) {
        List<String> sentences = new ArrayList<>();
        if (!result.remark().isBlank()) {
            sentences.add(result.remark());
        }
        sentences.add(VerdictWords.risk(outcome).replace(" %", "\u00a0%"));
        if (outcome.justMetSupplyVolts().isPresent()) {
            sentences.add(
                    "Just met at " + Figures.fixed(outcome.justMetSupplyVolts().getAsDouble(), 2) + "\u00a0V.");
        }
        return String.join(" ", sentences);
    }

    private static String probability(double probability) {
        if (probability > 0.999) {
            return ">\u00a099.9";
        }
        return probability < 0.001 ? "<\u00a00.1" : Figures.fixed(probability * 100, 1);
    }

    /** Returns the outcome of all ratings in one sentence, such as "4 of 6 ratings are met, 1 falls short." */
    static String conclusion(List<RatingResult> results, VerdictRule rule) {
        if (results.isEmpty()) {
            return "The maker states no ratings; the powers below stand for themselves.";
        }
        long met = count(results, Verdict.MEETS);
        long shortfall = count(results, Verdict.FALLS_SHORT);
        long undecided = count(results, Verdict.UNDECIDED);
        long untested =
                results.stream().filter(result -> result.outcome().isEmpty()).count();
        if (untested == results.size()) {
            return "None of the " + results.size() + " ratings has been tested yet.";
        }
        List<String> parts = new ArrayList<>();
        parts.add(met + " of " + results.size() + (results.size() == 1 ? " rating" : " ratings")
                + (met == 1 ? " is met" : " are met"));
        add(parts, shortfall, " falls short", " fall short");
        add(parts, undecided, " is undecided", " are undecided");
        String sentence =
                String.join(", ", parts) + " by " + VerdictWords.name(rule).replace(" %", "\u00a0%");
        String rest = untested == 0 ? "" : "; " + untested + (untested == 1 ? " was" : " were") + " not tested";
        return sentence + rest + ".";
    }

    private static void add(List<String> parts, long count, String one, String many) {
        if (count > 0) {
            parts.add(count + (count == 1 ? one : many));
        }
    }

    private static long count(List<RatingResult> results, Verdict verdict) {
        return results.stream()
                .filter(result -> result.outcome()
                        .map(outcome -> outcome.verdict() == verdict)
                        .orElse(false))
                .count();
    }
}
