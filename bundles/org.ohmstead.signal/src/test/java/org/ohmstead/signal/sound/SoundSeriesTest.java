// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.sound;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.ohmstead.signal.FrequencyWeighting;

class SoundSeriesTest {
    private static SoundPoint point(double hz, double driveDb, double levelDb) {
        return new SoundPoint(hz, OptionalDouble.of(driveDb), levelDb, FrequencyWeighting.C, "driver's ear");
    }

    private static SoundSeries series(String meter, SoundPoint... points) {
        return new SoundSeries("", meter, 0.7, 0.5, List.of(points));
    }

    /** The common error of one meter cancels: sqrt(2) 0.5 dB is left; two meters leave sqrt(2 (0.7^2 + 0.5^2)). */
    @Test
    void comparesPointByPoint() {
        SoundSeries before = series("M-1", point(40, -10, 100), point(50, -10, 104), point(63, -10, 101));
        SoundSeries after = series("M-1", point(50, -10, 107), point(40, -10, 100.8), point(80, -10, 99));
        SeriesComparison found = SeriesComparison.of(before, after);
        assertEquals(2, found.differences().size());
        SeriesComparison.Difference first = found.differences().get(0);
        assertEquals(3, first.change().valueDb(), 1e-12);
        assertEquals(0.5 * Math.sqrt(2), first.change().standardUncertaintyDb(), 1e-12);
        assertTrue(first.significant());
        assertFalse(found.differences().get(1).significant());
        assertFalse(first.moved());
        assertEquals(63, found.onlyFirst().get(0).frequencyHz());
        assertEquals(80, found.onlySecond().get(0).frequencyHz());
        assertTrue(found.sharedMeter());
        SeriesComparison other = SeriesComparison.of(before, series("M-2", point(50, -10, 107)));
        assertEquals(
                Math.sqrt(2 * (0.49 + 0.25)),
                other.differences().get(0).change().standardUncertaintyDb(),
                1e-12);
        assertFalse(SeriesComparison.of(series(""), series("")).sharedMeter());
    }

    @Test
    void doesNotCompareDifferentWeightings() {
        SoundPoint a = new SoundPoint(50, OptionalDouble.empty(), 74, FrequencyWeighting.A, "");
        SoundPoint c = new SoundPoint(50, OptionalDouble.empty(), 103, FrequencyWeighting.C, "");
        SeriesComparison found = SeriesComparison.of(series("m", a), series("m", c));
        assertTrue(found.differences().isEmpty());
        assertEquals(List.of(FrequencyWeighting.A), found.weightingsApart());
    }

    @Test
    void relatesToAReference() {
        List<Level> found = SeriesComparison.relativeTo(series("m", point(40, 0, 112)), new Level(100, 0.6));
        assertEquals(12, found.get(0).valueDb(), 1e-12);
        assertEquals(Math.sqrt(0.49 + 0.25 + 0.36), found.get(0).standardUncertaintyDb(), 1e-12);
    }

    /** A level that stays 2 dB below a straight line from -6 dB on, and one that follows the line within chance. */
    @Test
    void findsCompression() {
        List<SoundPoint> points = new ArrayList<>();
        List<SoundPoint> straight = new ArrayList<>();
        for (int drive = -30; drive <= 0; drive += 3) {
            double lost = drive <= -9 ? 0 : 2 + (drive + 6) / 3.0;
            points.add(point(50, drive, 120 + drive - lost));
            straight.add(point(50, drive, 120 + drive + (drive % 2 == 0 ? 0.2 : -0.2)));
        }
        DriveLinearity found = DriveLinearity.of(new SoundSeries("", "m", 0.7, 0.3, points), 50, 1)
                .orElseThrow();
        assertEquals(-6, found.first().orElseThrow().driveDb());
        assertEquals(2, found.first().orElseThrow().shortfall().valueDb(), 1e-9);
        assertEquals(4, found.points().get(10).shortfall().valueDb(), 1e-9);
        // Three of eleven points make the line.
        assertEquals(
                0.3 * Math.sqrt(1 + 1 / 3.0), found.points().get(0).shortfall().standardUncertaintyDb(), 1e-12);
        assertTrue(DriveLinearity.of(new SoundSeries("", "m", 0.7, 0.3, straight), 50, 1)
                .orElseThrow()
                .first()
                .isEmpty());
        assertTrue(DriveLinearity.of(series("m", point(50, -10, 100), point(50, 0, 108)), 50, 1)
                .isEmpty());
        assertTrue(DriveLinearity.of(new SoundSeries("", "m", 0.7, 0.3, points), 60, 1)
                .isEmpty());
    }
}
