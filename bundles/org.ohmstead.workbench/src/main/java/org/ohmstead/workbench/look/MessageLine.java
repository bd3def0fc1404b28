// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.look;

import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.model.Severity;

/**
 * A sentence with the icon of its severity, wrapped where it stands; without one it keeps the height of a line, so that nothing jumps.
 */
public final class MessageLine extends Composite {
    private static final int LEAST_WIDTH = 150;
    private static final int ICON_SIZE = 16;

    private final Label icon;
    private final Label words;

    /**
     * Makes an empty line.
     *
     * @param parent where it stands; the caller gives it layout data
     * @param id the name of the label that holds the words
     */
    public MessageLine(Composite parent, String id) {
        super(parent, SWT.NONE);
        Spacing.tight(2).applyTo(this);
        icon = new Label(this, SWT.NONE);
        GridDataFactory.swtDefaults()
                .align(SWT.BEGINNING, SWT.BEGINNING)
                .hint(ICON_SIZE, ICON_SIZE)
                .applyTo(icon);
        words = Ids.name(new Label(this, SWT.WRAP), id);
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .align(SWT.FILL, SWT.CENTER)
                .hint(LEAST_WIDTH, SWT.DEFAULT)
                .applyTo(words);
    }

    /** Shows a sentence in the tone of its severity. */
    public void show(Severity severity, String sentence) {
        icon.setImage(Icons.of(severity));
        words.setForeground(Tones.of(this).of(severity));
        put(sentence);
    }

    /** Shows a sentence of little weight, without an icon. */
    public void mention(String sentence) {
        icon.setImage(null);
        words.setForeground(Tones.of(this).mutedText());
        put(sentence);
    }

    /** Shows nothing. */
    public void clear() {
        icon.setImage(null);
        put("");
    }

    /** Returns the sentence that is shown; empty when there is none. */
    public String text() {
        return words.getText();
    }

    private void put(String sentence) {
        if (!sentence.equals(words.getText())) {
            words.setText(sentence);
            words.setToolTipText(sentence.isEmpty() ? null : sentence);
            words.requestLayout();
        }
    }
}
