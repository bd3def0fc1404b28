// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal;

import java.io.IOException;
import java.io.InputStream;
import java.text.Collator;
import org.eclipse.core.runtime.ILog;
import org.eclipse.swt.SWTException;
import org.eclipse.swt.graphics.ImageLoader;

/**
 * Loads on a thread of its own what the first window is about to need, while the first thread still starts the platform: the
 * drawing of SVG icons with all that stands behind it, and the order of names. Nothing depends on its having run; what it did not get
 * to is loaded when it is needed. It touches no class that belongs to a widget and none of a bundle that starts when its classes are
 * loaded, so that it can never wait for the first thread while that waits for it.
 */
final class StartAhead implements Runnable {
    private static final String ANY_ICON = "/icons/demo.svg";

    private StartAhead() {}

    /** Begins, and returns at once. */
    static void begin() {
        Thread thread = new Thread(new StartAhead(), "Ohmstead start ahead");
        thread.setDaemon(true);
        thread.start();
    }

    @Override
    public void run() {
        try (InputStream icon = StartAhead.class.getResourceAsStream(ANY_ICON)) {
            new ImageLoader().load(icon);
            Collator.getInstance();
        } catch (IOException | SWTException e) {
            ILog.of(StartAhead.class).warn("The start could not be prepared; icons may be missing.", e);
        }
    }
}
