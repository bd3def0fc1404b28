// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.stimulus;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.signal.SampleFormat;
import org.ohmstead.signal.Waveform;

/** Recordings are made in closed form: each sample is what the player played at that instant of its own clock. */
class AlignmentTest {
    private static final int RATE = 48_000;
    private static final double MARKER_DBFS = -20;
    private static final SignalLayout LAYOUT = SignalLayout.of(RATE, 4 * RATE);

    private static double played(SignalLayout layout, double seconds) {
        double marker = Math.pow(10, MARKER_DBFS / 20);
        double start = (double) layout.startMarker() / RATE;
        double end = (double) layout.endMarker() / RATE;
        double signalFrom = (double) layout.signal() / RATE;
        double signalTo = (double) layout.signalEnd() / RATE;
        double value = marker * new Marker(false).at(seconds - start) + marker * new Marker(true).at(seconds - end);
        return seconds >= signalFrom && seconds < signalTo
                ? value + 0.5 * Math.sin(2 * Math.PI * 1000 * (seconds - signalFrom))
                : value;
    }

    /** A recording that begins before the file by a delay, with its clock too fast by a ratio. */
    private static Waveform recorded(int rate, double delaySeconds, double clockRatio, double gain, double noiseRms) {
        Random random = new Random(5);
        double[] samples = new double[(int) (rate * (delaySeconds + 8.2))];
        for (int i = 0; i < samples.length; i++) {
            double playerSeconds = (i / (double) rate - delaySeconds) / clockRatio;
            samples[i] = 0.01 + gain * played(LAYOUT, playerSeconds) + noiseRms * random.nextGaussian();
        }
        return Waveform.of(rate, samples);
    }

    @ParameterizedTest
    @CsvSource({
        // rate, delay, parts per million, gain, noise: an instant may be off by that many samples
        "48000, 1.2345678, 0, 1, 0, 0.001",
        "48000, 0.3, 50, 1, 0, 0.001",
        "48000, 2.1, -50, -0.7, 0, 0.001",
        "44100, 0.7071, 50, 12, 0.01, 0.02",
        "96000, 0.4, 200, 3, 0.02, 0.05",
        // As loud as the markers.
        "48000, 0.4, -120, -1, 0.05, 0.1",
    })
    void findsTheMarkersOfARecording(
            int rate, double delay, double partsPerMillion, double gain, double noise, double offSamples) {
        double ratio = 1 + 1e-6 * partsPerMillion;
        Waveform recording = recorded(rate, delay, ratio, gain, noise);
        Alignment.Found found = (Alignment.Found) Alignment.find(LAYOUT, MARKER_DBFS, recording);
        double start = delay + ratio * LAYOUT.startMarker() / RATE;
        double signal = delay + ratio * LAYOUT.signal() / RATE;
        assertEquals(start, found.startMarkerSeconds(), offSamples / rate);
        assertEquals(signal, found.signalFromSeconds(), offSamples / rate);
        assertEquals(signal + ratio * 4, found.signalToSeconds(), 2 * offSamples / rate);
        double distance = LAYOUT.markerDistanceSeconds();
        assertEquals(
                partsPerMillion, found.clockPartsPerMillion().orElseThrow(), 1e6 * 2 * offSamples / rate / distance);
        assertEquals(gain < 0, found.inverted());
        assertEquals(1, found.gainRatio() / Math.abs(gain), noise == 0 ? 1e-4 : 0.05);
        assertEquals(4 * ratio, found.signalOf(recording).durationSeconds(), 1.0 / rate);
    }

