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
import org.ohmstead.report.internal.BenchView.BenchRating;

/** The maker's ratings beside what was measured, in the language of the sheet. */
final class RatingLines {
    private final Speech speech;

    RatingLines(Speech speech) {
        this.speech = speech;
    }

    /**
     * Returns a rating's line.
     *
     * @param result the rating, and what became of it
     * @param characters how long the maker's words may be
     * @param withTerms whether the terms stand below them; they do in any case when the maker left no words
     */
    BenchRating line(RatingResult result, int characters, boolean withTerms) {
        Rating rating = result.rating();
        String claim = PlainText.shortened(claim(rating), characters);
        String terms = withTerms || rating.wording().isBlank() ? terms(rating) : "";
        String rated = speech.brief(rating.powerWatts(), 5);
        if (result.outcome().isEmpty()) {
            return new BenchRating(
                    claim,
                    terms,
                    rated,
                    Figures.NONE,
                    Figures.NONE,
                    Figures.NONE,
                    speech.text("verdict.untested"),
                    "untested");
        }
        RatingOutcome outcome = result.outcome().get();
        return new BenchRating(
                claim,
                terms,
                rated,
                speech.stated(outcome.powerWatts(), outcome.expandedUncertaintyWatts()),
                speech.signed((outcome.powerRatio() - 1) * 100, 1),
                speech.signed(outcome.differenceDb(), 2),
                speech.of(outcome.verdict()),
                Words.mark(outcome.verdict()));
    }

    String claim(Rating rating) {
        return rating.wording().isBlank() ? speech.text("rating.named", rating.id()) : rating.wording();
    }

    String terms(Rating rating) {
        return speech.text(
                "rating.terms",
                speech.of(rating.kind()),
                speech.within(rating.mode()),
                speech.ohms(rating.loadOhms()),
                speech.volts(rating.supplyVolts()),
                speech.percent(rating.distortionRatio(), 3),
                speech.hertz(rating.frequencyHz()));
    }

    /** Returns the outcome of all ratings in one sentence. */
    String conclusion(List<RatingResult> results, VerdictRule rule) {
        if (results.isEmpty()) {
            return speech.text("conclusion.none");
        }
        long untested = untested(results);
        if (untested == results.size()) {
            return speech.counted("conclusion.allUntested", untested);
        }
        List<String> parts = new ArrayList<>();
        parts.add(met(results));
        addCount(parts, "conclusion.short", count(results, Verdict.FALLS_SHORT));
        addCount(parts, "conclusion.undecided", count(results, Verdict.UNDECIDED));
        addCount(parts, "conclusion.untested", untested);
        return speech.text("conclusion", String.join(", ", parts), speech.name(rule));
    }

    /** Returns how many ratings are met, of how many. */
    String met(List<RatingResult> results) {
        long met = count(results, Verdict.MEETS);
        return speech.text(
                met == 1 ? "conclusion.met.one" : "conclusion.met.many",
                Long.toString(met),
                speech.counted("conclusion.ratings", results.size()));
    }

    private void addCount(List<String> parts, String key, long count) {
        if (count > 0) {
            parts.add(speech.counted(key, count));
        }
    }

    static long untested(List<RatingResult> results) {
        return results.stream().filter(result -> result.outcome().isEmpty()).count();
    }

    static long count(List<RatingResult> results, Verdict verdict) {
        return results.stream()
                .flatMap(result -> result.outcome().stream())
                .filter(outcome -> outcome.verdict() == verdict)
                .count();
    }
}
