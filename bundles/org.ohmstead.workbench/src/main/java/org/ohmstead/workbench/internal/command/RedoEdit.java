// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.command;

import java.util.Map;
import java.util.Optional;
import org.eclipse.ui.commands.IElementUpdater;
import org.eclipse.ui.menus.UIElement;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.ProjectSession;

/** Makes the edit again that was taken back last. */
public final class RedoEdit extends DeskHandler implements IElementUpdater {
    @Override
    boolean applies(ProjectDesk desk) {
        return name(desk).isPresent();
    }

    @Override
    void run(ProjectDesk desk) {
        desk.session().ifPresent(ProjectSession::redo);
    }

    private static Optional<String> name(ProjectDesk desk) {
        return desk.session().flatMap(ProjectSession::redoName);
    }

    @Override
    public void updateElement(UIElement element, @SuppressWarnings("rawtypes") Map parameters) {
        ProjectDesk desk = desk();
        Optional<String> name = desk == null ? Optional.empty() : name(desk);
        element.setText(EditTexts.redo(name));
        element.setTooltip(EditTexts.redo(name).replace("&", ""));
    }
}
