// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.sample.internal;

import org.eclipse.jface.preference.FieldEditorPreferencePage;
import org.eclipse.jface.preference.IntegerFieldEditor;
import org.eclipse.ui.IWorkbench;
import org.eclipse.ui.IWorkbenchPreferencePage;
import org.ohmstead.units.text.Messages;

/** How much the supply cable may take away before it is a problem. */
public final class CableDropPreferencePage extends FieldEditorPreferencePage implements IWorkbenchPreferencePage {
    private static final Messages TEXTS = Messages.of(CableDropPreferencePage.class);
    private static final int MOST_MILLIVOLTS = 5000;

    /** Makes the page. */
    public CableDropPreferencePage() {
        super(GRID);
        setPreferenceStore(CableDropSettings.store());
        setDescription(TEXTS.text("preferences.description"));
    }

    @Override
    public void init(IWorkbench workbench) {
        // The preference is the same in all windows.
    }

    @Override
    protected void createFieldEditors() {
        IntegerFieldEditor allowed = new IntegerFieldEditor(
                CableDropSettings.ALLOWED_MILLIVOLTS, TEXTS.text("preferences.allowed"), getFieldEditorParent());
        allowed.setValidRange(1, MOST_MILLIVOLTS);
        addField(allowed);
    }
}
