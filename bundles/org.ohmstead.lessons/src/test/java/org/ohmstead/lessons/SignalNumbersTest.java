// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.ohmstead.lessons.BuiltIn.at;
import static org.ohmstead.lessons.BuiltIn.figure;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.signal.Waveform;
import org.ohmstead.signal.Waveforms;

class SignalNumbersTest {
    private static final double PRINTED = 2e-6;
    /** The lesson looks at 192 samples of a cycle, so edges of the wave are only so exact. */
    private static final double SAMPLED = 2e-4;

    /** Fourier series of a symmetrically clipped sine, evaluated to 30 digits by another program. */
    @ParameterizedTest
    @CsvSource({
        "0.5, 2.18893, 1.087478, -0.137875",
        "1, 4.63156, 1.157052, -0.375779",
        "2, 9.24994, 1.270555, -0.997067",
        "3, 13.3795, 1.362518, -1.73363",
        "6, 23.2371, 1.562913, -4.28904",
        "10, 32.1637, 1.728803, -8.05007",
    })
    void clippingAddsPowerAndHarmonics(double drive, double thdPercent, double powerRatio, double compressionDb) {
        LessonResult result = at("clipping", "drive=" + drive, "limit=20", "load=4");
        assertEquals(50, figure(result, "onset"), 1e-12);
        assertEquals(100 * (powerRatio - 1), figure(result, "extra"), 100 * PRINTED);
        assertEquals(50 * powerRatio, figure(result, "power"), 50 * PRINTED);
        assertEquals(thdPercent, figure(result, "distortion"), thdPercent * 1e-5);
        double fundamental = 50 * Math.pow(10, (drive + compressionDb) / 10);
        assertEquals(fundamental, figure(result, "fundamental"), fundamental * SAMPLED);
    }

    @Test
    void theWaveHasTheCrestFactorAndFlatTopsOfTheClosedForm() {
        // k = 1 / sqrt 2: crest factor 1.21117, flat tops for 1 - 2 asin(k) / pi = half of the time.
        LessonResult result = at("clipping", "drive=3");
        double k = Math.pow(10, -0.15);
        assertEquals(100 * (1 - 2 * Math.asin(k) / Math.PI), figure(result, "flat"), 1e-9);
        assertEquals(20 * Math.log10(1.21117), figure(result, "crest"), 0.01);
        // A sine: 3.0103 dB, no harmonics.
        LessonResult clean = at("clipping", "drive=0");
        assertEquals(3.0103, figure(clean, "crest"), 1e-4);
        assertEquals(0, figure(clean, "distortion"), 1e-9);
    }

    @Test
    void tenPercentShowsAboutAQuarterMoreThanOne() {
        // The same Fourier series: P(1 %) = 1.0475059, P(10 %) = 1.2877619 of the onset, 2.173141 - 0.2512607 dB apart
        // in drive.
        LessonResult result = at("one-and-ten-percent", "limit=20", "load=4", "distortion=10");
        assertEquals(50 * 1.0475059, figure(result, "usual"), 50 * PRINTED);
        assertEquals(50 * 1.2877619, figure(result, "allowed"), 50 * PRINTED);
        assertEquals(22.936, figure(result, "extra"), 1e-3);
        assertEquals(0.8968, figure(result, "level"), 1e-4);
        assertEquals(2.173141 - 0.2512607, figure(result, "drive"), PRINTED);
        // 30 %: 1.6897381 of the onset.
        assertEquals(50 * 1.6897381, figure(at("one-and-ten-percent", "distortion=30"), "allowed"), 50 * PRINTED);
        assertEquals(0, figure(at("one-and-ten-percent", "distortion=1"), "extra"), 1e-9);
    }

