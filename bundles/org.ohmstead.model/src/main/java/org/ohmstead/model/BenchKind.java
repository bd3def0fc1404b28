// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

/** What stood behind the figures of a run. */
public enum BenchKind {
    /** Instruments, or a person with instruments. */
    REAL,
    /** Recordings made before. */
    REPLAYED,
    /** Nothing but reckoning. */
    SIMULATED
}
