// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;

/** How figures must change when a wave is scaled, turned over or moved, and what must come back from a file. */
class SignalLawsTest {
    private static final double RATE_HZ = 48_000;
    private static final int SIZE = 9600;
    private static final AnalysisSettings SETTINGS = AnalysisSettings.forResistance(4);

    /** A tone with some harmonics and direct voltage. */
    record Tone(int frequencyHz, int millivolts, List<Integer> harmonicPermille, int dcMillivolts, int phaseDegrees) {
        Waveform from(double startSeconds) {
            double[] volts = new double[SIZE];
            for (int i = 0; i < SIZE; i++) {
                double phase = Math.toRadians(phaseDegrees)
                        + 2 * Math.PI * (frequencyHz * startSeconds + (double) frequencyHz * i / RATE_HZ);
                double sum = Math.sin(phase);
                for (int n = 0; n < harmonicPermille.size(); n++) {
                    sum += harmonicPermille.get(n) / 1000.0 * Math.sin((n + 2) * phase + n);
                }
                volts[i] = dcMillivolts / 1000.0 + millivolts / 1000.0 * sum;
            }
            return Waveform.of(RATE_HZ, volts);
        }

        double distortion() {
            return Math.sqrt(harmonicPermille.stream()
                    .mapToDouble(permille -> permille * permille / 1e6)
                    .sum());
        }
    }

    @Property(seed = "20261161", tries = 60)
    void energyIsTheSameInTimeAndInFrequency(
            @ForAll @IntRange(min = 16, max = 5000) int size, @ForAll Window window, @ForAll Random random) {
        double[] volts = random.doubles(size, -3, 5).toArray();
        Spectrum spectrum = Spectrum.of(Waveform.of(RATE_HZ, volts), window);
        double[] weights = window.weights(size);
        double mean = Arrays.stream(volts).average().orElseThrow();
        double weighted = 0;
        double squares = 0;
        for (int i = 0; i < size; i++) {
            weighted += Math.pow((volts[i] - mean) * weights[i], 2);
            squares += weights[i] * weights[i];
        }
        // Parseval's theorem; the window's noise bandwidth is that of endless weights, and these are a few.
        double expected = Math.sqrt(weighted / squares);
        double gain = window.coherentGain();
        double bandwidthRatio = squares / (size * gain * gain * window.noiseBandwidthBins());
        double all = spectrum.bandVoltsRms(0, RATE_HZ, FrequencyWeighting.Z) / Math.sqrt(bandwidthRatio);
        assertEquals(expected, all, 1e-9 * expected);
    }

    @Property(seed = "20261162", tries = 40)
    void scalingTheVoltsScalesPowersBySquares(
            @ForAll("tones") Tone tone, @ForAll @DoubleRange(min = 0.01, max = 100) double factor)
            throws CaptureException {
        ChannelAnalysis one = WaveformAnalyzer.analyze(tone.from(0), SETTINGS);
        ChannelAnalysis other = WaveformAnalyzer.analyze(changed(tone.from(0), factor), SETTINGS);
        near(factor * one.outputVoltsRms(), other.outputVoltsRms());
        near(factor * one.outputVoltsPeak(), other.outputVoltsPeak());
        near(factor * factor * one.powerWatts(), other.powerWatts());
        near(factor * factor * one.fundamentalPowerWatts(), other.fundamentalPowerWatts());
        assertEquals(factor * one.dcVolts(), other.dcVolts(), 1e-8 * other.outputVoltsRms());
        sameShape(one, other);
    }

    @Property(seed = "20261163", tries = 40)
    void turningTheWaveOverTurnsOnlyTheDirectVoltage(@ForAll("tones") Tone tone) throws CaptureException {
        ChannelAnalysis one = WaveformAnalyzer.analyze(tone.from(0), SETTINGS);
        ChannelAnalysis other = WaveformAnalyzer.analyze(changed(tone.from(0), -1), SETTINGS);
        near(one.outputVoltsRms(), other.outputVoltsRms());
        near(one.powerWatts(), other.powerWatts());
        near(one.outputVoltsPeak(), other.outputVoltsPeak());
        assertEquals(-one.dcVolts(), other.dcVolts(), 1e-8 * one.outputVoltsRms());
        sameShape(one, other);
    }

    @Property(seed = "20261164", tries = 40)
    void whenTheRecordingBeganDoesNotMatter(
            @ForAll("tones") Tone tone, @ForAll @DoubleRange(max = 1) double startSeconds) throws CaptureException {
        ChannelAnalysis one = WaveformAnalyzer.analyze(tone.from(0), SETTINGS);
        ChannelAnalysis other = WaveformAnalyzer.analyze(tone.from(startSeconds), SETTINGS);
        assertEquals(one.outputVoltsRms(), other.outputVoltsRms(), 1e-5 * one.outputVoltsRms());
        assertEquals(one.fundamentalVoltsRms(), other.fundamentalVoltsRms(), 1e-6 * one.fundamentalVoltsRms());
        assertEquals(one.thdFRatio(), other.thdFRatio(), 1e-6);
        assertEquals(one.frequencyHz(), other.frequencyHz(), 1e-6 * one.frequencyHz());
    }

