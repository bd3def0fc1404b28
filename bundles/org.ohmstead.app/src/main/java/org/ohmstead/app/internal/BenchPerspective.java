// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal;

import org.eclipse.ui.IFolderLayout;
import org.eclipse.ui.IPageLayout;
import org.eclipse.ui.IPerspectiveFactory;

/** Working at the bench: the plan in the editor area, the log as it grows, the capture of the chosen reading. */
public final class BenchPerspective implements IPerspectiveFactory {
    @Override
    public void createInitialLayout(IPageLayout layout) {
        Perspectives.offer(layout);
        layout.addView(Perspectives.NAVIGATOR, IPageLayout.LEFT, 0.18f, IPageLayout.ID_EDITOR_AREA);
        IFolderLayout right = layout.createFolder("right", IPageLayout.RIGHT, 0.54f, IPageLayout.ID_EDITOR_AREA);
        right.addView(Perspectives.CAPTURE);
        right.addPlaceholder(Perspectives.HELP);
        IFolderLayout below = layout.createFolder("below", IPageLayout.BOTTOM, 0.5f, IPageLayout.ID_EDITOR_AREA);
        below.addView(Perspectives.LOG);
        below.addView(Perspectives.FORECAST);
        below.addView(Perspectives.PROBLEMS);
        below.addView(Perspectives.PROGRESS);
        below.addPlaceholder(Perspectives.ERROR_LOG);
    }
}
