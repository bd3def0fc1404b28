// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.sound.ui.internal;

import java.util.OptionalDouble;
import java.util.function.DoublePredicate;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.PixelConverter;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.ohmstead.workbench.form.Measure;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.look.Tones;

/** A label, a number that is typed, and its unit, in three cells of a grid. What does not read is shown in the tone of an error. */
final class NumberEntry {
    private static final int CHARACTERS = 7;

    private final Text text;
    private final Measure measure;
    private final DoublePredicate fits;

    /**
     * Makes an entry.
     *
     * @param grid a composite with a grid of a multiple of three columns
     * @param label key of the label's text
     * @param fits which numbers will do
     * @param changed runs after each key
     */
    NumberEntry(Composite grid, String id, String label, Measure measure, DoublePredicate fits, Runnable changed) {
        this.measure = measure;
        this.fits = fits;
        Label before = new Label(grid, SWT.NONE);
        before.setText(Texts.say(label));
        GridDataFactory.swtDefaults().applyTo(before);
        text = Ids.name(new Text(grid, SWT.BORDER | SWT.SINGLE | SWT.RIGHT), id);
        GridDataFactory.swtDefaults()
                .hint(new PixelConverter(text).convertWidthInCharsToPixels(CHARACTERS), SWT.DEFAULT)
                .applyTo(text);
        Label unit = new Label(grid, SWT.NONE);
        unit.setText(measure.symbol());
        GridDataFactory.swtDefaults().applyTo(unit);
        text.addListener(SWT.Modify, event -> {
            text.setForeground(
                    text.getText().isBlank() || value().isPresent()
                            ? null
                            : Tones.of(text).error());
            changed.run();
        });
    }

    /** Shows a number. */
    void show(double value) {
        String shown = Numbers.localised(measure.exact(value));
        if (!shown.equals(text.getText())) {
            text.setText(shown);
        }
    }

    /** Returns what is typed, or empty when it does not read or does not fit. */
    OptionalDouble value() {
        try {
            double value = measure.read(text.getText());
            return fits.test(value) ? OptionalDouble.of(value) : OptionalDouble.empty();
        } catch (IllegalArgumentException unread) {
            return OptionalDouble.empty();
        }
    }

    Text control() {
        return text;
    }
}
