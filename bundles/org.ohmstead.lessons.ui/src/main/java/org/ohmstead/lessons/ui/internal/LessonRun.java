// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.eclipse.swt.widgets.Display;
import org.ohmstead.lessons.Control;
import org.ohmstead.lessons.Controls;
import org.ohmstead.lessons.Feedback;
import org.ohmstead.lessons.Lesson;
import org.ohmstead.lessons.LessonResult;

/**
 * One lesson as it is worked through: where its controls stand, what was predicted, and what the model gave. The view and the presenter
 * share it. What gives the answer away is shown only while {@link #open()}. User interface thread only.
 */
final class LessonRun {
    private static final System.Logger LOGGER = System.getLogger(LessonRun.class.getName());

    private final Lesson lesson;
    private final LatestWork<Controls, LessonResult> model;
    private final List<Runnable> listeners = new ArrayList<>();
    private Controls values;
    private Optional<Controls> valuesOfResult = Optional.empty();
    private Optional<LessonResult> result = Optional.empty();
    private Optional<Guess> guess = Optional.empty();
    private Optional<Feedback> feedback = Optional.empty();
    private Optional<Controls> valuesOfFeedback = Optional.empty();
    private Optional<String> trouble = Optional.empty();

    /** Begins a lesson at its start values; the model is asked at once. */
    LessonRun(Display display, Lesson lesson) {
        this(display, lesson, Optional.empty());
    }

    /**
     * Begins a lesson.
     *
     * @param earlier the same lesson in another language or with other signs, whose values and prediction are taken over
     */
    LessonRun(Display display, Lesson lesson, Optional<LessonRun> earlier) {
        this.lesson = lesson;
        this.model = new LatestWork<>(display, lesson::at, this::take, this::late);
        values = earlier.map(this::valuesOf).orElseGet(lesson::start);
        guess = earlier.flatMap(run -> run.guess).filter(each -> each.fits(lesson.prediction()));
        model.ask(values);
    }

    private Controls valuesOf(LessonRun earlier) {
        Controls taken = lesson.start();
        for (Control control : lesson.controls()) {
            if (earlier.lesson.controls().stream().anyMatch(same -> same.id().equals(control.id()))) {
                taken = taken.with(control.id(), earlier.values.number(control.id()));
            }
        }
        return taken;
    }

    Lesson lesson() {
        return lesson;
    }

    /** Returns where the controls stand now. */
    Controls values() {
        return values;
    }

    /** Returns what the model gave last; it may lag behind the controls. Empty until the first time. */
    Optional<LessonResult> result() {
        return result;
    }

    /** Returns whether the prediction was made, so that everything may be shown. */
    boolean open() {
        return feedback.isPresent();
    }

    /** Returns what was predicted. */
    Optional<Guess> guess() {
        return guess;
    }

    /** Returns what is said to the prediction. */
    Optional<Feedback> feedback() {
        return feedback;
    }

    /** Returns whether the result shown is for other values than those that the prediction was made for. */
    boolean moved() {
        return open() && !valuesOfFeedback.equals(valuesOfResult);
    }

    /** Returns what keeps the result from coming, as a sentence. */
    Optional<String> trouble() {
        return trouble;
    }

    /** Adds a listener that runs after every change; the result takes it away. */
    Runnable listen(Runnable listener) {
        listeners.add(Objects.requireNonNull(listener, "listener"));
        return () -> listeners.remove(listener);
    }

    /** Sets a control to the nearest value that it can have. */
    void set(String controlId, double value) {
        turnTo(values.with(controlId, value));
    }

    private void turnTo(Controls wanted) {
        if (!wanted.equals(values)) {
            values = wanted;
            model.ask(values);
            tell();
        }
    }

    /** Takes a prediction; what is said to it comes as soon as the model has answered for the present values. Only the first counts. */
    void check(Guess made) {
        if (guess.isEmpty() && made.fits(lesson.prediction())) {
            guess = Optional.of(made);
            judge();
            tell();
        }
    }

    /** Covers the answer again, so that another prediction can be made for the present values. */
    void predictAgain() {
        guess = Optional.empty();
        feedback = Optional.empty();
        valuesOfFeedback = Optional.empty();
        tell();
    }

    /** Begins anew: controls at their start, nothing predicted. */
    void startOver() {
        values = lesson.start();
        model.ask(values);
        predictAgain();
    }

    /** Ends it; nothing is told any more. */
    void stop() {
        model.stop();
        listeners.clear();
    }

    private void take(Controls asked, LessonResult given) {
        result = Optional.of(given);
        valuesOfResult = Optional.of(asked);
        trouble = Optional.empty();
        judge();
        tell();
    }

    private void late(Optional<Throwable> failure) {
        failure.ifPresent(
                cause -> LOGGER.log(System.Logger.Level.ERROR, "The lesson " + lesson.id() + " failed.", cause));
        trouble = Optional.of(
                failure.isPresent()
                        ? Texts.say(
                                "problem.model",
                                lesson.title(),
                                String.valueOf(failure.get().getMessage()))
                        : Texts.say("problem.slow", lesson.title()));
        tell();
    }

    private void judge() {
        if (guess.isPresent() && feedback.isEmpty() && valuesOfResult.equals(Optional.of(values))) {
            feedback = result.map(given -> guess.get().judge(lesson, given));
            valuesOfFeedback = valuesOfResult;
        }
    }

    private void tell() {
        List.copyOf(listeners).forEach(Runnable::run);
    }
}
