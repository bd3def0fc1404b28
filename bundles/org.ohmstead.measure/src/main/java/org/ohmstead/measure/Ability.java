// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure;

/** Something that a bench can do; a measurement names what it needs, a bench what it has. */
public enum Ability {
    /** Feed a sine of any level and frequency in. */
    TONE("feed a sine in"),
    /** Feed tone bursts in. */
    TONE_BURST("feed tone bursts in"),
    /** Feed each channel by itself, the other silent. */
    SINGLE_CHANNEL("feed one channel by itself"),
    /** Record the output's waveform. */
    WAVEFORM("record the output"),
    /** Record the input's waveform, or know it. */
    INPUT_WAVEFORM("record the input"),
    /** Set the supply volts. */
    SET_SUPPLY_VOLTS("set the supply volts"),
    /** Switch the supply off. */
    CUT_SUPPLY("switch the supply off"),
    /** Connect one of the bench's loads, or none. */
    SELECT_LOAD("connect a load"),
    /** Read the direct volts at the amplifier's terminals. */
    SUPPLY_VOLTS("read the supply volts"),
    /** Read the supply current. */
    SUPPLY_AMPS("read the supply current"),
    /** Read the temperature of the amplifier's case. */
    CASE_CELSIUS("read the case's temperature"),
    /** Read the temperature of the air. */
    AMBIENT_CELSIUS("read the air's temperature"),
    /** Read the sound level at a place, by a meter or a microphone: see {@link Bench#observeSound}. */
    SOUND_LEVEL("read the sound level");

    private final String words;

    Ability(String words) {
        this.words = words;
    }

    /** Returns what it is, to follow "the bench can". */
    public String words() {
        return words;
    }
}
