// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.bench.internal;

import java.time.Instant;
import java.util.List;
import java.util.OptionalDouble;
import org.ohmstead.measure.Settings;
import org.ohmstead.measure.SoundObservation;
import org.ohmstead.signal.FrequencyWeighting;
import org.ohmstead.signal.sound.ExpectedLevel;
import org.ohmstead.signal.sound.LevelSums;

/** What a microphone hears of a simulated bench: loudspeakers in the free field over a background, both weighted alike. */
final class SimulatedSound {
    private final double loudspeakerDb;
    private final double listenerMetres;
    private final double backgroundDb;

    SimulatedSound(Settings settings) {
        loudspeakerDb = settings.number("loudspeakerDb");
        listenerMetres = settings.number("listenerMetres");
        backgroundDb = settings.number("backgroundDb");
    }

    SoundObservation heard(Instant at, FrequencyWeighting weighting, Drive drive, double outputWatts) {
        double levelDb = backgroundDb;
        if (!drive.silent() && outputWatts > 0) {
            double ofTone = ExpectedLevel.freeFieldDb(loudspeakerDb, outputWatts, listenerMetres)
                    + weighting.gainDb(drive.frequencyHz());
            levelDb = LevelSums.incoherentDb(List.of(ofTone, backgroundDb));
        }
        return new SoundObservation(at, levelDb, weighting, OptionalDouble.empty());
    }
}
