// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.stimulus;

/** Hears how far a file or set has come, and says whether to go on. */
@FunctionalInterface
public interface RenderProgress {
    /**
     * Called now and then, from the thread that makes it.
     *
     * @param doneRatio 0 to 1
     * @return false to stop, which leaves no file behind
     */
    boolean goOn(double doneRatio);
}
