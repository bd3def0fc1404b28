// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal;

import org.eclipse.ui.IFolderLayout;
import org.eclipse.ui.IPageLayout;
import org.eclipse.ui.IPerspectiveFactory;

/** Describing the amplifier, the bench, the loads and the plan: navigator, editors, problems, load design. */
public final class DesignPerspective implements IPerspectiveFactory {
    @Override
    public void createInitialLayout(IPageLayout layout) {
        Perspectives.offer(layout);
        layout.addView(Perspectives.NAVIGATOR, IPageLayout.LEFT, 0.21f, IPageLayout.ID_EDITOR_AREA);
        IFolderLayout below = layout.createFolder("below", IPageLayout.BOTTOM, 0.75f, IPageLayout.ID_EDITOR_AREA);
        below.addView(Perspectives.PROBLEMS);
        below.addView(Perspectives.LOAD_DESIGN);
        below.addView(Perspectives.LOAD_BANK);
        below.addView(Perspectives.FORECAST);
        below.addPlaceholder(Perspectives.STEP_HEAT);
        below.addPlaceholder(Perspectives.IDENTIFY);
        below.addView(Perspectives.PROGRESS);
        below.addPlaceholder(Perspectives.ERROR_LOG);
        IFolderLayout right = layout.createFolder("right", IPageLayout.RIGHT, 0.68f, IPageLayout.ID_EDITOR_AREA);
        right.addPlaceholder(Perspectives.HELP);
        right.addPlaceholder(Perspectives.FIRST_TEST);
    }
}
