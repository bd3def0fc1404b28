// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.ui.internal;

import java.util.Optional;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.ScrolledComposite;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.model.Severity;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.MessageLine;
import org.ohmstead.workbench.look.Slices;
import org.ohmstead.workbench.look.Spacing;

/** A lesson from top to bottom: controls, question, prediction, what is said to it, explanation. It scrolls where it is longer. */
final class LessonFlow {
    private final ScrolledComposite scrolled;
    private final LessonRun run;
    private final Composite all;
    private final PaneStyle style;
    private final Slices building;
    private final Runnable resized;
    private final ControlsPane controls;
    private PredictionPane prediction;
    private MessageLine trouble;
    private Composite buttons;
    private Button check;
    private Button again;
    private FeedbackLine feedback;
    private Label remarks;
    private Optional<ExplanationPane> explanation = Optional.empty();
    private boolean complete;
    private boolean answerComes;

    /**
     * Makes the parts, one after the other.
     *
     * @param done runs when all are there
     * @param resized runs when they need another height
     */
    LessonFlow(
            ScrolledComposite scrolled,
            LessonRun run,
            PaneStyle style,
            Slices building,
            Runnable done,
            Runnable resized) {
        this.scrolled = scrolled;
        this.run = run;
        this.style = style;
        this.building = building;
        this.resized = resized;
        all = new Composite(scrolled, SWT.NONE);
        Spacing.page(1)
                .margins(0, 0)
                .extendedMargins(0, Spacing.GAP, 0, Spacing.GAP)
                .applyTo(all);
        heading("heading.settings");
        controls = new ControlsPane(all, run, style, building, () -> {});
        grab(controls.control());
        building.add(this::makeQuestion);
        building.add(this::makeRest);
        building.add(() -> {
            complete = true;
            done.run();
        });
    }

    private void heading(String key) {
        Label label = new Label(all, SWT.NONE);
        label.setText(Texts.say(key));
        label.setFont(style.strong());
    }

    private static void grab(Composite composite) {
        GridDataFactory.fillDefaults().grab(true, false).applyTo(composite);
    }

    Composite control() {
        return all;
    }

    private boolean gone() {
        return all.isDisposed();
    }

    private void makeQuestion() {
        if (gone()) {
            return;
        }
        prediction = new PredictionPane(all, run, style);
        grab(prediction.control());
    }

    private void makeRest() {
        if (gone()) {
            return;
        }
        buttons = new Composite(all, SWT.NONE);
        Spacing.group(3).applyTo(buttons);
        check = button("lesson.check", "flow.check", prediction::check);
        again = button("lesson.again", "flow.again", run::predictAgain);
        button("lesson.over", "flow.over", run::startOver);
        GridDataFactory.fillDefaults().applyTo(buttons);
        trouble = new MessageLine(all, "lesson.trouble");
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .hint(1, SWT.DEFAULT)
                .exclude(true)
                .applyTo(trouble);
        trouble.setVisible(false);
        feedback = new FeedbackLine(all, style);
        GridDataFactory.fillDefaults().grab(true, false).exclude(true).applyTo(feedback.control());
        feedback.control().setVisible(false);
        remarks = Ids.name(new Label(all, SWT.WRAP), "lesson.remarks");
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .hint(1, SWT.DEFAULT)
                .exclude(true)
                .applyTo(remarks);
        remarks.setVisible(false);
    }

    private Button button(String id, String key, Runnable pressed) {
        Button button = Ids.name(new Button(buttons, SWT.PUSH), id);
        button.setText(Texts.say(key));
        button.setToolTipText(Texts.say(key + ".hint"));
        button.addListener(SWT.Selection, event -> pressed.run());
        return button;
    }

    /** Shows how the lesson stands. */
    void show() {
        if (!complete || gone()) {
            return;
        }
        controls.show();
        prediction.show();
        boolean predicted = run.guess().isPresent();
        check.setEnabled(!predicted);
        again.setEnabled(predicted);
        run.trouble().ifPresentOrElse(sentence -> trouble.show(Severity.ERROR, sentence), trouble::clear);
        Parts.show(trouble, run.trouble().isPresent());
        feedback.show(run);
        Parts.say(remarks, String.join("\n", AnswerWords.remarks(run)));
    }

    /** Shows the explanation after the prediction, and takes it away when another is to be made. */
    void showExplanation() {
        if (!complete || gone()) {
            return;
        }
        if (run.open() && explanation.isEmpty()) {
            answerComes = true;
            explanation = Optional.of(new ExplanationPane(all, run.lesson(), style, building, resized));
        } else if (!run.open() && explanation.isPresent()) {
            explanation.get().control().dispose();
            explanation = Optional.empty();
            resized.run();
        }
    }

    /** Gives the scrolled content the height that it needs at the width there is. */
    void fit() {
        int width = scrolled.getClientArea().width;
        if (!gone() && width > 0) {
            int height = all.computeSize(width, SWT.DEFAULT, false).y;
            if (height != scrolled.getMinHeight()) {
                scrolled.setMinHeight(height);
            }
        }
        if (answerComes && !gone()) {
            answerComes = false;
            scrolled.showControl(feedback.control());
        }
    }
}
