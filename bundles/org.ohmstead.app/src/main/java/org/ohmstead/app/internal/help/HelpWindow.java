// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.help;

import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Shell;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.session.BackgroundWork;

/** The help in a window of its own, for dialogs: the view behind a dialog could not be used. */
final class HelpWindow {
    private static final Point SIZE = new Point(760, 560);

    private final Shell shell;
    private final HelpComposite help;

    /** Opens the help beside a dialog; it closes with the dialog. */
    HelpWindow(Shell dialog, BackgroundWork work, HelpSource source) {
        shell = Ids.name(new Shell(dialog, SWT.DIALOG_TRIM | SWT.RESIZE | SWT.MODELESS), "help.window");
        shell.setText(Messages.of(HelpWindow.class).text("help.window"));
        shell.setLayout(new FillLayout());
        help = new HelpComposite(shell, work, source);
        Rectangle screen = dialog.getMonitor().getClientArea();
        Rectangle beside = dialog.getBounds();
        int width = Math.min(SIZE.x, screen.width);
        int height = Math.min(SIZE.y, screen.height);
        int x = Math.max(screen.x, Math.min(beside.x + beside.width, screen.x + screen.width - width));
        int y = Math.max(screen.y, Math.min(beside.y, screen.y + screen.height - height));
        shell.setBounds(x, y, width, height);
        shell.open();
        help.setFocus();
    }

    HelpComposite help() {
        return help;
    }

    /** Returns whether it can still be used for a dialog. */
    boolean serves(Shell dialog) {
        return !shell.isDisposed() && (shell == dialog || shell.getParent() == dialog);
    }
}
