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
import org.ohmstead.units.text.Messages;

/** The empty menus, in their order; plugin.xml of this and of other bundles fill them. */
final class MenuFrame extends ActionBarAdvisor {
    private static final Messages TEXTS = Messages.of(MenuFrame.class);

    MenuFrame(IActionBarConfigurer configurer) {
        super(configurer);
    }

    @Override
    protected void fillMenuBar(IMenuManager bar) {
        bar.add(menu("file", IWorkbenchActionConstants.M_FILE, "project", "save", "import", "end"));
        bar.add(menu("edit", IWorkbenchActionConstants.M_EDIT, "undo", "clipboard", "find"));
        bar.add(menu("bench", "org.ohmstead.bench", "replay", "check"));
        bar.add(new GroupMarker(IWorkbenchActionConstants.MB_ADDITIONS));
        MenuManager window =
                menu("window", IWorkbenchActionConstants.M_WINDOW, "window", "layout", "theme", "preferences");
        MenuManager views = new MenuManager(TEXTS.text("menu.views"), "org.ohmstead.app.views");
        views.add(ContributionItemFactory.VIEWS_SHORTLIST.create(
                getActionBarConfigurer().getWindowConfigurer().getWindow()));
        window.appendToGroup("layout", views);
        bar.add(window);
        bar.add(menu("help", "org.ohmstead.help", "pages", "modules", "about"));
    }

    private static MenuManager menu(String name, String id, String... groups) {
        MenuManager menu = new MenuManager(TEXTS.text("menu." + name), id);
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
