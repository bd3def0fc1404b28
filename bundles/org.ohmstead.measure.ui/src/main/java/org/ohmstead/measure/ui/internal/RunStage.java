// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import java.util.Optional;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.session.LogSnapshot.LogState;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.ProjectSession;

/** How far things are before anything can be run. */
enum RunStage {
    /** No project is open. */
    NO_PROJECT,
    /** The project is open for reading only. */
    READ_ONLY,
    /** The plan has no step. */
    NO_PLAN,
    /** There are edits that are not in the file. */
    UNSAVED,
    /** The log is being read. */
    READING,
    /** The log cannot be trusted. */
    LOG_BROKEN,
    /** There is no log yet, and nobody said that one is wanted. */
    NOT_BEGUN,
    /** All is there. */
    READY;

    private static final Messages TEXTS = Messages.of(RunStage.class);

    /** Returns what is in the way, and what to do; empty when nothing is. */
    Optional<String> obstacle() {
        return this == READY ? Optional.empty() : Optional.of(TEXTS.text("stage." + name()));
    }

    /**
     * Says how far things are.
     *
     * @param begun whether a log may be made where there is none
     */
    static RunStage of(ProjectDesk desk, boolean begun) {
        Optional<ProjectSession> session = desk.session();
        if (session.isEmpty()) {
            return NO_PROJECT;
        }
        if (session.get().project().plan().isEmpty()) {
            return NO_PLAN;
        }
        if (session.get().readOnly()) {
            return READ_ONLY;
        }
        LogState log = desk.log().state();
        if (log == LogState.BROKEN || log == LogState.UNREADABLE) {
            return LOG_BROKEN;
        }
        if (session.get().dirty()) {
            return UNSAVED;
        }
        if (log == LogState.READING) {
            return READING;
        }
        return log == LogState.NONE && !begun ? NOT_BEGUN : READY;
    }
}
