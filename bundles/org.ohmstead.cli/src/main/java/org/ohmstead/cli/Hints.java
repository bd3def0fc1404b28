// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import org.ohmstead.jobs.JobException;

/** Which word of the command line helps on, where a job itself cannot know of words. */
final class Hints {
    private static final String VERIFY = " See: ohmstead log verify.";

    private Hints() {}

    /** Returns the message of a refusal with the words that help on. */
    static String message(JobException refusal) {
        return refusal.getMessage()
                + switch (refusal.reason()) {
                    case UNFIT_INPUT -> "";
                    case NO_LOG -> " For example: ohmstead run PROJECT --replay FOLDER.";
                    case BROKEN_LOG -> VERIFY;
                    case FOLDER_TAKEN -> " Name it with --output.";
                };
    }

    /** Returns a sentence about a broken log with the word that shows every fault. */
    static String withVerify(String fault) {
        return fault + VERIFY;
    }
}
