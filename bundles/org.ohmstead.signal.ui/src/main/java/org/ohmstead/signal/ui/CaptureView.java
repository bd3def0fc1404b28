// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui;

import org.eclipse.swt.widgets.Composite;
import org.eclipse.ui.part.ViewPart;
import org.ohmstead.workbench.session.ProjectDesk;

/** The view named Capture: waveform, spectrum and figures of a recorded waveform. */
public final class CaptureView extends ViewPart {
    /** The view's id in the workbench. */
    public static final String ID = "org.ohmstead.signal.ui.capture";

    private CaptureComposite captures;

    @Override
    public void createPartControl(Composite parent) {
        captures = new CaptureComposite(parent, getSite().getService(ProjectDesk.class));
    }

    @Override
    public void setFocus() {
        captures.setFocus();
    }
}
