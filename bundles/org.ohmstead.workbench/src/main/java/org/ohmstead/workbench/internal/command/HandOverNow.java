// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.command;

import org.ohmstead.jobs.SharingState;
import org.ohmstead.workbench.session.ProjectDesk;

/** Hands over to the laboratory's shared log now; how it went stands at the bottom of the window and among the problems. */
public final class HandOverNow extends DeskHandler {
    @Override
    boolean applies(ProjectDesk desk) {
        return desk.sharing().kind() != SharingState.Kind.OFF;
    }

    @Override
    void run(ProjectDesk desk) {
        desk.handOver();
    }
}
