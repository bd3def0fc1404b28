// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.ui.internal;

import java.util.Optional;
import java.util.function.Consumer;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.PixelConverter;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.ohmstead.model.Severity;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.MessageLine;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;

/** Takes a value of the chosen check standard by typing. */
final class ValueEntry {
    private static final Messages TEXTS = Messages.of(ValueEntry.class);
    private static final int VALUE_CHARS = 10;
    private static final int OPERATOR_CHARS = 14;

    private final Composite area;
    private final Label heading;
    private final Text value;
    private final Label unit;
    private final Text operator;
    private final Button add;
    private final MessageLine message;
    private final ViewMemory memory;
    private final Writer writer;
    private Optional<CheckView> check = Optional.empty();
    private String closedBecause = "";
    private boolean writing;

    /** Writes a value that was typed. */
    @FunctionalInterface
    interface Writer {
        /** Writes it, then calls back: with nothing when it is in the log, else with what went wrong. */
        void write(CheckView check, double value, String operator, Consumer<Optional<String>> done);
    }

    ValueEntry(Composite parent, ViewMemory memory, Writer writer) {
        this.memory = memory;
        this.writer = writer;
        area = new Composite(parent, SWT.NONE);
        Spacing.tight(3).applyTo(area);
        heading = Ids.name(new Label(area, SWT.WRAP), "quality.entry.heading");
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .span(3, 1)
                .hint(120, SWT.DEFAULT)
                .applyTo(heading);
        value = field(TEXTS.text("entry.value"), "quality.entry.value", VALUE_CHARS, SWT.RIGHT);
        unit = new Label(area, SWT.NONE);
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .align(SWT.FILL, SWT.CENTER)
                .applyTo(unit);
        operator = field(TEXTS.text("entry.operator"), "quality.entry.operator", OPERATOR_CHARS, SWT.LEFT);
        operator.setText(memory.get(ViewMemory.OPERATOR));
        operator.setToolTipText(TEXTS.text("entry.operator.hint"));
        add = Ids.name(new Button(area, SWT.PUSH), "quality.entry.add");
        add.setText(TEXTS.text("entry.add"));
        add.setToolTipText(TEXTS.text("entry.add.hint"));
        add.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> add()));
        GridDataFactory.fillDefaults().align(SWT.BEGINNING, SWT.CENTER).applyTo(add);
        message = new MessageLine(area, "quality.entry.message");
        GridDataFactory.fillDefaults().grab(true, false).span(3, 1).applyTo(message);
        value.addListener(SWT.DefaultSelection, event -> add());
        operator.addListener(SWT.DefaultSelection, event -> add());
        enable();
    }

    private Text field(String label, String id, int chars, int alignment) {
        Label title = new Label(area, SWT.NONE);
        title.setText(label);
        GridDataFactory.swtDefaults().align(SWT.BEGINNING, SWT.CENTER).applyTo(title);
        Text text = Ids.name(new Text(area, SWT.BORDER | SWT.SINGLE | alignment), id);
        GridDataFactory.swtDefaults()
                .align(SWT.FILL, SWT.CENTER)
                .hint(new PixelConverter(text).convertWidthInCharsToPixels(chars), SWT.DEFAULT)
                .applyTo(text);
        return text;
    }

    Composite control() {
        return area;
    }

    /**
     * Takes values of another check standard.
     *
     * @param why nothing can be added now, a sentence; empty when it can
     */
    void of(Optional<CheckView> newCheck, String why) {
        boolean same = check.map(each -> each.standard().id())
                .equals(newCheck.map(each -> each.standard().id()));
        check = newCheck;
        closedBecause = why;
        heading.setText(
                newCheck.map(each -> TEXTS.text("entry.heading", each.standard().name()))
                        .orElse("")
                        .replace("&", "&&"));
        heading.setForeground(Tones.of(area).mutedText());
        unit.setText(newCheck.map(each -> each.standard().unit()).orElse("").replace("&", "&&"));
        if (!same) {
            value.setText("");
            message.clear();
        }
        if (!why.isEmpty()) {
            message.mention(why);
        } else if (message.text().equals(closedBecause)) {
            message.clear();
        }
        enable();
        area.requestLayout();
    }

    private void enable() {
        boolean open = check.isPresent() && closedBecause.isEmpty() && !writing;
        value.setEnabled(open);
        operator.setEnabled(open);
        add.setEnabled(open);
    }

    private void add() {
        if (check.isEmpty() || writing || !closedBecause.isEmpty()) {
            return;
        }
        Optional<Double> read = Shown.read(value.getText());
        if (read.isEmpty()) {
            message.show(
                    Severity.ERROR,
                    value.getText().isBlank()
                            ? TEXTS.text("entry.missing")
                            : TEXTS.text("entry.noNumber", value.getText().strip()));
            value.setFocus();
            value.selectAll();
            return;
        }
        String who = operator.getText().strip();
        if (who.isEmpty()) {
            message.show(Severity.ERROR, TEXTS.text("entry.noOperator"));
            operator.setFocus();
            return;
        }
        memory.put(ViewMemory.OPERATOR, who);
        writing = true;
        message.mention(TEXTS.text("entry.writing"));
        enable();
        writer.write(check.get(), read.get(), who, this::written);
    }

    private void written(Optional<String> failure) {
        if (area.isDisposed()) {
            return;
        }
        writing = false;
        enable();
        if (failure.isPresent()) {
            message.show(Severity.ERROR, TEXTS.text("entry.failed", failure.get()));
        } else {
            message.mention(TEXTS.text("entry.written"));
            value.setText("");
        }
        value.setFocus();
    }
}
