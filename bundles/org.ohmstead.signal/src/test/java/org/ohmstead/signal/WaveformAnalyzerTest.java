// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.ohmstead.signal.Waves.RATE_HZ;
import static org.ohmstead.signal.Waves.analyze;
import static org.ohmstead.signal.Waves.sampled;
import static org.ohmstead.signal.Waves.series;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WaveformAnalyzerTest {
    private static final double REL_1PPM = 1e-6;
    private static final AnalysisSettings FOUR_OHMS = AnalysisSettings.forResistance(4);

    private static void assertClose(double expected, double actual, double relative) {
        assertEquals(expected, actual, relative * Math.abs(expected), "relative tolerance " + relative);
    }

    @ParameterizedTest
    @CsvSource({
        "1000, 960",
        "1000, 1440",
        "1000, 1207",
        "40, 4800",
        "40, 5003",
        "997.37, 9600",
        "50, 12345",
        "20, 8000",
        "5000.123, 2000",
        "9999.7, 4801",
        "15000, 3001",
        "23.4, 6200",
        "1000.5, 150",
        "301, 1000",
        "1234.5, 480000"
    })
    void measuresCleanSineOfAnyLength(double frequencyHz, int size) throws CaptureException {
        double[] samples = Waves.scaled(sampled(size, frequencyHz, 0.7, phase -> 28.28 * Math.sin(phase)), 1, 0.05);
        ChannelAnalysis analysis = analyze(samples);
        // A sine of amplitude a across R: a^2 / 2R.
        assertClose(frequencyHz, analysis.frequencyHz(), 1e-8);
        assertClose(28.28 / Math.sqrt(2), analysis.outputVoltsRms(), REL_1PPM);
        assertClose(28.28 * 28.28 / 8, analysis.powerWatts(), REL_1PPM);
        assertEquals(0.05, analysis.dcVolts(), 1e-6);
        assertEquals(0, analysis.thdFRatio(), REL_1PPM);
        assertTrue(analysis.sinadDb() > 120, "SINAD " + analysis.sinadDb());
        assertFalse(analysis.clipping().clipped());
        assertTrue(analysis.burst().isEmpty());
    }

    @ParameterizedTest
    @CsvSource({"square", "triangle", "sawtooth"})
    void findsTruncatedSumsOfIdealWaves(String wave) throws CaptureException {
        double[] factors = new double[39];
        for (int n = 1; n <= 39; n++) {
            switch (wave) {
                case "square" -> factors[n - 1] = n % 2 == 1 ? 1.0 / n : 0;
                case "triangle" -> factors[n - 1] = n % 2 == 1 ? (n % 4 == 1 ? 1.0 : -1.0) / n / n : 0;
                default -> factors[n - 1] = 1.0 / n;
            }
        }
        double[] samples = sampled(9630, 500.3, 0.2, series(factors));
        // Truncated sums of the Fourier series in closed form.
        double[][] expected =
                switch (wave) {
                    case "square" ->
                        new double[][] {
                            {3, 0.3333333},
                            {5, 0.3887301},
                            {7, 0.4141489},
                            {9, 0.4287948},
                            {19, 0.4568603},
                            {39, 0.4703224}
                        };
                    case "triangle" -> new double[][] {{3, 0.1111111}, {9, 0.1204765}};
                    default -> new double[][] {{3, 0.6009252}, {9, 0.7346889}, {19, 0.7704955}};
                };
        for (double[] row : expected) {
            ChannelAnalysis analysis =
                    analyze(samples, FOUR_OHMS.withHighestHarmonic((int) row[0]).withBand(20, 23_000));
            assertEquals(row[1], analysis.thdFRatio(), 1.1e-7, wave + " up to " + row[0]);
            assertEquals((int) row[0], analysis.highestHarmonicCounted());
            assertClose(row[1] / Math.sqrt(1 + row[1] * row[1]), analysis.thdRRatio(), REL_1PPM);
        }
    }

    @ParameterizedTest
    @CsvSource({
        "0.98, 0.00653775",
        "0.95, 0.0191975",
        "0.90, 0.0421528",
        "0.80, 0.0897476",
        "0.60, 0.185191",
        "0.30, 0.329453"
    })
    void findsDistortionOfBandLimitedClippedSine(double k, double thdF) throws CaptureException {
        double[] factors = Waves.clippedSeries(k, 19);
        // Closed form of the symmetric hard limit, summed up to order 19.
        assertClose(thdF, Waves.distortion(factors, 19), 1e-5);
        for (int size : new int[] {960, 1337, 9601, 48_000}) {
            ChannelAnalysis analysis = analyze(sampled(size, 1000, 0.3, series(factors)));
            assertEquals(Waves.distortion(factors, 19), analysis.thdFRatio(), REL_1PPM);
            double square = 0;
            for (double factor : factors) {
                square += factor * factor / 2;
            }
            assertClose(square / 4, analysis.powerWatts(), REL_1PPM);
            assertClose(factors[0] * factors[0] / 8, analysis.fundamentalPowerWatts(), REL_1PPM);
        }
    }

    @ParameterizedTest
    @CsvSource({
        // MS/A^2 and THD_F of the symmetric hard limit, all harmonics and those up to order 19 (closed form).
        "0.98, 0.49664208, 0.00657243, 0.00653775",
        "0.90, 0.46413785, 0.0421993, 0.0421528",
        "0.80, 0.40456443, 0.0897858, 0.0897476",
        "0.50, 0.19550111, 0.232938, 0.232853",
        "0.30, 0.078434597, 0.329592, 0.329453"
    })
    void measuresPlainlySampledClippedSine(double k, double meanSquare, double thdAll, double thdNineteen)
            throws CaptureException {
        // An odd frequency spreads the folded harmonics, as a real converter without a filter would.
        ChannelAnalysis analysis = analyze(sampled(48_000, 997.37, 0.1, Waves.clipped(k)));
        assertClose(meanSquare / 4, analysis.powerWatts(), 1e-5);
        assertEquals(thdNineteen, analysis.thdFRatio(), 2e-5);
        double expectedTotal = thdAll / Math.sqrt(1 + thdAll * thdAll);
        assertEquals(expectedTotal, analysis.thdPlusNoiseRRatio(), 0.01 * expectedTotal);
        // Crest factor of the cut wave: k / sqrt(MS).
        assertEquals(20 * Math.log10(k / Math.sqrt(meanSquare)), analysis.crestFactorDb(), 1e-3);
    }

    @ParameterizedTest
    @CsvSource({"0.04, 0.01030928", "0.1, 0.02702703", "0.2, 0.05882353"})
    void findsDistortionOfCubicCurve(double a, double thdF) throws CaptureException {
        // y = x - a x^3: b1 = 1 - 3a/4, b3 = a/4.
        ChannelAnalysis analysis = analyze(sampled(2000, 1000, 0, phase -> {
            double x = Math.sin(phase);
            return x - a * x * x * x;
        }));
        assertEquals(thdF, analysis.thdFRatio(), 1e-8);
        assertFalse(analysis.clipping().clipped());
    }

    @Test
    void findsSecondHarmonicOfSquareLaw() throws CaptureException {
        // y = x + a x^2: H2 = a / 2 and a direct voltage of a / 2; -cos(2x)/2 leads by -90 degrees as a sine.
        ChannelAnalysis analysis = analyze(sampled(2000, 1000, 0.4, phase -> {
            double x = Math.sin(phase);
            return x + 0.02 * x * x;
        }));
        assertEquals(0.01, analysis.thdFRatio(), 1e-8);
        assertEquals(0.01, analysis.dcVolts(), 1e-8);
        assertEquals(-90, analysis.harmonics().get(0).phaseDegrees(), 1e-4);
    }

    @ParameterizedTest
    @CsvSource({"0.01, 0.00616476", "0.05, 0.0310334", "0.1, 0.0626751", "0.2, 0.1284149"})
    void findsDistortionOfDeadZone(double d, double thdAll) throws CaptureException {
        // y = x - clip(x, d), all harmonics (closed form); harmonics above order 400 are left out of the wave.
        double[] cut = Waves.clippedSeries(d, 400);
        double[] factors = new double[400];
        for (int n = 0; n < 400; n++) {
            factors[n] = (n == 0 ? 1 : 0) - cut[n];
        }
        ChannelAnalysis analysis =
                analyze(sampled(48_000, 50.3, 0, series(factors)), FOUR_OHMS.withHighestHarmonic(200));
        assertClose(thdAll, analysis.thdFRatio(), 3e-4);
        assertFalse(analysis.clipping().clipped());
    }

    @ParameterizedTest
    @CsvSource({"1, 0.06706482, 0.330890287", "2, 0.1734069, 0"})
    void findsDistortionOfSaturatingCurve(double g, double thdF, double meanSquare) throws CaptureException {
        ChannelAnalysis analysis = analyze(sampled(9600, 997.37, 0, phase -> Math.tanh(g * Math.sin(phase))));
        assertClose(thdF, analysis.thdFRatio(), REL_1PPM);
        if (meanSquare > 0) {
            assertClose(meanSquare / 4, analysis.powerWatts(), REL_1PPM);
        }
    }

    @ParameterizedTest
    @CsvSource({
        "0.9, -0.0095383988, 0.98130696, 0.03210453",
        "0.8, -0.02711972, 0.94795598, 0.07055176",
        "0.5, -0.10899778, 0.80449889, 0.1946476"
    })
    void measuresOneSidedClipping(double k, double dc, double b1, double thdF) throws CaptureException {
        ChannelAnalysis analysis = analyze(
                sampled(96_000, 97.37, 0, phase -> Math.min(k, Math.sin(phase))), FOUR_OHMS.withHighestHarmonic(200));
        assertEquals(dc, analysis.dcVolts(), 2e-6);
        assertEquals(b1 / Math.sqrt(2), analysis.fundamentalVoltsRms(), 2e-6);
        assertEquals(thdF, analysis.thdFRatio(), 2e-5);
        assertTrue(analysis.clipping().clipped());
        assertEquals(-20 * Math.log10(k), analysis.clipping().positiveDriveDb(), 0.05);
        assertEquals(0, analysis.clipping().negativeDriveDb(), 0.01);
    }

    @ParameterizedTest
    @CsvSource({"16, 98.09", "24, 146.26"})
    void findsQuantisationNoise(int bits, double sinadDb) throws CaptureException {
        // An ideal N-bit full-scale sine has a SINAD of 6.0206 N + 1.7609 dB over the whole band.
        double steps = Math.scalb(1.0, bits - 1);
        double[] samples = sampled(96_000, 997.371, 0, phase -> Math.rint((steps - 1) * Math.sin(phase)) / steps);
        assertEquals(sinadDb, analyze(samples, FOUR_OHMS.withBand(0, 24_000)).sinadDb(), 0.3);
    }

    @Test
    void addsDistortionAndNoise() throws CaptureException {
        // THD 1 % and noise 0.5 % of the fundamental: 1.118034 % (uncorrelated sum), noise spread to 24 kHz.
        double[] tone = sampled(480_000, 1000.3, 0, series(Math.sqrt(2), 0, 0.01 * Math.sqrt(2)));
        ChannelAnalysis whole = analyze(Waves.withNoise(tone, 0.005, 11), FOUR_OHMS.withBand(0, 24_000));
        double ratio = 0.01118034;
        assertClose(ratio / Math.sqrt(1 + ratio * ratio), whole.thdPlusNoiseRRatio(), 3e-3);
        assertClose(0.01, whole.thdFRatio(), 3e-3);
        // Half the band holds half the noise power.
        ChannelAnalysis half = analyze(Waves.withNoise(tone, 0.005, 11), FOUR_OHMS.withBand(0, 12_000));
        assertClose(Math.sqrt(0.0001 + 0.0000125), half.thdPlusNoiseRRatio(), 3e-3);
    }

    @Test
    void keepsLevelAndDistortionWithHumNoiseAndDirectVoltage() throws CaptureException {
        double[] tone = sampled(9600, 1000.7, 1.1, series(20, 0, 0.2));
        double[] hum = sampled(9600, 50, 0.3, series(0.1, 0.05));
        ChannelAnalysis analysis = analyze(Waves.withNoise(Waves.scaled(Waves.plus(tone, hum), 1, -0.3), 0.02, 3));
        assertClose(1000.7, analysis.frequencyHz(), 1e-6);
        assertEquals(20 / Math.sqrt(2), analysis.fundamentalVoltsRms(), 0.002);
        assertEquals(0.01, analysis.thdFRatio(), 1e-4);
        assertEquals(-0.3, analysis.dcVolts(), 0.002);
        // Everything but the fundamental: third harmonic 0.2, hum 0.1 and 0.05 peak, noise of 20/24 of 0.02 V squared.
        double unwanted = (0.04 + 0.01 + 0.0025) / 2 + 0.0004 * 20 / 24;
        assertEquals(Math.sqrt(unwanted / (unwanted + 200)), analysis.thdPlusNoiseRRatio(), 2e-4);
    }

    @Test
    void takesHintedToneAlthoughHumIsStronger() throws CaptureException {
        double[] samples = Waves.plus(sampled(9600, 1000, 0, series(0.1)), sampled(9600, 50, 0, series(0.2)));
        assertClose(50, analyze(samples).frequencyHz(), 1e-6);
        ChannelAnalysis hinted = analyze(samples, FOUR_OHMS.withFrequencyHz(1010));
        assertClose(1000, hinted.frequencyHz(), 1e-6);
        assertClose(0.1 / Math.sqrt(2), hinted.fundamentalVoltsRms(), 1e-4);
    }

    @Test
    void givesRealPowerInAnInductiveLoad() throws CaptureException {
        // 4 ohm in series with 0.5 mH, 10 V RMS at 1 kHz: 15.46216 W = V^2 Re(Y), not 100 / |Z|.
        AnalysisSettings settings = AnalysisSettings.forLoad(new LoadImpedance.SeriesInductance(4, 0.0005));
        double peak = 10 * Math.sqrt(2);
        ChannelAnalysis one = analyze(sampled(3000, 1000, 0, series(peak)), settings);
        assertClose(15.46216, one.powerWatts(), 1e-6);
        // A third harmonic of 1 V RMS adds 1 Re(Y(3 kHz)).
        double reactance = 2 * Math.PI * 3000 * 0.0005;
        ChannelAnalysis two = analyze(sampled(3000, 1000, 0, series(peak, 0, Math.sqrt(2))), settings);
        assertClose(15.46216 + 4 / (16 + reactance * reactance), two.powerWatts(), 1e-6);
        assertClose(15.46216, two.fundamentalPowerWatts(), 1e-6);
    }

    @Test
    void measuresTwoMillionSamplesSwiftly() throws CaptureException {
        double[] samples = Waves.withNoise(sampled(2_000_000, 1000.123, 0, series(20, 0, 0.02)), 0.001, 1);
        analyze(samples);
        long start = System.nanoTime();
        ChannelAnalysis analysis = analyze(samples);
        double seconds = (System.nanoTime() - start) * 1e-9;
        assertClose(1000.123, analysis.frequencyHz(), 1e-9);
        assertClose(50, analysis.fundamentalPowerWatts(), 1e-6);
        // A generous bound for a busy machine; about one second on a quiet one.
        assertTrue(seconds < 10, "took " + seconds + " s");
    }

    private static String refusal(double[] samples, AnalysisSettings settings) {
        return assertThrows(CaptureException.class, () -> analyze(samples, settings))
                .getMessage();
    }

    @Test
    void saysWhatIsWrongWithARecordWithoutTone() {
        assertTrue(refusal(new double[1000], FOUR_OHMS).contains("silent"));
        double[] direct = new double[1000];
        Arrays.fill(direct, 1.1);
        assertTrue(refusal(direct, FOUR_OHMS).contains("only direct voltage (1.1"));
        for (int seed = 0; seed < 30; seed++) {
            double[] noise = Waves.withNoise(direct, 0.01, seed);
            assertTrue(refusal(noise, FOUR_OHMS).contains("no steady tone"));
            double[] longer = Waves.withNoise(new double[48_000], 0.01, seed);
            assertTrue(refusal(longer, FOUR_OHMS).contains("no steady tone"));
            assertTrue(refusal(longer, FOUR_OHMS.withFrequencyHz(1000)).contains("near 1000"));
        }
        assertTrue(refusal(new double[5], FOUR_OHMS).contains("5 samples"));
    }

    @ParameterizedTest
    @CsvSource({"8, 4800, 0.8", "8, 9600, 1.6", "40, 3000, 2.5", "20, 6000, 2.5"})
    void saysHowLongARecordIsNeeded(double frequencyHz, int size, String cycles) {
        String message = refusal(sampled(size, frequencyHz, 0.4, series(10)), FOUR_OHMS);
        assertTrue(message.contains("about " + cycles + " cycles"), message);
        assertTrue(message.contains("at least " + 3 / frequencyHz + " s"), message);
    }

    @Test
    void refusesBandsAndTonesBeyondHalfTheSampleRate() {
        double[] samples = sampled(4800, 1000, 0, series(1));
        assertTrue(refusal(samples, FOUR_OHMS.withBand(30_000, 40_000)).contains("lower band"));
        assertTrue(refusal(samples, FOUR_OHMS.withFrequencyHz(30_000)).contains("higher rate"));
    }

    @Test
    void reportsTheBandInUse() throws CaptureException {
        double[] samples = sampled(4800, 1000, 0, series(1));
        ChannelAnalysis analysis = WaveformAnalyzer.analyze(Waveform.of(16_000, samples), FOUR_OHMS);
        assertEquals(8000, analysis.bandHighHz());
        assertTrue(analysis.notes().get(0).contains("half the sample rate"));
        assertEquals(20_000, analyze(samples).bandHighHz());
        ChannelAnalysis high =
                WaveformAnalyzer.analyze(Waveform.of(RATE_HZ, sampled(4800, 15_000, 0, series(1))), FOUR_OHMS);
        assertEquals(1, high.highestHarmonicCounted());
        assertTrue(high.notes().get(0).startsWith("No harmonic"));
    }
}
