// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.help;

import java.io.IOException;
import java.io.InputStream;
import java.util.BitSet;
import org.eclipse.core.commands.ParameterizedCommand;
import org.eclipse.core.commands.common.CommandException;
import org.eclipse.core.runtime.ILog;
import org.eclipse.core.runtime.preferences.IEclipsePreferences;
import org.eclipse.core.runtime.preferences.InstanceScope;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.commands.ICommandService;
import org.eclipse.ui.handlers.IHandlerService;
import org.eclipse.ui.part.ViewPart;
import org.ohmstead.units.text.Messages;
import org.osgi.service.prefs.BackingStoreException;

/** The first test, step by step; what is ticked off is kept for the next time. */
public final class StepsView extends ViewPart {
    /** The id of the view in plugin.xml. */
    public static final String ID = "org.ohmstead.app.firstTest";

    private static final Messages TEXTS = Messages.of(StepsView.class);
    private static final String SHEET = "/org.ohmstead.app/cheatsheets/first-test.xml";
    private static final String DONE = "firstTest.done";

    private Control shown;

    @Override
    public void createPartControl(Composite parent) {
        try (InputStream content = new PlatformHelpSource().open(SHEET)) {
            StepSheet sheet = StepSheet.read(SHEET, content);
            shown = new StepsComposite(parent, sheet, done(), this::run, StepsView::keep);
        } catch (IOException | HelpException e) {
            Label label = new Label(parent, SWT.WRAP);
            label.setText(e.getMessage());
            shown = label;
        }
        PlatformUI.getWorkbench().getHelpSystem().setHelp(shown, "org.ohmstead.app.welcome");
    }

    @Override
    public void setFocus() {
        shown.setFocus();
    }

    private void run(String serialized) {
        try {
            ParameterizedCommand command =
                    getSite().getService(ICommandService.class).deserialize(serialized);
            getSite().getService(IHandlerService.class).executeCommand(command, null);
        } catch (CommandException e) {
            ILog.of(StepsView.class).error("A step could not be done.", e);
            MessageDialog.openInformation(getSite().getShell(), getPartName(), TEXTS.text("steps.notNow"));
        }
    }

    private static IEclipsePreferences preferences() {
        return InstanceScope.INSTANCE.getNode("org.ohmstead.app");
    }

    private static BitSet done() {
        return BitSet.valueOf(new long[] {preferences().getLong(DONE, 0)});
    }

    private static void keep(BitSet done) {
        preferences().putLong(DONE, done.isEmpty() ? 0 : done.toLongArray()[0]);
        try {
            preferences().flush();
        } catch (BackingStoreException e) {
            ILog.of(StepsView.class).error("The steps that are done could not be kept.", e);
        }
    }
}
