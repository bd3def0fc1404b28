// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ohmstead.model.Project;
import org.ohmstead.model.json.LockOwner;
import org.ohmstead.model.json.ProjectFileException;
import org.ohmstead.model.json.ProjectLock;
import org.ohmstead.model.json.RecoveryCopy;
import org.ohmstead.units.text.Messages;

/** Whether a project's folder may be written to, and what belongs to that right. */
sealed interface WriteAccess {
    Messages TEXTS = Messages.of(WriteAccess.class);

    /**
     * It may.
     *
     * @param lock keeps others out
     * @param shelf for copies of unsaved edits
     */
    record Granted(ProjectLock lock, RecoveryShelf shelf) implements WriteAccess {
        /** Gives the right back, as it was of no use. */
        void release() throws SessionException {
            try {
                lock.close();
            } catch (ProjectFileException failure) {
                throw new SessionException(failure.getMessage(), failure);
            }
        }

        /** Says that all is saved; returns what to tell when the recovery copy stays. */
        Optional<SessionNotice> saved() {
            try {
                shelf.saved();
                return Optional.empty();
            } catch (ProjectFileException failure) {
                return Optional.of(new SessionNotice(SessionNotice.Kind.RECOVERY_FAILED, failure.getMessage()));
            }
        }

        /** Gives the right back, after having written or deleted the recovery copy for the last time. */
        void giveUp(Optional<RecoveryCopy> lastCopy) throws SessionException {
            // The lock is given back also when the copy fails.
            try (lock) {
                shelf.close(lastCopy);
            } catch (ProjectFileException failure) {
                throw new SessionException(failure.getMessage(), failure);
            }
        }
    }

    /**
     * It may not.
     *
     * @param notice why
     */
    record Refused(SessionNotice notice) implements WriteAccess {}

    /**
     * What was left behind in a folder.
     *
     * @param left copies of unsaved edits
     * @param notices what to tell
     */
    record Found(List<RecoveryShelf.Left> left, List<SessionNotice> notices) {}

    /** Asks for the right; on any thread. */
    static WriteAccess ask(Path folder) {
        try {
            ProjectLock.Attempt attempt = ProjectLock.attempt(folder);
            if (attempt instanceof ProjectLock.Attempt.Taken taken) {
                return new Granted(taken.lock(), new RecoveryShelf(folder));
            }
            return new Refused(new SessionNotice(
                    SessionNotice.Kind.OPEN_ELSEWHERE, sentence(((ProjectLock.Attempt.Held) attempt).owner())));
        } catch (ProjectFileException notWritable) {
            return new Refused(new SessionNotice(
                    SessionNotice.Kind.NOT_WRITABLE, TEXTS.text("readOnly.folder", notWritable.getMessage())));
        }
    }

    /** Looks for what a crash left behind; on any thread, by whoever has the right to write. */
    static Found findLeft(Path folder, Project project) {
        List<SessionNotice> notices = new ArrayList<>();
        try {
            List<RecoveryShelf.Left> left = RecoveryShelf.findLeft(folder, project, notices);
            return new Found(left, notices);
        } catch (ProjectFileException failure) {
            notices.add(new SessionNotice(SessionNotice.Kind.RECOVERY_BROKEN, failure.getMessage()));
            return new Found(List.of(), notices);
        }
    }

    private static String sentence(LockOwner owner) {
        return owner.isThisProcess()
                ? TEXTS.text("readOnly.window")
                : TEXTS.text("readOnly.elsewhere", owner.inWords());
    }
}
