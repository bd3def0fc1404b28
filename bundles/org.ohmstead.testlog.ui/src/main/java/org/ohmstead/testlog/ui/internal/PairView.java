// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import org.eclipse.swt.widgets.Composite;
import org.eclipse.ui.part.ViewPart;
import org.ohmstead.workbench.ProjectCommands;
import org.ohmstead.workbench.session.ProjectDesk;

/** Shows two readings side by side in the workbench. */
public final class PairView extends ViewPart {
    /** The view's id in the workbench. */
    static final String ID = "org.ohmstead.testlog.ui.pair";

    private PairComposite content;

    @Override
    public void createPartControl(Composite parent) {
        content = new PairComposite(parent, getSite().getService(ProjectDesk.class));
        ProjectCommands.help(content, "pair_view");
    }

    @Override
    public void setFocus() {
        content.setFocus();
    }
}
