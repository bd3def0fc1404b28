// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import org.ohmstead.jobs.JobException;

/** Which word of the command line helps on, where a job itself cannot know of words. */
final class Hints {

    private Hints() {}

    /** Returns the message of a refusal with the words that help on. */
    static String message(JobException refusal) {
        return switch (refusal.reason()) {
            case UNFIT_INPUT -> refusal.getMessage();
            case NO_LOG -> Texts.of("hints.run", refusal.getMessage());
            case BROKEN_LOG -> withVerify(refusal.getMessage());
            case FOLDER_TAKEN -> Texts.of("hints.output", refusal.getMessage());
        };
    }

    /** Returns a sentence about a broken log with the word that shows every fault. */
    static String withVerify(String fault) {
        return Texts.of("hints.verify", fault);
    }
}
