// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench;

import java.nio.file.Path;
import java.util.List;
import org.eclipse.core.commands.common.CommandException;
import org.eclipse.core.runtime.ILog;
import org.eclipse.swt.widgets.Control;
import org.eclipse.ui.IWorkbench;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.handlers.IHandlerService;
import org.eclipse.ui.services.IServiceLocator;
import org.ohmstead.workbench.internal.command.ProjectOpening;

/** The workbench's commands on the open project: their ids, and ways to start them. */
public final class ProjectCommands {
    /** Makes and opens the demo project. */
    public static final String DEMO = "org.ohmstead.workbench.demo";
    /** Asks for a project's folder and opens it. */
    public static final String OPEN = "org.ohmstead.workbench.open";
    /** Asks where and makes a new project there. */
    public static final String NEW = "org.ohmstead.workbench.new";
    /** Closes the open project. */
    public static final String CLOSE = "org.ohmstead.workbench.close";
    /** Takes back all edits since the last save, as one edit that can itself be undone. */
    public static final String REVERT = "org.ohmstead.workbench.revert";
    /** Carries the plan out from recordings. */
    public static final String REPLAY = "org.ohmstead.workbench.replay";
    /** Shows the next problem of the project where it can be mended. */
    public static final String NEXT_PROBLEM = "org.ohmstead.workbench.nextProblem";
    /** Hands over to the laboratory's shared log now, without waiting for the next try. */
    public static final String HAND_OVER = "org.ohmstead.workbench.handOver";

    private static final String HELP_PLUGIN = "org.ohmstead.app.";

    private ProjectCommands() {}

    /**
     * Starts a command; a failure goes to the Error Log, since the command itself tells the user.
     *
     * @param services of the part or window that it is started from
     * @param commandId one of the ids above or any other without needed parameters
     */
    public static void execute(IServiceLocator services, String commandId) {
        try {
            services.getService(IHandlerService.class).executeCommand(commandId, null);
        } catch (CommandException e) {
            ILog.of(ProjectCommands.class).error("The command " + commandId + " could not be started.", e);
        }
    }

    /** Opens a project, after asking what becomes of unsaved edits of the one that is open. */
    public static void open(IWorkbench workbench, Path folder) {
        ProjectOpening.open(workbench, folder);
    }

    /** Returns the folders of the projects that were open last, the latest first. */
    public static List<Path> recent() {
        return ProjectOpening.recent().list().stream()
                .map(recent -> recent.folder())
                .toList();
    }

    /**
     * Closes the open project before the workbench ends, after asking about unsaved edits.
     *
     * @return whether the workbench may end
     */
    public static boolean readyToLeave(IWorkbench workbench) {
        return ProjectOpening.close(workbench);
    }

    /**
     * Ties F1 in a control to a topic of the guide.
     *
     * @param control with all its children
     * @param context id of the context in the application's help, such as {@code problems}
     */
    public static void help(Control control, String context) {
        PlatformUI.getWorkbench().getHelpSystem().setHelp(control, HELP_PLUGIN + context);
    }
}
