// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.stimulus;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.ohmstead.signal.Capture;
import org.ohmstead.signal.CaptureException;
import org.ohmstead.signal.SampleFormat;
import org.ohmstead.signal.WavFile;

class SignalFileTest {
    private static final int RATE = 48_000;
    private static final Stimulus SINE = Stimulus.of(new TestSignal.Sine(1000, -10, 1), RATE, true);

    @TempDir
    Path folder;

    private Capture written(SignalFile file) throws CaptureException {
        Path path = folder.resolve("made.wav");
        file.write(path, ratio -> true);
        return WavFile.read(path, new double[] {1});
    }

    private static SignalFile plain(Stimulus stimulus, SampleFormat format) {
        return new SignalFile(stimulus, format, ChannelUse.MONO, false, 1);
    }

    @ParameterizedTest
    @EnumSource(SampleFormat.class)
    void everyFormatHoldsTheSignalToItsSteps(SampleFormat format) throws Exception {
        Capture capture = written(plain(SINE, format));
        assertEquals("WAV " + format.text() + ", 1 channel, 48000 Hz", capture.formatText());
        double[] made = capture.channels().get(0).toArray();
        double[] ideal = new double[made.length];
        SINE.read(0, ideal, ideal.length);
        double error = 0;
        for (int i = 0; i < made.length; i++) {
            error += Math.pow(made[i] - ideal[i], 2) / made.length;
            assertEquals(ideal[i], made[i], format.floating() ? 1e-7 : 1.5 * format.step());
        }
        if (!format.floating()) {
            // Closed form: rounding gives a twelfth of a step squared, triangular dither two more: a quarter in all.
            assertEquals(0.25, error / format.step() / format.step(), 0.01);
        }
    }

    @Test
    void theSameSeedGivesTheSameFileAndAnotherAnother() throws Exception {
        double[] one =
                written(plain(SINE, SampleFormat.INTEGER_16)).channels().get(0).toArray();
        assertArrayEquals(
                one,
                written(plain(SINE, SampleFormat.INTEGER_16)).channels().get(0).toArray());
        double[] other = written(new SignalFile(SINE, SampleFormat.INTEGER_16, ChannelUse.MONO, false, 2))
                .channels()
                .get(0)
                .toArray();
        assertFalse(Arrays.equals(one, other));
    }

    @ParameterizedTest
    @CsvSource({"BOTH,1,1", "LEFT,1,0", "RIGHT,0,1", "RIGHT_INVERTED,1,-1"})
    void channelsCarryWhatTheyAreMeantTo(ChannelUse use, double left, double right) throws Exception {
        Capture capture = written(new SignalFile(SINE, SampleFormat.FLOAT_32, use, false, 1));
        assertEquals(2, capture.channels().size());
        double peak = Math.pow(10, -0.5);
        // A quarter of a cycle of 1 kHz: the crest.
        assertEquals(left * peak, capture.channels().get(0).voltsAt(12), 1e-7);
        assertEquals(right * peak, capture.channels().get(1).voltsAt(12), 1e-7);
    }

    @Test
    void markersLeaderAndSignalLieWhereTheLayoutSays() throws Exception {
        SignalFile file = new SignalFile(SINE, SampleFormat.INTEGER_24, ChannelUse.MONO, true, 1);
        SignalLayout layout = file.layout().orElseThrow();
        Capture capture = written(file);
        assertEquals(layout.frames(), capture.size());
        assertEquals(-20, file.markerDbfs(), 1e-9);
        var wave = capture.channels().get(0);
        assertEquals(0, wave.voltsAt((int) layout.startMarker() / 2), 1e-6);
        assertEquals(0.1, wave.voltsAt((int) layout.leader() + 12), 1e-6);
        assertEquals(Math.pow(10, -0.5), wave.voltsAt((int) layout.signal() + 12), 1e-6);
        assertEquals(0, wave.voltsAt((int) layout.signalEnd() + 12), 1e-6);
        Alignment.Found found = (Alignment.Found) Alignment.find(layout, file.markerDbfs(), wave);
        assertEquals((double) layout.signal() / RATE, found.signalFromSeconds(), 1e-3 / RATE);
        assertEquals(1, found.gainRatio(), 1e-4);
        assertFalse(found.inverted());
    }

    @Test
    void fullScaleIsLimitedAndSaid() throws Exception {
        Stimulus full = Stimulus.of(new TestSignal.Sine(1000, 0, 1), RATE, true);
        SignalFile file = plain(full, SampleFormat.INTEGER_24);
        assertEquals("topStep", file.remarks().get(0).key());
        SignalFile.Written made = file.write(folder.resolve("full.wav"), ratio -> true);
        // A thousand crests lie a step beyond the last one, and get back to it by an eighth of the dithers; a thousand
        // troughs lie on the last
        // step, and get beyond it by an eighth.
        assertEquals(1000, made.limited(), 60);
        assertTrue(plain(SINE, SampleFormat.INTEGER_24).remarks().isEmpty());
        assertEquals(
                0,
                plain(full, SampleFormat.FLOAT_32)
                        .write(folder.resolve("float.wav"), r -> true)
                        .limited());
    }

    @Test
    void stoppingLeavesNothingBehind() throws Exception {
        Path path = folder.resolve("stopped.wav");
        SignalFile file = plain(SINE, SampleFormat.INTEGER_16);
        assertThrows(CancellationException.class, () -> file.write(path, ratio -> ratio < 0.5));
        try (var left = Files.list(folder)) {
            assertEquals(List.of(), left.toList());
        }
    }

    @Test
    void aLongFileIsRefusedBeforeItIsBegun() {
        Stimulus hours = Stimulus.of(new TestSignal.Sine(1000, -10, 4 * 3600), 192_000, true);
        SignalFile file = new SignalFile(hours, SampleFormat.FLOAT_32, ChannelUse.BOTH, false, 1);
        CaptureException refused =
                assertThrows(CaptureException.class, () -> file.write(folder.resolve("long.wav"), ratio -> true));
        assertTrue(refused.getMessage().contains("more than a WAV file can hold"), refused.getMessage());
    }

    @Test
    void theFolderMustBeThere() {
        CaptureException refused = assertThrows(CaptureException.class, () -> plain(SINE, SampleFormat.INTEGER_16)
                .write(folder.resolve("none/sine.wav"), ratio -> true));
        assertTrue(refused.getMessage().contains("folder does not exist"), refused.getMessage());
    }
}
