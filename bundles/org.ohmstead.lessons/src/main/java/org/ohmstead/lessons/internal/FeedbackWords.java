// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.internal;

import java.util.Locale;
import org.ohmstead.lessons.Answer;
import org.ohmstead.lessons.Option;
import org.ohmstead.lessons.Prediction;
import org.ohmstead.units.Quantity;
import org.ohmstead.units.QuantityFormat;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;

/** Words to what a learner predicted. */
public final class FeedbackWords {
    private FeedbackWords() {}

    /** Returns what is said to a number. */
    public static String number(
            Locale locale, Prediction.Number asked, Answer.Number answer, double predicted, boolean right) {
        Messages messages = Messages.of(FeedbackWords.class, locale);
        String value = text(locale, answer.value(), asked.unit(), asked.digits());
        String verdict;
        if (right) {
            verdict = messages.text("feedback.number.right", value);
        } else {
            String key = predicted < answer.value() ? "feedback.number.low" : "feedback.number.high";
            verdict = messages.text(key, value, text(locale, predicted, asked.unit(), asked.digits()));
        }
        return verdict + " " + answer.reason();
    }

    /** Returns what is said to an option. */
    public static String choice(Locale locale, Prediction.Choice asked, Answer.Choice answer, String optionId) {
        Messages messages = Messages.of(FeedbackWords.class, locale);
        String right = option(asked, answer.optionId());
        String chosen = option(asked, optionId);
        String key = optionId.equals(answer.optionId()) ? "feedback.choice.right" : "feedback.choice.wrong";
        return messages.text(key, right, chosen) + " " + answer.reason();
    }

    /** Returns an answer as the solution of a sheet tells it. */
    public static String solution(Locale locale, Prediction asked, Answer answer) {
        if (asked instanceof Prediction.Number number && answer instanceof Answer.Number value) {
            return text(locale, value.value(), number.unit(), number.digits());
        }
        return option((Prediction.Choice) asked, ((Answer.Choice) answer).optionId());
    }

    private static String option(Prediction.Choice asked, String optionId) {
        return asked.options().stream()
                .filter(option -> option.id().equals(optionId))
                .map(Option::text)
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("optionId is '" + optionId + "'; it must be one of "
                        + asked.options().stream().map(Option::id).toList()));
    }

    private static String text(Locale locale, double value, Unit unit, int digits) {
        return QuantityFormat.localised(digits, locale).format(new Quantity(value, unit));
    }
}
