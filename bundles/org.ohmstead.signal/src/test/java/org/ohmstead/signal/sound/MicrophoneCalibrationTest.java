// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.sound;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.ohmstead.signal.FrequencyWeighting;
import org.ohmstead.signal.Waveform;

class MicrophoneCalibrationTest {
    private static Waveform tone(double share) {
        Random random = new Random(5);
        return SoundWaves.of(3, t -> share * Math.sin(2 * Math.PI * 1001 * t) + 1e-4 * random.nextGaussian() + 0.01);
    }

    /** 94 dB are 20e-6 10^4.7 = 1.0024 Pa RMS (closed form); a peak of 0.05 of full scale then means 28.35 Pa at full scale. */
    @Test
    void findsPascalsAtFullScale() throws Exception {
        MicrophoneCalibration found = MicrophoneCalibration.fromTone(tone(0.05), 94, 1000, 0.4);
        double expected = Math.sqrt(2) * 20e-6 * Math.pow(10, 94 / 20.0) / 0.05;
        assertEquals(expected, found.pascalsPerFullScale(), 1e-4 * expected);
        // A rectangular distribution of half-width 0.4 dB (GUM 4.3.7); the noise adds next to nothing.
        assertEquals(0.4 / Math.sqrt(3), found.standardUncertaintyDb(), 1e-3);
        assertEquals(94 - 20 * Math.log10(0.05), found.highestLevelDb(), 1e-3);
        Waveform pascals = found.pascals(tone(0.005));
        assertEquals(74, SoundLevelMeter.measure(pascals, FrequencyWeighting.A).equivalentDb(), 0.01);
    }

    private static void refuses(Waveform wave, String words) {
        String message = assertThrows(SoundException.class, () -> MicrophoneCalibration.fromTone(wave, 94, 1000, 0.4))
                .getMessage();
        assertTrue(message.contains(words), message);
    }

    @Test
    void refusesWhatIsNoCalibrationTone() {
        refuses(tone(0.05).slice(0, 4800), "only 0.10 s");
        refuses(SoundWaves.of(2, t -> Math.max(-1, Math.min(1, 1.2 * Math.sin(2000 * Math.PI * t)))), "full scale");
        refuses(SoundWaves.of(2, t -> 1e-5 * Math.sin(2000 * Math.PI * t)), "ten thousandth");
        refuses(SoundWaves.of(2, t -> 0.1 * Math.sin(500 * Math.PI * t)), "no tone within");
        refuses(SoundWaves.of(2, t -> 0.1 * (1 + 0.1 * t) * Math.sin(2000 * Math.PI * t)), "not steady");
        Random random = new Random(9);
        refuses(
                SoundWaves.of(2, t -> 0.1 * Math.sin(2000 * Math.PI * t) + 0.02 * random.nextGaussian()),
                "noise or distortion");
    }
}
