// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.command;

import java.util.Map;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.ui.commands.IElementUpdater;
import org.eclipse.ui.menus.UIElement;
import org.ohmstead.app.internal.Themes;
import org.ohmstead.units.text.Messages;

/** Changes between the light and the dark theme. */
public final class SwitchTheme extends AbstractHandler implements IElementUpdater {
    private static final Messages TEXTS = Messages.of(SwitchTheme.class);

    @Override
    public Object execute(ExecutionEvent event) {
        Themes.setDark(!Themes.dark());
        return null;
    }

    @Override
    public void updateElement(UIElement element, @SuppressWarnings("rawtypes") Map parameters) {
        element.setText(TEXTS.text(Themes.dark() ? "theme.light" : "theme.dark"));
    }
}
