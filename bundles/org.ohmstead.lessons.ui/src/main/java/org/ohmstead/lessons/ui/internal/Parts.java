// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.ui.internal;

import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;

/** What the panes do to widgets in a grid. */
final class Parts {
    private Parts() {}

    /** Puts a text on a label; an empty one takes the label's place away. */
    static void say(Label label, String text) {
        String shown = Texts.plain(text);
        if (!shown.equals(label.getText())) {
            label.setText(shown);
            label.requestLayout();
        }
        show(label, !text.isEmpty());
    }

    /** Gives a control of a grid its place, or takes it away. */
    static void show(Control control, boolean shown) {
        GridData place = (GridData) control.getLayoutData();
        if (place.exclude == shown) {
            place.exclude = !shown;
            control.setVisible(shown);
            control.requestLayout();
        }
    }
}
