// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.ui.bare.internal;

import org.eclipse.swt.widgets.Display;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.application.IWorkbenchConfigurer;
import org.eclipse.ui.application.WorkbenchAdvisor;

/** Opens one perspective, remembers its layout as Ohmstead does, and closes once the start has been reported. */
final class BareAdvisor extends WorkbenchAdvisor {
    private boolean started;

    @Override
    public void initialize(IWorkbenchConfigurer configurer) {
        configurer.setSaveAndRestore(true);
    }

    @Override
    public String getInitialWindowPerspectiveId() {
        return BarePerspective.ID;
    }

    @Override
    public void postStartup() {
        started = true;
    }

    @Override
    public void eventLoopIdle(Display display) {
        if (started && StartReport.write()) {
            started = false;
            PlatformUI.getWorkbench().close();
            return;
        }
        super.eventLoopIdle(display);
    }
}
