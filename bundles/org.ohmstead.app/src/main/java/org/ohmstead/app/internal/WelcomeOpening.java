// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal;

import org.eclipse.core.runtime.ILog;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.PartInitException;
import org.ohmstead.app.internal.part.WelcomeEditor;

/** Brings the welcome page to the front. */
public final class WelcomeOpening {
    private WelcomeOpening() {}

    /** Shows the welcome page in a window's editor area; does nothing without a window. */
    public static void open(IWorkbenchWindow window) {
        if (window == null || window.getActivePage() == null) {
            return;
        }
        IWorkbenchPage page = window.getActivePage();
        try {
            page.setEditorAreaVisible(true);
            page.openEditor(WelcomeEditor.INPUT, WelcomeEditor.ID);
        } catch (PartInitException e) {
            ILog.of(WelcomeOpening.class).error("The welcome page could not be shown.", e);
        }
    }
}
