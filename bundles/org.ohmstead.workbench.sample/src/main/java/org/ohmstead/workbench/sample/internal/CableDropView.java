// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.sample.internal;

import org.eclipse.swt.widgets.Composite;
import org.eclipse.ui.part.ViewPart;
import org.ohmstead.workbench.session.ProjectDesk;

/** The view: a shell around its composite. */
public final class CableDropView extends ViewPart {
    private CableDropComposite content;

    @Override
    public void createPartControl(Composite parent) {
        content = new CableDropComposite(parent, getSite().getService(ProjectDesk.class));
    }

    @Override
    public void setFocus() {
        content.setFocus();
    }
}
