// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal;

import java.util.Optional;
import org.ohmstead.jobs.SharingState;
import org.ohmstead.model.Project;
import org.ohmstead.workbench.session.DeskListener;
import org.ohmstead.workbench.session.DisplaySettings;
import org.ohmstead.workbench.session.LogSnapshot;
import org.ohmstead.workbench.session.ProjectSession;

/**
 * Hears of whatever changes in the open project, its log or the way in which numbers are shown, and has it shown again.
 *
 * @param show shows all anew
 */
public record AnyChange(Runnable show) implements DeskListener {
    @Override
    public void sessionChanged(Optional<ProjectSession> session) {
        show.run();
    }

    @Override
    public void projectChanged(Project before, Project after) {
        show.run();
    }

    @Override
    public void stateChanged() {
        show.run();
    }

    @Override
    public void displayChanged(DisplaySettings settings) {
        show.run();
    }

    @Override
    public void logChanged(LogSnapshot snapshot) {
        show.run();
    }

    @Override
    public void sharingChanged(SharingState state) {
        show.run();
    }
}
