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
import org.ohmstead.plot.Style;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;

/** Half the load gives less than twice the power, because of what lies between the inner volts and the terminals. */
final class LoadAndPower {
    private static final double GAIN = 2.8;
    private static final double SATURATION_VOLTS = 3;
    private static final double LEAST_OHMS = 1;
    private static final double MOST_OHMS = 16;
    /** Below this load the caution about the least allowed load is given. */
    private static final double LOW_OHMS = 2;

    private final Words words;

    private LoadAndPower(Words words) {
        this.words = words;
    }

    static Lesson lesson(Messages messages) {
        Words words = new Words(messages, "load-and-power");
        List<Control> controls = List.of(
                words.logSlider("load", Unit.OHM, LEAST_OHMS, MOST_OHMS, 4, 3),
                words.slider("supply", Unit.VOLT, 10, 16, 14.4, 0.1, 3),
                words.slider("output", Unit.OHM, 0, 0.5, 0.1, 0.01, 2));
        return words.lesson(controls, words.ask(Unit.NONE, 0.03, 0, 3), new LoadAndPower(words)::at);
    }

    private LessonResult at(Controls values) {
        double ohms = values.number("load");
        double volts = values.number("supply");
        SamplePower amplifier = new SamplePower(GAIN, SATURATION_VOLTS, values.number("output"));
        SamplePower stiff = new SamplePower(GAIN, SATURATION_VOLTS, 0);
        double watts = amplifier.watts(volts, ohms);
        double halfWatts = amplifier.watts(volts, ohms / 2);
        double ratio = halfWatts / watts;
        double peakVolts = amplifier.peakVolts(volts, ohms);
        List<Figure> figures = List.of(
                words.hidden("ratio", ratio, Unit.NONE, 4),
                words.given("power", watts, Unit.WATT, 4),
                words.hidden("half-load-power", halfWatts, Unit.WATT, 4),
                words.given("peak", peakVolts, Unit.VOLT, 4),
                words.given("current", peakVolts / ohms / Math.sqrt(2), Unit.AMPERE, 3));
        Plot plot = Plot.of(
                        words.say("plot.title"),
                        words.logAxis("load", Unit.OHM),
                        words.axis("power", Unit.WATT).withLower(0))
                .withSeries(Lines.log(
                        words.say("plot.stiff"),
                        LEAST_OHMS / 2,
                        MOST_OHMS,
                        r -> stiff.watts(volts, r),
                        Style.DASHED_LINE,
                        1))
                .withSeries(Lines.log(
                        words.say("plot.real"),
                        LEAST_OHMS / 2,
                        MOST_OHMS,
                        r -> amplifier.watts(volts, r),
                        Style.LINE,
                        0))
                .withMark(Mark.point(ohms, watts, words.text(ohms, Unit.OHM, 3), MarkerShape.CIRCLE, 0))
                .withMark(Mark.point(ohms / 2, halfWatts, words.text(ohms / 2, Unit.OHM, 3), MarkerShape.CIRCLE, 0));
        Answer answer = new Answer.Number(
                ratio,
                words.say(
                        "reason",
                        words.text(watts, Unit.WATT, 3),
                        words.text(ohms, Unit.OHM, 3),
                        words.text(halfWatts, Unit.WATT, 3),
                        words.text(ohms / 2, Unit.OHM, 3)));
        List<String> remarks = new ArrayList<>();
        remarks.add(
                values.number("output") > 0
                        ? words.say("remark.resistance", words.text(values.number("output"), Unit.OHM, 2))
                        : words.say("remark.stiff"));
        List<String> cautions = ohms < LOW_OHMS ? List.of(words.say("low-load")) : List.of();
        return new LessonResult(
                figures, List.of(new Picture("power-against-load", plot, true)), answer, remarks, cautions);
    }
}
