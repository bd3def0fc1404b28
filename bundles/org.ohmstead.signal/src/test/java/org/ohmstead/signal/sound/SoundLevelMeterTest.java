// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.sound;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.ohmstead.signal.FrequencyWeighting;
import org.ohmstead.signal.Waveform;

class SoundLevelMeterTest {
    private static final String PYTHON = "/usr/bin/python3";

    /** A sine of 1 Pa RMS is 93.979 dB re 20 micropascals, with every weighting at 1 kHz (IEC 61672-1: 0 dB at 1 kHz). */
    @ParameterizedTest
    @EnumSource(FrequencyWeighting.class)
    void showsOnePascal(FrequencyWeighting weighting) throws Exception {
        Waveform wave = SoundWaves.of(10.25, t -> Math.sqrt(2) * Math.sin(2 * Math.PI * 1000 * t));
        SoundLevels levels = SoundLevelMeter.measure(wave, weighting);
        assertEquals(93.9794, levels.equivalentDb(), 0.002);
        assertEquals(93.9794, levels.highestFastDb(), 0.02);
        // After ten time constants e^-10 is still missing: 0.0002 dB.
        assertEquals(93.9794, levels.lastSlowDb(), 0.005);
        assertEquals(103.9794, levels.exposureDb(), 0.002);
        assertEquals(10, levels.durationSeconds(), 1e-9);
    }

    /** Steady tones at exact base-ten frequencies show what the table of IEC 61672-1 (in its closed form) says. */
    @ParameterizedTest
    @CsvSource({
        "31.622777, -39.4400, -3.0103",
        "63.095734, -26.1943, -0.8180",
        "100, -19.1428, -0.2996",
        "3981.0717, 0.9699, -0.8180",
        "12589.254, -4.3175, -6.2401",
        "19952.623, -9.3169, -11.2486"
    })
    void weighsTonesAsTheStandardDoes(double frequencyHz, double aDb, double cDb) {
        Waveform wave = SoundWaves.tone(6, frequencyHz, 90);
        double[] a = SoundLevelMeter.course(wave, FrequencyWeighting.A, TimeWeighting.FAST, 0.5);
        double[] c = SoundLevelMeter.course(wave, FrequencyWeighting.C, TimeWeighting.FAST, 0.5);
        assertEquals(12, a.length);
        // The exponential average of a squared sine ripples by 1 / (4 pi f tau).
        double rippleDb = 10 * Math.log10(1 + 1 / (4 * Math.PI * frequencyHz * 0.125)) + 0.003;
        assertEquals(90 + aDb, a[9], rippleDb);
        assertEquals(90 + cDb, c[9], rippleDb);
    }

    /** The highest level of a burst of T less that of the steady tone: 10 lg (1 - e^(-T / tau)) (closed form). */
    @ParameterizedTest
    @CsvSource({
        // T in ms, F and S of the table for 4 kHz tone bursts in IEC 61672-1.
        "1000, 0.0, -2.0",
        "500, -0.1, -4.1",
        "200, -1.0, -7.4",
        "100, -2.6, -10.2",
        "50, -4.8, -13.1",
        "20, -8.3, -17.0",
        "10, -11.1, -20.0",
        "5, -14.1, -23.0",
        "2, -18.0, -27.0",
        "1, -21.0, "
    })
    void averagesToneBurstsAsTheStandardDoes(double milliseconds, double fastDb, Double slowDb) throws Exception {
        double seconds = milliseconds / 1000;
        Waveform burst = SoundWaves.burst(4, 4000, 100, 0.5, seconds);
        SoundLevels plain = SoundLevelMeter.measure(burst, FrequencyWeighting.Z);
        assertEquals(100 + 10 * Math.log10(1 - Math.exp(-seconds / 0.125)), plain.highestFastDb(), 0.01);
        assertEquals(100 + 10 * Math.log10(1 - Math.exp(-seconds)), plain.highestSlowDb(), 0.01);
        SoundLevels weighted = SoundLevelMeter.measure(burst, FrequencyWeighting.A);
        double steadyDb = 100 + FrequencyWeighting.A.gainDb(4000);
        // The table is rounded to 0.1 dB; the weighting smears a burst of a few cycles.
        assertEquals(fastDb, weighted.highestFastDb() - steadyDb, 0.07);
        if (slowDb != null) {
            assertEquals(slowDb, weighted.highestSlowDb() - steadyDb, 0.07);
        }
    }

