// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui;

import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.ScrolledComposite;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.ui.part.ViewPart;
import org.ohmstead.signal.stimulus.SoundCards;
import org.ohmstead.signal.ui.internal.stimulus.TestSignalsComposite;
import org.ohmstead.workbench.ProjectCommands;
import org.ohmstead.workbench.session.ProjectDesk;

/** The view named Test signals: made, looked at, saved and played; scrolled where it has too little room. */
public final class TestSignalsView extends ViewPart {
    /** The view's id in the workbench. */
    public static final String ID = "org.ohmstead.signal.ui.stimulus";

    private static final int LEAST_WIDTH = 820;
    private static final int LEAST_HEIGHT = 420;

    private TestSignalsComposite content;

    @Override
    public void createPartControl(Composite parent) {
        ScrolledComposite scrolled = new ScrolledComposite(parent, SWT.H_SCROLL | SWT.V_SCROLL);
        scrolled.setExpandHorizontal(true);
        scrolled.setExpandVertical(true);
        scrolled.setMinSize(LEAST_WIDTH, LEAST_HEIGHT);
        content = new TestSignalsComposite(
                scrolled, getSite().getService(ProjectDesk.class).work(), new SoundCards());
        scrolled.setContent(content);
        ProjectCommands.help(content, "stimulus_view");
    }

    @Override
    public void setFocus() {
        content.setFocus();
    }
}
