// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.work;

import java.util.Optional;
import org.eclipse.ui.IWorkbench;
import org.eclipse.ui.IWorkbenchCommandConstants;
import org.eclipse.ui.commands.ICommandService;
import org.ohmstead.workbench.session.DeskListener;
import org.ohmstead.workbench.session.ProjectSession;

/** Keeps the menu entries for undo and redo after the edits that they name. */
final class EditMenuTexts implements DeskListener {
    private final IWorkbench workbench;
    private Optional<ProjectSession> session = Optional.empty();
    private String shown = "";

    EditMenuTexts(IWorkbench workbench) {
        this.workbench = workbench;
    }

    @Override
    public void sessionChanged(Optional<ProjectSession> newSession) {
        session = newSession;
        refresh();
    }

    @Override
    public void stateChanged() {
        refresh();
    }

    private void refresh() {
        String names = session.flatMap(ProjectSession::undoName) + " " + session.flatMap(ProjectSession::redoName);
        if (names.equals(shown) || workbench.isClosing()) {
            return;
        }
        shown = names;
        ICommandService commands = workbench.getService(ICommandService.class);
        commands.refreshElements(IWorkbenchCommandConstants.EDIT_UNDO, null);
        commands.refreshElements(IWorkbenchCommandConstants.EDIT_REDO, null);
    }
}
