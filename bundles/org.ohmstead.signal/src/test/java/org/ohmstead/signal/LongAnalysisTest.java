// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/** Records in pieces, against the analysis of the whole and against closed forms. */
class LongAnalysisTest {
    private static final int SIZE = 400_123;
    private static final double FREQUENCY_HZ = 997.3137;
    private static final AnalysisSettings SETTINGS = AnalysisSettings.forResistance(4);
    /** Small pieces, so that a short record has as many of them as an hour. */
    static final LongSizes SMALL = new LongSizes(1 << 13, 1 << 15, 1 << 16, 1 << 14);

    static ChannelAnalysis inPieces(double[] samples, AnalysisSettings settings) throws CaptureException {
        RecordedChannel channel = RecordedChannel.of(Waveform.of(Waves.RATE_HZ, samples));
        return LongAnalysis.of(channel, settings, SMALL, share -> {});
    }

    private static ChannelAnalysis inPieces(double[] samples) throws CaptureException {
        return inPieces(samples, SETTINGS);
    }

    private static double[] tone(DoubleUnaryOperator wave) {
        return Waves.sampled(SIZE, FREQUENCY_HZ, 0.4, wave);
    }

    /** The tone times a gain that depends on the place in the record, 0 to 1. */
    private static double[] shaped(DoubleUnaryOperator gain) {
        double[] samples = tone(phase -> 10 * Math.sin(phase));
        for (int i = 0; i < SIZE; i++) {
            samples[i] *= gain.applyAsDouble((double) i / SIZE);
        }
        return samples;
    }

    private static boolean notes(ChannelAnalysis analysis, String words) {
        return analysis.notes().stream().anyMatch(note -> note.contains(words));
    }

    /** Both ways must tell the same levels and frequency. */
    private static void agree(ChannelAnalysis whole, ChannelAnalysis pieces, double share) {
        assertEquals(whole.frequencyHz(), pieces.frequencyHz(), 1e-7 * whole.frequencyHz());
        assertEquals(whole.outputVoltsRms(), pieces.outputVoltsRms(), share * whole.outputVoltsRms());
        assertEquals(whole.outputVoltsPeak(), pieces.outputVoltsPeak(), share * whole.outputVoltsPeak());
        assertEquals(whole.dcVolts(), pieces.dcVolts(), share * whole.outputVoltsPeak());
        assertEquals(whole.crestFactorDb(), pieces.crestFactorDb(), 20 * share);
        assertEquals(whole.powerWatts(), pieces.powerWatts(), 2 * share * whole.powerWatts());
        assertEquals(whole.fundamentalVoltsRms(), pieces.fundamentalVoltsRms(), share * whole.fundamentalVoltsRms());
        assertEquals(whole.fundamentalPowerWatts(), pieces.fundamentalPowerWatts(), 2 * share * whole.powerWatts());
        assertEquals(whole.highestHarmonicCounted(), pieces.highestHarmonicCounted());
        assertEquals(whole.bandHighHz(), pieces.bandHighHz());
    }

    @Test
    void tellsAPureToneAsTheWholeDoes() throws CaptureException {
        double[] samples = Waves.scaled(tone(Math::sin), 28, 0.25);
        ChannelAnalysis pieces = inPieces(samples);

        agree(Waves.analyze(samples), pieces, 1e-5);
        assertEquals(FREQUENCY_HZ, pieces.frequencyHz(), 1e-9 * FREQUENCY_HZ);
        assertEquals(28 / Math.sqrt(2), pieces.fundamentalVoltsRms(), 1e-9);
        assertEquals(28 / Math.sqrt(2), pieces.outputVoltsRms(), 1e-5);
        assertEquals(0.25, pieces.dcVolts(), 1e-4);
        assertEquals(98, pieces.powerWatts(), 1e-3);
        assertEquals(0, pieces.thdFRatio(), 1e-9);
        assertTrue(pieces.sinadDb() > 160, () -> "SINAD " + pieces.sinadDb());
        assertFalse(pieces.clipping().clipped());
        assertEquals(1, pieces.notes().size(), pieces.notes()::toString);
    }

