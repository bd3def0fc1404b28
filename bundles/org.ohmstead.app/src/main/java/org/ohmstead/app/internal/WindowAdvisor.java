// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal;

import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Display;
import org.eclipse.ui.IWorkbenchPreferenceConstants;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.application.ActionBarAdvisor;
import org.eclipse.ui.application.IActionBarConfigurer;
import org.eclipse.ui.application.IWorkbenchWindowConfigurer;
import org.eclipse.ui.application.WorkbenchWindowAdvisor;

/** What a window has around its parts; menus and tool bars are declared in plugin.xml. */
final class WindowAdvisor extends WorkbenchWindowAdvisor {
    private static final Point WANTED_SIZE = new Point(1440, 900);

    private final WindowTitle title;

    WindowAdvisor(IWorkbenchWindowConfigurer configurer) {
        super(configurer);
        title = new WindowTitle(configurer);
    }

    @Override
    public ActionBarAdvisor createActionBarAdvisor(IActionBarConfigurer configurer) {
        return new MenuFrame(configurer);
    }

    @Override
    public void preWindowOpen() {
        IWorkbenchWindowConfigurer configurer = getWindowConfigurer();
        Rectangle screen = Display.getCurrent().getPrimaryMonitor().getClientArea();
        configurer.setInitialSize(
                new Point(Math.min(WANTED_SIZE.x, screen.width), Math.min(WANTED_SIZE.y, screen.height)));
        configurer.setShowCoolBar(true);
        configurer.setShowStatusLine(false); // its room is the status bar's, which says more
        configurer.setShowPerspectiveBar(true);
        configurer.setShowProgressIndicator(true);
        configurer.setTitle(WindowTitle.APPLICATION);
        PlatformUI.getPreferenceStore().setDefault(IWorkbenchPreferenceConstants.SHOW_TEXT_ON_PERSPECTIVE_BAR, true);
        PlatformUI.getPreferenceStore().setDefault(IWorkbenchPreferenceConstants.SHOW_MEMORY_MONITOR, false);
    }

    @Override
    public void postWindowOpen() {
        title.follow();
    }

    @Override
    public void dispose() {
        title.close();
    }
}
