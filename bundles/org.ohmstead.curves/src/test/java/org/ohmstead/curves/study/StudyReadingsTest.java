// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.study;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Instant;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.Conditions;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Provenance;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Stimulus;
import org.ohmstead.model.UncertaintyPart;

class StudyReadingsTest {

    private static ChannelReading channel(String name, EndPointOutcome outcome, double watts, double ownWatts) {
        return new ChannelReading(
                name,
                outcome,
                4.04,
                watts,
                0.02 * watts,
                Math.sqrt(watts * 4.04),
                1000,
                0.01,
                13.8,
                OptionalDouble.empty(),
                List.of(
                        new UncertaintyPart("meters", 0.01 * watts, true),
                        new UncertaintyPart("repeat", ownWatts, false)),
                List.of(),
                List.of());
    }

    private static Reading reading() {
        EndPointOutcome other = EndPointOutcome.values()[EndPointOutcome.REACHED.ordinal() == 0 ? 1 : 0];
        return new Reading(
                "s",
                Mode.STEREO,
                "l",
                4,
                new Stimulus.ContinuousSine(1000),
                new EndPoint.ClippingOnset(),
                Instant.EPOCH,
                new Conditions(OptionalDouble.empty(), OptionalDouble.of(41)),
                List.of(
                        channel("A", EndPointOutcome.REACHED, 100, 0.5),
                        channel("B", EndPointOutcome.REACHED, 100, 0),
                        channel("C", other, 100, 0.5)),
                new Provenance("0", "p", "1", "1", "", List.of(), List.of()),
                List.of());
    }

    @Test
    void takesOverWhatIsTheReadingsOwnAtTheNominalLoad() {
        List<StudyPoint> points = StudyReadings.points("set", "r7", reading());
        assertEquals(2, points.size());
        StudyPoint first = points.get(0);
        assertEquals("A", first.channel());
        assertEquals("set", first.dataSetId());
        assertEquals("r7", first.readingId());
        assertEquals(4, first.loadOhms());
        assertEquals(13.8, first.supplyVolts());
        // 100 W into 4.04 ohm are 101 W into 4 ohm at the same output voltage.
        assertEquals(101, first.powerWatts(), 1e-9);
        assertEquals(0.505, first.standardUncertaintyWatts(), 1e-9);
        assertEquals(41, first.caseCelsius().orElseThrow());
        // No reading is taken to repeat better than 0.05 %.
        assertEquals(0.0505, points.get(1).standardUncertaintyWatts(), 1e-9);
    }

    @Test
    void sharedUncertaintyIsRelative() {
        assertEquals(0.01, StudyReadings.sharedRelativeUncertainty(List.of(reading())), 1e-12);
        assertEquals(0, StudyReadings.sharedRelativeUncertainty(List.of()));
    }
}
