// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.internal;

import java.util.List;
import org.ohmstead.curves.study.Audibility;
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

/** What a change of power is in decibels, and whether it is heard. */
final class DecibelsAndHearing {
    private static final double LEAST_WATTS = 1;
    private static final double MOST_WATTS = 2000;
    private static final double WIDEST_RATIO = 20;
    private static final double TWICE_AS_LOUD_DB = 10;

    private final Words words;

    private DecibelsAndHearing(Words words) {
        this.words = words;
    }

    static Lesson lesson(Messages messages) {
        Words words = new Words(messages, "decibels");
        List<Control> controls = List.of(
                words.logSlider("first", Unit.WATT, LEAST_WATTS, MOST_WATTS, 100, 3),
                words.logSlider("second", Unit.WATT, LEAST_WATTS, MOST_WATTS, 150, 3));
        return words.lesson(
                controls, words.ask("not-heard", "at-best", "threshold", "clear"), new DecibelsAndHearing(words)::at);
    }

    private static String option(Audibility audibility) {
        return switch (audibility) {
            case NOT_HEARD -> "not-heard";
            case DIRECT_COMPARISON_AT_BEST -> "at-best";
            case ABOUT_THRESHOLD -> "threshold";
            case CLEAR -> "clear";
        };
    }

    private LessonResult at(Controls values) {
        double first = values.number("first");
        double second = values.number("second");
        double ratio = second / first;
        double levelDb = Decibels.ofPowerRatio(ratio);
        double twice = first * Decibels.toPowerRatio(TWICE_AS_LOUD_DB);
        List<Figure> figures = List.of(
                words.hidden("level", levelDb, Unit.DECIBEL, 3),
                words.given("ratio", ratio, Unit.NONE, 3),
                words.hidden("volts-ratio", Decibels.toFieldRatio(levelDb), Unit.NONE, 3),
                words.hidden("twice", twice, Unit.WATT, 3));
        Answer answer = new Answer.Choice(
                option(Audibility.of(levelDb)),
                words.say(
                        "reason",
                        words.text(first, Unit.WATT, 3),
                        words.text(second, Unit.WATT, 3),
                        words.text(levelDb, Unit.DECIBEL, 2)));
        List<String> remarks =
                List.of(words.say("remark.twice", words.text(first, Unit.WATT, 3), words.text(twice, Unit.WATT, 3)));
        return new LessonResult(
                figures,
                List.of(new Picture("level-against-ratio", plot(ratio, levelDb), true)),
                answer,
                remarks,
                List.of());
    }

    private Plot plot(double ratio, double levelDb) {
        double widest = Math.max(WIDEST_RATIO, Math.max(ratio, 1 / ratio));
        return Plot.of(words.say("plot.title"), words.logAxis("ratio", Unit.NONE), words.axis("level", Unit.DECIBEL))
                .withSeries(Lines.log("", 1 / widest, widest, Decibels::ofPowerRatio, Style.LINE, 0))
                .withMark(Mark.horizontal(1, words.say("plot.threshold")))
                .withMark(Mark.horizontal(3, words.say("plot.clear")))
                .withMark(Mark.horizontal(TWICE_AS_LOUD_DB, words.say("plot.twice")))
                .withMark(Mark.point(ratio, levelDb, words.text(levelDb, Unit.DECIBEL, 2), MarkerShape.CIRCLE, 1));
    }
}
