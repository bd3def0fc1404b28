// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.curves.RatingOutcome;
import org.ohmstead.curves.RatingResult;
import org.ohmstead.curves.VerdictWords;
import org.ohmstead.curves.study.StudyRating;
import org.ohmstead.metrology.Verdict;
import org.ohmstead.model.Rating;
import org.ohmstead.model.VerdictRule;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Coverage;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.look.Stated;

/** The ratings and what became of them, as a table. */
final class RatingSheet {
    private static final Messages TEXTS = Messages.of(RatingSheet.class);

    /** Which column holds the verdict. */
    static final int VERDICT = 0;

    private static final String NONE = "\u2013";

    private RatingSheet() {}

    /** Returns the table of a study's ratings. */
    static Sheet of(PowerCurves study) {
        VerdictRule rule = study.settings().rule();
        List<Sheet.Header> headers = List.of(
                new Sheet.Header(TEXTS.text("ratings.verdict"), false, Numbers.inSentence(VerdictWords.sentence(rule))),
                new Sheet.Header(TEXTS.text("ratings.rating"), false, TEXTS.text("ratings.ratingHint")),
                new Sheet.Header(
                        TEXTS.text("ratings.measured"), true, TEXTS.text("ratings.measuredHint", Words.uncertainty())),
                new Sheet.Header(TEXTS.text("ratings.rated"), true, TEXTS.text("ratings.ratedHint")),
                new Sheet.Header(TEXTS.text("ratings.watts"), true, TEXTS.text("ratings.wattsHint")),
                new Sheet.Header(TEXTS.text("ratings.percent"), true, TEXTS.text("ratings.ratioHint")),
                new Sheet.Header(TEXTS.text("ratings.db"), true, TEXTS.text("ratings.ratioHint")),
                new Sheet.Header(TEXTS.text("ratings.met"), true, TEXTS.text("ratings.metHint")),
                new Sheet.Header(
                        TEXTS.text("ratings.risk"),
                        true,
                        TEXTS.text("ratings.riskHint", Numbers.inSentence(VerdictWords.name(rule)))),
                new Sheet.Header(TEXTS.text("ratings.at"), true, TEXTS.text("ratings.atHint")),
                new Sheet.Header(TEXTS.text("ratings.justMet"), true, TEXTS.text("ratings.justMetHint")),
                new Sheet.Header(TEXTS.text("ratings.jointly"), true, TEXTS.text("ratings.jointlyHint")),
                new Sheet.Header(TEXTS.text("ratings.remark"), false, TEXTS.text("ratings.remarkHint")));
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
                : new Sheet.Cell(NONE, TEXTS.text("ratings.notJust"));
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
        String channel = outcome.channel();
        String standard = Numbers.digits(outcome.standardUncertaintyWatts(), 2);
        OptionalDouble justMet = outcome.justMetSupplyVolts();
        return new Sheet.Cell(
                power.text(),
                justMet.isPresent()
                        ? TEXTS.text(
                                "ratings.measuredReached",
                                channel,
                                power.text(),
                                Coverage.words(),
                                standard,
                                Figures.fixed(justMet.getAsDouble(), 2))
                        : TEXTS.text("ratings.measuredOf", channel, power.text(), Coverage.words(), standard));
    }

    private static Sheet.Cell difference(RatingOutcome outcome) {
        return new Sheet.Cell(
                Figures.signed(outcome.differenceDb(), 2),
                TEXTS.text("ratings.share", Figures.fixed(100 * outcome.powerRatio(), 1)));
    }
}
