// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.module;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import org.eclipse.core.runtime.ILog;
import org.ohmstead.jobs.ModuleFile;
import org.ohmstead.jobs.ModuleJars;
import org.ohmstead.jobs.TrustedModules;
import org.ohmstead.units.text.Messages;
import org.osgi.framework.Bundle;
import org.osgi.framework.BundleContext;
import org.osgi.framework.BundleException;
import org.osgi.framework.Constants;
import org.osgi.framework.FrameworkUtil;
import org.osgi.framework.wiring.FrameworkWiring;

/**
 * Starts the modules that lie as jars in folders, before the first window opens. What cannot be started is remembered with its
 * reason and stops nothing else. The platform's own reconciler of folders is not used: it says nothing of a module that does not
 * resolve, and costs every start about as much as half the window.
 */
public final class ModuleFolders {
    private static final Messages TEXTS = Messages.of(ModuleFolders.class);

    private static List<ModuleState> found = List.of();

    private ModuleFolders() {}

    /** Returns the modules that were found at the start, the faulty ones too. */
    public static synchronized List<ModuleState> found() {
        return found;
    }

    /**
     * Starts the modules of some folders; one that is not there is passed over. Modules of an earlier start that are gone now, or changed,
     * are taken out. One that nobody said yes to yet is asked about first.
     *
     * @param folders of modules
     * @param trusted what was said yes to before, and where a yes is kept
     * @param question asks the user about a module; true for a yes
     */
    public static synchronized void start(List<Path> folders, TrustedModules trusted, Predicate<ModuleFile> question) {
        BundleContext context = FrameworkUtil.getBundle(ModuleFolders.class).getBundleContext();
        List<ModuleState> states = new ArrayList<>();
        List<ModuleFile> modules = folders.stream()
                .flatMap(folder -> jars(folder, states).stream())
                .flatMap(jar -> looked(jar, states).stream())
                .filter(module -> mayRun(module, trusted, question, states))
                .toList();
        removeAllBut(modules, context);
        Map<Path, Bundle> installed = new LinkedHashMap<>();
        for (ModuleFile module : modules) {
            try {
                installed.put(module.jar(), ModuleJars.install(module, context));
            } catch (BundleException | IOException e) {
                states.add(left(module.jar(), sentence("fault.install", e)));
            }
        }
        // All together, so that one may use another whatever their order.
        context.getBundle(Constants.SYSTEM_BUNDLE_LOCATION)
                .adapt(FrameworkWiring.class)
                .resolveBundles(installed.values());
        installed.forEach((jar, bundle) -> states.add(started(jar, bundle)));
        states.forEach(state -> state.fault().ifPresent(fault -> ILog.of(ModuleFolders.class)
                .error("The module " + state.name() + " was left out: " + fault)));
        found = List.copyOf(states);
    }

    private static List<Path> jars(Path folder, List<ModuleState> states) {
        try {
            return ModuleJars.in(folder);
        } catch (IOException e) {
            states.add(new ModuleState(ModuleJars.FOLDER, folder.toString(), Optional.of(sentence("fault.list", e))));
            return List.of();
        }
    }

    private static Optional<ModuleFile> looked(Path jar, List<ModuleState> states) {
        try {
            return Optional.of(ModuleFile.read(jar));
        } catch (IOException e) {
            states.add(left(jar, sentence("fault.install", e)));
            return Optional.empty();
        }
    }

    private static boolean mayRun(
            ModuleFile module, TrustedModules trusted, Predicate<ModuleFile> question, List<ModuleState> states) {
        if (!module.refusal().isEmpty()) {
            states.add(left(module.jar(), module.refusal()));
            return false;
        }
        if (trusted.trusts(module)) {
            return true;
        }
        if (!question.test(module)) {
            states.add(new ModuleState(
                    module.name(), module.jar().toString(), Optional.of(TEXTS.text("fault.unconfirmed"))));
            return false;
        }
        try {
            trusted.trust(module);
        } catch (IOException e) {
            ILog.of(ModuleFolders.class).warn("The yes to " + module.name() + " is not kept; it is asked again.", e);
        }
        return true;
    }

    private static ModuleState left(Path jar, String fault) {
        return new ModuleState(jar.getFileName().toString(), jar.toString(), Optional.of(fault));
    }

    private static void removeAllBut(List<ModuleFile> wanted, BundleContext context) {
        for (Bundle bundle : context.getBundles()) {
            boolean ours = ModuleJars.jar(bundle).isPresent();
            if (ours && wanted.stream().noneMatch(module -> ModuleJars.isFrom(bundle, module))) {
                try {
                    bundle.uninstall();
                } catch (BundleException e) {
                    ILog.of(ModuleFolders.class).error("The module " + bundle + " could not be taken out.", e);
                }
            }
        }
    }

    private static ModuleState started(Path jar, Bundle bundle) {
        String name = bundle.getSymbolicName() + " " + bundle.getVersion();
        try {
            if (bundle.getHeaders().get(Constants.FRAGMENT_HOST) == null) {
                bundle.start(Bundle.START_ACTIVATION_POLICY);
            }
            return new ModuleState(name, jar.toString(), Optional.empty());
        } catch (BundleException e) {
            return new ModuleState(name, jar.toString(), Optional.of(sentence("fault.start", e)));
        }
    }

    private static String sentence(String key, Exception failure) {
        StringBuilder reasons = new StringBuilder();
        for (Throwable cause = failure; cause != null; cause = cause.getCause()) {
            String reason = cause.getMessage() == null
                    ? cause.toString()
                    : cause.getMessage().strip();
            if (reasons.indexOf(reason) < 0) {
                reasons.append(' ').append(reason);
            }
        }
        return TEXTS.text(key, reasons.toString().strip());
    }
}
