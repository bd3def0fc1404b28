// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal;

import org.eclipse.ui.IFolderLayout;
import org.eclipse.ui.IPageLayout;
import org.eclipse.ui.IPerspectiveFactory;

/** Teaching and learning: the lessons have the whole room; the guide and what is to be done stand beside them when wanted. */
public final class LessonsPerspective implements IPerspectiveFactory {
    @Override
    public void createInitialLayout(IPageLayout layout) {
        Perspectives.offer(layout);
        layout.setEditorAreaVisible(false);
        IFolderLayout lessons = layout.createFolder("lessons", IPageLayout.LEFT, 0.7f, IPageLayout.ID_EDITOR_AREA);
        lessons.addView(Perspectives.LESSONS_VIEW);
        lessons.addPlaceholder(Perspectives.PROBLEMS);
        lessons.addPlaceholder(Perspectives.PROGRESS);
        lessons.addPlaceholder(Perspectives.ERROR_LOG);
        IFolderLayout right = layout.createFolder("right", IPageLayout.RIGHT, 0.68f, "lessons");
        right.addPlaceholder(Perspectives.HELP);
        right.addPlaceholder(Perspectives.FIRST_TEST);
    }
}
