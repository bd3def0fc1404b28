// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.ui.internal;

import org.ohmstead.lessons.Answer;
import org.ohmstead.lessons.LessonResult;
import org.ohmstead.lessons.Option;
import org.ohmstead.lessons.Prediction;

/** Right and wrong predictions, from what the model itself says. */
final class Answers {
    private Answers() {}

    static Guess right(LessonRun run) {
        LessonResult result = run.lesson().at(run.values());
        return result.answer() instanceof Answer.Number number
                ? new Guess.Number(number.value())
                : new Guess.Option(((Answer.Choice) result.answer()).optionId());
    }

    static Guess wrong(LessonRun run) {
        LessonResult result = run.lesson().at(run.values());
        if (result.answer() instanceof Answer.Number number) {
            return new Guess.Number(number.value() * 3 + 7);
        }
        String right = ((Answer.Choice) result.answer()).optionId();
        return new Guess.Option(((Prediction.Choice) run.lesson().prediction())
                .options().stream()
                        .map(Option::id)
                        .filter(id -> !id.equals(right))
                        .findFirst()
                        .orElseThrow());
    }
}
