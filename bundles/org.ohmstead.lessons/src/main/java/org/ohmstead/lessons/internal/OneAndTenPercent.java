// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.internal;

import java.util.ArrayList;
import java.util.List;
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
import org.ohmstead.plot.PlotPoint;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.Style;
import org.ohmstead.signal.gain.Overdrive;
import org.ohmstead.thermal.StageLoad;
import org.ohmstead.units.Decibels;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;

/** How much more power the same amplifier shows when more distortion is allowed. */
final class OneAndTenPercent {
    private static final double USUAL_PERCENT = 1;
    private static final double MOST_DB = 15;
    private static final double LEAST_DB = 0.04;
    private static final int HALVINGS = 60;

    private final Words words;

    private OneAndTenPercent(Words words) {
        this.words = words;
    }

    static Lesson lesson(Messages messages) {
        Words words = new Words(messages, "one-and-ten-percent");
        List<Control> controls = List.of(
                words.logSlider("distortion", Unit.PERCENT, USUAL_PERCENT, 30, 10, 3),
                words.slider("limit", Unit.VOLT, 5, 60, 20, 0.5, 3),
                words.logSlider("load", Unit.OHM, 1, 16, 4, 3));
        return words.lesson(controls, words.ask(Unit.PERCENT, 0, 3, 3), new OneAndTenPercent(words)::at);
    }

    /** Returns the wave of a distortion: harmonics over fundamental, up to 40 %. */
    static Overdrive waveOf(double thdFRatio) {
        double low = 0;
        double high = 20;
        for (int i = 0; i < HALVINGS; i++) {
            double middle = (low + high) / 2;
            if (new Overdrive(middle).thdFRatio() < thdFRatio) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return new Overdrive(high);
    }

    private LessonResult at(Controls values) {
        double percent = values.number("distortion");
        double onset = StageLoad.resistor(values.number("load")).watts(values.number("limit") / Math.sqrt(2));
        Overdrive usual = waveOf(USUAL_PERCENT / 100);
        Overdrive allowed = waveOf(percent / 100);
        double usualWatts = onset * usual.powerRatio();
        double allowedWatts = onset * allowed.powerRatio();
        double extra = 100 * (allowedWatts / usualWatts - 1);
        double levelDb = Decibels.ofPowerRatio(allowedWatts / usualWatts);
        List<Figure> figures = List.of(
                words.hidden("extra", extra, Unit.PERCENT, 3),
                words.given("onset", onset, Unit.WATT, 4),
                words.given("usual", usualWatts, Unit.WATT, 4),
                words.hidden("allowed", allowedWatts, Unit.WATT, 4),
                words.hidden("level", levelDb, Unit.DECIBEL, 2),
                words.hidden("drive", allowed.beyondClipDb() - usual.beyondClipDb(), Unit.DECIBEL, 3));
        Answer answer = new Answer.Number(
                extra,
                words.say(
                        "reason",
                        words.text(usualWatts, Unit.WATT, 3),
                        words.text(percent, Unit.PERCENT, 2),
                        words.text(allowedWatts, Unit.WATT, 3)));
        List<String> remarks =
                List.of(words.say("remark.level", words.text(levelDb, Unit.DECIBEL, 2), words.audible(levelDb)));
        Picture picture = new Picture("distortion-against-power", plot(onset, percent, usual, allowed), true);
        return new LessonResult(figures, List.of(picture), answer, remarks, List.of());
    }

    private Plot plot(double onset, double percent, Overdrive usual, Overdrive allowed) {
        List<PlotPoint> points = new ArrayList<>();
        for (double driveDb = LEAST_DB; driveDb <= MOST_DB; driveDb *= 1.05) {
            Overdrive wave = new Overdrive(driveDb);
            points.add(new PlotPoint(onset * wave.powerRatio(), 100 * wave.thdFRatio()));
        }
        return Plot.of(
                        words.say("plot.title"),
                        words.axis("power", Unit.WATT),
                        words.logAxis("distortion", Unit.PERCENT))
                .withSeries(new Series(words.say("plot.line"), points, Style.LINE, 0))
                .withMark(Mark.horizontal(USUAL_PERCENT, words.text(USUAL_PERCENT, Unit.PERCENT, 1)))
                .withMark(Mark.point(onset * usual.powerRatio(), USUAL_PERCENT, "", MarkerShape.CIRCLE, 0))
                .withMark(Mark.point(
                        onset * allowed.powerRatio(),
                        percent,
                        words.text(percent, Unit.PERCENT, 2),
                        MarkerShape.DIAMOND,
                        1));
    }
}
