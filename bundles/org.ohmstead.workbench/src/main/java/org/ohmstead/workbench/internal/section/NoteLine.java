// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Composite;
import org.ohmstead.model.Severity;
import org.ohmstead.workbench.look.MessageLine;
import org.ohmstead.workbench.look.Spacing;

/** A sentence in a page that takes no room as long as there is nothing to say. */
final class NoteLine extends Composite {
    private final MessageLine line;

    /** Makes a hidden line; the words carry the id. */
    NoteLine(Composite parent, String id) {
        super(parent, SWT.NONE);
        Spacing.tight(1).applyTo(this);
        line = new MessageLine(this, id);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(line);
        GridDataFactory.fillDefaults().grab(true, false).exclude(true).applyTo(this);
        setVisible(false);
    }

    /** Shows a sentence; the empty text hides the line. */
    void show(Severity severity, String sentence) {
        boolean something = !sentence.isEmpty();
        if (something) {
            line.show(severity, sentence);
        } else {
            line.clear();
        }
        if (getLayoutData() instanceof GridData data && data.exclude == something) {
            data.exclude = !something;
            setVisible(something);
            requestLayout();
        }
    }

    /** Hides the line. */
    void clear() {
        show(Severity.NOTE, "");
    }
}
