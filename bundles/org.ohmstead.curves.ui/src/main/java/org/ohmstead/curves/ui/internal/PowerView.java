// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.ui.internal;

import org.eclipse.swt.widgets.Composite;
import org.eclipse.ui.part.ViewPart;
import org.ohmstead.workbench.session.ProjectDesk;

/** Shows power against supply volts in the workbench. */
public final class PowerView extends ViewPart {
    private PowerComposite content;

    @Override
    public void createPartControl(Composite parent) {
        content = new PowerComposite(parent, getSite().getService(ProjectDesk.class));
    }

    @Override
    public void setFocus() {
        content.setFocus();
    }
}
