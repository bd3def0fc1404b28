// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.internal;

import java.util.List;
import java.util.OptionalDouble;
import org.ohmstead.curves.study.SupplyModel;
import org.ohmstead.lessons.Answer;
import org.ohmstead.lessons.Control;
import org.ohmstead.lessons.Controls;
import org.ohmstead.lessons.Figure;
import org.ohmstead.lessons.Lesson;
import org.ohmstead.lessons.LessonResult;
import org.ohmstead.lessons.Picture;
import org.ohmstead.plot.Mark;
import org.ohmstead.plot.MarkerShape;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.Style;
import org.ohmstead.units.Decibels;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;

/** What is left of the power at 14.4 V when the supply falls. */
final class SupplyVoltage {
    private static final double GAIN = 2.8;
    private static final double OUTPUT_OHMS = 0.1;
    private static final double RATED_VOLTS = 14.4;
    private static final double KNEE_VOLTS = 11.5;
    private static final double LEAST_VOLTS = 9;
    private static final double MOST_VOLTS = 16;

    private final Words words;

    private SupplyVoltage(Words words) {
        this.words = words;
    }

    static Lesson lesson(Messages messages) {
        Words words = new Words(messages, "supply-voltage");
        List<Control> controls = List.of(
                words.slider("supply", Unit.VOLT, LEAST_VOLTS, MOST_VOLTS, 12.6, 0.1, 3),
                words.choice("kind", 0, "follows", "held"),
                words.slider("loss", Unit.VOLT, 0, 6, 3, 0.5, 2),
                words.logSlider("load", Unit.OHM, 1, 8, 4, 3));
        return words.lesson(controls, words.ask(Unit.PERCENT, 0, 3, 3), new SupplyVoltage(words)::at);
    }

    private static SamplePower amplifier(Controls values) {
        double loss = values.number("loss");
        OptionalDouble output = OptionalDouble.of(OUTPUT_OHMS);
        return new SamplePower(
                values.chosen("kind").equals("held")
                        ? new SupplyModel.Regulated(GAIN, loss, output, KNEE_VOLTS)
                        : new SupplyModel.Unregulated(GAIN, loss, output));
    }

    private LessonResult at(Controls values) {
        double volts = values.number("supply");
        double ohms = values.number("load");
        SamplePower amplifier = amplifier(values);
        double rated = amplifier.watts(RATED_VOLTS, ohms);
        double now = amplifier.watts(volts, ohms);
        double square = Math.pow(volts / RATED_VOLTS, 2);
        double levelDb = Decibels.ofPowerRatio(now / rated);
        List<Figure> figures = List.of(
                words.hidden("share", 100 * now / rated, Unit.PERCENT, 3),
                words.given("rated", rated, Unit.WATT, 4),
                words.hidden("now", now, Unit.WATT, 4),
                words.hidden("square", 100 * square, Unit.PERCENT, 3),
                words.hidden("level", levelDb, Unit.DECIBEL, 2));
        Answer answer = new Answer.Number(
                100 * now / rated,
                words.say(
                        values.chosen("kind").equals("held") ? "reason.held" : "reason.follows",
                        words.text(rated, Unit.WATT, 3),
                        words.text(volts, Unit.VOLT, 3),
                        words.text(now, Unit.WATT, 3),
                        words.text(KNEE_VOLTS, Unit.VOLT, 3)));
        List<String> remarks =
                List.of(words.say("remark.level", words.text(levelDb, Unit.DECIBEL, 2), words.audible(levelDb)));
        return new LessonResult(
                figures,
                List.of(new Picture("power-against-supply", plot(volts, ohms, amplifier), true)),
                answer,
                remarks,
                List.of());
    }

    private Plot plot(double volts, double ohms, SamplePower amplifier) {
        double rated = amplifier.watts(RATED_VOLTS, ohms);
        return Plot.of(
                        words.say("plot.title"),
                        words.axis("supply", Unit.VOLT),
                        words.axis("power", Unit.WATT).withLower(0))
                .withSeries(Lines.linear(
                        words.say("plot.square"),
                        LEAST_VOLTS,
                        MOST_VOLTS,
                        v -> rated * Math.pow(v / RATED_VOLTS, 2),
                        Style.DASHED_LINE,
                        1))
                .withSeries(Lines.linear(
                        words.say("plot.real"), LEAST_VOLTS, MOST_VOLTS, v -> amplifier.watts(v, ohms), Style.LINE, 0))
                .withMark(Mark.vertical(RATED_VOLTS, words.text(RATED_VOLTS, Unit.VOLT, 3)))
                .withMark(Mark.point(
                        volts, amplifier.watts(volts, ohms), words.text(volts, Unit.VOLT, 3), MarkerShape.CIRCLE, 0));
    }
}
