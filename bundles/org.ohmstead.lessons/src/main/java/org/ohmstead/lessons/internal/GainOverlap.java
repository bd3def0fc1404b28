// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.internal;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.ohmstead.lessons.Answer;
import org.ohmstead.lessons.Control;
import org.ohmstead.lessons.Controls;
import org.ohmstead.lessons.Figure;
import org.ohmstead.lessons.Lesson;
import org.ohmstead.lessons.LessonResult;
import org.ohmstead.lessons.Picture;
import org.ohmstead.plot.Axis;
import org.ohmstead.plot.Mark;
import org.ohmstead.plot.MarkerShape;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.Style;
import org.ohmstead.signal.gain.FullScaleDemand;
import org.ohmstead.signal.gain.GainSetup;
import org.ohmstead.signal.gain.GainTarget;
import org.ohmstead.signal.gain.Overdrive;
import org.ohmstead.units.Decibels;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;

/** How a source and an amplifier are set to each other, so that music uses the power and full scale does not hurt. */
final class GainOverlap {
    private static final double LEAST_DBFS = -30;
    private static final double HARD_DB = 6;

    private final Words words;

    private GainOverlap(Words words) {
        this.words = words;
    }

    static Lesson lesson(Messages messages) {
        Words words = new Words(messages, "gain-overlap");
        List<Control> controls = List.of(
                words.slider("overlap", Unit.DECIBEL, 0, 20, GainSetup.USUAL_OVERLAP_DB, 0.5, 3),
                words.slider("full-scale", Unit.VOLT, 0.5, 8, 5, 0.1, 3),
                words.logSlider("power", Unit.WATT, 10, 2000, 100, 3),
                words.logSlider("load", Unit.OHM, 1, 8, 4, 3));
        return words.lesson(controls, words.ask(Unit.VOLT, 0.1, 0, 3), new GainOverlap(words)::at);
    }

    private LessonResult at(Controls values) {
        double overlapDb = values.number("overlap");
        GainTarget target = new GainTarget(values.number("power"), values.number("load"), false);
        GainSetup setup = GainSetup.withOverlap(values.number("full-scale"), overlapDb, target);
        FullScaleDemand demand = setup.fullScaleDemand();
        double distortion = 100 * demand.clipped().map(Overdrive::thdFRatio).orElse(0.0);
        List<Figure> figures = List.of(
                words.hidden("sensitivity", setup.sensitivityVoltsRms(), Unit.VOLT, 4),
                words.given("output", target.outputVoltsRms(), Unit.VOLT, 4),
                words.hidden("gain", setup.gainDb(), Unit.DECIBEL, 4),
                words.hidden("level", setup.endPointDbfs(), Unit.DECIBEL, 3),
                words.hidden("asked", demand.powerWatts(), Unit.WATT, 3),
                words.hidden("given", demand.clippedPowerWatts(), Unit.WATT, 3),
                words.hidden("distortion", distortion, Unit.PERCENT, 3));
        Answer answer = new Answer.Number(
                setup.sensitivityVoltsRms(),
                words.say(
                        "reason",
                        words.text(overlapDb, Unit.DECIBEL, 3),
                        words.text(values.number("full-scale"), Unit.VOLT, 3),
                        words.text(setup.sensitivityVoltsRms(), Unit.VOLT, 3)));
        List<String> remarks = List.of(
                overlapDb > 0
                        ? words.say(
                                "remark.full-scale",
                                words.text(demand.powerWatts(), Unit.WATT, 3),
                                words.text(demand.clippedPowerWatts(), Unit.WATT, 3),
                                words.text(distortion, Unit.PERCENT, 2))
                        : words.say("remark.none"));
        List<String> cautions = overlapDb > HARD_DB ? List.of(words.say("hard")) : List.of();
        return new LessonResult(
                figures,
                List.of(new Picture("power-against-level", plot(setup, target), true)),
                answer,
                remarks,
                cautions);
    }

    private Plot plot(GainSetup setup, GainTarget target) {
        DoubleUnaryOperator asked = dbfs -> target.powerWatts() * Decibels.toPowerRatio(dbfs - setup.endPointDbfs());
        DoubleUnaryOperator given = dbfs -> dbfs <= setup.endPointDbfs()
                ? asked.applyAsDouble(dbfs)
                : target.powerWatts() * new Overdrive(dbfs - setup.endPointDbfs()).powerRatio();
        return Plot.of(
                        words.say("plot.title"),
                        Axis.linear(words.say("axis.level"), "dBFS"),
                        words.logAxis("power", Unit.WATT))
                .withSeries(Lines.linear(words.say("plot.asked"), LEAST_DBFS, 0, asked, Style.DASHED_LINE, 1))
                .withSeries(Lines.linear(words.say("plot.given"), LEAST_DBFS, 0, given, Style.LINE, 0))
                .withMark(Mark.vertical(setup.endPointDbfs(), words.say("plot.end-point")))
                .withMark(Mark.point(setup.endPointDbfs(), target.powerWatts(), "", MarkerShape.CIRCLE, 0));
    }
}
