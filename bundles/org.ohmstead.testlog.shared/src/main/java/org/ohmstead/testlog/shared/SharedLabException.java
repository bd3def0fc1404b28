// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.shared;

import java.util.Objects;

/**
 * The shared log could not be reached, or refused what was asked of it. The message is whole sentences for the person at the bench: what
 * happened, to which server, and what to do. What stands in the bench's own log is never touched by it.
 */
public final class SharedLabException extends Exception {
    private static final long serialVersionUID = 1L;

    /** Why. */
    public enum Reason {
        /** The project does not say enough about the shared log, or a file that it names is not there. */
        SETTINGS(false),
        /** No user name or password was found, or the password file may be read by others. */
        CREDENTIALS(false),
        /** The server does not accept user name and password. */
        WRONG_PASSWORD(false),
        /** Nothing answers, or the way to the server is cut. */
        UNREACHABLE(true),
        /** The connection cannot be encrypted, or the server's certificate is not trusted. */
        NOT_TRUSTED(false),
        /** There is no such database. */
        NO_DATABASE(false),
        /** The user's role does not include it. */
        NO_RIGHT(false),
        /** The database has no shared log, or one of another version. */
        OTHER_VERSION(false),
        /** Others use the server, or it starts or stops just now. */
        BUSY(true),
        /** The chain was closed by a lead. */
        CLOSED(false),
        /** The server refuses it for what it is. */
        REFUSED(false),
        /** The bench's own log is not whole. */
        LOCAL_LOG(false);

        private final boolean passing;

        Reason(boolean passing) {
            this.passing = passing;
        }

        /** Returns whether it may well work later, without anybody having done anything. */
        public boolean passing() {
            return passing;
        }
    }

    private final Reason reason;

    /** Makes a failure that was found without the server. */
    public SharedLabException(Reason reason, String sentences) {
        super(sentences);
        this.reason = Objects.requireNonNull(reason, "reason");
    }

    /** Makes a failure that something else caused. */
    public SharedLabException(Reason reason, String sentences, Throwable cause) {
        super(sentences, cause);
        this.reason = Objects.requireNonNull(reason, "reason");
    }

    /** Returns why. */
    public Reason reason() {
        return reason;
    }
}
