// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;

/** Push and toggle buttons with some air about their words, in a grid. */
final class Buttons {
    private Buttons() {}

    /** Makes a push button. */
    static Button push(Composite parent, String id, String text) {
        return make(parent, SWT.PUSH, id, text);
    }

    /** Makes a button that stays pressed. */
    static Button toggle(Composite parent, String id, String text) {
        return make(parent, SWT.TOGGLE, id, text);
    }

    private static Button make(Composite parent, int style, String id, String text) {
        Button button = Ids.name(new Button(parent, style), id);
        button.setText(text);
        int width = button.computeSize(SWT.DEFAULT, SWT.DEFAULT).x + 2 * Spacing.GAP;
        GridDataFactory.swtDefaults().hint(width, SWT.DEFAULT).applyTo(button);
        return button;
    }
}
