// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.help;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Optional;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.Test;

class HelpPagesTest {
    @Test
    void findsThePlaceThatTheHelpIsAskedFor() {
        Shell shell = new Shell(Display.getDefault());
        try {
            Composite view = new Composite(shell, SWT.NONE);
            Text field = new Text(new Composite(view, SWT.NONE), SWT.NONE);
            assertEquals(Optional.empty(), HelpPages.contextId(field));
            assertEquals(Optional.empty(), HelpPages.contextId(null));

            view.setData("org.eclipse.ui.help", "org.ohmstead.app.gain_view");
            assertEquals(Optional.of("org.ohmstead.app.gain_view"), HelpPages.contextId(field));
        } finally {
            shell.dispose();
        }
    }
}
