// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import org.eclipse.swt.widgets.Composite;
import org.eclipse.ui.part.ViewPart;
import org.ohmstead.workbench.ProjectCommands;
import org.ohmstead.workbench.session.ProjectDesk;

/** Shows the audit page in the workbench. */
public final class AuditView extends ViewPart {
    private AuditComposite content;

    @Override
    public void createPartControl(Composite parent) {
        content = new AuditComposite(parent, getSite().getService(ProjectDesk.class));
        ProjectCommands.help(content, "audit_view");
    }

    @Override
    public void setFocus() {
        content.setFocus();
    }
}
