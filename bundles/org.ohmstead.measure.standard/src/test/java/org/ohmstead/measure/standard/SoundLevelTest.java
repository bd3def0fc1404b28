// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.Figure;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.MeasurementResult;
import org.ohmstead.measure.Subject;
import org.ohmstead.model.Mode;
import org.ohmstead.signal.FrequencyWeighting;

class SoundLevelTest {
    private static final Subject SUBJECT =
            TestBench.subject(Mode.STEREO, TestBench.thd(0.01), TestBench.rating(4, 100));
    private static final String[] IDEAL = {"ideal", "true", "clipVolts", "20", "gainDb", "20", "sourceVolts", "2"};

    private static MeasurementResult run(String[] benchSettings, String... settings) throws Exception {
        try (Bench bench = TestBench.open(SUBJECT, benchSettings)) {
            return TestBench.run(new SoundLevel(), SUBJECT, bench, new TestBench.Heard(), settings);
        }
    }

    /**
     * 2 V at -40 dB are 0.02 V, 0.2 V at the output: 10 mW into each of two times 4 ohm. 88 dB + 10 lg 0.02 - 20 lg 2 = 64.990 dB
     * (closed form), weighted by IEC 61672-1; the background of 45 dB is taken off again.
     */
    @Test
    void readsLevelAgainstFrequency() throws Exception {
        MeasurementResult result = run(
                TestBench.with(IDEAL, "listenerMetres", "2"),
                "frequencies",
                "50, 1 kHz",
                "weighting",
                "C",
                "position",
                "ear");
        double plainDb = 88 + 10 * Math.log10(0.02) - 20 * Math.log10(2);
        assertEquals(plainDb + FrequencyWeighting.C.gainDb(50), TestBench.figure(result, "level", "", "50 Hz"), 1e-3);
        assertEquals(plainDb, TestBench.figure(result, "level", "", "1000 Hz"), 1e-3);
        assertEquals(45, TestBench.figure(result, "background", "", ""), 1e-9);
        Figure level = result.figures().get(1);
        // (0.7, 0.5) dB of total and background, through 10 lg (10^(L/10) - 10^(B/10)).
        double share = Math.pow(10, -20 / 10.0);
        assertEquals(Math.hypot(0.7, 0.5), level.standardUncertainty().orElseThrow(), 0.02 + share);
        String notes = result.notes().toString();
        assertTrue(notes.contains("The microphone was ear; levels are C-weighted"), notes);
        assertFalse(notes.contains("hearing"), notes);
    }

    /** Onset of clipping at 20 V peak, -3 dB of the 28.28 V that full drive asks for: the level stays behind above it. */
    @Test
    void findsThatTheLevelFallsShortOfTheDrive() throws Exception {
        MeasurementResult result = run(
                IDEAL,
                "against",
                "drive",
                "drives",
                "0, -3.0103, -6, -12, -18, -24, -30",
                "repeatDb",
                "0.1",
                "loudestDb",
                "120");
        // Power at 6.0206 - 3.0103 dB over the onset, by the closed form of the hard-clipped sine: m^2 gains less than
        // 3.01 dB.
        assertEquals(0, TestBench.figure(result, "shortfall", "", "-6 dB"), 0.01);
        assertEquals(0, TestBench.figure(result, "shortfall", "", "-3.01 dB"), 0.02);
        // k = 1/sqrt 2: P / P_onset = 2/pi (asin k / k^2 + ... ), here 1.3633802 by numerical integration; 3.0103 -
        // 1.3462 dB.
        double power = 0;
        int steps = 100_000;
        for (int i = 0; i < steps; i++) {
            double volts = Math.min(20, 20 * Math.sqrt(2) * Math.sin(Math.PI * (i + 0.5) / steps));
            power += volts * volts / steps / 200;
        }
        assertEquals(3.0103 - 10 * Math.log10(power), TestBench.figure(result, "shortfall", "", "0 dB"), 0.02);
        assertTrue(
                result.notes().toString().contains("From a drive of 0.0 dB on"),
                result.notes().toString());
    }

    @Test
    void endsWhenItIsLouderThanItMay() throws Exception {
        MeasurementResult result =
                run(IDEAL, "against", "drive", "frequencyHz", "1000", "drives", "-40,-30,-20,-10,0", "loudestDb", "85");
        long levels = result.figures().stream()
                .filter(figure -> figure.id().equals("level"))
                .count();
        // 71.01, 81.01, 91.01 dB: the third is too loud.
        assertEquals(3, levels);
        String notes = result.notes().toString();
        assertTrue(notes.contains("It ended at -20 dB with 91.0 dB"), notes);
        assertTrue(notes.contains("reaches the daily criterion of NIOSH 1998"), notes);
        assertTrue(notes.contains("Wear hearing protection"), notes);
    }

    @Test
    void saysWhatCannotBeTold() throws Exception {
        String[] noisy = TestBench.with(IDEAL, "backgroundDb", "75");
        assertTrue(run(noisy, "frequencies", "1000", "weighting", "Z")
                .notes()
                .toString()
                .contains("less than 3 dB"));
        assertTrue(run(IDEAL, "against", "drive", "drives", "-30, -20")
                .notes()
                .toString()
                .contains("Three drives"));
        assertTrue(run(IDEAL, "position", " ").notes().toString().contains("nobody can repeat it"));
        for (String drives : new String[] {"x", "3", "-10 V"}) {
            assertTrue(assertThrows(MeasurementException.class, () -> run(IDEAL, "against", "drive", "drives", drives))
                    .getMessage()
                    .contains("\"drives\" cannot be read"));
        }
        assertTrue(assertThrows(MeasurementException.class, () -> run(new String[] {"fault", "blown fuse"}))
                .getMessage()
                .contains("No level stood out"));
    }
}
