// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

/**
 * A line of the calculator's table.
 *
 * @param name what the figure is
 * @param value the number, or a word
 * @param unit behind it; may be empty
 * @param range from what is unknown; may be empty
 * @param remark what it rests on, or why it is not known; may be empty
 * @param kind how it is shown
 * @param topic what the summary takes it for
 */
record FigureRow(String name, String value, String unit, String range, String remark, Kind kind, Topic topic) {
    /** How a line is shown. */
    enum Kind {
        HEADING,
        FIGURE,
        CAUTION,
        UNKNOWN
    }

    /** What a line tells, for those that look for it. */
    enum Topic {
        OTHER,
        ON_TIME,
        CASE_AFTER,
        SUPPLY_AMPS,
        FUSES_HOLD,
        FUSES_ABOVE,
        FUSES_OPEN
    }

    static FigureRow heading(String name) {
        return new FigureRow(name, "", "", "", "", Kind.HEADING, Topic.OTHER);
    }

    static FigureRow of(String name, String value, String unit, String range, String remark) {
        return new FigureRow(name, value, unit, range, remark, Kind.FIGURE, Topic.OTHER);
    }

    static FigureRow unknown(String name, String remark) {
        return new FigureRow(name, "\u2013", "", "", remark, Kind.UNKNOWN, Topic.OTHER);
    }

    /** Returns the value with its unit. */
    String figure() {
        return unit.isEmpty() ? value : value + " " + unit;
    }

    /** Returns this line as something to beware of, and why. */
    FigureRow caution(String why) {
        return new FigureRow(name, value, unit, range, why, Kind.CAUTION, topic);
    }

    /** Returns this line as one that tells of something. */
    FigureRow about(Topic newTopic) {
        return new FigureRow(name, value, unit, range, remark, kind, newTopic);
    }
}
