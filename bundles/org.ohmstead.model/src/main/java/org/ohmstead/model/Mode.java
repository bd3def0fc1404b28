// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

/** How the amplifier's channels meet the load. */
public enum Mode {
    /** Each channel drives its own load; powers are per channel. */
    STEREO,
    /** One load between two channels driven in opposite phase; each channel sees half of the load. Power is that in the load. */
    BRIDGED,
    /** One channel alone drives one load; the others are idle. */
    SINGLE
}
