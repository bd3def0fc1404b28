// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal;

import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.eclipse.core.runtime.Platform;
import org.eclipse.equinox.app.IApplication;
import org.eclipse.equinox.app.IApplicationContext;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.osgi.service.datalocation.Location;
import org.eclipse.swt.widgets.Display;
import org.eclipse.ui.IWorkbench;
import org.eclipse.ui.PlatformUI;
import org.ohmstead.app.internal.module.ModuleFolders;
import org.ohmstead.app.internal.module.ModuleQuestion;
import org.ohmstead.jobs.ModuleJars;
import org.ohmstead.jobs.StateFolder;
import org.ohmstead.jobs.TrustedModules;
import org.ohmstead.units.text.Messages;

/** Ohmstead with its windows. */
public final class WorkbenchApplication implements IApplication {
    private static final Messages TEXTS = Messages.of(WorkbenchApplication.class);
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
                        null, TEXTS.text("start.impossible"), TEXTS.text("start.noFolder", StateFolder.VARIABLE));
                return EXIT_OK;
            }
            Themes.follow(display);
            StrayRows.dispose(display);
            ModuleFolders.start(moduleFolders(), TrustedModules.own(), new ModuleQuestion(splash::close));
            int result = PlatformUI.createAndRunWorkbench(display, new ApplicationAdvisor(arguments, splash));
            return result == PlatformUI.RETURN_RESTART && !Restart.called(arguments) ? EXIT_RESTART : EXIT_OK;
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
        Path base = StateFolder.own();
        for (int number = 1; number <= MOST_AT_ONCE; number++) {
            Path folder = base.resolve(number == 1 ? "workbench" : "workbench-" + number);
            Files.createDirectories(folder);
            if (location.set(folder.toUri().toURL(), true)) {
                return true;
            }
        }
        return false;
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
