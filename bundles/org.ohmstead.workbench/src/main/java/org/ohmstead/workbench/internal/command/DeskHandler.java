// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.command;

import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.ui.PlatformUI;
import org.ohmstead.workbench.session.ProjectDesk;

/** A command on the open project. */
abstract class DeskHandler extends AbstractHandler {
    /** Returns the desk, or null while there is no workbench. */
    static ProjectDesk desk() {
        return PlatformUI.isWorkbenchRunning() ? PlatformUI.getWorkbench().getService(ProjectDesk.class) : null;
    }

    @Override
    public final Object execute(ExecutionEvent event) {
        ProjectDesk desk = desk();
        if (desk != null && applies(desk)) {
            run(desk);
        }
        return null;
    }

    @Override
    public final boolean isEnabled() {
        ProjectDesk desk = desk();
        return desk != null && applies(desk);
    }

    /** Returns whether the command can be carried out now. */
    abstract boolean applies(ProjectDesk desk);

    /** Carries it out. */
    abstract void run(ProjectDesk desk);
}
