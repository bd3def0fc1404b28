// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.command;

import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.ProjectSession;

/** Takes back all edits since the last save; that can be undone in turn. */
public final class RevertProject extends DeskHandler {
    @Override
    boolean applies(ProjectDesk desk) {
        return desk.session().filter(ProjectSession::dirty).isPresent();
    }

    @Override
    void run(ProjectDesk desk) {
        desk.session().ifPresent(ProjectSession::revertToSaved);
    }
}
