// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.ohmstead.jobs.ModuleFile;
import org.ohmstead.jobs.ModuleJars;
import org.ohmstead.jobs.TrustedModules;
import org.osgi.framework.Bundle;
import org.osgi.framework.BundleContext;
import org.osgi.framework.BundleException;

/**
 * The modules that lie as jars in the product's folder for them. They are installed before the plug-ins are looked for; what is in the
 * folder counts, as in the workbench, and of that only what somebody confirmed there or with {@code plugins trust}.
 */
final class DropIns {
    private static final String INSTALLATION = "osgi.install.area";
    private static final System.Logger LOGGER = System.getLogger(DropIns.class.getName());

    private DropIns() {}

    /**
     * Installs what is in the folder, was confirmed and is not installed in this state yet, and takes out what has been taken away or
     * changed.
     *
     * @param context of the framework
     * @param console which is told what is left out
     */
    static void install(BundleContext context, Console console) {
        String installation = context.getProperty(INSTALLATION);
        Path folder = installation == null
                ? null
                : Path.of(URI.create(installation.replace(" ", "%20"))).resolve(ModuleJars.FOLDER);
        List<ModuleFile> modules = folder == null ? List.of() : confirmed(folder, console);
        takeOut(context, folder, modules);
        for (ModuleFile module : modules) {
            try {
                ModuleJars.install(module, context);
            } catch (BundleException | IOException failed) {
                console.message(Texts.of("module.left", module.jar(), failed.getMessage()));
            }
        }
    }

    private static List<ModuleFile> confirmed(Path folder, Console console) {
        TrustedModules trusted = TrustedModules.own();
        List<ModuleFile> confirmed = new ArrayList<>();
        for (Path jar : jars(folder)) {
            try {
                ModuleFile module = ModuleFile.read(jar);
                if (trusted.trusts(module)) {
                    confirmed.add(module);
                } else if (module.refusal().isEmpty()) {
                    console.message(Texts.of("module.unconfirmed", module.name(), jar));
                } else {
                    console.message(Texts.of("module.left", jar, module.refusal()));
                }
            } catch (IOException failed) {
                console.message(Texts.of("module.left", jar, failed.getMessage()));
            }
        }
        return confirmed;
    }

    private static void takeOut(BundleContext context, Path folder, List<ModuleFile> modules) {
        for (Bundle bundle : context.getBundles()) {
            // Those of the user's own folder are the workbench's business as long as they are there.
            boolean unwanted = ModuleJars.jar(bundle)
                    .filter(jar -> Files.notExists(jar) || jar.getParent().equals(folder))
                    .isPresent();
            if (unwanted && modules.stream().noneMatch(module -> ModuleJars.isFrom(bundle, module))) {
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