    @Test
    void tellsAKnownMixOfHarmonics() throws CaptureException {
        double[] samples = tone(phase -> 10 * Math.sin(phase)
                + 0.03 * Math.sin(2 * phase + 0.5)
                + 0.04 * Math.cos(3 * phase)
                + 0.12 * Math.sin(19 * phase - 1));
        ChannelAnalysis pieces = inPieces(samples);

        agree(Waves.analyze(samples), pieces, 2e-5);
        assertEquals(0.013, pieces.thdFRatio(), 1e-9);
        assertEquals(0.013 / Math.sqrt(1 + 0.013 * 0.013), pieces.thdRRatio(), 1e-9);
        assertEquals(pieces.thdRRatio(), pieces.thdPlusNoiseRRatio(), 1e-8);
        assertEquals(0.003, pieces.harmonics().get(0).ratioToFundamental(), 1e-9);
        assertEquals(Math.toDegrees(0.5), pieces.harmonics().get(0).phaseDegrees(), 1e-4);
        assertEquals(90, pieces.harmonics().get(1).phaseDegrees(), 1e-4);
        assertEquals(Math.toDegrees(-1), pieces.harmonics().get(17).phaseDegrees(), 1e-4);
    }

    @Test
    void tellsAClippedToneByItsClosedForm() throws CaptureException {
        double k = 0.8;
        double[] samples = Waves.scaled(tone(Waves.clipped(k)), 20, 0);
        ChannelAnalysis whole = Waves.analyze(samples);
        ChannelAnalysis pieces = inPieces(samples);

        agree(whole, pieces, 2e-5);
        assertTrue(pieces.clipping().clipped());
        assertEquals(-20 * Math.log10(k), pieces.clipping().driveOverOnsetDb(), 0.02);
        assertEquals(1 - 2 * Math.asin(k) / Math.PI, pieces.clipping().flatShare(), 0.003);
        assertEquals(whole.clipping().driveOverOnsetDb(), pieces.clipping().driveOverOnsetDb(), 1e-3);
        // The samples fold what lies beyond half the sample rate, so the figure is as near as theirs.
        assertEquals(Waves.distortion(Waves.clippedSeries(k, 20), 20), pieces.thdFRatio(), 2e-4);
        assertEquals(whole.thdFRatio(), pieces.thdFRatio(), 1e-6);
        assertEquals(whole.thdPlusNoiseRRatio(), pieces.thdPlusNoiseRRatio(), 1e-5);
        assertFalse(notes(pieces, "tops"), pieces.notes()::toString);
    }

    @Test
    void tellsNoiseAsTheWholeDoes() throws CaptureException {
        double sigma = 0.02;
        double[] samples = Waves.withNoise(tone(phase -> 10 * Math.sin(phase)), sigma, 7);
        ChannelAnalysis whole = Waves.analyze(samples);
        ChannelAnalysis pieces = inPieces(samples);

        // Noise alone sets the two apart by some 6e-6.
        agree(whole, pieces, 3e-5);
        double inBand = sigma * Math.sqrt((20_000 - 20) / 24_000.0) / (10 / Math.sqrt(2));
        assertEquals(inBand, pieces.thdPlusNoiseRRatio(), 0.01 * inBand);
        assertEquals(whole.sinadDb(), pieces.sinadDb(), 0.05);
        // Noise of this share leaves about 1.5e-4 in 19 harmonics.
        assertTrue(pieces.thdFRatio() < 2e-4, () -> "THD " + pieces.thdFRatio());
        assertFalse(pieces.clipping().clipped());
        assertEquals(1, pieces.notes().size(), pieces.notes()::toString);
    }

    @Test
    void keepsHumOutOfTheToneAndInTheNoise() throws CaptureException {
        double[] hum = Waves.sampled(SIZE, 50.02, 1, phase -> 0.1 * Math.sin(phase));
        double[] samples = Waves.plus(tone(phase -> 10 * Math.sin(phase)), hum);
        ChannelAnalysis whole = Waves.analyze(samples);
        ChannelAnalysis pieces = inPieces(samples);

        agree(whole, pieces, 5e-5);
        assertEquals(0.01 / Math.sqrt(1 + 1e-4), pieces.thdPlusNoiseRRatio(), 2e-5);
        assertEquals(whole.sinadDb(), pieces.sinadDb(), 0.02);
        assertTrue(pieces.thdFRatio() < 1e-5, () -> "THD " + pieces.thdFRatio());
        ChannelAnalysis above = inPieces(samples, SETTINGS.withBand(200, 20_000));
        assertTrue(above.sinadDb() > 95, () -> "SINAD above the hum " + above.sinadDb());
    }

    @Test
    void tellsPowerInAnInductiveLoadAsTheWholeDoes() throws CaptureException {
        AnalysisSettings settings = AnalysisSettings.forLoad(new LoadImpedance.SeriesInductance(4, 300e-6));
        double[] samples = Waves.withNoise(tone(Waves.clipped(0.7)), 0.003, 3);
        ChannelAnalysis whole = Waves.analyze(samples, settings);
        ChannelAnalysis pieces = inPieces(samples, settings);

        assertEquals(whole.powerWatts(), pieces.powerWatts(), 1e-4 * whole.powerWatts());
        assertEquals(
                whole.fundamentalPowerWatts(), pieces.fundamentalPowerWatts(), 5e-5 * whole.fundamentalPowerWatts());
    }

