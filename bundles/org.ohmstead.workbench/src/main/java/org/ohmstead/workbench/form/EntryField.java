// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.form;

import java.util.Optional;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.PixelConverter;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Text;
import org.ohmstead.workbench.look.Numbers;

/**
 * A field whose value is typed. Enter and leaving the field commit, Escape restores what was there; text that does not read is kept and
 * marked.
 *
 * @param <T> the value
 */
public abstract class EntryField<T> extends Field<T> {
    private final TextValue<T> codec;
    private final boolean numeric;
    private final Text text;
    private String written = "";

    /** How the typed text looks. */
    enum Shape {
        NUMBER(SWT.SINGLE | SWT.RIGHT, 12, 1),
        WORD(SWT.SINGLE, 14, 1),
        LINE(SWT.SINGLE, 0, 1),
        LINES(SWT.MULTI | SWT.WRAP | SWT.V_SCROLL, 0, 4);

        private final int style;
        private final int characters;
        private final int lines;

        Shape(int style, int characters, int lines) {
            this.style = style;
            this.characters = characters;
            this.lines = lines;
        }
    }

    EntryField(FormSection section, String id, String label, String unit, TextValue<T> codec, Shape shape) {
        super(section, id, label, unit, shape.characters == 0, grid -> new Text(grid, SWT.BORDER | shape.style));
        this.codec = codec;
        numeric = shape == Shape.NUMBER;
        text = (Text) control();
        GridData place = (GridData) text.getLayoutData();
        if (shape.characters > 0) {
            place.widthHint = new PixelConverter(text).convertWidthInCharsToPixels(shape.characters);
        } else {
            place.widthHint = FormSection.LEAST_WIDE;
        }
        if (shape.lines > 1) {
            GridDataFactory.createFrom(place)
                    .hint(place.widthHint, shape.lines * text.getLineHeight())
                    .applyTo(text);
            labelAtTop();
        }
        text.addListener(SWT.FocusOut, event -> commit());
        text.addListener(SWT.DefaultSelection, event -> enter());
        text.addListener(SWT.KeyDown, this::keyPressed);
    }

    @Override
    final void show(T shown) {
        String plain = codec.write(shown);
        written = numeric ? Numbers.localised(plain) : plain;
        if (!written.equals(text.getText())) {
            text.setText(written);
        }
    }

    @Override
    final boolean pending() {
        return !written.equals(text.getText());
    }

    @Override
    public final void setReadOnly(boolean readOnly) {
        text.setEditable(!readOnly);
    }

    /**
     * Commits what is typed, as Enter does.
     *
     * @return whether the field now holds a value of the project: false when the text was refused
     */
    public final boolean commit() {
        if (!text.getEditable()) {
            return true;
        }
        if (!pending()) {
            setRefusal(Optional.empty());
            return true;
        }
        T read;
        try {
            read = codec.read(text.getText());
        } catch (IllegalArgumentException refused) {
            refuse(refused);
            return false;
        }
        return offer(read);
    }

    private void enter() {
        if (commit()) {
            text.selectAll();
        }
    }

    private void keyPressed(Event event) {
        boolean changed = pending() || problem().isPresent();
        if (event.keyCode == SWT.ESC && changed) {
            text.setText(written);
            setRefusal(Optional.empty());
            event.doit = false;
        }
    }
}
