// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog;

import java.util.Objects;

/**
 * A chain of entries: a log's own, or one that was joined to it.
 *
 * @param chain hash of its first entry, 64 hexadecimal digits; zeros while it has none
 * @param label short name within the log, such as "B"; empty for the log's own chain
 * @param name what the bench is called; empty for the log's own chain
 * @param entries how many entries it has here
 * @param headHash hash of the last of them, 64 hexadecimal digits; zeros while there is none
 * @param firstSequence number of its first entry: 1, or more when the chain parts from another one there
 */
public record ChainInfo(String chain, String label, String name, long entries, String headHash, long firstSequence) {
    public ChainInfo {
        Objects.requireNonNull(chain, "chain");
        Objects.requireNonNull(label, "label");
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(headHash, "headHash");
        if (entries < 0 || firstSequence < 1) {
            throw new IllegalArgumentException("entries is " + entries + " and firstSequence is " + firstSequence
                    + "; they must be at least 0 and at least 1");
        }
    }

    /** Makes a chain that begins with number 1. */
    public ChainInfo(String chain, String label, String name, long entries, String headHash) {
        this(chain, label, name, entries, headHash, 1);
    }

    /** Returns the number of its last entry; one less than the first when there is none. */
    public long lastSequence() {
        return firstSequence + entries - 1;
    }
}
