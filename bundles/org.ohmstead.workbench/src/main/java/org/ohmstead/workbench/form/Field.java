// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.form;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Severity;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.MessageLine;
import org.ohmstead.workbench.look.Spacing;

/**
 * One labelled value of a {@link FormSection}. What the user does reaches the owner only when it reads as a value, passes the check and is
 * not refused by the owner; else the reason stands beside the field.
 *
 * @param <T> the value; what may be left empty has an optional type
 */
public abstract class Field<T> {
    private final String id;
    private final String name;
    private final Label label;
    private final Control control;
    private final Label indent;
    private final List<Control> row = new ArrayList<>();
    private final MessageLine message;
    private final boolean wide;
    private boolean visible = true;
    private Consumer<T> check = value -> {};
    private Consumer<T> commitHandler = value -> {};
    private T value;
    private int timesSet;
    private Optional<String> refusal = Optional.empty();
    private Optional<Problem> remark = Optional.empty();

    /**
     * Adds a row to a section: the label, the control, the unit, the message.
     *
     * @param section where it stands
     * @param id its name within the section
     * @param labelText the label, with an ampersand before the mnemonic
     * @param unit what stands behind it; may be empty
     * @param wide whether the control takes all the width and the message stands below
     * @param maker makes the control
     */
    Field(
            FormSection section,
            String id,
            String labelText,
            String unit,
            boolean wide,
            Function<Composite, Control> maker) {
        this.id = section.id() + "." + id;
        name = labelText.replace("&", "");
        this.wide = wide;
        Composite grid = section.grid();
        label = new Label(grid, SWT.NONE);
        label.setText(labelText);
        GridDataFactory.swtDefaults().align(SWT.BEGINNING, SWT.CENTER).applyTo(label);
        control = Ids.name(maker.apply(grid), this.id);
        int controlColumns = wide ? FormSection.COLUMNS - 1 : 1;
        GridDataFactory.fillDefaults()
                .span(controlColumns, 1)
                .grab(wide, false)
                .align(SWT.FILL, SWT.CENTER)
                .applyTo(control);
        row.add(label);
        row.add(control);
        if (!wide) {
            Label unitLabel = new Label(grid, SWT.NONE);
            unitLabel.setText(unit);
            GridDataFactory.swtDefaults().applyTo(unitLabel);
            row.add(unitLabel);
        }
        indent = new Label(grid, SWT.NONE);
        GridDataFactory.swtDefaults().exclude(true).applyTo(indent);
        message = new MessageLine(grid, this.id + ".message");
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .align(SWT.FILL, SWT.CENTER)
                .span(wide ? FormSection.COLUMNS - 1 : 1, 1)
                .exclude(wide)
                .applyTo(message);
        message.setVisible(!wide);
        section.add(this);
    }

    /** Puts a value into the control, without telling anyone. */
    abstract void show(T shown);

    /** Returns whether the control holds something that the user typed and that is not committed. */
    abstract boolean pending();

    /** Lets the user change the value or not. */
    public abstract void setReadOnly(boolean readOnly);

    /** Returns the control that takes the focus. */
    public final Control control() {
        return control;
    }

    /** Returns the field's whole name: that of the section, a point, its own. */
    public final String id() {
        return id;
    }

    /** Returns the label without its mnemonic. */
    public final String name() {
        return name;
    }

    /**
     * Shows a value of the project. What the user has typed and not committed, or what was refused, stays as long as the value is the
     * one that was there before.
     */
    public final void setValue(T newValue) {
        Objects.requireNonNull(newValue, "newValue");
        timesSet++;
        if (newValue.equals(value) && pending()) {
            return;
        }
        value = newValue;
        show(newValue);
        setRefusal(Optional.empty());
    }

    /** Returns the value that was last set or committed; empty before the first. */
    public final Optional<T> value() {
        return Optional.ofNullable(value);
    }

    /** Has a new value tested before it is committed: the test throws an IllegalArgumentException whose message is shown. */
    public final void check(Consumer<T> test) {
        check = test;
    }

    /** Has the owner told of a new value. It may throw an IllegalArgumentException: then its message is shown and the text stays. */
    public final void onCommit(Consumer<T> handler) {
        commitHandler = handler;
    }

    /** Returns what is shown beside the field: why the text is refused, else the project's remark; empty when all is well. */
    public final Optional<String> problem() {
        return refusal.or(() -> remark.map(Problem::what));
    }

    /** Shows what the project's checks say of the value, or nothing. A refusal goes before it. */
    public final void setRemark(Optional<Problem> newRemark) {
        remark = newRemark;
        showMessage();
    }

    /** Shows a hint while the mouse rests on the field. */
    public final void setHint(String hint) {
        control.setToolTipText(hint);
        label.setToolTipText(hint);
    }

    /** Shows or hides the whole row, for a field that only makes sense with some other choice. */
    public final void setVisible(boolean newVisible) {
        visible = newVisible;
        for (Control part : row) {
            ((GridData) part.getLayoutData()).exclude = !visible;
            part.setVisible(visible);
        }
        showMessage();
        control.requestLayout();
    }

    final void labelAtTop() {
        ((GridData) label.getLayoutData()).verticalAlignment = SWT.BEGINNING;
        ((GridData) label.getLayoutData()).verticalIndent = Spacing.TIGHT;
    }

    /** Gives the field the focus. */
    public void focus() {
        control.setFocus();
    }

    /** Commits a value that was read. Returns whether it was taken. */
    final boolean offer(T offered) {
        if (offered.equals(value)) {
            show(value);
            setRefusal(Optional.empty());
            return true;
        }
        int setBefore = timesSet;
        try {
            check.accept(offered);
            commitHandler.accept(offered);
        } catch (IllegalArgumentException refused) {
            refuse(refused);
            return false;
        }
        if (timesSet == setBefore) {
            value = offered;
        }
        show(value);
        setRefusal(Optional.empty());
        return true;
    }

    final void refuse(IllegalArgumentException refused) {
        setRefusal(Optional.of(Refusals.sentence(refused)));
    }

    final void setRefusal(Optional<String> sentence) {
        refusal = sentence;
        showMessage();
    }

    private void showMessage() {
        if (message.isDisposed()) {
            return;
        }
        if (refusal.isPresent()) {
            message.show(Severity.ERROR, refusal.get());
        } else if (remark.isPresent()) {
            message.show(
                    remark.get().severity(),
                    remark.get().what() + " " + remark.get().remedy());
        } else {
            message.clear();
        }
        boolean placed = visible && (!wide || problem().isPresent());
        ((GridData) message.getLayoutData()).exclude = !placed;
        message.setVisible(placed);
        ((GridData) indent.getLayoutData()).exclude = !placed || !wide;
        message.requestLayout();
    }
}
