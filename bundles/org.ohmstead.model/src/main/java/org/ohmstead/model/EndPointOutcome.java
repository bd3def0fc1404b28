// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

/** Whether a sweep of levels reached its end point. */
public enum EndPointOutcome {
    /** The end point lies between two of the levels: the power is interpolated there. */
    REACHED,
    /** Even the highest level stays below the end point: the power is a lower bound. */
    NOT_REACHED,
    /** Already the lowest level is beyond the end point: the power is an upper bound. */
    ALREADY_BEYOND
}
