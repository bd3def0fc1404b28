// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons;

import java.util.List;
import java.util.Locale;
import org.ohmstead.lessons.internal.FeedbackWords;

/**
 * One idea with live controls: texts, a question to answer before the figures are shown, and a model that works out figures, plots and the
 * answer for any setting.
 *
 * @param id its name in files and on command lines: small letters, digits and hyphens
 * @param locale the language of its texts, and the form of its numbers
 * @param title a few words
 * @param idea the one idea, in a sentence or two
 * @param explanation a short explanation, read after the prediction; paragraphs are parted by a line feed
 * @param formulas formulas in plain text, one a line
 * @param controls at least one; ids differ
 * @param prediction the question
 * @param sources where formulas and values come from, at least one
 * @param cautions what to beware of when doing this on a real bench, whatever the setting; may be empty
 * @param model works out the rest
 */
public record Lesson(
        String id,
        Locale locale,
        String title,
        String idea,
        String explanation,
        List<String> formulas,
        List<Control> controls,
        Prediction prediction,
        List<Source> sources,
        List<String> cautions,
        LessonModel model) {
    /** Checks the parameters and copies the lists. */
    public Lesson {
        Checks.id(id, "id");
        Checks.present(locale, "locale");
        Checks.named(title, "title");
        Checks.named(idea, "idea");
        Checks.named(explanation, "explanation");
        formulas = List.copyOf(formulas);
        controls = Checks.some(controls, "controls");
        Controls.startOf(controls);
        Checks.present(prediction, "prediction");
        sources = Checks.some(sources, "sources");
        cautions = List.copyOf(cautions);
        Checks.present(model, "model");
    }

    /** Returns the controls at their start values. */
    public Controls start() {
        return Controls.startOf(controls);
    }

    /**
     * Returns what the lesson shows for some values of its controls.
     *
     * @throws IllegalArgumentException if the values are those of other controls
     */
    public LessonResult at(Controls values) {
        if (!values.list().equals(controls)) {
            throw new IllegalArgumentException("values are " + values + "; they must be of the controls of " + id);
        }
        return model.at(values);
    }

    /**
     * Returns the cautions of some values that may be read before the prediction. Where the question asks for an option, there are none:
     * whether there is a caution could tell which option is right. The {@linkplain #cautions lesson's own} are always to be shown.
     *
     * @param result of these values
     */
    public List<String> cautionsBefore(LessonResult result) {
        return prediction instanceof Prediction.Choice ? List.of() : result.cautions();
    }

    /**
     * Returns what is said to a number predicted.
     *
     * @param predicted in the unit of the question
     * @param result of the present values
     * @throws IllegalArgumentException if the question asks for an option
     */
    public Feedback feedback(double predicted, LessonResult result) {
        if (prediction instanceof Prediction.Number number && result.answer() instanceof Answer.Number answer) {
            boolean right = number.accepts(Checks.finite(predicted, "predicted"), answer.value());
            return new Feedback(right, FeedbackWords.number(locale, number, answer, predicted, right));
        }
        throw new IllegalArgumentException("predicted is a number; the lesson " + id + " asks for an option");
    }

    /**
     * Returns what is said to an option predicted.
     *
     * @param optionId the id of the option
     * @param result of the present values
     * @throws IllegalArgumentException if the question asks for a number or has no such option
     */
    public Feedback feedback(String optionId, LessonResult result) {
        if (prediction instanceof Prediction.Choice choice && result.answer() instanceof Answer.Choice answer) {
            boolean right = optionId.equals(answer.optionId());
            return new Feedback(right, FeedbackWords.choice(locale, choice, answer, optionId));
        }
        throw new IllegalArgumentException("optionId is '" + optionId + "'; the lesson " + id + " asks for a number");
    }

    /** Returns id and language; the texts would fill a page. */
    @Override
    public String toString() {
        return "Lesson[" + id + ", " + locale.toLanguageTag() + "]";
    }
}
