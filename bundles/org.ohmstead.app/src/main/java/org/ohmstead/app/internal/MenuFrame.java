// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal;

import org.eclipse.jface.action.GroupMarker;
import org.eclipse.jface.action.ICoolBarManager;
import org.eclipse.jface.action.IMenuManager;
import org.eclipse.jface.action.MenuManager;
import org.eclipse.jface.action.Separator;
import org.eclipse.jface.action.ToolBarManager;
import org.eclipse.ui.IWorkbenchActionConstants;
import org.eclipse.ui.actions.ContributionItemFactory;
import org.eclipse.ui.application.ActionBarAdvisor;
import org.eclipse.ui.application.IActionBarConfigurer;

/** The empty menus, in their order; plugin.xml of this and of other bundles fill them. */
final class MenuFrame extends ActionBarAdvisor {
    MenuFrame(IActionBarConfigurer configurer) {
        super(configurer);
    }

    @Override
    protected void fillMenuBar(IMenuManager bar) {
        bar.add(menu("&File", IWorkbenchActionConstants.M_FILE, "project", "save", "import", "end"));
        bar.add(menu("&Edit", IWorkbenchActionConstants.M_EDIT, "undo", "clipboard", "find"));
        bar.add(menu("&Bench", "org.ohmstead.bench", "replay", "check"));
        bar.add(new GroupMarker(IWorkbenchActionConstants.MB_ADDITIONS));
        MenuManager window =
                menu("&Window", IWorkbenchActionConstants.M_WINDOW, "window", "layout", "theme", "preferences");
        MenuManager views = new MenuManager("Show &view", "org.ohmstead.app.views");
        views.add(ContributionItemFactory.VIEWS_SHORTLIST.create(
                getActionBarConfigurer().getWindowConfigurer().getWindow()));
        window.appendToGroup("layout", views);
        bar.add(window);
        bar.add(menu("&Help", "org.ohmstead.help", "pages", "modules", "about"));
    }

    private static MenuManager menu(String text, String id, String... groups) {
        MenuManager menu = new MenuManager(text, id);
        for (String group : groups) {
            menu.add(new Separator(group));
        }
        menu.add(new Separator(IWorkbenchActionConstants.MB_ADDITIONS));
        return menu;
    }

    @Override
    protected void fillCoolBar(ICoolBarManager bar) {
        bar.add(new ToolBarManager());
    }
}
