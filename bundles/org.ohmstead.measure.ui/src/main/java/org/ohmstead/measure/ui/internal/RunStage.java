// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import java.util.Optional;
import org.ohmstead.workbench.session.LogSnapshot.LogState;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.ProjectSession;

/** How far things are before anything can be run. */
enum RunStage {
    /** No project is open. */
    NO_PROJECT("No project is open. Open one, or the demo, to carry its plan out."),
    /** The project is open for reading only. */
    READ_ONLY(
            "The project is open for reading only. Close it where it is open for writing, then its plan can be carried"
                    + " out here."),
    /** The plan has no step. */
    NO_PLAN("The plan is empty. Add its steps on the page Plan first."),
    /** There are edits that are not in the file. */
    UNSAVED("The project has unsaved edits. Save it first, so that the readings name what they were made with."),
    /** The log is being read. */
    READING("The test log is being read."),
    /** The log cannot be trusted. */
    LOG_BROKEN("The test log cannot be relied on, so nothing is added to it. Restore it from a backup."),
    /** There is no log yet, and nobody said that one is wanted. */
    NOT_BEGUN("Nothing was measured yet. Go through the plan first."),
    /** All is there. */
    READY("");

    private final String words;

    RunStage(String words) {
        this.words = words;
    }

    /** Returns what is in the way, and what to do; empty when nothing is. */
    Optional<String> obstacle() {
        return Optional.of(words).filter(each -> !each.isEmpty());
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
