// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.help;

import org.eclipse.swt.widgets.Composite;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.part.ViewPart;
import org.ohmstead.workbench.session.ProjectDesk;

/** The help as a view of the workbench. */
public final class HelpView extends ViewPart {
    /** The id of the view in plugin.xml. */
    public static final String ID = "org.ohmstead.app.help";

    private HelpComposite help;

    @Override
    public void createPartControl(Composite parent) {
        ProjectDesk desk = getSite().getService(ProjectDesk.class);
        help = new HelpComposite(parent, desk.work(), new PlatformHelpSource());
        PlatformUI.getWorkbench().getHelpSystem().setHelp(help, "org.ohmstead.app.help_view");
    }

    @Override
    public void setFocus() {
        help.setFocus();
    }

    /** Returns what the view shows. */
    HelpComposite help() {
        return help;
    }
}
