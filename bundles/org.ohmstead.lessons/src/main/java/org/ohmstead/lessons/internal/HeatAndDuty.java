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
import org.ohmstead.thermal.ClassAbStage;
import org.ohmstead.thermal.FosterChain;
import org.ohmstead.thermal.PowerSplit;
import org.ohmstead.thermal.StageLoad;
import org.ohmstead.units.Decibels;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;

/** Where an output stage of class AB is hottest, and what pauses do for its sink. */
final class HeatAndDuty {
    private static final double AMBIENT_CELSIUS = 25;
    private static final double SINK_JOULES_PER_KELVIN = 500;
    private static final double PERIOD_SECONDS = 60;
    private static final double SHOWN_SECONDS = 3600;
    private static final double SECONDS_PER_MINUTE = 60;
    private static final double LEAST_DB = -20;
    private static final double SAME_RATIO = 0.01;
    private static final double HOT_CELSIUS = 60;

    private final Words words;

    private HeatAndDuty(Words words) {
        this.words = words;
    }

    static Lesson lesson(Messages messages) {
        Words words = new Words(messages, "heat-and-duty");
        List<Control> controls = List.of(
                words.slider("level", Unit.DECIBEL, LEAST_DB, 0, -5, 0, 3),
                words.slider("duty", Unit.PERCENT, 5, 100, 50, 5, 3),
                words.slider("rails", Unit.VOLT, 12, 60, 30, 1, 3),
                words.logSlider("load", Unit.OHM, 1, 16, 4, 3),
                words.logSlider("sink", Unit.KELVIN_PER_WATT, 0.2, 3, 0.8, 2));
        return words.lesson(controls, words.ask("more", "same", "less"), new HeatAndDuty(words)::at);
    }

    private static PowerSplit split(ClassAbStage stage, double levelDb, StageLoad load) {
        return stage.split(stage.atRailRatio(Math.min(1, Decibels.toFieldRatio(levelDb))), load);
    }

    private LessonResult at(Controls values) {
        double levelDb = values.number("level");
        double dutyRatio = values.number("duty") / 100;
        ClassAbStage stage = ClassAbStage.splitRails(values.number("rails"));
        StageLoad load = StageLoad.resistor(values.number("load"));
        FosterChain sink = FosterChain.of(values.number("sink"), SINK_JOULES_PER_KELVIN);
        PowerSplit now = split(stage, levelDb, load);
        PowerSplit full = split(stage, 0, load);
        double heat = now.lossWatts();
        double peakCelsius =
                AMBIENT_CELSIUS + heat * sink.pulsePeakKelvinPerWatt(dutyRatio * PERIOD_SECONDS, PERIOD_SECONDS);
        double meanCelsius = AMBIENT_CELSIUS + heat * dutyRatio * sink.kelvinPerWatt();
        double ratio = heat / full.lossWatts();
        String option = Math.abs(ratio - 1) <= SAME_RATIO ? "same" : ratio > 1 ? "more" : "less";
        List<Figure> figures = List.of(
                words.hidden("heat", heat, Unit.WATT, 3),
                words.given("full-heat", full.lossWatts(), Unit.WATT, 3),
                words.given("output", now.outputWatts(), Unit.WATT, 3),
                words.hidden("input", now.inputWatts(), Unit.WATT, 3),
                words.hidden("efficiency", 100 * now.efficiencyRatio().orElse(0), Unit.PERCENT, 3),
                words.hidden(
                        "worst",
                        stage.worstSine(load, stage.sineVoltsRms()).split().lossWatts(),
                        Unit.WATT,
                        3),
                words.hidden("mean-celsius", meanCelsius, Unit.CELSIUS, 3),
                words.hidden("peak-celsius", peakCelsius, Unit.CELSIUS, 3));
        Answer answer = new Answer.Choice(
                option,
                words.say(
                        "reason",
                        words.text(heat, Unit.WATT, 3),
                        words.text(full.lossWatts(), Unit.WATT, 3),
                        words.text(100 * now.efficiencyRatio().orElse(0), Unit.PERCENT, 2)));
        String duty = words.text(100 * dutyRatio, Unit.PERCENT, 2);
        List<String> remarks = List.of(words.say("remark.duty", duty, words.text(meanCelsius, Unit.CELSIUS, 3)));
        List<String> cautions = peakCelsius > HOT_CELSIUS
                ? List.of(words.say("hot", words.text(peakCelsius, Unit.CELSIUS, 3)))
                : List.of();
        List<Picture> pictures = List.of(
                new Picture("heat-against-level", levelPlot(stage, load, levelDb), true),
                new Picture("sink-temperature", timePlot(sink, heat, dutyRatio), true));
        return new LessonResult(figures, pictures, answer, remarks, cautions);
    }

    private Plot levelPlot(ClassAbStage stage, StageLoad load, double levelDb) {
        return Plot.of(
                        words.say("plot.level"),
                        words.axis("level", Unit.DECIBEL),
                        words.axis("power", Unit.WATT).withLower(0))
                .withSeries(Lines.linear(
                        words.say("plot.input"),
                        LEAST_DB,
                        0,
                        db -> split(stage, db, load).inputWatts(),
                        Style.DASHED_LINE,
                        2))
                .withSeries(Lines.linear(
                        words.say("plot.output"),
                        LEAST_DB,
                        0,
                        db -> split(stage, db, load).outputWatts(),
                        Style.LINE,
                        0))
                .withSeries(Lines.linear(
                        words.say("plot.heat"),
                        LEAST_DB,
                        0,
                        db -> split(stage, db, load).lossWatts(),
                        Style.LINE,
                        1))
                .withMark(Mark.point(
                        levelDb,
                        split(stage, levelDb, load).lossWatts(),
                        words.text(levelDb, Unit.DECIBEL, 2),
                        MarkerShape.CIRCLE,
                        1));
    }

    private Plot timePlot(FosterChain sink, double heat, double dutyRatio) {
        DoubleUnaryOperator rise = minutes -> heat * sink.kelvinPerWattAfter(minutes * SECONDS_PER_MINUTE);
        double minutes = SHOWN_SECONDS / SECONDS_PER_MINUTE;
        return Plot.of(
                        words.say("plot.time"),
                        Axis.linear(words.say("axis.time"), "min"),
                        words.axis("celsius", Unit.CELSIUS))
                .withSeries(Lines.linear(
                        words.say("plot.steady"),
                        0,
                        minutes,
                        t -> AMBIENT_CELSIUS + rise.applyAsDouble(t),
                        Style.DASHED_LINE,
                        1))
                .withSeries(Lines.linear(
                        words.say("plot.pauses"),
                        0,
                        minutes,
                        t -> AMBIENT_CELSIUS + dutyRatio * rise.applyAsDouble(t),
                        Style.LINE,
                        0));
    }
}
