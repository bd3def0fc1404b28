// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.ohmstead.jobs.ModuleJars;
import org.osgi.framework.Bundle;
import org.osgi.framework.BundleContext;
import org.osgi.framework.BundleException;

/**
 * The modules that lie as jars in the product's folder for them. They are installed before the plug-ins are looked for; what is in the
 * folder counts, as in the workbench.
 */
final class DropIns {
    private static final String INSTALLATION = "osgi.install.area";
    private static final System.Logger LOGGER = System.getLogger(DropIns.class.getName());

    private DropIns() {}

    /** Installs what is in the folder and not installed in this state yet, and takes out what has been taken away. */
    static void install(BundleContext context) {
        takeOut(context);
        String installation = context.getProperty(INSTALLATION);
        if (installation == null) {
            return;
        }
        Path folder = Path.of(URI.create(installation.replace(" ", "%20"))).resolve(ModuleJars.FOLDER);
        for (Path jar : jars(folder)) {
            try {
                ModuleJars.install(jar, context);
            } catch (BundleException | IOException failed) {
                LOGGER.log(System.Logger.Level.WARNING, "The module " + jar + " could not be installed.", failed);
            }
        }
    }

    private static void takeOut(BundleContext context) {
        for (Bundle bundle : context.getBundles()) {
            if (ModuleJars.jar(bundle).filter(Files::notExists).isPresent()) {
                try {
                    bundle.uninstall();
                } catch (BundleException failed) {
                    LOGGER.log(
                            System.Logger.Level.WARNING, "The module " + bundle + " could not be taken out.", failed);
                }
            }
        }
    }

    private static List<Path> jars(Path folder) {
        try {
            return ModuleJars.in(folder);
        } catch (IOException failed) {
            LOGGER.log(System.Logger.Level.WARNING, "The folder " + folder + " could not be listed.", failed);
            return List.of();
        }
    }
}
