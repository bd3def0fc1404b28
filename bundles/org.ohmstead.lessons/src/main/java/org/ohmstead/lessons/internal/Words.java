// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.ohmstead.curves.study.Audibility;
import org.ohmstead.lessons.Control;
import org.ohmstead.lessons.Figure;
import org.ohmstead.lessons.Lesson;
import org.ohmstead.lessons.LessonModel;
import org.ohmstead.lessons.Option;
import org.ohmstead.lessons.Prediction;
import org.ohmstead.lessons.Source;
import org.ohmstead.plot.Axis;
import org.ohmstead.units.Quantity;
import org.ohmstead.units.QuantityFormat;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;

/** The texts of one lesson, and the parts of a lesson that are mostly texts. A text's key begins with the id of the lesson. */
final class Words {
    private final Messages messages;
    private final String lessonId;

    Words(Messages messages, String lessonId) {
        this.messages = messages;
        this.lessonId = lessonId;
    }

    Locale locale() {
        return messages.locale();
    }

    /** Returns a text of this lesson. */
    String say(String key, Object... arguments) {
        return messages.text(lessonId + "." + key, arguments);
    }

    /** Returns a text that several lessons share. */
    String common(String key, Object... arguments) {
        return messages.text("common." + key, arguments);
    }

    /** Returns whether a difference of level is heard, to end a sentence with. */
    String audible(double levelDb) {
        return common("audible."
                + Audibility.of(levelDb).name().toLowerCase(Locale.ROOT).replace('_', '-'));
    }

    /** Returns a number with its unit, as people read it. */
    String text(double value, Unit unit, int digits) {
        return QuantityFormat.localised(digits, locale()).format(new Quantity(value, unit));
    }

    Control.Slider slider(String id, Unit unit, double least, double most, double start, double step, int digits) {
        return new Control.Slider(id, say("control." + id), unit, least, most, start, false, step, digits);
    }

    Control.Slider logSlider(String id, Unit unit, double least, double most, double start, int digits) {
        return new Control.Slider(id, say("control." + id), unit, least, most, start, true, 0, digits);
    }

    Control.Choice choice(String id, int startIndex, String... optionIds) {
        return new Control.Choice(id, say("control." + id), options("control." + id, optionIds), startIndex);
    }

    Prediction ask(String... optionIds) {
        return new Prediction.Choice(say("question"), options("option", optionIds));
    }

    Prediction ask(Unit unit, double toleranceRatio, double toleranceAbsolute, int digits) {
        return new Prediction.Number(say("question"), unit, toleranceRatio, toleranceAbsolute, digits);
    }

    /** Returns a figure that can be seen at once. */
    Figure given(String id, double value, Unit unit, int digits) {
        return new Figure(id, say("figure." + id), value, unit, digits, false);
    }

    /** Returns a figure that gives the answer away. */
    Figure hidden(String id, double value, Unit unit, int digits) {
        return new Figure(id, say("figure." + id), value, unit, digits, true);
    }

    Axis axis(String key, Unit unit) {
        return Axis.linear(say("axis." + key), unit.symbol());
    }

    Axis logAxis(String key, Unit unit) {
        return Axis.log(say("axis." + key), unit.symbol());
    }

    Lesson lesson(List<Control> controls, Prediction prediction, LessonModel model) {
        List<Source> sources = numbered("source").map(Source::of).toList();
        return new Lesson(
                lessonId,
                locale(),
                say("title"),
                say("idea"),
                say("explanation"),
                numbered("formula").toList(),
                controls,
                prediction,
                sources,
                numbered("caution").toList(),
                model);
    }

    private List<Option> options(String key, String... ids) {
        List<Option> options = new ArrayList<>();
        for (String id : ids) {
            options.add(new Option(id, say(key + "." + id)));
        }
        return options;
    }

    private Stream<String> numbered(String key) {
        return Stream.iterate(1, n -> messages.has(lessonId + "." + key + "." + n), n -> n + 1)
                .map(n -> say(key + "." + n));
    }
}
