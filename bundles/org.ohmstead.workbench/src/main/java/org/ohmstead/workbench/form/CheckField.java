// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.form;

import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;

/** Yes or no. */
public final class CheckField extends Field<Boolean> {
    private final Button button;

    /** Adds the field to a section. */
    public CheckField(FormSection section, String id, String label) {
        super(section, id, label, "", false, grid -> new Button(grid, SWT.CHECK));
        button = (Button) control();
        button.addListener(SWT.Selection, event -> {
            if (!offer(button.getSelection())) {
                button.setSelection(!button.getSelection());
            }
        });
    }

    @Override
    void show(Boolean shown) {
        button.setSelection(shown);
    }

    @Override
    boolean pending() {
        return false;
    }

    @Override
    public void setReadOnly(boolean readOnly) {
        button.setEnabled(!readOnly);
    }
}
