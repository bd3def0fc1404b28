// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.part;

import org.eclipse.jface.preference.FieldEditorPreferencePage;
import org.eclipse.jface.preference.RadioGroupFieldEditor;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.ui.IWorkbench;
import org.eclipse.ui.IWorkbenchPreferencePage;
import org.ohmstead.workbench.ProjectCommands;
import org.ohmstead.workbench.WorkbenchPreferences;

/** Preferences about how numbers, units and uncertainties are shown. */
public final class NumbersPreferencePage extends FieldEditorPreferencePage implements IWorkbenchPreferencePage {
    /** Makes the page. */
    public NumbersPreferencePage() {
        super(GRID);
        setPreferenceStore(WorkbenchPreferences.store());
        setDescription("How numbers are shown. What is typed in is understood either way.");
    }

    @Override
    public void init(IWorkbench workbench) {
        // The store is the same for all workbench windows.
    }

    @Override
    public void createControl(Composite parent) {
        super.createControl(parent);
        ProjectCommands.help(getControl(), "preferences");
    }

    @Override
    protected void createFieldEditors() {
        Composite parent = getFieldEditorParent();
        addField(new RadioGroupFieldEditor(
                WorkbenchPreferences.DECIMAL_COMMA,
                "Decimal sign",
                1,
                new String[][] {{"&Point: 13.8 V", "false"}, {"&Comma: 13,8 V", "true"}},
                parent,
                true));
        addField(new RadioGroupFieldEditor(
                WorkbenchPreferences.COVERAGE_FACTOR,
                "Uncertainties are shown as",
                1,
                new String[][] {
                    {"k = &1, standard uncertainty (about 68 %)", "1"},
                    {"k = &2, expanded uncertainty (about 95 %)", "2"},
                    {"k = &3, expanded uncertainty (about 99.7 %)", "3"}
                },
                parent,
                true));
    }
}
