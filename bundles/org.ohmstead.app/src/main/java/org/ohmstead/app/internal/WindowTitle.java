// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal;

import java.util.Optional;
import org.eclipse.ui.application.IWorkbenchWindowConfigurer;
import org.ohmstead.model.Project;
import org.ohmstead.workbench.session.DeskListener;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.ProjectSession;
import org.ohmstead.workbench.session.Registration;

/** Keeps the window's title after the open project. */
final class WindowTitle implements DeskListener {
    static final String APPLICATION = "Ohmstead";

    private final IWorkbenchWindowConfigurer configurer;
    private ProjectDesk desk;
    private Registration registration;

    WindowTitle(IWorkbenchWindowConfigurer configurer) {
        this.configurer = configurer;
    }

    void follow() {
        desk = configurer.getWindow().getService(ProjectDesk.class);
        registration = desk.listen(this);
        show();
    }

    void close() {
        if (registration != null) {
            registration.close();
        }
    }

    private void show() {
        configurer.setTitle(desk.session().map(WindowTitle::of).orElse(APPLICATION));
    }

    private static String of(ProjectSession session) {
        return (session.dirty() ? "*" : "") + session.project().title() + (session.readOnly() ? " (read only)" : "")
                + " - " + APPLICATION;
    }

    @Override
    public void sessionChanged(Optional<ProjectSession> session) {
        show();
    }

    @Override
    public void projectChanged(Project before, Project after) {
        show();
    }

    @Override
    public void stateChanged() {
        show();
    }
}
