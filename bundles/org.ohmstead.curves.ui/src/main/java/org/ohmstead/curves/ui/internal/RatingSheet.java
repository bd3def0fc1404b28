// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.curves.RatingOutcome;
import org.ohmstead.curves.RatingResult;
import org.ohmstead.curves.VerdictWords;
import org.ohmstead.curves.study.StudyRating;
import org.ohmstead.metrology.Verdict;
import org.ohmstead.model.Rating;
import org.ohmstead.model.VerdictRule;
import org.ohmstead.workbench.look.Coverage;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.look.Stated;

/** The ratings and what became of them, as a table. */
final class RatingSheet {
    /** Which column holds the verdict. */
    static final int VERDICT = 0;

    private static final String NONE = "\u2013";

    private RatingSheet() {}

    /** Returns the table of a study's ratings. */
    static Sheet of(PowerCurves study) {
        VerdictRule rule = study.settings().rule();
        List<Sheet.Header> headers = List.of(
                new Sheet.Header("Verdict", false, Numbers.inSentence(VerdictWords.sentence(rule))),
                new Sheet.Header("Rating", false, "The maker's claim."),
                new Sheet.Header(
                        "Measured (W)",
                        true,
                        "Power of the weakest channel from its curve at the rating's volts, with its "
                                + Coverage.adjective().toLowerCase(Locale.ROOT) + " uncertainty (" + Coverage.words()
                                + ")."),
                new Sheet.Header("Rated (W)", true, "Power that the maker claims."),
                new Sheet.Header("Diff. (W)", true, "Measured minus rated power."),
                new Sheet.Header("Diff. (%)", true, "Measured over rated power."),
                new Sheet.Header("Diff. (dB)", true, "Measured over rated power."),
                new Sheet.Header("P met (%)", true, "Probability that the true power is at least the rated one."),
                new Sheet.Header(
                        "Risk (%)",
                        true,
                        "How likely the verdict is wrong: that a rating said to be met is missed (consumer's risk), or one said to"
                                + " fall short is met (producer's risk). Rule: "
                                + Numbers.inSentence(VerdictWords.name(rule))
                                + "."),
                new Sheet.Header("At (V)", true, "Supply volts that the rating is stated for; it is judged there."),
                new Sheet.Header("Just met (V)", true, "Supply volts at which the curve reaches the rated power."),
                new Sheet.Header(
                        "Jointly (W)",
                        true,
                        "The same by the joint curve of all loads, modes and channels; in parentheses where no reading"
                                + " reaches."),
                new Sheet.Header("Remark", false, "What else is to be known of the verdict."));
        return new Sheet(
                headers,
                study.ratings().stream()
                        .map(result -> row(result, study.jointly(result.rating()), rule, study.confidence()))
                        .toList());
    }

    private static Sheet.Row row(
            RatingResult result, Optional<StudyRating> joint, VerdictRule rule, double confidence) {
        Rating rating = result.rating();
        Optional<RatingOutcome> outcome = result.outcome();
        List<Sheet.Cell> cells = new ArrayList<>();
        cells.add(new Sheet.Cell(Words.verdict(outcome), Words.explain(outcome, rule)));
        cells.add(new Sheet.Cell(Words.of(rating), Words.of(rating)));
        Sheet.Cell none = Sheet.Cell.of(NONE);
        cells.add(outcome.map(RatingSheet::measured).orElse(none));
        cells.add(Sheet.Cell.of(Numbers.shown(rating.powerWatts())));
        cells.add(outcome.map(each -> Sheet.Cell.of(Figures.signed(each.powerWatts() - rating.powerWatts(), 1)))
                .orElse(none));
        cells.add(outcome.map(each -> Sheet.Cell.of(Figures.signed(100 * (each.powerRatio() - 1), 1)))
                .orElse(none));
        cells.add(outcome.map(RatingSheet::difference).orElse(none));
        cells.add(outcome.map(each -> Sheet.Cell.of(Figures.probability(each.probabilityMet())))
                .orElse(none));
        cells.add(outcome.map(RatingSheet::risk).orElse(none));
        cells.add(Sheet.Cell.of(Numbers.shown(rating.supplyVolts())));
        cells.add(outcome.map(RatingSheet::justMet).orElse(none));
        cells.add(joint.map(each -> jointly(each, confidence)).orElse(none));
        String remark = Numbers.inSentence(result.remark());
        cells.add(new Sheet.Cell(remark, remark));
        return new Sheet.Row(cells);
    }

    private static Sheet.Cell risk(RatingOutcome outcome) {
        String sentence = Numbers.inSentence(VerdictWords.risk(outcome));
        OptionalDouble risk = outcome.verdict() == Verdict.MEETS ? outcome.consumersRisk() : outcome.producersRisk();
        return new Sheet.Cell(risk.isPresent() ? Figures.probability(risk.getAsDouble()) : NONE, sentence);
    }

    private static Sheet.Cell justMet(RatingOutcome outcome) {
        return outcome.justMetSupplyVolts().isPresent()
                ? Sheet.Cell.of(Figures.fixed(outcome.justMetSupplyVolts().getAsDouble(), 2))
                : new Sheet.Cell(NONE, "No one supply voltage gives just the rated power.");
    }

    private static Sheet.Cell jointly(StudyRating joint, double confidence) {
        String sentence = Numbers.inSentence(joint.sentence());
        return joint.finding()
                .map(found -> new Sheet.Cell(
                        StudySheets.power(found.prediction(), confidence).text(), sentence))
                .orElse(new Sheet.Cell(NONE, sentence));
    }

    private static Sheet.Cell measured(RatingOutcome outcome) {
        double expanded = Coverage.expanded(outcome.standardUncertaintyWatts());
        Stated power = Figures.stated(outcome.powerWatts(), expanded);
        String justMet = outcome.justMetSupplyVolts().isPresent()
                ? "; the rated power is reached at "
                        + Figures.fixed(outcome.justMetSupplyVolts().getAsDouble(), 2) + " V"
                : "";
        return new Sheet.Cell(
                power.text(),
                "Channel " + outcome.channel() + ": " + power.text() + " W (" + Coverage.words()
                        + "), standard uncertainty "
                        + Numbers.digits(outcome.standardUncertaintyWatts(), 2) + " W" + justMet);
    }

    private static Sheet.Cell difference(RatingOutcome outcome) {
        return new Sheet.Cell(
                Figures.signed(outcome.differenceDb(), 2),
                "Measured is " + Figures.fixed(100 * outcome.powerRatio(), 1) + " % of the rated power.");
    }
}
