// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.part;

import org.eclipse.jface.preference.BooleanFieldEditor;
import org.eclipse.jface.preference.DirectoryFieldEditor;
import org.eclipse.jface.preference.FieldEditorPreferencePage;
import org.eclipse.jface.preference.IntegerFieldEditor;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.ui.IWorkbench;
import org.eclipse.ui.IWorkbenchPreferencePage;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.ProjectCommands;
import org.ohmstead.workbench.WorkbenchPreferences;

/** Preferences about projects: where they lie, what new ones begin with. */
public final class ProjectPreferencePage extends FieldEditorPreferencePage implements IWorkbenchPreferencePage {
    private static final Messages TEXTS = Messages.of(ProjectPreferencePage.class);
    private static final int LOWEST_CONFIDENCE_PERCENT = 51;
    private static final int HIGHEST_CONFIDENCE_PERCENT = 99;

    /** Makes the page. */
    public ProjectPreferencePage() {
        super(GRID);
        setPreferenceStore(WorkbenchPreferences.store());
        setDescription(TEXTS.text("projects.about"));
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
        addField(new BooleanFieldEditor(WorkbenchPreferences.REOPEN_LAST, TEXTS.text("projects.reopen"), parent));
        addField(new FutureFolderEditor(WorkbenchPreferences.PROJECTS_FOLDER, TEXTS.text("projects.folder"), parent));
        addField(new DirectoryFieldEditor(
                WorkbenchPreferences.RECORDINGS_FOLDER, TEXTS.text("projects.recordings"), parent));
        IntegerFieldEditor confidence = new IntegerFieldEditor(
                WorkbenchPreferences.CONFIDENCE_PERCENT, TEXTS.text("projects.confidence"), parent);
        confidence.setValidRange(LOWEST_CONFIDENCE_PERCENT, HIGHEST_CONFIDENCE_PERCENT);
        confidence.setErrorMessage(TEXTS.text("projects.confidence.wrong"));
        addField(confidence);
    }

    /** A folder that need not be there yet. */
    private static final class FutureFolderEditor extends DirectoryFieldEditor {
        FutureFolderEditor(String name, String label, Composite parent) {
            super(name, label, parent);
        }

        @Override
        protected boolean doCheckState() {
            return true;
        }
    }
}
