// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.ui.internal;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.ohmstead.lessons.Answer;
import org.ohmstead.lessons.Control;
import org.ohmstead.lessons.Lesson;
import org.ohmstead.lessons.LessonResult;
import org.ohmstead.lessons.Option;
import org.ohmstead.lessons.Prediction;
import org.ohmstead.units.Quantity;
import org.ohmstead.units.QuantityFormat;

/** What is said of the answer, the settings and the cautions of a lesson. */
final class AnswerWords {
    private AnswerWords() {}

    /** Returns what is said to the prediction, or the answer for the present values where they are others since. */
    static String of(LessonRun run) {
        if (run.moved()) {
            return run.result().map(result -> now(run.lesson(), result)).orElse("");
        }
        return run.feedback().map(feedback -> feedback.text()).orElse("");
    }

    /** Returns the answer for the present values. */
    static String now(Lesson lesson, LessonResult result) {
        return Texts.say(
                "answer.now", value(lesson, result.answer()), result.answer().reason());
    }

    private static String value(Lesson lesson, Answer answer) {
        if (answer instanceof Answer.Number number && lesson.prediction() instanceof Prediction.Number asked) {
            return number(number.value(), asked, lesson.locale());
        }
        String chosen = ((Answer.Choice) answer).optionId();
        return ((Prediction.Choice) lesson.prediction())
                .options().stream()
                        .filter(option -> option.id().equals(chosen))
                        .map(Option::text)
                        .findFirst()
                        .orElse(chosen);
    }

    /** Returns a number of a question as people read it. */
    static String number(double value, Prediction.Number asked, Locale locale) {
        return QuantityFormat.localised(asked.digits(), locale).format(new Quantity(value, asked.unit()));
    }

    /** Returns where the controls stand, in one line. */
    static String settings(LessonRun run) {
        return run.lesson().controls().stream()
                .map(control -> setting(run, control))
                .collect(Collectors.joining(" \u00b7 "));
    }

    private static String setting(LessonRun run, Control control) {
        return Texts.say(
                "setting",
                control.label(),
                run.values().text(control.id(), run.lesson().locale()));
    }

    /** Returns the cautions that hold now: those of the lesson always, those of the present values unless they tell the answer. */
    static List<String> cautions(LessonRun run) {
        return Stream.concat(run.lesson().cautions().stream(), cautionsOfValues(run).stream())
                .distinct()
                .toList();
    }

    /** Returns the cautions of the present values, unless they tell the answer. */
    static List<String> cautionsOfValues(LessonRun run) {
        return run.result()
                .map(result -> run.open() ? result.cautions() : run.lesson().cautionsBefore(result))
                .orElse(List.of());
    }

    /** Returns what is worth noticing at the present values; empty before the prediction. */
    static List<String> remarks(LessonRun run) {
        return run.open() ? run.result().map(LessonResult::remarks).orElse(List.of()) : List.of();
    }
}
