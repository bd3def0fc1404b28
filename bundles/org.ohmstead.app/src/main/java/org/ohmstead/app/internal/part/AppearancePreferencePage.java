// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.part;

import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.preference.PreferencePage;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.ui.IWorkbench;
import org.eclipse.ui.IWorkbenchPreferencePage;
import org.ohmstead.app.internal.Themes;
import org.ohmstead.workbench.ProjectCommands;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;

/** The choice of the light or the dark theme. */
public final class AppearancePreferencePage extends PreferencePage implements IWorkbenchPreferencePage {
    private Button light;
    private Button dark;

    @Override
    public void init(IWorkbench workbench) {
        noDefaultButton();
    }

    @Override
    protected Control createContents(Composite parent) {
        Composite body = new Composite(parent, SWT.NONE);
        GridLayoutFactory.fillDefaults().spacing(0, Spacing.GAP).applyTo(body);
        Label text = new Label(body, SWT.WRAP);
        text.setText("The theme changes at once, charts with it. Printed sheets are always dark on light.");
        GridDataFactory.fillDefaults().grab(true, false).hint(300, SWT.DEFAULT).applyTo(text);
        light = new Button(body, SWT.RADIO);
        light.setText("&Light");
        Ids.name(light, "appearance.light");
        dark = new Button(body, SWT.RADIO);
        dark.setText("&Dark");
        Ids.name(dark, "appearance.dark");
        light.setSelection(!Themes.dark());
        dark.setSelection(Themes.dark());
        ProjectCommands.help(body, "preferences");
        return body;
    }

    @Override
    public boolean performOk() {
        if (dark.getSelection() != Themes.dark()) {
            Themes.setDark(dark.getSelection());
        }
        return true;
    }
}
