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
import org.ohmstead.jobs.StateFolder;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.ProjectCommands;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;

/** The choice of the light or the dark theme, and of the language. */
public final class AppearancePreferencePage extends PreferencePage implements IWorkbenchPreferencePage {
    private static final Messages TEXTS = Messages.of(AppearancePreferencePage.class);

    private IWorkbench workbench;
    private Button light;
    private Button dark;
    private LanguagePart language;

    @Override
    public void init(IWorkbench itsWorkbench) {
        workbench = itsWorkbench;
        noDefaultButton();
    }

    @Override
    protected Control createContents(Composite parent) {
        Composite body = new Composite(parent, SWT.NONE);
        GridLayoutFactory.fillDefaults().spacing(0, 2 * Spacing.MARGIN).applyTo(body);
        createTheme(body);
        language = new LanguagePart(body, StateFolder.own(), System.getenv());
        GridDataFactory.fillDefaults().grab(true, false).applyTo(language);
        ProjectCommands.help(body, "preferences");
        return body;
    }

    private void createTheme(Composite body) {
        Composite theme = new Composite(body, SWT.NONE);
        GridLayoutFactory.fillDefaults().spacing(0, Spacing.GAP).applyTo(theme);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(theme);
        Label text = new Label(theme, SWT.WRAP);
        text.setText(TEXTS.text("appearance.theme"));
        GridDataFactory.fillDefaults().grab(true, false).hint(300, SWT.DEFAULT).applyTo(text);
        light = new Button(theme, SWT.RADIO);
        light.setText(TEXTS.text("appearance.light"));
        Ids.name(light, "appearance.light");
        dark = new Button(theme, SWT.RADIO);
        dark.setText(TEXTS.text("appearance.dark"));
        Ids.name(dark, "appearance.dark");
        light.setSelection(!Themes.dark());
        dark.setSelection(Themes.dark());
    }

    @Override
    public boolean performOk() {
        if (dark.getSelection() != Themes.dark()) {
            Themes.setDark(dark.getSelection());
        }
        return language.keep(workbench::restart);
    }
}
