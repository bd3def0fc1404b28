// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import java.util.Objects;

/**
 * Something about the open project that the user should be told without being interrupted.
 *
 * @param kind what it is about
 * @param sentence what happened and what to do, whole sentences
 */
public record SessionNotice(Kind kind, String sentence) {
    /** What a notice is about. */
    public enum Kind {
        /** Another program or window has the project, so that it was opened for reading. */
        OPEN_ELSEWHERE,
        /** The folder may not be written to, so that the project was opened for reading. */
        NOT_WRITABLE,
        /** A project that was open for reading can be edited now. */
        WRITABLE_NOW,
        /** The file was changed outside and was read anew, as there were no unsaved edits. */
        RELOADED,
        /** The file was changed outside while there are unsaved edits. */
        CONFLICT,
        /** The file is gone. */
        VANISHED,
        /** The file was changed outside and cannot be read. */
        UNREADABLE,
        /** A copy of unsaved edits was left behind and can be recovered. */
        RECOVERY_FOUND,
        /** A copy of unsaved edits could not be read and was kept aside. */
        RECOVERY_BROKEN,
        /** The copy of the unsaved edits could not be written. */
        RECOVERY_FAILED,
        /** The project was closed, but its lock could not be given back. */
        LOCK_KEPT
    }

    public SessionNotice {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(sentence, "sentence");
    }

    boolean meansOpenElsewhere() {
        return kind == Kind.OPEN_ELSEWHERE;
    }

    boolean meansReadOnly() {
        return kind == Kind.OPEN_ELSEWHERE || kind == Kind.NOT_WRITABLE;
    }
}
