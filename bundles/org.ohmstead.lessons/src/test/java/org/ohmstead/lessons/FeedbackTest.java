// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.ohmstead.units.Unit;

class FeedbackTest {
    @Test
    void aNumberNearEnoughIsRight() {
        Prediction.Number asked = new Prediction.Number("How much?", Unit.WATT, 0.1, 0.5, 3);
        assertTrue(asked.accepts(109, 100));
        assertFalse(asked.accepts(111, 100));
        // The wider tolerance counts: 0.5 W at 1 W.
        assertTrue(asked.accepts(1.4, 1));
        assertFalse(asked.accepts(1.6, 1));
    }

    @Test
    void saysWhetherThePredictionWasTooLow() {
        Lesson lesson = BuiltIn.lesson("load-and-power");
        LessonResult result = lesson.at(lesson.start());
        Feedback twice = lesson.feedback(2, result);
        assertFalse(twice.right());
        assertEquals(
                "Not quite: it is 1.91, less than the 2.00 predicted. It gives 166 W into 4.00 \u03a9, and 316 W into"
                        + " 2.00 \u03a9.",
                twice.text());
        assertTrue(lesson.feedback(1, result).text().startsWith("Not quite: it is 1.91, more than"));
        assertTrue(lesson.feedback(1.9, result).text().startsWith("Right: it is 1.91."));
    }

    @Test
    void saysWhichOptionWasRight() {
        Lesson lesson = BuiltIn.lesson("bridging");
        LessonResult result = lesson.at(lesson.start());
        assertTrue(lesson.feedback("allowed", result).right());
        Feedback wrong = lesson.feedback("too-low", result);
        assertFalse(wrong.right());
        assertTrue(wrong.text().contains("Right is: yes, it is allowed."), wrong.text());
    }

    @Test
    void speaksGerman() {
        Lesson lesson =
                Lessons.find(Lessons.builtIn(Locale.GERMAN), "load-and-power").orElseThrow();
        assertTrue(lesson.feedback(1.9, lesson.at(lesson.start())).text().startsWith("Richtig: Es sind 1,91."));
    }

    @Test
    void refusesAnAnswerOfTheOtherKind() {
        Lesson number = BuiltIn.lesson("load-and-power");
        Lesson choice = BuiltIn.lesson("bridging");
        LessonResult ofNumber = number.at(number.start());
        LessonResult ofChoice = choice.at(choice.start());
        assertThrows(IllegalArgumentException.class, () -> number.feedback("allowed", ofNumber));
        assertThrows(IllegalArgumentException.class, () -> choice.feedback(2, ofChoice));
        assertThrows(IllegalArgumentException.class, () -> choice.feedback("perhaps", ofChoice));
        assertThrows(IllegalArgumentException.class, () -> ofChoice.figure("none"));
    }
}