    @Test
    void theFileItselfTellsItsLayout() {
        Stimulus stimulus = Stimulus.of(new TestSignal.Sine(1000, -10, 4), RATE, true);
        SignalFile file = new SignalFile(stimulus, SampleFormat.INTEGER_24, ChannelUse.MONO, true, 1);
        SignalLayout layout = file.layout().orElseThrow();
        double[] samples = new double[(int) layout.frames()];
        new MarkedSource(stimulus, layout, file.markerDbfs()).fill(0, samples, samples.length);
        Waveform played = Waveform.of(RATE, samples);
        double[] later = new double[samples.length + 30_000];
        for (int i = 0; i < samples.length; i++) {
            later[i + 30_000] = -2 * samples[i];
        }
        Alignment.Found found = (Alignment.Found) Alignment.find(played, Waveform.of(RATE, later));
        assertEquals((30_000.0 + layout.signal()) / RATE, found.signalFromSeconds(), 1e-3 / RATE);
        assertEquals((30_000.0 + layout.signalEnd()) / RATE, found.signalToSeconds(), 1e-3 / RATE);
        assertEquals(0, found.clockPartsPerMillion().orElseThrow(), 1e-2);
        assertEquals(2, found.gainRatio(), 1e-4);
        assertTrue(found.inverted());
        assertEquals(1, found.match(), 1e-3);
    }

    @Test
    void aBassAmplifierLeavesEnoughOfTheMarkers() {
        Waveform recording = recorded(RATE, 0.5, 1, 1, 0.0001);
        double[] samples = recording.toArray();
        // A first-order low-pass of 150 Hz, twice.
        double share = 1 - Math.exp(-2 * Math.PI * 150 / RATE);
        for (int pass = 0; pass < 2; pass++) {
            double state = 0;
            for (int i = 0; i < samples.length; i++) {
                state += share * (samples[i] - state);
                samples[i] = state;
            }
        }
        Alignment.Found found = (Alignment.Found) Alignment.find(LAYOUT, MARKER_DBFS, Waveform.of(RATE, samples));
        // The filter delays by about 2 ms in its pass band.
        assertEquals(0.5 + (double) LAYOUT.signal() / RATE, found.signalFromSeconds(), 0.004);
        assertEquals(0, found.clockPartsPerMillion().orElseThrow(), 600);
    }

    @Test
    void aRecordingThatEndsEarlyHasNoClockRatio() {
        Waveform whole = recorded(RATE, 0.5, 1, 1, 0.001);
        Waveform early = whole.slice(0, 5 * RATE);
        Alignment.Found found = (Alignment.Found) Alignment.find(LAYOUT, MARKER_DBFS, early);
        assertTrue(found.endMarkerSeconds().isEmpty());
        assertTrue(found.clockPartsPerMillion().isEmpty());
        assertEquals(0.5 + (double) LAYOUT.signal() / RATE, found.signalFromSeconds(), 0.01 / RATE);
        assertEquals(5, found.signalFromSeconds() + found.signalOf(early).durationSeconds(), 1.0 / RATE);
    }

    @Test
    void saysWhatIsWrongWhenNothingFits() {
        Random random = new Random(3);
        double[] noise = random.doubles(3L * RATE, -1, 1).toArray();
        assertEquals("noStart", missed(LAYOUT, Waveform.of(RATE, noise)));
        Waveform recording = recorded(RATE, 0.5, 1, 1, 0);
        assertEquals("otherFile", missed(SignalLayout.of(RATE, 5 * RATE), recording));
        assertEquals("lowRate", missed(LAYOUT, Waveform.of(8000, Arrays.copyOf(noise, 60_000))));
        Alignment plain = Alignment.find(Waveform.of(RATE, noise), recording);
        assertEquals("notMarked", ((Alignment.Missed) plain).key());
        Alignment.Missed other =
                (Alignment.Missed) Alignment.find(SignalLayout.of(RATE, 5 * RATE), MARKER_DBFS, recording);
        assertTrue(other.sentence(Locale.ENGLISH).contains("another file"), other.sentence());
    }

    private static String missed(SignalLayout layout, Waveform recording) {
        return ((Alignment.Missed) Alignment.find(layout, MARKER_DBFS, recording)).key();
    }
}
