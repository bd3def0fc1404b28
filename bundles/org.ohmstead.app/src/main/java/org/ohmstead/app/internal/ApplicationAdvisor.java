// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal;

import java.nio.file.Path;
import java.util.Optional;
import org.eclipse.swt.widgets.Display;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.application.IWorkbenchConfigurer;
import org.eclipse.ui.application.IWorkbenchWindowConfigurer;
import org.eclipse.ui.application.WorkbenchAdvisor;
import org.eclipse.ui.application.WorkbenchWindowAdvisor;
import org.ohmstead.workbench.ProjectCommands;

/** Sets the workbench up and opens the project that was asked for or that was open last. */
final class ApplicationAdvisor extends WorkbenchAdvisor {
    private final String[] arguments;
    private final Splash splash;
    private boolean started;

    ApplicationAdvisor(String[] arguments, Splash splash) {
        this.arguments = arguments.clone();
        this.splash = splash;
    }

    @Override
    public void initialize(IWorkbenchConfigurer configurer) {
        configurer.setSaveAndRestore(true);
    }

    @Override
    public void preStartup() {
        SpokenLabels.renew(PlatformUI.getWorkbench());
    }

    @Override
    public String getInitialWindowPerspectiveId() {
        return Perspectives.DESIGN;
    }

    @Override
    public WorkbenchWindowAdvisor createWorkbenchWindowAdvisor(IWorkbenchWindowConfigurer configurer) {
        return new WindowAdvisor(configurer);
    }

    @Override
    public void postStartup() {
        splash.close();
        Optional<Path> asked = StartArguments.project(arguments);
        asked.or(StartArguments::lastProject)
                .ifPresentOrElse(
                        folder -> ProjectCommands.open(PlatformUI.getWorkbench(), folder),
                        () -> WelcomeOpening.open(PlatformUI.getWorkbench().getActiveWorkbenchWindow()));
        started = true;
    }

    @Override
    public void eventLoopIdle(Display display) {
        if (started && StartReport.write()) {
            started = false;
            PlatformUI.getWorkbench().close();
            return;
        }
        super.eventLoopIdle(display);
    }

    @Override
    public boolean preShutdown() {
        return ProjectCommands.readyToLeave(PlatformUI.getWorkbench());
    }
}
