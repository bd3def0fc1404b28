// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal;

import org.eclipse.ui.application.IWorkbenchWindowConfigurer;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.ProjectSession;
import org.ohmstead.workbench.session.Registration;

/** Keeps the window's title after the open project. */
final class WindowTitle {
    static final String APPLICATION = "Ohmstead";

    private static final Messages TEXTS = Messages.of(WindowTitle.class);

    private final IWorkbenchWindowConfigurer configurer;
    private ProjectDesk desk;
    private Registration registration;

    WindowTitle(IWorkbenchWindowConfigurer configurer) {
        this.configurer = configurer;
    }

    void follow() {
        desk = configurer.getWindow().getService(ProjectDesk.class);
        registration = desk.listen(new AnyChange(this::show));
        show();
    }

    void close() {
        if (registration != null) {
            registration.close();
        }
    }

    private void show() {
        String title = desk.session().map(WindowTitle::of).orElse(APPLICATION);
        if (!title.equals(configurer.getTitle())) {
            configurer.setTitle(title);
        }
    }

    private static String of(ProjectSession session) {
        return TEXTS.text(
                session.readOnly() ? "title.project.readOnly" : "title.project",
                (session.dirty() ? "*" : "") + session.project().title(),
                APPLICATION);
    }
}
