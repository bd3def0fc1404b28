// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.part;

import org.eclipse.jface.preference.FieldEditorPreferencePage;
import org.eclipse.jface.preference.RadioGroupFieldEditor;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.ui.IWorkbench;
import org.eclipse.ui.IWorkbenchPreferencePage;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.ProjectCommands;
import org.ohmstead.workbench.WorkbenchPreferences;

/** Preferences about how numbers, units and uncertainties are shown. */
public final class NumbersPreferencePage extends FieldEditorPreferencePage implements IWorkbenchPreferencePage {
    private static final Messages TEXTS = Messages.of(NumbersPreferencePage.class);

    /** Makes the page. */
    public NumbersPreferencePage() {
        super(GRID);
        setPreferenceStore(WorkbenchPreferences.store());
        setDescription(TEXTS.text("numbers.about"));
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
                TEXTS.text("numbers.sign"),
                1,
                new String[][] {{TEXTS.text("numbers.point"), "false"}, {TEXTS.text("numbers.comma"), "true"}},
                parent,
                true));
        addField(new RadioGroupFieldEditor(
                WorkbenchPreferences.COVERAGE_FACTOR,
                TEXTS.text("numbers.coverage"),
                1,
                new String[][] {
                    {TEXTS.text("numbers.coverage.1"), "1"},
                    {TEXTS.text("numbers.coverage.2"), "2"},
                    {TEXTS.text("numbers.coverage.3"), "3"}
                },
                parent,
                true));
    }
}
