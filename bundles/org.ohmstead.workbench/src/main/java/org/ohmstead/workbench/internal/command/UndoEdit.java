// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.command;

import java.util.Map;
import java.util.Optional;
import org.eclipse.ui.commands.IElementUpdater;
import org.eclipse.ui.menus.UIElement;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.ProjectSession;

/** Takes the latest edit of the project back. */
public final class UndoEdit extends DeskHandler implements IElementUpdater {
    @Override
    boolean applies(ProjectDesk desk) {
        return name(desk).isPresent();
    }

    @Override
    void run(ProjectDesk desk) {
        desk.session().ifPresent(ProjectSession::undo);
    }

    private static Optional<String> name(ProjectDesk desk) {
        return desk.session().flatMap(ProjectSession::undoName);
    }

    @Override
    public void updateElement(UIElement element, @SuppressWarnings("rawtypes") Map parameters) {
        ProjectDesk desk = desk();
        Optional<String> name = desk == null ? Optional.empty() : name(desk);
        element.setText(EditTexts.undo(name));
        element.setTooltip(EditTexts.undo(name).replace("&", ""));
    }
}
