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
import org.ohmstead.units.text.Messages;

/** Lists the modules of the folders of modules, with what keeps one from running. */
public final class ShowModules extends AbstractHandler {
    private static final Messages TEXTS = Messages.of(ShowModules.class);

    @Override
    public Object execute(ExecutionEvent event) {
        List<ModuleState> modules = ModuleFolders.found();
        boolean faulty = modules.stream().anyMatch(module -> module.fault().isPresent());
        MessageDialog.open(
                faulty ? MessageDialog.WARNING : MessageDialog.INFORMATION,
                HandlerUtil.getActiveShell(event),
                TEXTS.text("modules.title"),
                text(modules),
                0);
        return null;
    }

    static String text(List<ModuleState> modules) {
        String list = modules.isEmpty()
                ? TEXTS.text("modules.none", ModuleJars.FOLDER)
                : modules.stream()
                        .map(module -> sentence(module) + "\n" + module.file())
                        .collect(Collectors.joining("\n\n"));
        return list + "\n\n" + TEXTS.text("modules.installed");
    }

    private static String sentence(ModuleState module) {
        return module.fault()
                .map(fault -> TEXTS.text("modules.fault", module.name(), fault))
                .orElseGet(() -> TEXTS.text("modules.runs", module.name()));
    }
}
