// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal;

import org.eclipse.jface.resource.ImageDescriptor;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Shell;

/**
 * The picture that is there until the window is. The platform shows one only through its native launcher, which the start
 * scripts do without.
 */
final class Splash {
    private static final String OFF = "ohmstead.nosplash";

    private final Shell shell;

    private Splash(Shell shell) {
        this.shell = shell;
    }

    /** Shows it in the middle of the main screen; not when the system property {@code ohmstead.nosplash} is set. */
    static Splash show(Display display) {
        if (Boolean.getBoolean(OFF)) {
            return new Splash(null);
        }
        Image image = ImageDescriptor.createFromURL(Splash.class.getResource("/branding/splash.png"))
                .createImage();
        Shell shell = new Shell(display, SWT.NO_TRIM | SWT.ON_TOP);
        shell.addDisposeListener(event -> image.dispose());
        Rectangle size = image.getBounds();
        Rectangle screen = display.getPrimaryMonitor().getClientArea();
        shell.setBounds(
                screen.x + (screen.width - size.width) / 2,
                screen.y + (screen.height - size.height) / 2,
                size.width,
                size.height);
        shell.addPaintListener(event -> event.gc.drawImage(image, 0, 0));
        shell.open();
        shell.update();
        display.readAndDispatch();
        return new Splash(shell);
    }

    void close() {
        if (shell != null && !shell.isDisposed()) {
            shell.close();
        }
    }
}
