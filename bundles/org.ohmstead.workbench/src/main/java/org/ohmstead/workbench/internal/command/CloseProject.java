// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.command;

import org.eclipse.ui.PlatformUI;
import org.ohmstead.workbench.session.ProjectDesk;

/** Closes the open project. */
public final class CloseProject extends DeskHandler {
    @Override
    boolean applies(ProjectDesk desk) {
        return desk.session().isPresent();
    }

    @Override
    void run(ProjectDesk desk) {
        ProjectOpening.close(PlatformUI.getWorkbench());
    }
}
