// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal.gain;

import java.util.OptionalDouble;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.PixelConverter;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.ohmstead.workbench.form.Measure;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Numbers;

/** A typed quantity that counts with each key. What does not read is no value. */
final class LiveQuantity {
    private static final int CHARACTERS = 9;

    private final Measure measure;
    private final Text text;
    private boolean showing;

    /** Follows a text that is there already. */
    LiveQuantity(Text text, Measure measure) {
        this.text = text;
        this.measure = measure;
    }

    /** Makes label, text and unit in three columns of a grid. */
    LiveQuantity(Composite grid, String id, String label, Measure measure, String hint) {
        this.measure = measure;
        Label name = new Label(grid, SWT.NONE);
        name.setText(label);
        name.setToolTipText(hint);
        text = Ids.name(new Text(grid, SWT.BORDER | SWT.SINGLE | SWT.RIGHT), id);
        text.setToolTipText(hint);
        GridDataFactory.swtDefaults()
                .hint(new PixelConverter(text).convertWidthInCharsToPixels(CHARACTERS), SWT.DEFAULT)
                .applyTo(text);
        new Label(grid, SWT.NONE).setText(measure.symbol());
    }

    /** Returns what is typed when it is a number above 0. */
    OptionalDouble value() {
        if (text.getText().isBlank()) {
            return OptionalDouble.empty();
        }
        try {
            double value = measure.read(text.getText());
            return value > 0 ? OptionalDouble.of(value) : OptionalDouble.empty();
        } catch (IllegalArgumentException half) {
            // While a number is being typed it need not read as one; the result says what is wanted.
            return OptionalDouble.empty();
        }
    }

    /** Shows a value without telling the listener. */
    void show(double value) {
        showing = true;
        try {
            String shown = Numbers.shown(value);
            if (!shown.equals(text.getText())) {
                text.setText(shown);
            }
        } finally {
            showing = false;
        }
    }

    void onTyping(Runnable listener) {
        text.addListener(SWT.Modify, event -> {
            if (!showing) {
                listener.run();
            }
        });
    }

    /** Writes the value anew, which follows the user's decimal sign. */
    void refresh() {
        value().ifPresent(this::show);
    }
}
