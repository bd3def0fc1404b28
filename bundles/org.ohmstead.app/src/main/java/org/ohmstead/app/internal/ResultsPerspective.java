// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal;

import org.eclipse.ui.IFolderLayout;
import org.eclipse.ui.IPageLayout;
import org.eclipse.ui.IPerspectiveFactory;

/** Understanding and publishing: power against supply volts, captures, the log, the results sheet. */
public final class ResultsPerspective implements IPerspectiveFactory {
    @Override
    public void createInitialLayout(IPageLayout layout) {
        Perspectives.offer(layout);
        layout.setEditorAreaVisible(false);
        IFolderLayout charts = layout.createFolder("charts", IPageLayout.LEFT, 0.64f, IPageLayout.ID_EDITOR_AREA);
        charts.addView(Perspectives.POWER);
        charts.addView(Perspectives.CAPTURE);
        charts.addView(Perspectives.PAIR);
        charts.addView(Perspectives.COMPARE);
        charts.addView(Perspectives.SOUND);
        IFolderLayout sheet = layout.createFolder("sheet", IPageLayout.RIGHT, 0.64f, "charts");
        sheet.addView(Perspectives.SHEET);
        sheet.addView(Perspectives.AUDIT);
        sheet.addPlaceholder(Perspectives.HELP);
        sheet.addPlaceholder(Perspectives.FIRST_TEST);
        IFolderLayout below = layout.createFolder("below", IPageLayout.BOTTOM, 0.6f, "charts");
        below.addView(Perspectives.LOG);
        below.addView(Perspectives.PROBLEMS);
        below.addPlaceholder(Perspectives.PROGRESS);
        below.addPlaceholder(Perspectives.ERROR_LOG);
    }
}
