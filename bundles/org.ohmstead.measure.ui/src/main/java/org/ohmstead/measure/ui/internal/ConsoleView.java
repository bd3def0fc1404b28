// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.ScrolledComposite;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.ui.part.ViewPart;
import org.ohmstead.workbench.ProjectCommands;
import org.ohmstead.workbench.Sections;

/** Shows the run console in the workbench; scrolled where it has too little room. */
public final class ConsoleView extends ViewPart implements ConsoleHost {
    private static final int LEAST_WIDTH = 700;
    private static final int LEAST_HEIGHT = 430;

    private ConsoleComposite content;

    @Override
    public void createPartControl(Composite parent) {
        ScrolledComposite scrolled = new ScrolledComposite(parent, SWT.H_SCROLL | SWT.V_SCROLL);
        scrolled.setExpandHorizontal(true);
        scrolled.setExpandVertical(true);
        scrolled.setMinSize(LEAST_WIDTH, LEAST_HEIGHT);
        content = new ConsoleComposite(scrolled, getSite().getService(RunDesk.class), this);
        scrolled.setContent(content);
        ProjectCommands.help(content, "console_view");
    }

    @Override
    public void open(String where) {
        Sections.open(getSite().getPage(), where);
    }

    @Override
    public void command(String id) {
        ProjectCommands.execute(getSite(), id);
    }

    @Override
    public void show() {
        getSite().getPage().bringToTop(this);
    }

    @Override
    public void setFocus() {
        content.setFocus();
    }
}