    @Test
    void followsALevelThatDriftsAndSaysSo() throws CaptureException {
        // From 1 to 0.9: the mean square of the gain is (1 + 0.9 + 0.81) / 3.
        double[] samples = shaped(place -> 1 - 0.1 * place);
        ChannelAnalysis whole = Waves.analyze(samples);
        ChannelAnalysis pieces = inPieces(samples);

        double rms = 10 / Math.sqrt(2) * Math.sqrt(2.71 / 3);
        assertEquals(rms, pieces.outputVoltsRms(), 1e-4 * rms);
        assertEquals(rms, pieces.fundamentalVoltsRms(), 1e-4 * rms);
        assertEquals(whole.outputVoltsRms(), pieces.outputVoltsRms(), 1e-4 * rms);
        assertEquals(whole.frequencyHz(), pieces.frequencyHz(), 1e-6);
        assertEquals(10, pieces.outputVoltsPeak(), 0.01);
        // The whole takes the drift for noise, the pieces follow it.
        assertTrue(whole.sinadDb() < 40, () -> "SINAD of the whole " + whole.sinadDb());
        assertTrue(pieces.sinadDb() > 70, () -> "SINAD of the pieces " + pieces.sinadDb());
        assertTrue(notes(pieces, "level of the tone changed by 0.85 dB"), pieces.notes()::toString);
    }

    @Test
    void saysThatATonePausedAndLeavesThePauseOut() throws CaptureException {
        // Two seconds of silence from 5 s on.
        double[] samples = shaped(place -> {
            double seconds = place * SIZE / Waves.RATE_HZ;
            return seconds >= 5 && seconds < 7 ? 0 : 1;
        });
        ChannelAnalysis pieces = inPieces(Waves.withNoise(samples, 1e-4, 1));

        assertEquals(10 / Math.sqrt(2), pieces.outputVoltsRms(), 1e-3);
        assertEquals(10 / Math.sqrt(2), pieces.fundamentalVoltsRms(), 1e-4);
        assertEquals(FREQUENCY_HZ, pieces.frequencyHz(), 1e-5);
        assertTrue(pieces.sinadDb() > 90, () -> "SINAD " + pieces.sinadDb());
        String note = pieces.notes().get(1);
        // A piece that reaches into the tone still shows it, which takes a little off both ends.
        assertTrue(note.startsWith("The tone was gone for about 1.8"), note);
        assertTrue(note.contains("first at 5.1"), note);
    }

    @Test
    void saysThatATonePausedBeforeAndStoppedBehind() throws CaptureException {
        double[] samples = shaped(place -> place > 0.1 && place < 0.9 ? 1 : 0);
        ChannelAnalysis pieces = inPieces(samples);

        assertEquals(10 / Math.sqrt(2), pieces.outputVoltsRms(), 1e-3);
        assertTrue(notes(pieces, "The tone was gone"), pieces.notes()::toString);
    }

    @Test
    void leavesAStepOfTheLevelOutAndSaysSo() throws CaptureException {
        double[] samples = shaped(place -> place < 0.5 ? 1 : 0.5);
        ChannelAnalysis pieces = inPieces(samples);

        assertTrue(notes(pieces, "level of the tone stepped"), pieces.notes()::toString);
        assertTrue(notes(pieces, "level of the tone changed by 6"), pieces.notes()::toString);
        assertEquals(10 / Math.sqrt(2) * Math.sqrt(0.625), pieces.fundamentalVoltsRms(), 0.02);
        assertTrue(pieces.sinadDb() > 100, () -> "SINAD " + pieces.sinadDb());
    }

    @Test
    void followsAFrequencyThatWandersAndSaysSo() throws CaptureException {
        double[] samples = new double[SIZE];
        for (int i = 0; i < SIZE; i++) {
            double seconds = i / Waves.RATE_HZ;
            double duration = SIZE / Waves.RATE_HZ;
            samples[i] = Math.sin(2 * Math.PI * (1000 * seconds + 0.5 / duration * seconds * seconds));
        }
        ChannelAnalysis pieces = inPieces(samples);

        assertEquals(1000.5, pieces.frequencyHz(), 1e-3);
        assertEquals(Math.sqrt(0.5), pieces.fundamentalVoltsRms(), 1e-5);
        assertTrue(notes(pieces, "frequency of the tone changed"), pieces.notes()::toString);
        assertTrue(pieces.sinadDb() > 50, () -> "SINAD " + pieces.sinadDb());
    }

