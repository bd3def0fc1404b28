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

/** Asks for a folder of recordings and carries the plan out from them, in the background. */
public final class ReplayRecordings extends DeskHandler {
    private static final Messages TEXTS = Messages.of(ReplayRecordings.class);

    @Override
    boolean applies(ProjectDesk desk) {
        return desk.session().filter(session -> !session.readOnly()).isPresent();
    }

    @Override
    void run(ProjectDesk desk) {
        DirectoryDialog dialog = new DirectoryDialog(ProjectOpening.shell(PlatformUI.getWorkbench()), SWT.OPEN);
        dialog.setText(TEXTS.text("replay.dialog"));
        dialog.setMessage(TEXTS.text("replay.dialog.hint"));
        String usual = WorkbenchPreferences.store().getString(WorkbenchPreferences.RECORDINGS_FOLDER);
        dialog.setFilterPath(
                usual.isBlank() ? desk.session().orElseThrow().folder().toString() : usual);
        String chosen = dialog.open();
        if (chosen != null) {
            Replaying.start(desk, Path.of(chosen));
        }
    }
}
