// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.command;

import java.nio.file.Path;
import java.util.Optional;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.FileDialog;
import org.eclipse.ui.PlatformUI;
import org.ohmstead.model.json.ProjectFile;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.WorkbenchPreferences;
import org.ohmstead.workbench.session.ProjectDesk;

/** Asks where, makes a new project there and opens it. */
public final class NewProject extends DeskHandler {
    private static final Messages TEXTS = Messages.of(NewProject.class);

    @Override
    boolean applies(ProjectDesk desk) {
        return true;
    }

    @Override
    void run(ProjectDesk desk) {
        FileDialog dialog = new FileDialog(ProjectOpening.shell(PlatformUI.getWorkbench()), SWT.SAVE);
        dialog.setText(TEXTS.text("new.dialog"));
        dialog.setFilterPath(WorkbenchPreferences.store().getString(WorkbenchPreferences.PROJECTS_FOLDER));
        dialog.setFileName(TEXTS.text("new.folder") + ProjectFile.FOLDER_SUFFIX);
        String chosen = dialog.open();
        if (chosen == null) {
            return;
        }
        double confidence = WorkbenchPreferences.store().getInt(WorkbenchPreferences.CONFIDENCE_PERCENT) / 100.0;
        desk.work()
                .start(
                        TEXTS.text("new.job"),
                        progress -> FreshProject.make(Path.of(chosen), confidence),
                        folder -> ProjectOpening.open(PlatformUI.getWorkbench(), folder),
                        failure -> MessageDialog.openError(
                                ProjectOpening.shell(PlatformUI.getWorkbench()),
                                TEXTS.text("new.failed"),
                                Optional.ofNullable(failure.getMessage()).orElse(failure.toString())));
    }
}
