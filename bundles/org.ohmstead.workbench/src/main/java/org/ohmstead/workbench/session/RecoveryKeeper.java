// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.function.Consumer;
import org.ohmstead.model.json.ProjectFileException;
import org.ohmstead.model.json.RecoveryCopy;
import org.ohmstead.units.text.Messages;

/**
 * Keeps the copy of the unsaved edits of a session up to date: soon after the first edit, then not too often, and gone when there is
 * nothing unsaved. User interface's thread only; the disk is touched on the alarm's.
 */
final class RecoveryKeeper {
    private static final Messages TEXTS = Messages.of(RecoveryKeeper.class);
    static final Duration AFTER_FIRST_EDIT = Duration.ofSeconds(1);
    static final Duration BETWEEN_COPIES = Duration.ofSeconds(5);

    private final ProjectSession session;
    private final BackgroundWork work;
    private final Alarm alarm;
    private final Clock clock;
    private final Consumer<SessionNotice> notices;
    private Optional<Instant> writtenAt = Optional.empty();
    private Optional<Registration> due = Optional.empty();
    private boolean failed;

    RecoveryKeeper(
            ProjectSession session, BackgroundWork work, Alarm alarm, Clock clock, Consumer<SessionNotice> notices) {
        this.session = session;
        this.work = work;
        this.alarm = alarm;
        this.clock = clock;
        this.notices = notices;
    }

    /** Hears that the project or its dirty state may have changed. */
    void changed() {
        if (session.readOnly()) {
            return;
        }
        if (!session.dirty()) {
            stop();
            boolean mayBeThere = writtenAt.isPresent();
            writtenAt = Optional.empty();
            if (mayBeThere) {
                session.shelf().ifPresent(shelf -> alarm.soon(() -> guarded(shelf::clear)));
            }
        } else if (due.isEmpty()) {
            due = Optional.of(alarm.after(wait(clock.instant()), () -> work.later(this::write)));
        }
    }

    private Duration wait(Instant now) {
        Duration rest = writtenAt
                .map(last -> Duration.between(now, last.plus(BETWEEN_COPIES)))
                .orElse(AFTER_FIRST_EDIT);
        if (rest.compareTo(BETWEEN_COPIES) > 0) {
            // The clock was set back, and the edits must not wait until it is again as late as it was.
            return AFTER_FIRST_EDIT;
        }
        return rest.compareTo(AFTER_FIRST_EDIT) < 0 ? AFTER_FIRST_EDIT : rest;
    }

    private void write() {
        if (due.isEmpty()) {
            return;
        }
        due = Optional.empty();
        Optional<RecoveryCopy> copy = session.recoveryCopy();
        if (copy.isPresent()) {
            writtenAt = Optional.of(clock.instant());
            RecoveryShelf shelf = session.shelf().orElseThrow();
            long generation = shelf.generation();
            alarm.soon(() -> guarded(() -> shelf.write(generation, copy.get())));
        }
    }

    /** What may fail on the disk. */
    private interface DiskAction {
        void run() throws ProjectFileException;
    }

    private void guarded(DiskAction action) {
        try {
            action.run();
            work.later(() -> failed = false);
        } catch (ProjectFileException failure) {
            work.later(() -> tell(failure));
        }
    }

    private void tell(ProjectFileException failure) {
        if (!failed) {
            failed = true;
            notices.accept(new SessionNotice(
                    SessionNotice.Kind.RECOVERY_FAILED, TEXTS.text("recovery.stale", failure.getMessage())));
        }
    }

    /** Writes no more. */
    void stop() {
        due.ifPresent(Registration::close);
        due = Optional.empty();
    }
}
