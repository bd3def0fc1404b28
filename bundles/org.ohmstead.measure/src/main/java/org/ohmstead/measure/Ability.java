// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure;

import org.ohmstead.units.text.Messages;

/** Something that a bench can do; a measurement names what it needs, a bench what it has. */
public enum Ability {
    /** Feed a sine of any level and frequency in. */
    TONE,
    /** Feed tone bursts in. */
    TONE_BURST,
    /** Feed each channel by itself, the other silent. */
    SINGLE_CHANNEL,
    /** Record the output's waveform. */
    WAVEFORM,
    /** Record the input's waveform, or know it. */
    INPUT_WAVEFORM,
    /** Set the supply volts. */
    SET_SUPPLY_VOLTS,
    /** Switch the supply off. */
    CUT_SUPPLY,
    /** Connect one of the bench's loads, or none. */
    SELECT_LOAD,
    /** Read the direct volts at the amplifier's terminals. */
    SUPPLY_VOLTS,
    /** Read the supply current. */
    SUPPLY_AMPS,
    /** Read the temperature of the amplifier's case. */
    CASE_CELSIUS,
    /** Read the temperature of the air. */
    AMBIENT_CELSIUS,
    /** Read the sound level at a place, by a meter or a microphone: see {@link Bench#observeSound}. */
    SOUND_LEVEL;

    /** Returns what it is, to follow "the bench can". */
    public String words() {
        return Messages.of(Ability.class).text("ability." + name());
    }
}
