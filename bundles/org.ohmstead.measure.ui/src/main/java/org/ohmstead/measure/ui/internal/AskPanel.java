// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import java.util.Optional;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.ohmstead.measure.bench.OperatorPort;
import org.ohmstead.model.Severity;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.form.Measure;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.MessageLine;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;

/** What the bench asks of the person before it: to do something, or to tell what an instrument shows. */
final class AskPanel extends Composite {
    private static final Messages TEXTS = Messages.of(AskPanel.class);

    private static final double LARGE = 1.6;
    private static final int DIGITS = 3;
    private static final int SENTENCE_WIDTH = 300;
    private static final int FIELD_WIDTH = 140;

    private final OperatorQuestions questions;
    private final Label warnings;
    private final Button seen;
    private final Label words;
    private final Text answer;
    private final Label unit;
    private final Button yes;
    private final Button no;
    private final MessageLine message;
    private Optional<OperatorQuestions.Asked> asked = Optional.empty();
    private String shownWarnings = "";

    AskPanel(Composite parent, OperatorQuestions questions) {
        super(parent, SWT.NONE);
        this.questions = questions;
        Spacing.group(5).applyTo(this);
        GridDataFactory.fillDefaults().grab(true, false).exclude(true).applyTo(this);
        setVisible(false);
        BigFonts fonts = new BigFonts(this);
        warnings = Ids.name(new Label(this, SWT.WRAP), "console.ask.warnings");
        warnings.setFont(fonts.times(LARGE, true));
        wide(warnings, 4);
        seen = button("console.ask.seen", TEXTS.text("ask.seen"));
        seen.addListener(SWT.Selection, event -> questions.seen());
        words = Ids.name(new Label(this, SWT.WRAP), "console.ask.words");
        words.setFont(fonts.times(LARGE, false));
        wide(words, 5);
        answer = Ids.name(new Text(this, SWT.BORDER | SWT.SINGLE), "console.ask.answer");
        answer.setFont(fonts.times(LARGE, false));
        GridDataFactory.swtDefaults().hint(FIELD_WIDTH, SWT.DEFAULT).applyTo(answer);
        answer.addListener(SWT.DefaultSelection, event -> say());
        answer.addListener(SWT.Modify, event -> check());
        unit = new Label(this, SWT.NONE);
        unit.setFont(fonts.times(LARGE, false));
        GridDataFactory.swtDefaults().applyTo(unit);
        yes = button("console.ask.yes", TEXTS.text("ask.yes"));
        yes.addListener(SWT.Selection, event -> say());
        no = button("console.ask.no", TEXTS.text("ask.no"));
        no.addListener(SWT.Selection, event -> asked.ifPresent(OperatorQuestions.Asked::refuse));
        message = new MessageLine(this, "console.ask.message");
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .align(SWT.FILL, SWT.CENTER)
                .applyTo(message);
    }

    private static void wide(Label label, int columns) {
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .span(columns, 1)
                .hint(SENTENCE_WIDTH, SWT.DEFAULT)
                .applyTo(label);
    }

    private Button button(String id, String text) {
        Button button = Ids.name(new Button(this, SWT.PUSH), id);
        button.setText(text);
        GridDataFactory.swtDefaults().applyTo(button);
        return button;
    }

    /**
     * Shows what is asked now.
     *
     * @return whether there is a question that was not there before
     */
    boolean refresh() {
        Optional<OperatorQuestions.Asked> now = questions.asked();
        String loud = String.join(" ", questions.warnings());
        if (now.equals(asked) && loud.equals(shownWarnings)) {
            return false;
        }
        boolean fresh = now.isPresent() && !now.equals(asked);
        asked = now;
        shownWarnings = loud;
        warnings.setText(loud);
        warnings.setForeground(Tones.of(this).error());
        place(warnings, !loud.isEmpty());
        place(seen, !loud.isEmpty());
        place(words, now.isPresent());
        boolean typed = now.filter(each -> each.kind() != OperatorQuestions.Asked.Kind.YES)
                .isPresent();
        place(answer, typed);
        place(unit, typed);
        place(yes, now.isPresent());
        place(no, now.isPresent());
        place(message, now.isPresent());
        now.ifPresent(this::fill);
        boolean open = now.isPresent() || !loud.isEmpty();
        setVisible(open);
        ((GridData) getLayoutData()).exclude = !open;
        getParent().layout(true, true);
        if (fresh) {
            (typed ? answer : yes).setFocus();
        }
        return fresh;
    }

    private static void place(Control control, boolean visible) {
        ((GridData) control.getLayoutData()).exclude = !visible;
        control.setVisible(visible);
    }

    private void fill(OperatorQuestions.Asked question) {
        boolean isValue = question.value().isPresent();
        words.setText(isValue ? TEXTS.text("ask.read", question.words()) : question.words());
        answer.setText("");
        unit.setText(question.value().map(each -> each.unit().symbol()).orElse(""));
        boolean yesNo = question.kind() == OperatorQuestions.Asked.Kind.YES;
        yes.setText(yesNo ? TEXTS.text("ask.yes") : TEXTS.text("ask.tell"));
        no.setText(yesNo ? TEXTS.text("ask.no") : TEXTS.text("ask.giveUp"));
        check();
    }

    private void check() {
        Optional<OperatorPort.Question> question = asked.flatMap(OperatorQuestions.Asked::value);
        if (question.isEmpty()) {
            boolean ready = asked.filter(each -> each.kind() == OperatorQuestions.Asked.Kind.WORDS)
                            .isEmpty()
                    || !answer.getText().isBlank();
            yes.setEnabled(ready);
            message.clear();
            return;
        }
        judge(question.get());
    }

    private void judge(OperatorPort.Question question) {
        Measure measure = Measure.of(question.unit());
        if (answer.getText().isBlank()) {
            yes.setEnabled(false);
            message.mention(TEXTS.text(
                    "ask.expected",
                    rounded(measure, question.likely().low()),
                    rounded(measure, question.likely().high())));
            return;
        }
        double value;
        try {
            value = measure.read(answer.getText());
        } catch (IllegalArgumentException unreadable) {
            yes.setEnabled(false);
            message.show(Severity.ERROR, unreadable.getMessage());
            return;
        }
        yes.setEnabled(question.isPossible(value));
        if (!question.isPossible(value)) {
            message.show(
                    Severity.ERROR,
                    TEXTS.text(
                            "ask.between",
                            rounded(measure, question.possible().low()),
                            rounded(measure, question.possible().high())));
        } else if (question.isLikely(value)) {
            message.clear();
        } else {
            message.show(
                    Severity.WARNING,
                    TEXTS.text(
                            "ask.unexpected",
                            rounded(measure, question.likely().low()),
                            rounded(measure, question.likely().high())));
        }
    }

    private static String rounded(Measure measure, double value) {
        return (measure.rounded(value, DIGITS) + " " + measure.symbol()).strip();
    }

    private void say() {
        if (asked.isEmpty() || !yes.isEnabled()) {
            return;
        }
        OperatorQuestions.Asked question = asked.get();
        if (question.value().isPresent()) {
            double value = Measure.of(question.value().get().unit()).read(answer.getText());
            question.say(Double.toString(value));
        } else {
            question.say(answer.getText().strip());
        }
    }
}
