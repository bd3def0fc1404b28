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
import org.ohmstead.units.text.Messages;

/**
 * Edits that were not saved when Ohmstead ended without being closed. The user chooses to {@link #recover} or to {@link #discard}; left
 * alone, they are offered again when the project is opened the next time.
 */
public final class Recovery {
    private static final Messages TEXTS = Messages.of(Recovery.class);

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
        String key = editCount() == 1 ? "recovery.one" : "recovery.many";
        String count = Integer.toString(editCount());
        String found = editNames().isEmpty()
                ? TEXTS.text(key, count, time())
                : TEXTS.text(
                        key + ".last",
                        count,
                        time(),
                        editNames().get(editNames().size() - 1));
        return projectChangedSince ? found + " " + TEXTS.text("recovery.changed") : found;
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
        session.recover(left, TEXTS.text("edit.recover", time()), project());
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
