// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.shared;

/**
 * How long the server may take before the connection counts as cut.
 *
 * @param connectSeconds to answer at all, at least 1
 * @param loginSeconds to answer, encrypt and let the user in, at least 1
 * @param answerSeconds to send something while an answer is awaited, at least 1; it must be enough for a batch to be written to the
 *     server's disk
 */
public record LabTimeouts(int connectSeconds, int loginSeconds, int answerSeconds) {
    /** Ten seconds to answer, fifteen to let the user in, a minute for each answer. */
    public static final LabTimeouts USUAL = new LabTimeouts(10, 15, 60);

    public LabTimeouts {
        if (connectSeconds < 1 || loginSeconds < 1 || answerSeconds < 1) {
            throw new IllegalArgumentException("the timeouts are " + connectSeconds + ", " + loginSeconds + " and "
                    + answerSeconds + " s; each must be at least 1 s");
        }
    }
}
