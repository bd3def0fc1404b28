// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import java.util.ArrayList;
import java.util.List;
import org.ohmstead.curves.RatingOutcome;
import org.ohmstead.curves.RatingResult;
import org.ohmstead.metrology.Verdict;
import org.ohmstead.model.Rating;
import org.ohmstead.model.VerdictRule;

/** The maker's ratings beside what was measured, with all that is known of them, and the sentence that sums them up. */
final class RatingRows {
    private final Speech speech;
    private final RatingLines lines;

    RatingRows(Speech speech) {
        this.speech = speech;
        this.lines = new RatingLines(speech);
    }

    List<RatingRow> of(List<RatingResult> results) {
        return results.stream().map(this::row).toList();
    }

    private RatingRow row(RatingResult result) {
        Rating rating = result.rating();
        String claim = lines.claim(rating);
        String terms = lines.terms(rating);
        String rated = speech.brief(rating.powerWatts(), 5);
        if (result.outcome().isEmpty()) {
            String none = Figures.NONE;
            return new RatingRow(
                    claim,
                    terms,
                    rated,
                    none,
                    none,
                    none,
                    none,
                    none,
                    speech.text("verdict.untested"),
                    "untested",
                    speech.foreign(result.remark()));
        }
        RatingOutcome outcome = result.outcome().get();
        return new RatingRow(
                claim,
                terms,
                rated,
                speech.stated(outcome.powerWatts(), outcome.expandedUncertaintyWatts()),
                outcome.channel(),
                speech.signed((outcome.powerRatio() - 1) * 100, 1),
                speech.signed(outcome.differenceDb(), 2),
                speech.probability(outcome.probabilityMet()),
                speech.of(outcome.verdict()),
                Words.mark(outcome.verdict()),
                remark(result, outcome));
    }

    private String remark(RatingResult result, RatingOutcome outcome) {
        List<String> sentences = new ArrayList<>();
        if (!result.remark().isBlank()) {
            sentences.add(speech.foreign(result.remark()));
        }
        sentences.add(speech.risk(outcome));
        if (outcome.justMetSupplyVolts().isPresent()) {
            sentences.add(speech.text(
                    "full.justMet", speech.fixed(outcome.justMetSupplyVolts().getAsDouble(), 2) + "\u00a0V"));
        }
        return String.join(" ", sentences);
    }

    /** Returns the outcome of all ratings in one sentence, such as "4 of 6 ratings are met, 1 falls short." */
    String conclusion(List<RatingResult> results, VerdictRule rule) {
        long untested = RatingLines.untested(results);
        if (untested == results.size()) {
            return lines.conclusion(results, rule);
        }
        List<String> parts = new ArrayList<>();
        parts.add(lines.met(results));
        add(parts, "conclusion.short", RatingLines.count(results, Verdict.FALLS_SHORT));
        add(parts, "conclusion.undecided", RatingLines.count(results, Verdict.UNDECIDED));
        String judged = String.join(", ", parts);
        return untested == 0
                ? speech.text("full.conclusion", judged, speech.name(rule))
                : speech.text(
                        "full.conclusion.rest",
                        judged,
                        speech.name(rule),
                        speech.counted("conclusion.untested", untested));
    }

    private void add(List<String> parts, String key, long count) {
        if (count > 0) {
            parts.add(speech.counted(key, count));
        }
    }
}