    /** Peak C less the C-weighted level of the steady tone, for one cycle and for half of one: table 5 of IEC 61672-1. */
    @ParameterizedTest
    @CsvSource({"31.5, 1, 2.5", "500, 1, 3.5", "8000, 1, 3.4", "500, 0.5, 2.4"})
    void findsThePeakOfFewCycles(double frequencyHz, double cycles, double differenceDb) throws Exception {
        Waveform burst = SoundWaves.burst(3, frequencyHz, 120, 1, cycles / frequencyHz);
        double steadyDb = 120 + FrequencyWeighting.C.gainDb(frequencyHz);
        double peakDb = SoundLevelMeter.measure(burst, FrequencyWeighting.A).peakCDb();
        // Rounded to 0.1 dB.
        assertEquals(differenceDb, peakDb - steadyDb, 0.1);
    }

    /** A sine is 3.0103 dB below its peak, even when no sample meets the peak: 12 kHz at 48 kHz, sampled at 45 degrees. */
    @Test
    void findsAPeakBetweenSamples() {
        Waveform wave = SoundWaves.of(1, t -> Math.sin(2 * Math.PI * 12_000 * t + Math.PI / 4) * Math.min(1, 10 * t));
        assertEquals(1, SoundLevelMeter.peakPascals(wave.slice(0, 40_000), FrequencyWeighting.Z), 0.05);
        double highest = Arrays.stream(wave.toArray()).max().orElseThrow();
        assertEquals(Math.sqrt(0.5), highest, 1e-6);
    }

    /** A burst of 20 ms in 500 ms with 20 dB less between: mean 0.04 + 0.96 / 100 of the burst's power, -13.04518 dB (closed form). */
    @Test
    void averagesBursts() throws Exception {
        double peak = Math.sqrt(2) * 20e-6 * Math.pow(10, 110 / 20.0);
        Waveform wave = SoundWaves.of(
                5.25, t -> (t % 0.5 < 0.02 - 1e-9 ? 1 : 0.1) * peak * Math.sin(2 * Math.PI * 1000 * (t % 0.5)));
        assertEquals(
                110 - 13.04518,
                SoundLevelMeter.measure(wave, FrequencyWeighting.Z).equivalentDb(),
                0.0005);
    }

    /** A recording that begins and ends at the crest of a low tone: the jump is worth 13 dB more than 20 Hz A-weighted, but does not count. */
    @ParameterizedTest
    @CsvSource({"19.952623, -50.4522", "39.810717, -34.6303"})
    void doesNotCountTheJumpAtTheBeginning(double frequencyHz, double aDb) throws Exception {
        Waveform wave = SoundWaves.of(1.5, t -> Math.sqrt(2) * Math.cos(2 * Math.PI * frequencyHz * t));
        assertEquals(
                93.9794 + aDb,
                SoundLevelMeter.measure(wave, FrequencyWeighting.A).equivalentDb(),
                0.1);
    }

    @Test
    void takesAnOffsetOff() throws Exception {
        Waveform wave = SoundWaves.of(2, t -> 3 + Math.sqrt(2) * Math.sin(2 * Math.PI * 100 * t));
        assertEquals(
                93.9794, SoundLevelMeter.measure(wave, FrequencyWeighting.Z).equivalentDb(), 1e-3);
    }

    /** A record that spans many blocks has no seams: the level of a long tone is the same all along. */
    @Test
    void hasNoSeams() {
        Waveform wave = SoundWaves.tone(12, 1000, 80);
        double[] levels = SoundLevelMeter.course(wave, FrequencyWeighting.A, TimeWeighting.FAST, 0.01);
        for (int i = 200; i < levels.length; i++) {
            assertEquals(80, levels[i], 0.003, "at " + i);
        }
    }

    @Test
    void refusesSilence() {
        Waveform silent = SoundWaves.of(1, t -> 0.5);
        assertThrows(SoundException.class, () -> SoundLevelMeter.measure(silent, FrequencyWeighting.A));
    }