    @Test
    void tellsClippingThatComesOnlyForATime() throws CaptureException {
        double[] clean = tone(phase -> 0.7 * Math.sin(phase));
        double[] clipped = tone(Waves.clipped(0.7));
        double[] samples = clean.clone();
        System.arraycopy(clipped, SIZE / 2, samples, SIZE / 2, SIZE / 8);
        ChannelAnalysis pieces = inPieces(samples);

        assertTrue(pieces.clipping().clipped());
        assertEquals(-20 * Math.log10(0.7), pieces.clipping().driveOverOnsetDb(), 0.1);
        assertTrue(notes(pieces, "tops are cut off"), pieces.notes()::toString);
    }

    @Test
    void saysThatSomethingDisturbedTheTone() throws CaptureException {
        double[] samples = Waves.withNoise(tone(phase -> 10 * Math.sin(phase)), 1e-3, 5);
        for (int i = 240_000; i < 241_000; i++) {
            samples[i] += i % 7 < 3 ? 0.5 : -0.5;
        }
        ChannelAnalysis pieces = inPieces(samples);

        assertTrue(notes(pieces, "Noise rose"), pieces.notes()::toString);
    }

    @Test
    void evaluatesBurstsInAStretch() throws CaptureException {
        Waveforms.BurstPattern pattern = new Waveforms.BurstPattern(0.02, 0.25, 0, 0.1);
        double[] samples =
                Waveforms.toneBurst(Waves.RATE_HZ, SIZE, 1000, 10, pattern).toArray();
        ChannelAnalysis pieces = inPieces(samples);

        assertEquals(0.02, pieces.burst().orElseThrow().onSeconds(), 1e-3);
        assertEquals(12.5, pieces.powerWatts(), 0.05);
        assertTrue(notes(pieces, "comes in bursts"), pieces.notes()::toString);
    }

    @Test
    void evaluatesAToneTooLowForPiecesInAStretch() throws CaptureException {
        double[] samples = Waves.sampled(SIZE, 6, 0, phase -> 10 * Math.sin(phase));
        ChannelAnalysis pieces = inPieces(samples, SETTINGS.withBand(1, 20_000));

        assertEquals(6, pieces.frequencyHz(), 1e-4);
        assertTrue(notes(pieces, "so low"), pieces.notes()::toString);
    }

    @Test
    void saysOfNoToneWhatTheWholeSays() {
        double[] silent = new double[SIZE];
        assertEquals(
                assertThrows(CaptureException.class, () -> Waves.analyze(silent))
                        .getMessage(),
                assertThrows(CaptureException.class, () -> inPieces(silent)).getMessage());
        double[] noise = Waves.withNoise(silent, 1, 1);
        CaptureException none = assertThrows(CaptureException.class, () -> inPieces(noise));
        assertTrue(none.getMessage().contains("no steady tone"), none.getMessage());
        AnalysisSettings hinted = SETTINGS.withFrequencyHz(100_000);
        CaptureException high = assertThrows(CaptureException.class, () -> inPieces(noise, hinted));
        assertTrue(high.getMessage().contains("cannot be seen"), high.getMessage());
    }

    @Test
    void takesOverWhereARecordIsTooLongForTheWhole() throws CaptureException {
        double[] samples =
                Waves.sampled(WaveformAnalyzer.MOST_SAMPLES + 1, FREQUENCY_HZ, 0, phase -> 10 * Math.sin(phase));
        // Twice in the second half: what only looked at the middle would not see it.
        for (int i = samples.length - samples.length / 8; i < samples.length; i++) {
            samples[i] *= 1.05;
        }
        ChannelAnalysis analysis = Waves.analyze(samples);

        assertTrue(notes(analysis, "overlapping pieces"), analysis.notes()::toString);
        assertTrue(notes(analysis, "level of the tone changed by 0.42 dB"), analysis.notes()::toString);
        assertEquals(10 / Math.sqrt(2) * Math.sqrt(1 + 0.1025 / 8), analysis.outputVoltsRms(), 1e-5);
    }

    @Test
    void choosesPiecesByFrequencyAndLength() {
        double turn = 2 * Math.PI;
        assertEquals(1 << 16, LongSizes.USUAL.segment(172_800_000, turn * 1000 / 48_000));
        assertEquals(1 << 17, LongSizes.USUAL.segment(172_800_000, turn * 20 / 48_000));
        // Four hours at 192 kHz keep no more numbers than one.
        assertEquals(1 << 19, LongSizes.USUAL.segment(4 * 691_200_000L, turn * 1000 / 192_000));
        assertEquals(0, LongSizes.USUAL.segment(172_800_000, turn * 0.3 / 48_000));
        assertEquals(1 << 14, LongSizes.USUAL.segment(1 << 16, turn * 1000 / 48_000));
    }
}
