// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.jobs;

import java.util.Objects;

/** Something handed in that a job cannot work with. The message says what is wrong, with what, and what to do. */
public class JobException extends Exception {
    private static final long serialVersionUID = 1L;

    /** Why a job refused, for callers that have more to say about it. */
    public enum Reason {
        /** The input is not fit for the job in a way that the message alone explains. */
        UNFIT_INPUT,
        /** The project has no test log yet. */
        NO_LOG,
        /** The test log was changed after it was written. */
        BROKEN_LOG,
        /** The folder to be written holds something else. */
        FOLDER_TAKEN
    }

    private final Reason reason;

    /**
     * Makes a refusal that the message alone explains.
     *
     * @param message whole sentences for a technician
     */
    public JobException(String message) {
        this(Reason.UNFIT_INPUT, message);
    }

    /**
     * Makes a refusal.
     *
     * @param reason which kind it is
     * @param message whole sentences for a technician
     */
    public JobException(Reason reason, String message) {
        super(message);
        this.reason = Objects.requireNonNull(reason, "reason");
    }

    /** Returns which kind of refusal it is. */
    public final Reason reason() {
        return reason;
    }
}
