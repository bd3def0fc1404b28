// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal;

import java.util.Dictionary;
import java.util.Hashtable;
import java.util.Map;
import org.eclipse.e4.ui.css.swt.theme.ITheme;
import org.eclipse.e4.ui.css.swt.theme.IThemeEngine;
import org.eclipse.swt.widgets.Display;
import org.eclipse.ui.PlatformUI;
import org.ohmstead.workbench.look.Recolouring;
import org.ohmstead.workbench.look.Tones;
import org.osgi.framework.BundleContext;
import org.osgi.framework.FrameworkUtil;
import org.osgi.framework.ServiceRegistration;
import org.osgi.service.event.Event;
import org.osgi.service.event.EventConstants;
import org.osgi.service.event.EventHandler;

/** The light and the dark look. */
@SuppressWarnings("restriction") // the platform has no other way to switch its theme while it runs
public final class Themes {
    /** The id of the light theme in plugin.xml. */
    public static final String LIGHT = "org.ohmstead.app.light";
    /** The id of the dark theme in plugin.xml. */
    public static final String DARK = "org.ohmstead.app.dark";

    private static final int SETTLED_MILLISECONDS = 400;

    private Themes() {}

    /** Returns whether the dark theme is on. */
    public static boolean dark() {
        ITheme active = engine().getActiveTheme();
        return active != null && DARK.equals(active.getId());
    }

    /** Switches to the dark or the light theme at once and for the next start. */
    public static void setDark(boolean dark) {
        Display display = PlatformUI.getWorkbench().getDisplay();
        Recolouring recolouring = Recolouring.plan(display.getShells(), dark);
        engine().setTheme(dark ? DARK : LIGHT, true);
        // The platform sets the grounds in rounds of its own, some of them later; whichever is the last, the words come
        // after it.
        display.asyncExec(recolouring::apply);
        display.timerExec(SETTLED_MILLISECONDS, recolouring::apply);
    }

    /** Tells the tones of every change of the theme from now on. */
    static void follow(Display display) {
        BundleContext context = FrameworkUtil.getBundle(Themes.class).getBundleContext();
        EventHandler handler = Themes::changed;
        Dictionary<String, Object> topic =
                new Hashtable<>(Map.of(EventConstants.EVENT_TOPIC, IThemeEngine.Events.THEME_CHANGED));
        ServiceRegistration<EventHandler> registration = context.registerService(EventHandler.class, handler, topic);
        display.disposeExec(registration::unregister);
    }

    private static void changed(Event event) {
        Tones.follow(
                event.getProperty(IThemeEngine.Events.THEME) instanceof ITheme theme && DARK.equals(theme.getId()));
    }

    private static IThemeEngine engine() {
        return PlatformUI.getWorkbench().getService(IThemeEngine.class);
    }
}