    @Property(seed = "20261165", tries = 60)
    void thePartsAddUpToTheWhole(@ForAll("tones") Tone tone) throws CaptureException {
        ChannelAnalysis analysis = WaveformAnalyzer.analyze(tone.from(0), SETTINGS);
        assertEquals(tone.frequencyHz(), analysis.frequencyHz(), 1e-6 * tone.frequencyHz());
        assertEquals(tone.dcMillivolts() / 1000.0, analysis.dcVolts(), 1e-5 * analysis.outputVoltsRms());
        assertEquals(tone.distortion(), analysis.thdFRatio(), 1e-6);
        double harmonics = Math.sqrt(analysis.harmonics().stream()
                .mapToDouble(each -> each.ratioToFundamental() * each.ratioToFundamental())
                .sum());
        near(1 + harmonics, 1 + analysis.thdFRatio());
        near(1 + analysis.thdFRatio() / Math.hypot(1, analysis.thdFRatio()), 1 + analysis.thdRRatio());
        double rms = analysis.fundamentalVoltsRms() * Math.hypot(1, analysis.thdFRatio());
        assertEquals(rms, analysis.outputVoltsRms(), 1e-5 * rms);
        near(analysis.outputVoltsRms() * analysis.outputVoltsRms() / 4, analysis.powerWatts());
        near(20 * Math.log10(analysis.outputVoltsPeak() / analysis.outputVoltsRms()), analysis.crestFactorDb());
        assertTrue(analysis.thdRRatio() <= analysis.thdPlusNoiseRRatio() + 1e-6);
    }

    @Property(seed = "20261166", tries = 80)
    void aFileGivesBackWhatWasWritten(
            @ForAll SampleFormat format,
            @ForAll @IntRange(min = 1, max = 3) int channels,
            @ForAll @IntRange(min = 1, max = 300) int size,
            @ForAll @IntRange(min = 1000, max = 192_000) int rateHz,
            @ForAll @IntRange(min = 1, max = 500) int fullScale,
            @ForAll Random random)
            throws Exception {
        Path file = Files.createTempFile("ohmstead-wave", ".wav");
        try {
            double[] scale = {fullScale / 7.0};
            Capture any = capture(channels, rateHz, () -> random.doubles(size, -scale[0] / 2, scale[0] / 2)
                    .toArray());
            Capture read = written(any, file, format, scale);
            assertEquals(rateHz, read.sampleRateHz());
            assertEquals(channels, read.channels().size());
            double halfStep = scale[0] * (format.floating() ? 0x1p-25 : format.step() / 2) * (1 + 1e-9);
            for (int channel = 0; channel < channels; channel++) {
                assertArrayEquals(
                        any.channels().get(channel).toArray(),
                        read.channels().get(channel).toArray(),
                        halfStep);
            }
            // What a file can hold comes back bit for bit, at both ends of its range as well.
            Capture again = written(read, file, format, scale);
            for (int channel = 0; channel < channels; channel++) {
                assertArrayEquals(
                        read.channels().get(channel).toArray(),
                        again.channels().get(channel).toArray());
            }
            assertEquals(read.contentSha256(), again.contentSha256());
        } finally {
            Files.delete(file);
        }
    }

    @Property(seed = "20261167", tries = 40)
    void theEndsOfTheRangeAreExact(@ForAll SampleFormat format, @ForAll @IntRange(min = 1, max = 500) int fullScale)
            throws Exception {
        Path file = Files.createTempFile("ohmstead-wave", ".wav");
        try {
            double[] scale = {fullScale};
            double step = format.floating() ? 0x1p-20 : format.step();
            double[] volts = {-fullScale, -fullScale * step, 0, fullScale * step, fullScale * (1 - step)};
            Capture capture = new Capture(List.of(Waveform.of(RATE_HZ, volts)), "made", "none");
            assertArrayEquals(
                    volts,
                    written(capture, file, format, scale).channels().get(0).toArray(),
                    fullScale * 0x1p-52);
        } finally {
            Files.delete(file);
        }
    }

    @Provide
    Arbitrary<Tone> tones() {
        return Combinators.combine(
                        Arbitraries.integers().between(50, 2000),
                        Arbitraries.integers().between(100, 50_000),
                        Arbitraries.integers().between(0, 60).list().ofMaxSize(4),
                        Arbitraries.integers().between(-50, 50),
                        Arbitraries.integers().between(0, 359))
                .as(Tone::new);
    }

    private interface Samples {
        double[] next();
    }

    private static Capture capture(int channels, int rateHz, Samples samples) {
        List<Waveform> waves = new ArrayList<>();
        for (int channel = 0; channel < channels; channel++) {
            waves.add(Waveform.of(rateHz, samples.next()));
        }
        return new Capture(waves, "made", "none");
    }

    private static Capture written(Capture capture, Path file, SampleFormat format, double[] scale)
            throws CaptureException {
        if (format.floating()) {
            WavFile.writeFloat(file, capture, scale);
        } else {
            WavFile.write(file, capture, format.bits(), scale);
        }
        return WavFile.read(file, scale);
    }

    private static Waveform changed(Waveform wave, double factor) {
        return Waveform.of(
                wave.sampleRateHz(),
                Arrays.stream(wave.toArray()).map(each -> factor * each).toArray());
    }

    private static void sameShape(ChannelAnalysis one, ChannelAnalysis other) {
        assertEquals(one.thdFRatio(), other.thdFRatio(), 1e-9);
        assertEquals(one.thdPlusNoiseRRatio(), other.thdPlusNoiseRRatio(), 1e-9);
        assertEquals(one.crestFactorDb(), other.crestFactorDb(), 1e-7);
        near(one.frequencyHz(), other.frequencyHz());
        assertEquals(one.harmonics().size(), other.harmonics().size());
        assertEquals(one.burst().isPresent(), other.burst().isPresent());
        assertEquals(one.notes().size(), other.notes().size());
    }

    private static void near(double expected, double actual) {
        assertEquals(expected, actual, 1e-9 * Math.abs(expected));
    }
}
