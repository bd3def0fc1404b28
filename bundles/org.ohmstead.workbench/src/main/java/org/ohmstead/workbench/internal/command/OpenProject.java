// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.command;

import java.nio.file.Path;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.DirectoryDialog;
import org.eclipse.ui.PlatformUI;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.WorkbenchPreferences;
import org.ohmstead.workbench.session.ProjectDesk;

/** Asks for a project's folder and opens it. */
public final class OpenProject extends DeskHandler {
    private static final Messages TEXTS = Messages.of(OpenProject.class);

    @Override
    boolean applies(ProjectDesk desk) {
        return true;
    }

    @Override
    void run(ProjectDesk desk) {
        DirectoryDialog dialog = new DirectoryDialog(ProjectOpening.shell(PlatformUI.getWorkbench()), SWT.OPEN);
        dialog.setText(TEXTS.text("open.dialog"));
        dialog.setMessage(TEXTS.text("open.dialog.hint"));
        dialog.setFilterPath(WorkbenchPreferences.store().getString(WorkbenchPreferences.PROJECTS_FOLDER));
        String chosen = dialog.open();
        if (chosen != null) {
            ProjectOpening.open(PlatformUI.getWorkbench(), Path.of(chosen));
        }
    }
}
