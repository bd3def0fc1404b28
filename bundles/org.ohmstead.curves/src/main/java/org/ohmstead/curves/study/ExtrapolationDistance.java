// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.study;

import org.ohmstead.units.text.Messages;

/**
 * How far a question lies from the readings.
 *
 * @param voltsOutside supply volts outside the range of the readings; 0 inside
 * @param channelOhmsOutside ohms per channel outside the range of the readings; 0 inside
 * @param leverageRatio leverage of a reading there over the highest leverage of the readings: above 1 the curve is held
 *     less there than at any reading, though voltage and load each lie inside
 */
public record ExtrapolationDistance(double voltsOutside, double channelOhmsOutside, double leverageRatio) {
    private static final Messages TEXTS = Messages.of(ExtrapolationDistance.class);

    /** A supply is seldom set closer than this (common practice, no source). */
    public static final double SET_WITHIN_VOLTS = 0.05;

    /** Loads differ by so much of their value without being another load (a choice of this program). */
    public static final double SET_WITHIN_OHMS = 0.02;

    /** Returns whether the place lies outside the readings by more than a voltage or load can be set. */
    public boolean outside() {
        return voltsOutside > SET_WITHIN_VOLTS || channelOhmsOutside > SET_WITHIN_OHMS;
    }

    /** Returns a sentence about it; empty when inside. */
    public String sentence() {
        boolean volts = voltsOutside > SET_WITHIN_VOLTS;
        boolean ohms = channelOhmsOutside > SET_WITHIN_OHMS;
        if (volts && ohms) {
            return TEXTS.text(
                    "distance.both", StudyWords.say("%.2g", voltsOutside), StudyWords.say("%.2g", channelOhmsOutside));
        }
        if (volts) {
            return TEXTS.text("distance.volts", StudyWords.say("%.2g", voltsOutside));
        }
        if (ohms) {
            return TEXTS.text("distance.ohms", StudyWords.say("%.2g", channelOhmsOutside));
        }
        return "";
    }
}
