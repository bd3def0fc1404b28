// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.internal;

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
import org.ohmstead.signal.gain.GainTarget;
import org.ohmstead.units.Decibels;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;

/** What each of two channels sees of a load between their outputs, and what they give together. */
final class Bridging {
    private static final double GAIN = 2.8;
    private static final double SATURATION_VOLTS = 3;
    private static final double LEAST_OHMS = 1;
    private static final double MOST_OHMS = 16;
    private static final double CHANNELS = 2;
    private static final double SQUARED_CHANNELS = 4;
    private static final double ROUNDING = 1e-9;

    private final Words words;

    private Bridging(Words words) {
        this.words = words;
    }

    static Lesson lesson(Messages messages) {
        Words words = new Words(messages, "bridging");
        List<Control> controls = List.of(
                words.logSlider("load", Unit.OHM, LEAST_OHMS, MOST_OHMS, 4, 3),
                words.choice("lowest", 1, "ohm-1", "ohm-2", "ohm-4"),
                words.slider("supply", Unit.VOLT, 10, 16, 14.4, 0.1, 3),
                words.slider("output", Unit.OHM, 0, 0.5, 0.1, 0.01, 2));
        return words.lesson(controls, words.ask("allowed", "too-low"), new Bridging(words)::at);
    }

    private static double lowestOhms(Controls values) {
        return switch (values.chosen("lowest")) {
            case "ohm-1" -> 1;
            case "ohm-2" -> 2;
            default -> 4;
        };
    }

    private LessonResult at(Controls values) {
        double ohms = values.number("load");
        double volts = values.number("supply");
        double lowest = lowestOhms(values);
        SamplePower amplifier = new SamplePower(GAIN, SATURATION_VOLTS, values.number("output"));
        double single = amplifier.watts(volts, ohms);
        double bridged = amplifier.bridgedWatts(volts, ohms);
        double seen = new GainTarget(bridged, ohms, true).channelLoadOhms();
        boolean allowed = seen >= lowest * (1 - ROUNDING);
        List<Figure> figures = List.of(
                words.hidden("seen", seen, Unit.OHM, 3),
                words.given("single", single, Unit.WATT, 4),
                words.hidden("bridged", bridged, Unit.WATT, 4),
                words.hidden("ratio", bridged / single, Unit.NONE, 3),
                words.hidden(
                        "short-of-four", Decibels.ofPowerRatio(bridged / (SQUARED_CHANNELS * single)), Unit.DECIBEL, 2),
                words.hidden("lowest-bridged", CHANNELS * lowest, Unit.OHM, 3));
        String seenText = words.text(seen, Unit.OHM, 3);
        String lowestText = words.text(lowest, Unit.OHM, 2);
        Answer answer = new Answer.Choice(
                allowed ? "allowed" : "too-low",
                words.say(allowed ? "reason.allowed" : "reason.too-low", seenText, lowestText));
        List<String> remarks = List.of(words.say(
                "remark.power", words.text(bridged, Unit.WATT, 3), words.text(bridged / single, Unit.NONE, 3)));
        List<String> cautions = allowed ? List.of() : List.of(words.say("too-low", seenText, lowestText));
        return new LessonResult(
                figures,
                List.of(new Picture("bridged-power", plot(values, amplifier, lowest), true)),
                answer,
                remarks,
                cautions);
    }

    private Plot plot(Controls values, SamplePower amplifier, double lowest) {
        double ohms = values.number("load");
        double volts = values.number("supply");
        return Plot.of(
                        words.say("plot.title"),
                        words.logAxis("load", Unit.OHM),
                        words.axis("power", Unit.WATT).withLower(0))
                .withSeries(Lines.log(
                        words.say("plot.four"),
                        LEAST_OHMS,
                        MOST_OHMS,
                        r -> SQUARED_CHANNELS * amplifier.watts(volts, r),
                        Style.DASHED_LINE,
                        2))
                .withSeries(Lines.log(
                        words.say("plot.bridged"),
                        LEAST_OHMS,
                        MOST_OHMS,
                        r -> amplifier.bridgedWatts(volts, r),
                        Style.LINE,
                        1))
                .withSeries(Lines.log(
                        words.say("plot.single"), LEAST_OHMS, MOST_OHMS, r -> amplifier.watts(volts, r), Style.LINE, 0))
                .withMark(Mark.vertical(CHANNELS * lowest, words.say("plot.lowest")))
                .withMark(Mark.point(ohms, amplifier.bridgedWatts(volts, ohms), "", MarkerShape.CIRCLE, 1))
                .withMark(Mark.point(ohms, amplifier.watts(volts, ohms), "", MarkerShape.CIRCLE, 0));
    }
}
