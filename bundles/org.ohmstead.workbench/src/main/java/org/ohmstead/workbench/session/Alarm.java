// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import java.time.Duration;

/** Calls back later, on a thread that is not the user interface's. */
interface Alarm extends AutoCloseable {
    /** Does something once, after a while, unless the registration is closed before. */
    Registration after(Duration delay, Runnable action);

    /** Does something again and again, with a pause before each, until the registration is closed. */
    Registration every(Duration pause, Runnable action);

    /** Does something as soon as what was asked for before is done. */
    default void soon(Runnable action) {
        after(Duration.ZERO, action);
    }

    /** Ends after what is at work; what waits is not done any more. */
    @Override
    void close();
}
