// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.ohmstead.signal.Capture;
import org.ohmstead.signal.Waveform;

class AcquisitionTest {
    private static final OptionalDouble NONE = OptionalDouble.empty();
    private static final Observation DURING = new Observation(Instant.EPOCH, NONE, NONE, NONE, NONE);
    private static final Waveform WAVE = Waveform.of(48_000, new double[] {0, 1, 0, -1});
    private static final Capture STEREO = new Capture(List.of(WAVE, WAVE), "made", "made");

    private static IllegalArgumentException refused(List<Double> ranges) {
        return assertThrows(
                IllegalArgumentException.class, () -> new Acquisition(STEREO, Optional.empty(), ranges, DURING));
    }

    @Test
    void oneRangeStandsForAllChannels() {
        Acquisition acquisition = Acquisition.of(STEREO, 20, DURING);
        assertEquals(List.of(20.0, 20.0), acquisition.voltsPerFullScale());
        assertTrue(acquisition.input().isEmpty());
        assertEquals(STEREO, acquisition.withInput(STEREO).input().orElseThrow());
    }

    @Test
    void eachChannelHasARangeOfItsOwnThatNobodyChangesAfterwards() {
        List<Double> ranges = new ArrayList<>(List.of(20.0, 40.0));
        Acquisition acquisition = new Acquisition(STEREO, Optional.empty(), ranges, DURING);
        ranges.set(1, 0.0);
        assertEquals(List.of(20.0, 40.0), acquisition.voltsPerFullScale());
        assertEquals(List.of(20.0, 40.0), acquisition.withInput(STEREO).voltsPerFullScale());
    }

    @Test
    void rangesMustBeAboveZeroAndOneForEachChannel() {
        assertTrue(refused(List.of(20.0)).getMessage().contains("one for each of the 2 channels"));
        assertTrue(refused(List.of(20.0, 0.0)).getMessage().contains("voltsPerFullScale is 0.0"));
        assertThrows(IllegalArgumentException.class, () -> Acquisition.of(STEREO, Double.NaN, DURING));
    }

    @Test
    void aDriverAsksAPersonOnlyWhenItSaysSo() {
        DriverInfo info =
                new DriverInfo("org.example.bench", "1.0.0", "Bench", "A bench.", DriverInfo.Kind.REAL, List.of());
        assertEquals(false, info.asksPerson());
        assertEquals(true, info.askingPerson().asksPerson());
        assertEquals(info.id(), info.askingPerson().id());
    }
}
