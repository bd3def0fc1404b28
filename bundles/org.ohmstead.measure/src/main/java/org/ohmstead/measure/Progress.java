// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure;

/** Hears of a measurement as it goes; what it hears is shown live. Its methods return at once. */
public interface Progress {
    /**
     * Says how far it is.
     *
     * @param doneRatio 0 to 1
     * @param what it does now, a few words
     */
    void at(double doneRatio, String what);

    /** Shows a figure that may still change. */
    void live(Figure figure);

    /** Shows, and has the engine keep, what was recorded. Only what was kept may be named by a result. */
    void recorded(Acquisition acquisition);

    /**
     * Returns when the measurement may go on.
     *
     * @throws InterruptedException when it is to end: cancelled, out of time, or a stop limit was passed
     */
    void checkpoint() throws InterruptedException;
}
