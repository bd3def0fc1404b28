// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.command;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.eclipse.jface.action.Action;
import org.eclipse.jface.action.ActionContributionItem;
import org.eclipse.jface.action.IContributionItem;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.actions.CompoundContributionItem;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.session.RecentProjects;

/** The projects that were open last, as menu entries. */
public final class RecentMenu extends CompoundContributionItem {
    private static final Messages TEXTS = Messages.of(RecentMenu.class);
    private static final int MOST_WITH_MNEMONIC = 9;

    @Override
    protected IContributionItem[] getContributionItems() {
        List<IContributionItem> items = new ArrayList<>();
        for (RecentProjects.Recent recent : ProjectOpening.recent().list()) {
            items.add(new ActionContributionItem(new OpenRecent(items.size() + 1, recent)));
        }
        if (items.isEmpty()) {
            Action none = new Action(TEXTS.text("recent.none")) {};
            none.setEnabled(false);
            items.add(new ActionContributionItem(none));
        }
        return items.toArray(new IContributionItem[0]);
    }

    private static final class OpenRecent extends Action {
        private final Path folder;

        OpenRecent(int number, RecentProjects.Recent recent) {
            super((number <= MOST_WITH_MNEMONIC ? "&" : "") + number + "  "
                    + (recent.vanished() ? TEXTS.text("recent.gone", place(recent)) : place(recent)));
            this.folder = recent.folder();
            setEnabled(!recent.vanished());
        }

        private static String place(RecentProjects.Recent recent) {
            return recent.name() + "   " + recent.folder().getParent();
        }

        @Override
        public void run() {
            ProjectOpening.open(PlatformUI.getWorkbench(), folder);
        }
    }
}
