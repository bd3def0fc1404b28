// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.search;

/** Follows the making of an index. It is called on the thread that makes it. */
public interface IndexProgress {
    /** Follows nothing and never stops it. */
    IndexProgress NONE = new IndexProgress() {
        @Override
        public void indexed(long done, long total) {
            // Nobody wants to know.
        }

        @Override
        public boolean cancelled() {
            return false;
        }
    };

    /**
     * Is told how far it is.
     *
     * @param done entries indexed by now
     * @param total entries that there were when it began
     */
    void indexed(long done, long total);

    /** Returns whether to stop. What was indexed by then stays. */
    boolean cancelled();
}
