// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class WaveformTest {
    private static double rms(double[] samples) {
        double sum = 0;
        for (double sample : samples) {
            sum += sample * sample;
        }
        return Math.sqrt(sum / samples.length);
    }

    @Test
    void keepsItsOwnCopy() {
        double[] samples = {1, 2, 3, 4};
        Waveform waveform = Waveform.of(1000, samples);
        samples[0] = 9;
        waveform.toArray()[1] = 9;
        assertArrayEquals(new double[] {1, 2, 3, 4}, waveform.toArray());
        assertArrayEquals(new double[] {2, 3}, waveform.slice(1, 3).toArray());
        assertEquals(3, waveform.voltsAt(2));
        assertEquals(0.004, waveform.durationSeconds());
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
    void refusesWhatIsNoNumber(double value) {
        String message = assertThrows(IllegalArgumentException.class, () -> Waveform.of(1000, new double[] {0, value}))
                .getMessage();
        assertTrue(message.contains("volts[1]"), message);
        assertThrows(IllegalArgumentException.class, () -> Waveform.of(value, new double[] {0}));
    }

    @Test
    void refusesEmptyRecordsAndWrongSlices() {
        assertThrows(IllegalArgumentException.class, () -> Waveform.of(1000, new double[0]));
        Waveform waveform = Waveform.of(1000, new double[] {1, 2});
        assertThrows(IllegalArgumentException.class, () -> waveform.slice(-1, 1));
        assertThrows(IllegalArgumentException.class, () -> waveform.slice(1, 1));
        assertThrows(IllegalArgumentException.class, () -> waveform.slice(0, 3));
        assertThrows(IllegalArgumentException.class, () -> new Capture(List.of(), "a", "b"));
        List<Waveform> uneven = new ArrayList<>(List.of(waveform, waveform.slice(0, 1)));
        assertThrows(IllegalArgumentException.class, () -> new Capture(uneven, "a", "b"));
    }

    @ParameterizedTest
    @CsvSource({
        // RMS of the pattern over that of the burst, crest factor in dB, for 1 kHz (closed forms).
        "0.02, 0.1, 0.2227106, 16.05548",
        "0.02, 0, 0.2, 16.98970",
        "0.05, 0.1, 0.3301515, 12.63603",
        "0.25, 0.1, 0.7106335, 5.977386"
    })
    void toneBurstHasItsMeanAndCrestFactor(double on, double low, double rmsRatio, double crestDb) {
        double[] samples = Waveforms.toneBurst(48_000, 48_000, 1000, 3, new Waveforms.BurstPattern(on, 0.5, low, 0))
                .toArray();
        assertEquals(rmsRatio * 3 / Math.sqrt(2), rms(samples), 1e-6);
        assertEquals(crestDb, 20 * Math.log10(3 / rms(samples)), 1e-4);
    }

    @Test
    void sineHasItsPhaseAndLevel() {
        Waveform sine = Waveforms.sine(48_000, 480, 1000, 2, Math.PI / 6);
        assertEquals(1, sine.voltsAt(0), 1e-12);
        assertEquals(2, sine.voltsAt(8), 1e-12);
        assertEquals(Math.sqrt(2), rms(sine.toArray()), 1e-12);
        assertThrows(IllegalArgumentException.class, () -> Waveforms.sine(48_000, 480, 24_000, 1, 0));
        assertThrows(IllegalArgumentException.class, () -> Waveforms.sine(48_000, 0, 1000, 1, 0));
        assertThrows(IllegalArgumentException.class, () -> new Waveforms.BurstPattern(0.6, 0.5, 0, 0));
    }

    @Test
    void realPowerFollowsTheAdmittance() {
        // 4 ohm and 0.5 mH at 1 kHz, 10 V: 15.46216 W; a resistance takes V^2 / R.
        assertEquals(15.46216, new LoadImpedance.SeriesInductance(4, 0.0005).realPowerWatts(10, 1000), 1e-5);
        assertEquals(100, new LoadImpedance.Resistance(4).realPowerWatts(20, 1000), 1e-12);
        assertThrows(IllegalArgumentException.class, () -> new LoadImpedance.Resistance(0));
        assertThrows(IllegalArgumentException.class, () -> new LoadImpedance.SeriesInductance(4, -1));
    }

    @Test
    void settingsCheckTheirRanges() {
        AnalysisSettings settings = AnalysisSettings.forResistance(4);
        assertEquals(20, settings.highestHarmonic());
        assertEquals(1000, settings.withFrequencyHz(1000).frequencyHz().orElseThrow());
        assertEquals(
                8,
                ((LoadImpedance.Resistance) settings.withLoad(new LoadImpedance.Resistance(8))
                                .load())
                        .ohms());
        assertThrows(IllegalArgumentException.class, () -> settings.withFrequencyHz(0));
        assertThrows(IllegalArgumentException.class, () -> settings.withHighestHarmonic(1));
        assertThrows(IllegalArgumentException.class, () -> settings.withBand(100, 100));
        assertThrows(IllegalArgumentException.class, () -> settings.withBand(Double.NaN, 100));
    }
}
