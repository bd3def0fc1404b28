// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.study;

/** What an amplifier can make of its supply voltage. */
public enum ModelKind {
    /** Peak volts rise in a straight line with the supply. */
    UNREGULATED("unregulated"),
    /** Unregulated up to a knee, steady above it. */
    REGULATED("regulated with a knee"),
    /** Steady at all supply voltages of the readings. */
    REGULATED_THROUGHOUT("regulated at all voltages read"),
    /** Unregulated, but never more than a peak current. */
    CURRENT_LIMITED("limited in current"),
    /** Unregulated, with peak volts that fall as the amplifier warms up. */
    DROOPING("drooping as it warms up"),
    /**
     * Peak volts in proportion to the supply (square law of power): an assumption for readings at one voltage, never
     * chosen against the others.
     */
    PROPORTIONAL("square law, assumed");

    private final String words;

    ModelKind(String words) {
        this.words = words;
    }

    /** Returns what the kind is called in a sentence. */
    public String words() {
        return words;
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
