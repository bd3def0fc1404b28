// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal;

import org.eclipse.ui.IFolderLayout;
import org.eclipse.ui.IPageLayout;
import org.eclipse.ui.IPerspectiveFactory;

/** Working at the bench: the run console over the log as it grows and the capture of the chosen reading; pages open beside it. */
public final class BenchPerspective implements IPerspectiveFactory {
    @Override
    public void createInitialLayout(IPageLayout layout) {
        Perspectives.offer(layout);
        // The console has the room until somebody opens a page.
        layout.setEditorAreaVisible(false);
        layout.addView(Perspectives.NAVIGATOR, IPageLayout.LEFT, 0.15f, IPageLayout.ID_EDITOR_AREA);
        IFolderLayout console = layout.createFolder("console", IPageLayout.RIGHT, 0.3f, IPageLayout.ID_EDITOR_AREA);
        console.addView(Perspectives.CONSOLE);
        console.addView(Perspectives.GAIN);
        console.addView(Perspectives.STIMULUS);
        console.addView(Perspectives.QUALITY);
        console.addPlaceholder(Perspectives.HELP);
        console.addPlaceholder(Perspectives.FIRST_TEST);
        IFolderLayout below = layout.createFolder("below", IPageLayout.BOTTOM, 0.74f, "console");
        below.addView(Perspectives.LOG);
        below.addView(Perspectives.CAPTURE);
        below.addView(Perspectives.FORECAST);
        below.addView(Perspectives.PROBLEMS);
        below.addView(Perspectives.PROGRESS);
        below.addPlaceholder(Perspectives.ERROR_LOG);
    }
}
