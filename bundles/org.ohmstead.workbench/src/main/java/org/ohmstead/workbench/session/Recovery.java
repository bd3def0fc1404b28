// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import org.ohmstead.model.Project;

/**
 * Edits that were not saved when Ohmstead ended without being closed. The user chooses to {@link #recover} or to {@link #discard}; left
 * alone, they are offered again when the project is opened the next time.
 */
public final class Recovery {
    private final ProjectSession session;
    private final RecoveryShelf.Left left;
    private final boolean projectChangedSince;
    private final Clock clock;

    Recovery(ProjectSession session, RecoveryShelf.Left left, boolean projectChangedSince, Clock clock) {
        this.session = session;
        this.left = left;
        this.projectChangedSince = projectChangedSince;
        this.clock = clock;
    }

    boolean isOf(RecoveryShelf.Left other) {
        return left.equals(other);
    }

    /** Returns when the copy was made. */
    public Instant madeAt() {
        return left.copy().madeAt();
    }

    /** Returns the names of the edits, oldest first; of very many the last ones. */
    public List<String> editNames() {
        return left.copy().editNames();
    }

    /** Returns how many edits there were. */
    public int editCount() {
        return left.copy().editCount();
    }

    /** Returns the revision of the project on which the edits were made; empty when it was not known. */
    public String baseRevision() {
        return left.copy().baseRevision();
    }

    /** Returns whether {@code project.json} was changed since; then recovering takes those changes back. */
    public boolean projectChangedSince() {
        return projectChangedSince;
    }

    /** Returns the project with the edits. */
    public Project project() {
        return left.copy().project();
    }

    /** Returns what to tell the user. */
    public String sentence() {
        String edits = editCount() == 1 ? "1 edit was" : editCount() + " edits were";
        String names = editNames().isEmpty()
                ? ""
                : " (last: " + editNames().get(editNames().size() - 1) + ")";
        String warning = projectChangedSince
                ? " The project was changed after that; to recover takes those changes back, and can be undone."
                : "";
        return edits + " not saved when Ohmstead ended: a copy of " + time() + " is there" + names + "." + warning;
    }

    /** Returns the time of the copy as the user's clock shows it, with the day when it was not today. */
    private String time() {
        ZonedDateTime made = madeAt().atZone(clock.getZone());
        boolean today = made.toLocalDate().equals(LocalDate.now(clock));
        return made.format(DateTimeFormatter.ofPattern(today ? "HH:mm" : "yyyy-MM-dd HH:mm", Locale.ROOT));
    }

    /**
     * Takes the edits over as one edit that can be undone. The copy is kept until they are safe in another way.
     *
     * @throws IllegalStateException when it was recovered or discarded already
     */
    public void recover() {
        session.recover(left, "Recover unsaved edits of " + time(), project());
    }

    /**
     * Deletes the copy.
     *
     * @throws SessionException when it could not be deleted
     * @throws IllegalStateException when it was recovered or discarded already
     */
    public void discard() throws SessionException {
        session.discard(left);
    }
}
