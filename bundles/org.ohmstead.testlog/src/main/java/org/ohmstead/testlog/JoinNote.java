// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog;

import java.util.Objects;

/**
 * Says that entries of another log were joined to this one, and how that log stood then.
 *
 * @param chain hash of the first of the other chain's entries that this log holds, 64 hexadecimal digits; it stands for the chain
 * @param label short name of the chain within this log, such as "B"
 * @param name what the other bench is called, not blank
 * @param afterSequence number, in the other chain, of the entry that the joined ones come after; 0 when they begin the chain
 * @param lastSequence number, in the other chain, of the last joined entry, above {@code afterSequence}
 * @param headHash hash of that entry, 64 hexadecimal digits
 * @param who joined it; may be empty
 */
public record JoinNote(
        String chain, String label, String name, long afterSequence, long lastSequence, String headHash, String who) {
    private static final String HASH = "[0-9a-f]{64}";

    public JoinNote {
        requireMatch(chain, HASH, "chain");
        requireMatch(label, "[A-Z]{1,5}", "label");
        if (name.isBlank()) {
            throw new IllegalArgumentException("name is blank; it needs the name of the other bench");
        }
        if (afterSequence < 0 || lastSequence <= afterSequence) {
            throw new IllegalArgumentException("the entries after " + afterSequence + " up to " + lastSequence
                    + " are none; lastSequence must be above afterSequence, which is at least 0");
        }
        requireMatch(headHash, HASH, "headHash");
        Objects.requireNonNull(who, "who");
    }

    /** Returns how many entries were joined. */
    public long count() {
        return lastSequence - afterSequence;
    }

    private static void requireMatch(String value, String pattern, String name) {
        if (!value.matches(pattern)) {
            throw new IllegalArgumentException(name + " is \"" + value + "\"; it must match " + pattern);
        }
    }
}
