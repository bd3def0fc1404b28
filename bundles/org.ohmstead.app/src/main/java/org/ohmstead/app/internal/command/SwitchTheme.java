// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.command;

import java.util.Map;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.ui.commands.IElementUpdater;
import org.eclipse.ui.menus.UIElement;
import org.ohmstead.app.internal.Themes;

/** Changes between the light and the dark theme. */
public final class SwitchTheme extends AbstractHandler implements IElementUpdater {
    @Override
    public Object execute(ExecutionEvent event) {
        Themes.setDark(!Themes.dark());
        return null;
    }

    @Override
    public void updateElement(UIElement element, @SuppressWarnings("rawtypes") Map parameters) {
        element.setText(Themes.dark() ? "Light &theme" : "Dark &theme");
    }
}
