// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal.gain;

/**
 * A line of the table of a set-up.
 *
 * @param name what the figure is
 * @param value the number; empty in a heading
 * @param unit behind it; may be empty
 * @param meaning what it is and how sure it is; may be empty
 * @param kind how it is shown
 */
record GainRow(String name, String value, String unit, String meaning, Kind kind) {
    /** How a line is shown. */
    enum Kind {
        HEADING,
        /** What the technician sets or looks for. */
        ACTION,
        FIGURE,
        CAUTION
    }
}
