// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.ui.internal;

import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Composite;
import org.ohmstead.workbench.look.Spacing;

/** The rooms of a view that its parts come into later. */
final class Panes {
    private Panes() {}

    /** Returns a room for one part that fills it. */
    static Composite filled(Composite parent) {
        Composite pane = new Composite(parent, SWT.NONE);
        pane.setLayout(new FillLayout());
        return pane;
    }

    /** Returns a room for parts one below the other. */
    static Composite stacked(Composite parent) {
        Composite pane = new Composite(parent, SWT.NONE);
        Spacing.tight(1).applyTo(pane);
        return pane;
    }
}
