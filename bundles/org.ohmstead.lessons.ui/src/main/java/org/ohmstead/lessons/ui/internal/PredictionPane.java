// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.accessibility.AccessibleAdapter;
import org.eclipse.swt.accessibility.AccessibleEvent;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.ohmstead.lessons.Option;
import org.ohmstead.lessons.Prediction;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;

/** The question of a lesson with the place for the prediction: a number with its unit, or options. */
final class PredictionPane {
    private static final int CHARACTERS = 10;

    private final LessonRun run;
    private final Composite area;
    private final List<Button> options = new ArrayList<>();
    private final Label refusal;
    private Text number;
    private boolean wasPredicted;

    PredictionPane(Composite parent, LessonRun run, PaneStyle style) {
        this.run = run;
        area = style.dress(new Composite(parent, SWT.NONE));
        Spacing.group(1).applyTo(area);
        Label question = style.dressStrong(new Label(area, SWT.WRAP));
        Ids.name(question, style.prefix() + "question");
        question.setText(Texts.plain(run.lesson().prediction().question()));
        GridDataFactory.fillDefaults().grab(true, false).hint(1, SWT.DEFAULT).applyTo(question);
        if (run.lesson().prediction() instanceof Prediction.Choice choice) {
            makeOptions(choice, style);
        } else if (run.lesson().prediction() instanceof Prediction.Number asked) {
            makeNumber(asked, style);
        }
        refusal = style.named(new Label(area, SWT.WRAP), "guess.refusal");
        refusal.setForeground(Tones.of(area).error());
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .hint(1, SWT.DEFAULT)
                .exclude(true)
                .applyTo(refusal);
        refusal.setVisible(false);
        show();
    }

    private void makeOptions(Prediction.Choice choice, PaneStyle style) {
        Composite list = style.dress(new Composite(area, SWT.NONE));
        Spacing.tight(1).applyTo(list);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(list);
        for (Option option : choice.options()) {
            Button button = style.named(new Button(list, SWT.RADIO), "guess." + option.id());
            button.setText(Texts.plain(
                    style.column()
                            ? Texts.say("option.key", String.valueOf(options.size() + 1), option.text())
                            : option.text()));
            button.setData(option.id());
            if (style.column()) {
                button.addListener(SWT.Selection, event -> markChosen());
            }
            // Enter checks, as in a field.
            button.addListener(SWT.Traverse, event -> {
                if (event.detail == SWT.TRAVERSE_RETURN) {
                    event.doit = false;
                    check();
                }
            });
            options.add(button);
        }
    }

    private void makeNumber(Prediction.Number asked, PaneStyle style) {
        Composite line = style.dress(new Composite(area, SWT.NONE));
        Spacing.tight(2).applyTo(line);
        number = Fields.make(line, style, "guess", 1, CHARACTERS);
        number.setToolTipText(Texts.say("guess.hint"));
        Label unit = style.dress(new Label(line, SWT.NONE));
        unit.setText(Texts.plain(asked.unit().symbol()));
        number.addListener(SWT.DefaultSelection, event -> check());
        number.getAccessible().addAccessibleListener(new AccessibleAdapter() {
            @Override
            public void getName(AccessibleEvent event) {
                event.result = asked.question();
            }
        });
    }

    Composite control() {
        return area;
    }

    /** Puts the focus where the prediction is made. */
    boolean setFocus() {
        return number != null
                ? number.setFocus()
                : !options.isEmpty() && options.get(0).setFocus();
    }

    /** Chooses an option by its place from 0; does nothing where there is none, or it is too late. */
    void choose(int index) {
        if (index < options.size() && run.guess().isEmpty()) {
            options.forEach(each -> each.setSelection(false));
            options.get(index).setSelection(true);
            markChosen();
            options.get(index).setFocus();
        }
    }

    /** The sign of a chosen option is too small for a room. */
    private void markChosen() {
        for (Button each : options) {
            each.setForeground(
                    each.getSelection()
                            ? Tones.of(area).accent()
                            : Tones.of(area).text());
        }
    }

    /** Hands the prediction in; where there is none yet, says what is wanted. */
    void check() {
        if (run.guess().isPresent()) {
            return;
        }
        Optional<Guess> made = number == null ? chosen() : typed();
        made.ifPresent(guess -> {
            Parts.say(refusal, "");
            run.check(guess);
        });
    }

    private Optional<Guess> chosen() {
        Optional<Guess> made = options.stream()
                .filter(Button::getSelection)
                .map(button -> (Guess) new Guess.Option(String.valueOf(button.getData())))
                .findFirst();
        if (made.isEmpty()) {
            Parts.say(refusal, Texts.say("guess.choose"));
        }
        return made;
    }

    private Optional<Guess> typed() {
        Prediction.Number asked = (Prediction.Number) run.lesson().prediction();
        TypedValue read =
                TypedValue.of(number.getText(), asked.unit(), run.lesson().locale());
        if (read.value().isEmpty()) {
            Parts.say(refusal, read.refusal());
            number.setFocus();
            return Optional.empty();
        }
        return Optional.of(new Guess.Number(read.value().getAsDouble()));
    }

    /** Shows whether a prediction may still be made. */
    void show() {
        boolean predicted = run.guess().isPresent();
        if (number != null) {
            number.setEditable(!predicted);
        }
        run.guess().ifPresent(this::showGuess);
        options.forEach(each -> each.setEnabled(!predicted));
        if (wasPredicted && !predicted) {
            clear();
        }
        wasPredicted = predicted;
    }

    /** Shows a prediction that was made elsewhere, before the room or in the view. */
    private void showGuess(Guess guess) {
        if (guess instanceof Guess.Option option) {
            options.forEach(each -> each.setSelection(option.id().equals(each.getData())));
        } else if (guess instanceof Guess.Number made && number.getText().isBlank()) {
            Prediction.Number asked = (Prediction.Number) run.lesson().prediction();
            number.setText(AnswerWords.number(made.value(), asked, run.lesson().locale()));
        }
    }

    private void clear() {
        if (number != null) {
            number.setText("");
        }
        options.forEach(each -> each.setSelection(false));
        Parts.say(refusal, "");
    }
}
