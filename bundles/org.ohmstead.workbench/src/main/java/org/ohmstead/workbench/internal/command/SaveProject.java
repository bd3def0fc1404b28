// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.command;

import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.ui.PlatformUI;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.ProjectSession;

/** Saves the open project in the background. */
public final class SaveProject extends DeskHandler {
    private static final Messages TEXTS = Messages.of(SaveProject.class);

    @Override
    boolean applies(ProjectDesk desk) {
        return desk.session().filter(ProjectSession::dirty).isPresent();
    }

    @Override
    void run(ProjectDesk desk) {
        desk.save(
                () -> {},
                failure -> MessageDialog.openError(
                        ProjectOpening.shell(PlatformUI.getWorkbench()),
                        TEXTS.text("save.failed"),
                        failure.getMessage()));
    }
}
