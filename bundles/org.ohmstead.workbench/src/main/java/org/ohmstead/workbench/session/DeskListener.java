// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import java.util.List;
import java.util.Optional;
import org.ohmstead.jobs.SharingState;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.testlog.LogEntry;

/** Hears of the open project; every method is called on the user interface's thread and does nothing unless overridden. */
public interface DeskListener {
    /**
     * A project was opened, another took its place, or it was closed.
     *
     * @param session what is open now
     */
    default void sessionChanged(Optional<ProjectSession> session) {}

    /**
     * The open project was edited, undone, redone, or reloaded.
     *
     * @param before what it was
     * @param after what it is now
     */
    default void projectChanged(Project before, Project after) {}

    /** The dirty state, the undo or redo names, or the read-only state changed. */
    default void stateChanged() {}

    /**
     * The log was read anew.
     *
     * @param log what it holds
     */
    default void logChanged(LogSnapshot log) {}

    /**
     * The entry that the user looks at changed.
     *
     * @param entry which it is now
     */
    default void chosenEntryChanged(Optional<LogEntry> entry) {}

    /**
     * The problems of the project were found anew.
     *
     * @param problems all of them
     */
    default void problemsChanged(List<Problem> problems) {}

    /**
     * The project's file was changed outside, is gone or cannot be read; told once for each state of the file. A change without unsaved
     * edits was already read anew when this is called.
     *
     * @param change what became of it
     */
    default void externalChange(ExternalChange change) {}

    /**
     * There is something to tell the user without interrupting.
     *
     * @param notice what
     */
    default void noticed(SessionNotice notice) {}

    /**
     * The user wants numbers or uncertainties shown otherwise; texts that are made from now on are so.
     *
     * @param settings how they are shown now
     */
    default void displayChanged(DisplaySettings settings) {}

    /**
     * The laboratory's shared log stands otherwise to the log of the open project.
     *
     * @param state how it stands now
     */
    default void sharingChanged(SharingState state) {}
}
