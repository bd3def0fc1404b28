// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.command;

import java.util.List;
import java.util.stream.Collectors;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.ui.handlers.HandlerUtil;
import org.ohmstead.app.internal.module.ModuleFolders;
import org.ohmstead.app.internal.module.ModuleState;
import org.ohmstead.jobs.ModuleJars;

/** Lists the modules of the folders of modules, with what keeps one from running. */
public final class ShowModules extends AbstractHandler {
    @Override
    public Object execute(ExecutionEvent event) {
        List<ModuleState> modules = ModuleFolders.found();
        boolean faulty = modules.stream().anyMatch(module -> module.fault().isPresent());
        MessageDialog.open(
                faulty ? MessageDialog.WARNING : MessageDialog.INFORMATION,
                HandlerUtil.getActiveShell(event),
                "Modules",
                text(modules),
                0);
        return null;
    }

    static String text(List<ModuleState> modules) {
        String list = modules.isEmpty()
                ? "No module lies in a folder " + ModuleJars.FOLDER + "."
                : modules.stream()
                        .map(module -> module.name() + ": " + module.fault().orElse("runs.") + "\n" + module.file())
                        .collect(Collectors.joining("\n\n"));
        return list + "\n\nModules that were installed from an update site are listed under Help > Installed modules.";
    }
}
