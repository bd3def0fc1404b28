// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.ui.internal;

import org.eclipse.swt.widgets.Composite;
import org.eclipse.ui.IPartListener2;
import org.eclipse.ui.IWorkbenchPartReference;
import org.eclipse.ui.part.ViewPart;
import org.ohmstead.workbench.session.ProjectDesk;
import org.osgi.framework.FrameworkUtil;
import org.osgi.framework.Version;

/** Shows the results sheet in the workbench. */
public final class SheetView extends ViewPart {
    private final IPartListener2 visibility = new IPartListener2() {
        @Override
        public void partVisible(IWorkbenchPartReference reference) {
            if (reference.getPart(false) == SheetView.this) {
                content.refreshIfStale();
            }
        }
    };
    private SheetComposite content;

    @Override
    public void createPartControl(Composite parent) {
        ProjectDesk desk = getSite().getService(ProjectDesk.class);
        Version version = FrameworkUtil.getBundle(SheetView.class).getVersion();
        content = new SheetComposite(
                parent, desk, version.getMajor() + "." + version.getMinor() + "." + version.getMicro());
        getSite().getPage().addPartListener(visibility);
    }

    @Override
    public void setFocus() {
        content.setFocus();
    }

    @Override
    public void dispose() {
        getSite().getPage().removePartListener(visibility);
        super.dispose();
    }
}