    /** Two tones in different bands show there and nowhere else; exact middles by IEC 61260-1, base ten. */
    @Test
    void splitsIntoBands() {
        Waveform wave = SoundWaves.of(
                8,
                t -> Math.sqrt(2) * Math.sin(2 * Math.PI * 50.118723 * t)
                        + Math.sqrt(2) * 0.1 * Math.sin(2 * Math.PI * 1000 * t));
        List<BandLevel> bands = SoundLevelMeter.bands(wave, FractionalOctave.THIRD_OCTAVE, FrequencyWeighting.Z, 20);
        BandLevel low = bands.stream()
                .filter(band -> band.nominalHz() == 50)
                .findFirst()
                .orElseThrow();
        BandLevel middle = bands.stream()
                .filter(band -> band.nominalHz() == 1000)
                .findFirst()
                .orElseThrow();
        assertEquals(93.9794, low.levelDb(), 0.002);
        assertEquals(73.9794, middle.levelDb(), 0.002);
        assertTrue(bands.stream().filter(band -> band.nominalHz() == 200).allMatch(band -> band.levelDb() < 30));
        // 20 Hz to 20 kHz: bands -17 to 13.
        assertEquals(31, bands.size());
        assertEquals(20, bands.get(0).nominalHz(), 1e-9);
        assertEquals(20_000, bands.get(30).nominalHz(), 1e-9);
    }

    /** The same recording, analysed by SciPy with recursive filters at eight times the rate, gives the same levels. */
    @ParameterizedTest
    @EnumSource(FrequencyWeighting.class)
    void agreesWithAnIndependentAnalysis(FrequencyWeighting weighting, @TempDir Path folder) throws Exception {
        assumeTrue(available(), "python3-scipy is not installed");
        Random random = new Random(41);
        double[] noise = random.doubles(8).toArray();
        Waveform wave = SoundWaves.of(4, t -> {
            double on = t > 1 && t < 1.6 ? 1 : 0.05;
            double sum = 0;
            double[] hertz = {31, 63, 147, 410, 997, 2130, 4700, 8100};
            for (int i = 0; i < hertz.length; i++) {
                sum += (0.3 + noise[i]) * Math.sin(2 * Math.PI * (hertz[i] * t + noise[i]));
            }
            return on * sum;
        });
        ByteBuffer bytes = ByteBuffer.allocate(8 * wave.size());
        for (double sample : wave.toArray()) {
            bytes.putDouble(sample);
        }
        Path file = folder.resolve("wave.bin");
        Files.write(file, bytes.array());
        double[] theirs = scipy(file, weighting);
        SoundLevels ours = SoundLevelMeter.measure(wave, weighting);
        // Their filters are bent by 0.01 dB at 8 kHz; their peak lies on a finer raster.
        assertEquals(theirs[0], ours.equivalentDb(), 0.01);
        assertEquals(theirs[1], ours.highestFastDb(), 0.01);
        assertEquals(theirs[2], ours.highestSlowDb(), 0.01);
        assertEquals(theirs[3], ours.peakCDb(), 0.03);
    }

    private static double[] scipy(Path file, FrequencyWeighting weighting) throws IOException, InterruptedException {
        Path script = Path.of("src/test/python/sound_levels.py").toAbsolutePath();
        Process process = new ProcessBuilder(
                        PYTHON, "-B", script.toString(), file.toString(), "48000", weighting.name())
                .redirectErrorStream(true)
                .start();
        String output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertEquals(0, process.waitFor(), output);
        return Arrays.stream(output.trim().split(" "))
                .mapToDouble(Double::parseDouble)
                .toArray();
    }

    private static boolean available() throws InterruptedException {
        try {
            Process process = new ProcessBuilder(PYTHON, "-c", "import scipy.signal")
                    .redirectErrorStream(true)
                    .start();
            process.getInputStream().readAllBytes();
            return process.waitFor() == 0;
        } catch (IOException missing) {
            System.getLogger("test").log(System.Logger.Level.INFO, "Python is not there", missing);
            return false;
        }
    }
}
