// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog;

import java.util.Objects;

/**
 * A place where time runs backwards in a log, which is no fault: an entry says an earlier time than the one ahead of it, since the
 * computer's clock was set back between them. What differs by no more than {@link TestLog#BUSY_SECONDS} is none, as an entry takes its
 * time before it waits for another program that is adding one.
 *
 * @param sequence the later entry's place in its chain
 * @param entryId its id, with its chain's label before it when it was joined, such as B/R0001
 * @param sentence what happened, in whole sentences
 */
public record ClockStep(long sequence, String entryId, String sentence) {
    public ClockStep {
        Objects.requireNonNull(entryId, "entryId");
        Objects.requireNonNull(sentence, "sentence");
    }
}
