// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

/** How a load resistor gets rid of its heat. */
public enum Mounting {
    /** In still air. */
    FREE_AIR,
    /** Screwed to a heat sink. */
    HEAT_SINK,
    /** On a heat sink that a fan blows at. */
    HEAT_SINK_WITH_FAN
}
