// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.util.Optional;
import java.util.function.Consumer;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.PixelConverter;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Range;
import org.ohmstead.workbench.form.FormSection;
import org.ohmstead.workbench.form.Measure;
import org.ohmstead.workbench.form.TextField;

/** A field for a quantity that may be known only to lie between two values, or not at all; what is wrong with the text stands below it. */
final class RangeField {
    private static final int CHARACTERS = 16;
    /** Columns of a section that the label and the field leave. */
    private static final int BEHIND = 2;

    private final TextField field;
    private final RangeText texts;
    private Optional<Range> value = Optional.empty();
    private Consumer<Range> check = range -> {};
    private Consumer<Optional<Range>> handler = range -> {};

    RangeField(FormSection section, String id, String label, Measure measure) {
        texts = new RangeText(measure);
        field = section.text(id, label);
        Control text = field.control();
        GridData place = (GridData) text.getLayoutData();
        place.horizontalSpan = 1;
        place.grabExcessHorizontalSpace = false;
        place.widthHint = new PixelConverter(text).convertWidthInCharsToPixels(CHARACTERS);
        Label unit = new Label(text.getParent(), SWT.NONE);
        unit.setText(measure.symbol());
        unit.moveBelow(text);
        GridDataFactory.swtDefaults().span(BEHIND, 1).applyTo(unit);
        field.check(this::read);
        field.onCommit(this::commit);
    }

    private Optional<Range> read(String typed) {
        Optional<Range> read = texts.read(typed);
        read.ifPresent(check);
        return read;
    }

    private void commit(String typed) {
        Optional<Range> read = texts.read(typed);
        handler.accept(read);
        show(read);
    }

    /** Has a range tested before it is taken; the test throws an IllegalArgumentException whose message is shown. */
    void check(Consumer<Range> test) {
        check = test;
    }

    void onCommit(Consumer<Optional<Range>> newHandler) {
        handler = newHandler;
    }

    /** Shows a range of the project. */
    void setValue(Optional<Range> newValue) {
        show(newValue);
    }

    private void show(Optional<Range> shown) {
        value = shown;
        field.setValue(texts.write(shown));
    }

    Optional<Range> value() {
        return value;
    }

    void setHint(String hint) {
        field.setHint(hint);
    }

    void setReadOnly(boolean readOnly) {
        field.setReadOnly(readOnly);
    }

    void setRemark(Optional<Problem> remark) {
        field.setRemark(remark);
    }

    /** Commits what is typed; returns whether it reads. */
    boolean commit() {
        return field.commit();
    }

    Control control() {
        return field.control();
    }

    void focus() {
        field.focus();
    }
}
