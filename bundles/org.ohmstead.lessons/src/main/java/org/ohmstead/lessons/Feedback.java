// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons;

/**
 * What is said to a learner's prediction.
 *
 * @param right whether the prediction was right, or near enough
 * @param text one or two sentences: whether it was right, the answer, and why
 */
public record Feedback(boolean right, String text) {
    /** Checks the text. */
    public Feedback {
        Checks.named(text, "text");
    }
}
