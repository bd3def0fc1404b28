// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.ohmstead.plot.Series;

/** What holds for every lesson at every setting. */
class EveryLessonTest {
    private static final List<String> IDS = List.of(
            "load-and-power",
            "supply-voltage",
            "bridging",
            "clipping",
            "one-and-ten-percent",
            "decibels",
            "heat-and-duty",
            "four-wires",
            "uncertainty-and-verdicts",
            "burst-and-steady",
            "gain-overlap");

    private final Set<String> answers = new HashSet<>();

    static Stream<Lesson> lessons() {
        return Stream.concat(BuiltIn.LESSONS.stream(), Lessons.builtIn(Locale.GERMAN).stream());
    }

    @Test
    void thereIsALessonForEachIdea() {
        assertEquals(IDS, BuiltIn.LESSONS.stream().map(Lesson::id).toList());
    }

    static Stream<Lesson> englishLessons() {
        return BuiltIn.LESSONS.stream();
    }

    @ParameterizedTest
    @MethodSource("lessons")
    void isWellAtItsStart(Lesson lesson) {
        check(lesson, lesson.start());
    }

    @ParameterizedTest
    @MethodSource("englishLessons")
    void isWellAtAllCornersOfItsControls(Lesson lesson) {
        corners(lesson, lesson.start(), 0);
        if (lesson.prediction() instanceof Prediction.Choice choice) {
            // A question whose answer never changes would teach nothing.
            assertTrue(answers.size() > 1, lesson.id() + " always answers " + answers);
            assertTrue(choice.options().stream().map(Option::id).toList().containsAll(answers));
        }
    }

    private void corners(Lesson lesson, Controls values, int from) {
        if (from == lesson.controls().size()) {
            check(lesson, values);
            return;
        }
        Control control = lesson.controls().get(from);
        for (double place : places(control)) {
            corners(lesson, values.with(control.id(), place), from + 1);
        }
    }

    private static double[] places(Control control) {
        if (control instanceof Control.Slider slider) {
            return new double[] {slider.least(), slider.start(), slider.most()};
        }
        int count = control instanceof Control.Choice choice ? choice.options().size() : 2;
        return Stream.iterate(0, n -> n < count, n -> n + 1)
                .mapToDouble(Integer::doubleValue)
                .toArray();
    }

    private void check(Lesson lesson, Controls values) {
        LessonResult result = lesson.at(values);
        String where = lesson.id() + " at " + values;
        assertTrue(result.figures().get(0).revealing(), where + " tells the answer first");
        assertEquals(
                result.figures().size(),
                result.figures().stream().map(Figure::id).distinct().count(),
                where);
        assertFalse(result.figuresBefore().isEmpty(), where);
        for (Figure figure : result.figures()) {
            assertFalse(figure.text(lesson.locale()).isBlank(), where);
        }
        for (Picture picture : result.pictures()) {
            assertTrue(picture.plot().series().stream().map(Series::points).noneMatch(List::isEmpty), where);
            assertFalse(picture.plot().title().isBlank(), where);
        }
        assertWhole(where, result.answer().reason());
        result.remarks().forEach(remark -> assertWhole(where, remark));
        result.cautions().forEach(caution -> assertWhole(where, caution));
        if (result.answer() instanceof Answer.Number number) {
            assertTrue(lesson.feedback(number.value(), result).right(), where);
            assertEquals(number.value(), result.figures().get(0).value(), Math.abs(number.value()) * 1e-9, where);
        } else {
            String option = ((Answer.Choice) result.answer()).optionId();
            answers.add(option);
            assertTrue(lesson.feedback(option, result).right(), where);
        }
    }

    private static void assertWhole(String where, String sentence) {
        assertTrue(sentence.endsWith("."), where + ": " + sentence);
        assertFalse(
                sentence.contains("{") || sentence.contains("NaN") || sentence.contains("\u221e"),
                where + ": " + sentence);
    }

    @ParameterizedTest
    @MethodSource("lessons")
    void saysWhatItMustSay(Lesson lesson) {
        assertFalse(lesson.formulas().isEmpty(), lesson.id());
        assertFalse(lesson.sources().isEmpty(), lesson.id());
        assertFalse(lesson.cautions().isEmpty(), lesson.id());
        assertTrue(lesson.explanation().length() > 150, lesson.id());
        assertTrue(lesson.prediction().question().endsWith("?"), lesson.id());
        lesson.cautions().forEach(caution -> assertWhole(lesson.id(), caution));
    }

    @ParameterizedTest
    @MethodSource("lessons")
    void theGermanLessonShowsTheSameNumbers(Lesson lesson) {
        Lesson english = BuiltIn.lesson(lesson.id());
        List<Double> numbers =
                lesson.at(lesson.start()).figures().stream().map(Figure::value).toList();
        assertEquals(
                english.at(english.start()).figures().stream()
                        .map(Figure::value)
                        .toList(),
                numbers);
    }
}
