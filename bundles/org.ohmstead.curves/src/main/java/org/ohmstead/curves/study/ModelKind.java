// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.study;

import org.ohmstead.units.text.Messages;

/** What an amplifier can make of its supply voltage. */
public enum ModelKind {
    /** Peak volts rise in a straight line with the supply. */
    UNREGULATED,
    /** Unregulated up to a knee, steady above it. */
    REGULATED,
    /** Steady at all supply voltages of the readings. */
    REGULATED_THROUGHOUT,
    /** Unregulated, but never more than a peak current. */
    CURRENT_LIMITED,
    /** Unregulated, with peak volts that fall as the amplifier warms up. */
    DROOPING,
    /**
     * Peak volts in proportion to the supply (square law of power): an assumption for readings at one voltage, never
     * chosen against the others.
     */
    PROPORTIONAL;

    private static final Messages TEXTS = Messages.of(ModelKind.class);

    /** Returns what the kind is called in a sentence. */
    public String words() {
        return TEXTS.text("model." + name());
    }

    /** Returns whether this kind is the other one with something set fixed, so that it can never fit better. */
    public boolean isSpecialCaseOf(ModelKind other) {
        return switch (this) {
            case REGULATED_THROUGHOUT, PROPORTIONAL -> other != this && other.general() > 0;
            case UNREGULATED -> other.general() > 1;
            default -> false;
        };
    }

    private int general() {
        return switch (this) {
            case REGULATED_THROUGHOUT, PROPORTIONAL -> 0;
            case UNREGULATED -> 1;
            default -> 2;
        };
    }
}
