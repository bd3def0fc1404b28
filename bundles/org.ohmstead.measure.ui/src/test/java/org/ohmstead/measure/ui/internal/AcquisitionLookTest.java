// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.ohmstead.measure.Acquisition;
import org.ohmstead.measure.Observation;
import org.ohmstead.model.BenchLoad;
import org.ohmstead.model.LoadBranch;
import org.ohmstead.model.Mode;
import org.ohmstead.plot.PlotPoint;
import org.ohmstead.signal.Capture;
import org.ohmstead.signal.Waveform;

class AcquisitionLookTest {
    private static final double RATE_HZ = 48_000;
    private static final double RELATIVE = 1e-3;
    private static final BenchLoad FOUR_OHM =
            new BenchLoad("4ohm", 4, List.of(new LoadBranch(4, 0, 0, ""), new LoadBranch(4, 0, 0, "")), 500);

    /** A sine of a peak at 1 kHz with a third harmonic of a ratio to it. */
    private static Waveform tone(double peakVolts, double thirdRatio) {
        double[] volts = new double[9600];
        for (int i = 0; i < volts.length; i++) {
            double angle = 2 * Math.PI * 1000 * i / RATE_HZ;
            volts[i] = peakVolts * (Math.sin(angle) + thirdRatio * Math.sin(3 * angle));
        }
        return Waveform.of(RATE_HZ, volts);
    }

    private static AcquisitionLook look(Waveform... channels) {
        Observation meters = new Observation(
                Instant.EPOCH,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty());
        Capture capture = new Capture(List.of(channels), "test", "test");
        return AcquisitionLook.of(
                new Acquisition(capture, Optional.empty(), Collections.nCopies(channels.length, 100.0), meters),
                FOUR_OHM,
                Mode.STEREO,
                "test");
    }

    @Test
    void findsPowerAndDistortionOfEachChannel() {
        AcquisitionLook look = look(tone(20, 0.01), tone(10, 0));
        // Closed form: peak squared over twice the resistance, the harmonic's own power beside it.
        assertEquals(50 * (1 + 1e-4), look.channels().get(0).powerWatts().orElseThrow(), 50 * RELATIVE);
        assertEquals(0.01, look.channels().get(0).thdRatio().orElseThrow(), 0.01 * RELATIVE);
        assertEquals(12.5, look.channels().get(1).powerWatts().orElseThrow(), 12.5 * RELATIVE);
        assertEquals("B", look.channels().get(1).name());
    }

    @Test
    void showsAFewCyclesAndTheLinesOfTheSpectrum() {
        AcquisitionLook.Channel channel = look(tone(20, 0.01)).channels().get(0);
        PlotPoint last = channel.wave().get(channel.wave().size() - 1);
        assertEquals(4, last.x(), 0.05, "four cycles of 1 kHz are 4 ms");
        // 20 V peak are 14.14 V RMS, which is 23.01 dB re 1 V.
        double highest =
                channel.spectrum().stream().mapToDouble(PlotPoint::y).max().orElseThrow();
        assertEquals(23.01, highest, 0.1);
        assertTrue(channel.spectrum().size() <= 800, "thinned for the screen");
    }

    @Test
    void silenceHasNoPowerAndNoDistortion() {
        AcquisitionLook.Channel channel =
                look(Waveform.of(RATE_HZ, new double[4800])).channels().get(0);
        assertTrue(channel.powerWatts().isEmpty());
        assertTrue(channel.thdRatio().isEmpty());
    }
}
