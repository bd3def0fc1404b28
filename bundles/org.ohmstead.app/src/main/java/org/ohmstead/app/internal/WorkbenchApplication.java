// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal;

import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.eclipse.core.runtime.Platform;
import org.eclipse.equinox.app.IApplication;
import org.eclipse.equinox.app.IApplicationContext;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.osgi.service.datalocation.Location;
import org.eclipse.swt.widgets.Display;
import org.eclipse.ui.IWorkbench;
import org.eclipse.ui.PlatformUI;
import org.ohmstead.app.internal.module.ModuleFolders;
import org.ohmstead.jobs.ModuleJars;

/** Ohmstead with its windows. */
public final class WorkbenchApplication implements IApplication {
    /** Where the workbench keeps its layout and preferences, unless the environment or {@code -data} says otherwise. */
    private static final String STATE_VARIABLE = "OHMSTEAD_STATE";

    private static final int MOST_AT_ONCE = 32;

    @Override
    public Object start(IApplicationContext context) throws IOException {
        String[] arguments = (String[]) context.getArguments().get(IApplicationContext.APPLICATION_ARGS);
        Display display = PlatformUI.createDisplay();
        try {
            StartAhead.begin();
            Splash splash = Splash.show(display);
            if (!holdState(Platform.getInstanceLocation())) {
                splash.close();
                MessageDialog.openError(
                        null,
                        "Ohmstead cannot start",
                        "No folder for the layout and preferences could be taken. Close other Ohmstead windows, or set "
                                + STATE_VARIABLE + " to a folder that you may write to.");
                return EXIT_OK;
            }
            Themes.follow(display);
            ModuleFolders.start(moduleFolders());
            int result = PlatformUI.createAndRunWorkbench(display, new ApplicationAdvisor(arguments, splash));
            return result == PlatformUI.RETURN_RESTART ? EXIT_RESTART : EXIT_OK;
        } finally {
            display.dispose();
        }
    }

    /** Returns the folders of modules: that of the installation, and that beside the user's layouts. */
    private static List<Path> moduleFolders() {
        return List.of(
                folder(Platform.getInstallLocation()).resolve(ModuleJars.FOLDER),
                folder(Platform.getInstanceLocation()).resolveSibling(ModuleJars.FOLDER));
    }

    private static Path folder(Location location) {
        return Path.of(URI.create(location.getURL().toString().replace(" ", "%20")));
    }

    /** Takes a folder for the workbench's state that no other process uses: the first of workbench, workbench-2 and so on. */
    private static boolean holdState(Location location) throws IOException {
        if (location.isSet()) {
            return location.lock();
        }
        Path base = stateFolder(System.getenv(), Path.of(System.getProperty("user.home")));
        for (int number = 1; number <= MOST_AT_ONCE; number++) {
            Path folder = base.resolve(number == 1 ? "workbench" : "workbench-" + number);
            Files.createDirectories(folder);
            if (location.set(folder.toUri().toURL(), true)) {
                return true;
            }
        }
        return false;
    }

    /** Returns the folder for layouts and preferences: OHMSTEAD_STATE, else the place where the user's data belong. */
    static Path stateFolder(Map<String, String> environment, Path home) {
        String own = environment.getOrDefault(STATE_VARIABLE, "");
        if (!own.isBlank()) {
            return Path.of(own);
        }
        String windows = environment.getOrDefault("LOCALAPPDATA", "");
        if (!windows.isBlank()) {
            return Path.of(windows, "Ohmstead");
        }
        String data = environment.getOrDefault("XDG_DATA_HOME", "");
        return (data.isBlank() ? home.resolve(".local").resolve("share") : Path.of(data)).resolve("ohmstead");
    }

    @Override
    public void stop() {
        if (!PlatformUI.isWorkbenchRunning()) {
            return;
        }
        IWorkbench workbench = PlatformUI.getWorkbench();
        workbench.getDisplay().syncExec(workbench::close);
    }
}
