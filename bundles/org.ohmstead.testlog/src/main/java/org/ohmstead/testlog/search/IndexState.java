// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.search;

import java.util.Objects;

/**
 * How an index stands.
 *
 * @param indexed entries that it knows
 * @param total entries that there are
 * @param kept whether it is kept in its file; false when the file cannot be written, so that it lives in memory only
 * @param remark why it was made anew or is not kept, in whole sentences; empty when there is nothing to say
 */
public record IndexState(long indexed, long total, boolean kept, String remark) {
    public IndexState {
        Objects.requireNonNull(remark, "remark");
    }

    /** Returns whether it knows all entries. */
    public boolean upToDate() {
        return indexed == total;
    }
}
