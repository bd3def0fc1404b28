// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.sound;

import java.util.List;

/**
 * Levels that were read one after the other with one meter.
 *
 * <p>The uncertainty has two parts. What all levels of a meter have in common, such as its calibration, cancels from the difference of
 * two levels of the same meter; what changes from one reading to the next, such as where exactly the microphone was, does not.
 *
 * @param name what a person calls it, such as "before"; may be empty
 * @param meter meter and calibration, in a few words; series whose words are equal and not empty share their common error
 * @param commonDb standard uncertainty (k = 1) that all levels have in common, in dB, 0 or above
 * @param repeatDb standard uncertainty (k = 1) of each by itself, in dB, 0 or above
 * @param points in the order in which they were read
 */
public record SoundSeries(String name, String meter, double commonDb, double repeatDb, List<SoundPoint> points) {
    /** A series without anything in it, with usual uncertainties: 0.7 dB in common, 0.5 dB each. */
    public static final SoundSeries EMPTY = new SoundSeries("", "", 0.7, 0.5, List.of());

    public SoundSeries {
        Checks.given("name", name);
        Checks.given("meter", meter);
        Checks.notNegative("commonDb", commonDb);
        Checks.notNegative("repeatDb", repeatDb);
        points = List.copyOf(points);
    }

    /** Returns this series with other points. */
    public SoundSeries withPoints(List<SoundPoint> newPoints) {
        return new SoundSeries(name, meter, commonDb, repeatDb, newPoints);
    }

    /** Returns this series under another name. */
    public SoundSeries withName(String newName) {
        return new SoundSeries(newName, meter, commonDb, repeatDb, points);
    }

    /** Returns a point's level with both parts of its uncertainty. */
    public Level level(SoundPoint point) {
        return new Level(point.levelDb(), Math.hypot(commonDb, repeatDb));
    }

    /** Returns whether the common error of this and another series is the same. */
    public boolean sharesMeterWith(SoundSeries other) {
        return !meter.isBlank() && meter.strip().equals(other.meter.strip());
    }
}
