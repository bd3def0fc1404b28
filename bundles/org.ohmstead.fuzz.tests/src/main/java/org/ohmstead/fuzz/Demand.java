// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.fuzz;

import java.nio.charset.StandardCharsets;

/** What is demanded of every reader. */
final class Demand {
    private Demand() {}

    /** Fails unless something holds that must whatever was read. */
    static void that(boolean holds, String what) {
        if (!holds) {
            throw new AssertionError(what);
        }
    }

    /** Fails unless a refusal says something, and says it in words instead of leaving a gap for what it does not know. */
    static void said(Exception refusal) {
        String message = refusal.getMessage();
        that(message != null && !message.isBlank(), refusal.getClass() + " says nothing");
    }

    /** Fails unless two numbers agree to a ratio of the larger. */
    static void close(double actual, double expected, double ratio, String what) {
        double larger = Math.max(Math.abs(actual), Math.abs(expected));
        that(Math.abs(actual - expected) <= ratio * larger, what + ": " + actual + " instead of " + expected);
    }

    /** Returns an input as text. Bytes that are no UTF-8 become the replacement character, which no reader of ours wants either. */
    static String text(byte[] input) {
        return new String(input, StandardCharsets.UTF_8);
    }
}