    /** IEC 60027-3: 10 log10 of a ratio of powers; the classes are those of the literature on just noticeable differences. */
    @ParameterizedTest
    @CsvSource({
        "100, 200, 3.010300, clear",
        "100, 1000, 10, clear",
        "100, 80, -0.969100, at-best",
        "100, 126, 1.003705, threshold",
        "100, 104, 0.170333, not-heard",
        "100, 50, -3.010300, clear",
    })
    void powersAreLevels(String first, String second, double levelDb, String heard) {
        LessonResult result = at("decibels", "first=" + first, "second=" + second);
        assertEquals(levelDb, figure(result, "level"), PRINTED);
        assertEquals(heard, ((Answer.Choice) result.answer()).optionId());
        assertEquals(10 * Double.parseDouble(first), figure(result, "twice"), 1e-9);
    }

    /** Mean square of a pattern of sines: D + (1 - D) 10^(L/10), evaluated by another program. */
    @ParameterizedTest
    @CsvSource({
        "20 ms, -20, 4.96, -13.04518, 16.05548",
        "50 ms, -20, 10.90, -9.625735, 12.63603",
        "250 ms, -20, 50.50, -2.967086, 5.977386",
        "500 ms, -20, 100, 0, 3.0103",
        "20 ms, 0, 100, 0, 3.0103",
    })
    void burstsHaveLittleMeanPower(String on, String low, double percent, double meanDb, double crestDb) {
        LessonResult result = at("burst-and-steady", "on=" + on, "low=" + low);
        assertEquals(percent, figure(result, "share"), 1e-9);
        assertEquals(meanDb, figure(result, "mean-level"), 5e-6);
        assertEquals(crestDb, figure(result, "crest"), 5e-6);
    }

    @Test
    void theMeanIsThatOfTheWaveItself() {
        Waveform wave = Waveforms.toneBurst(48_000, 48_000, 1000, 1, new Waveforms.BurstPattern(0.02, 0.5, 0.1, 0));
        double square = 0;
        for (double volts : wave.toArray()) {
            square += volts * volts / wave.size();
        }
        // A sine of 1 V peak has a mean square of a half.
        assertEquals(200 * square, figure(at("burst-and-steady"), "share"), 1e-9);
    }

    @Test
    void saysWhenABurstHoldsNoWholeCycle() {
        // 20 ms of 1 kHz, 50 Hz and 30 Hz hold 20, 1 and 0.6 cycles.
        assertEquals(1, at("burst-and-steady", "frequency=1000").remarks().size());
        assertEquals(1, at("burst-and-steady", "frequency=50").remarks().size());
        LessonResult short30 = at("burst-and-steady", "frequency=30");
        assertEquals(0.6, figure(short30, "cycles"), 1e-12);
        assertTrue(short30.remarks().get(1).contains("0.60"), short30.remarks().toString());
        assertTrue(at("burst-and-steady", "frequency=75").remarks().get(1).contains("1.50"));
    }

    /** Gain is 20 log10 of the volts at the load over those at the input; sqrt(P R) volts are at the load. */
    @ParameterizedTest
    @CsvSource({
        "5, 10, 100, 4, 1.581139, 22.041200",
        "2, 0, 100, 4, 2, 20",
        "4, 0, 500, 2, 4, 17.958800",
        "8, 20, 2000, 8, 0.8, 43.979400",
    })
    void overlapSetsTheSensitivity(
            String fullScale, String overlap, String watts, String ohms, double volts, double gainDb) {
        LessonResult result =
                at("gain-overlap", "full-scale=" + fullScale, "overlap=" + overlap, "power=" + watts, "load=" + ohms);
        assertEquals(volts, figure(result, "sensitivity"), 1e-6);
        assertEquals(gainDb, figure(result, "gain"), 1e-6);
    }

    @Test
    void fullScaleWithOverlapClips() {
        LessonResult result = at("gain-overlap", "overlap=10", "power=100");
        assertEquals(1000, figure(result, "asked"), 1e-9);
        // 10 dB beyond clipping, as in the Fourier series above.
        assertEquals(172.8803, figure(result, "given"), 1e-3);
        assertEquals(32.1637, figure(result, "distortion"), 1e-3);
        assertEquals(-10, figure(result, "level"), 1e-12);
        assertEquals(0, figure(at("gain-overlap", "overlap=0"), "distortion"), 1e-12);
    }
}
