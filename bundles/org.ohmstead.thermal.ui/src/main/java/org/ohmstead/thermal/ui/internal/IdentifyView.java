// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.ScrolledComposite;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.ui.part.ViewPart;
import org.ohmstead.workbench.ProjectCommands;
import org.ohmstead.workbench.session.ProjectDesk;

/** Shows thermal identification in the workbench; scrolled where it has too little room. */
public final class IdentifyView extends ViewPart {
    private static final int LEAST_WIDTH = 960;
    private static final int LEAST_HEIGHT = 480;

    private IdentifyComposite content;

    @Override
    public void createPartControl(Composite parent) {
        ScrolledComposite scrolled = new ScrolledComposite(parent, SWT.H_SCROLL | SWT.V_SCROLL);
        scrolled.setExpandHorizontal(true);
        scrolled.setExpandVertical(true);
        scrolled.setMinSize(LEAST_WIDTH, LEAST_HEIGHT);
        content = new IdentifyComposite(scrolled, getSite().getService(ProjectDesk.class));
        scrolled.setContent(content);
        ProjectCommands.help(content, "heat_identify_view");
    }

    @Override
    public void setFocus() {
        content.setFocus();
    }
}
