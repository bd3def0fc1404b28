// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.ui.internal;

import org.ohmstead.lessons.Feedback;
import org.ohmstead.lessons.Lesson;
import org.ohmstead.lessons.LessonResult;
import org.ohmstead.lessons.Prediction;

/** What a learner predicted. */
sealed interface Guess {
    /** Returns whether it can answer a question. */
    boolean fits(Prediction prediction);

    /** Returns what is said to it. */
    Feedback judge(Lesson lesson, LessonResult result);

    /**
     * A number.
     *
     * @param value in the unit of the question
     */
    record Number(double value) implements Guess {
        @Override
        public boolean fits(Prediction prediction) {
            return prediction instanceof Prediction.Number;
        }

        @Override
        public Feedback judge(Lesson lesson, LessonResult result) {
            return lesson.feedback(value, result);
        }
    }

    /**
     * An option.
     *
     * @param id its id
     */
    record Option(String id) implements Guess {
        @Override
        public boolean fits(Prediction prediction) {
            return prediction instanceof Prediction.Choice choice
                    && choice.options().stream().anyMatch(option -> option.id().equals(id));
        }

        @Override
        public Feedback judge(Lesson lesson, LessonResult result) {
            return lesson.feedback(id, result);
        }
    }
}
