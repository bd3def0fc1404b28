// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.internal;

import java.util.List;
import java.util.Map;
import org.ohmstead.lessons.Answer;
import org.ohmstead.lessons.Control;
import org.ohmstead.lessons.Controls;
import org.ohmstead.lessons.Figure;
import org.ohmstead.lessons.Lesson;
import org.ohmstead.lessons.LessonResult;
import org.ohmstead.lessons.Picture;
import org.ohmstead.metrology.Assessment;
import org.ohmstead.metrology.Conformity;
import org.ohmstead.metrology.Contribution;
import org.ohmstead.metrology.DecisionRule;
import org.ohmstead.metrology.Estimate;
import org.ohmstead.metrology.UncertaintyBudget;
import org.ohmstead.metrology.Verdict;
import org.ohmstead.plot.Mark;
import org.ohmstead.plot.MarkerShape;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.Style;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;

/** Whether a measured power meets a rating, when the meters are not perfect. */
final class UncertaintyAndVerdicts {
    private static final Map<String, Double> CONFIDENCES = Map.of("c-90", 0.90, "c-95", 0.95, "c-99", 0.99);
    private static final double SHOWN_UNCERTAINTIES = 5;
    private static final double LEAST_SHOWN_RATIO = 0.01;

    private final Words words;

    private UncertaintyAndVerdicts(Words words) {
        this.words = words;
    }

    static Lesson lesson(Messages messages) {
        Words words = new Words(messages, "uncertainty-and-verdicts");
        List<Control> controls = List.of(
                words.logSlider("rated", Unit.WATT, 10, 1000, 100, 4),
                words.slider("volts", Unit.VOLT, 5, 60, 20.1, 0.01, 4),
                words.logSlider("load", Unit.OHM, 1, 16, 4, 3),
                words.slider("meter", Unit.PERCENT, 0, 2, 0.5, 0.05, 2),
                words.slider("counts", Unit.VOLT, 0, 0.1, 0.03, 0.005, 2),
                words.slider("tolerance", Unit.PERCENT, 0, 5, 1, 0.1, 2),
                words.choice("confidence", 1, "c-90", "c-95", "c-99"));
        return words.lesson(
                controls, words.ask("meets", "undecided", "falls-short"), new UncertaintyAndVerdicts(words)::at);
    }

    private static Estimate power(Controls values) {
        double volts = values.number("volts");
        double ohms = values.number("load");
        double voltsLimit = values.number("meter") / 100 * volts + values.number("counts");
        double ohmsLimit = values.number("tolerance") / 100 * ohms;
        return UncertaintyBudget.of(
                        volts * volts / ohms,
                        Contribution.of("volts", 2 * volts / ohms, Estimate.rectangular(volts, voltsLimit)),
                        Contribution.of("load", -volts * volts / (ohms * ohms), Estimate.rectangular(ohms, ohmsLimit)))
                .combined();
    }

    private static String option(Verdict verdict) {
        return switch (verdict) {
            case MEETS -> "meets";
            case FALLS_SHORT -> "falls-short";
            case UNDECIDED -> "undecided";
        };
    }

    private LessonResult at(Controls values) {
        double rated = values.number("rated");
        double confidence = CONFIDENCES.get(values.chosen("confidence"));
        DecisionRule rule = new DecisionRule.GuardedAcceptance(confidence);
        Estimate power = power(values);
        Assessment assessment = Conformity.assessAtLeast(power, rated, rule);
        List<Figure> figures = List.of(
                words.hidden("probability", 100 * assessment.probabilityMet(), Unit.PERCENT, 3),
                words.given("power", power.value(), Unit.WATT, 5),
                words.hidden("standard", power.standardUncertainty(), Unit.WATT, 2),
                words.hidden("expanded", power.expandedUncertainty(0.95), Unit.WATT, 2),
                words.hidden("guard", assessment.guardBand(), Unit.WATT, 3),
                words.hidden("from", assessment.acceptanceLimit(), Unit.WATT, 5),
                words.hidden("below", 2 * rated - assessment.acceptanceLimit(), Unit.WATT, 5));
        Answer answer = new Answer.Choice(
                option(assessment.verdict()),
                words.say(
                        "reason",
                        words.text(power.value(), Unit.WATT, 4),
                        words.text(rated, Unit.WATT, 4),
                        words.text(100 * assessment.probabilityMet(), Unit.PERCENT, 3),
                        words.text(100 * confidence, Unit.PERCENT, 2),
                        words.text(100 * (1 - confidence), Unit.PERCENT, 2)));
        List<String> remarks = List.of(words.say("remark." + option(assessment.verdict())));
        return new LessonResult(
                figures,
                List.of(new Picture("probability", plot(assessment, power, rated, rule), true)),
                answer,
                remarks,
                List.of());
    }

    private Plot plot(Assessment assessment, Estimate power, double rated, DecisionRule rule) {
        double half = Math.max(SHOWN_UNCERTAINTIES * power.standardUncertainty(), LEAST_SHOWN_RATIO * rated);
        double least = Math.min(rated - half, power.value());
        double most = Math.max(rated + half, power.value());
        double confidence = rule.confidence();
        return Plot.of(
                        words.say("plot.title"),
                        words.axis("power", Unit.WATT),
                        words.axis("probability", Unit.PERCENT).withRange(0, 100))
                .withSeries(Lines.linear(
                        words.say("plot.line"),
                        least,
                        most,
                        watts -> 100
                                * Conformity.assessAtLeast(Estimate.of(watts, power.standardUncertainty()), rated, rule)
                                        .probabilityMet(),
                        Style.LINE,
                        0))
                .withMark(Mark.vertical(rated, words.say("plot.rated")))
                .withMark(Mark.horizontal(100 * confidence, words.say("plot.meets")))
                .withMark(Mark.horizontal(100 * (1 - confidence), words.say("plot.short")))
                .withMark(Mark.point(
                        power.value(),
                        100 * assessment.probabilityMet(),
                        words.text(power.value(), Unit.WATT, 4),
                        MarkerShape.CIRCLE,
                        1));
    }
}
