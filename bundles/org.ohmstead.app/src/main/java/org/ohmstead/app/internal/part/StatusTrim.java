// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.part;

import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.ui.menus.WorkbenchWindowControlContribution;
import org.ohmstead.workbench.ProjectCommands;
import org.ohmstead.workbench.session.ProjectDesk;

/** The line at the bottom of the window. */
public final class StatusTrim extends WorkbenchWindowControlContribution {
    @Override
    protected Control createControl(Composite parent) {
        return new StatusLine(
                parent,
                getWorkbenchWindow().getService(ProjectDesk.class),
                () -> ProjectCommands.execute(getWorkbenchWindow(), ProjectCommands.HAND_OVER));
    }
}
