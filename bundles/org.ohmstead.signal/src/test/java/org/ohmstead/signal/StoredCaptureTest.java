// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class StoredCaptureTest {
    /** Beyond the least stretch, so that the usual sizes can be used. */
    private static final int FRAMES = 1_300_000;

    private static final double[] FIFTY = {50};
    private static final AnalysisSettings SETTINGS = AnalysisSettings.forResistance(4);

    @TempDir
    Path folder;

    private Path recorded(int frames) throws CaptureException {
        Waveform first = Waveform.of(
                Waves.RATE_HZ,
                Waves.withNoise(
                        Waves.sampled(frames, 997.31, 0, phase -> 28 * Math.sin(phase) + 0.02 * Math.sin(2 * phase)),
                        0.001,
                        1));
        Waveform second = Waveform.of(
                Waves.RATE_HZ,
                Waves.sampled(frames, 61.7, 0, phase -> Math.max(-8, Math.min(8, 10 * Math.sin(phase))) + 0.1));
        Path file = folder.resolve("long.wav");
        WavFile.write(file, new Capture(List.of(first, second), "made", ""), 24, FIFTY);
        return file;
    }

    @Test
    void analysesALongFileInPiecesAsItDoesAShortOneAsAWhole() throws Exception {
        Path file = recorded(FRAMES);
        try (StoredCapture whole = StoredCapture.open(file, FIFTY);
                StoredCapture pieces = StoredCapture.open(file, FIFTY, FRAMES - 1)) {
            assertFalse(whole.isLong());
            assertTrue(pieces.isLong());
            assertEquals(whole.channels(), pieces.channels());
            assertEquals("long.wav", pieces.sourceName());
            assertEquals("WAV 24-bit integer, 2 channels, 48000 Hz", pieces.formatText());
            for (int channel = 0; channel < 2; channel++) {
                List<Double> shares = new ArrayList<>();
                ChannelAnalysis one = whole.analyze(channel, SETTINGS, shares::add);
                assertTrue(shares.isEmpty());
                ChannelAnalysis other = pieces.analyze(channel, SETTINGS, shares::add);
                assertEquals(one.frequencyHz(), other.frequencyHz(), 1e-7 * one.frequencyHz());
                assertEquals(one.outputVoltsRms(), other.outputVoltsRms(), 1e-5 * one.outputVoltsRms());
                assertEquals(one.outputVoltsPeak(), other.outputVoltsPeak(), 1e-5 * one.outputVoltsPeak());
                assertEquals(one.dcVolts(), other.dcVolts(), 2e-4);
                assertEquals(one.thdFRatio(), other.thdFRatio(), 2e-6);
                assertEquals(one.sinadDb(), other.sinadDb(), 0.02);
                assertEquals(one.clipping().driveOverOnsetDb(), other.clipping().driveOverOnsetDb(), 1e-3);
                assertEquals(1, shares.get(shares.size() - 1));
                assertTrue(shares.get(0) > 0 && shares.get(0) < 0.1, shares::toString);
            }
        }
    }

    @Test
    void analysesAsAWholeWhatIsNotLonger() throws Exception {
        Path file = recorded(20_000);
        ChannelAnalysis expected =
                WaveformAnalyzer.analyze(WavFile.read(file, FIFTY).channels().get(1), SETTINGS);
        try (StoredCapture capture = StoredCapture.open(file, FIFTY, 20_000)) {
            assertEquals(expected, capture.analyze(1, SETTINGS, share -> {}));
        }
        Path table = Files.writeString(folder.resolve("table.csv"), table());
        try (StoredCapture capture = StoredCapture.open(table, new double[] {1}, 10)) {
            assertEquals(1, capture.channels());
            assertEquals(1000, capture.analyze(0, SETTINGS, share -> {}).frequencyHz(), 1e-3);
        }
    }

    private static String table() {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < 480; i++) {
            text.append(i / 48_000.0)
                    .append(',')
                    .append(Math.sin(2 * Math.PI * i / 48))
                    .append('\n');
        }
        return text.toString();
    }

    @Test
    void readsWideFilesOfBothNames() throws Exception {
        byte[] plain = Files.readAllBytes(recorded(2000));
        double[] expected = WavFile.read(folder.resolve("long.wav"), FIFTY)
                .channels()
                .get(1)
                .toArray();
        for (String name : List.of("RF64", "BW64")) {
            Path file = Files.write(folder.resolve(name + ".wav"), wide(name, plain));
            assertArrayEquals(
                    expected, CaptureFile.read(file, FIFTY).channels().get(1).toArray());
            try (StoredCapture capture = StoredCapture.open(file, FIFTY, 1999)) {
                assertTrue(capture.isLong());
            }
        }
    }

    /** The same samples under a header whose sizes stand in a chunk of their own. */
    private static byte[] wide(String name, byte[] plain) {
        byte[] data = Arrays.copyOfRange(plain, 44, plain.length);
        ByteBuffer buffer = ByteBuffer.allocate(80 + data.length).order(ByteOrder.LITTLE_ENDIAN);
        buffer.put(name.getBytes(StandardCharsets.US_ASCII)).putInt(-1);
        buffer.put("WAVEds64".getBytes(StandardCharsets.US_ASCII)).putInt(28);
        buffer.putLong(72 + data.length).putLong(data.length).putLong(0).putInt(0);
        buffer.put(plain, 12, 24);
        buffer.put("data".getBytes(StandardCharsets.US_ASCII)).putInt(-1).put(data);
        return buffer.array();
    }

    @Test
    void refusesScalesThatDoNotFit() throws Exception {
        Path file = recorded(2000);
        String message = assertThrows(
                        CaptureException.class, () -> StoredCapture.open(file, new double[] {1, 2, 3}, 1000))
                .getMessage();
        assertTrue(message.contains("volts per full scale are given for 3"), message);
    }

    @Test
    void namesTheFrameOfAValueThatIsNoNumber() throws Exception {
        double[] samples = Waves.sampled(FRAMES, 1000, 0, Math::sin);
        Path file = folder.resolve("float.wav");
        WavFile.writeFloat(file, new Capture(List.of(Waveform.of(Waves.RATE_HZ, samples)), "made", ""), FIFTY);
        byte[] bytes = Files.readAllBytes(file);
        // A number that is none, in a frame outside the stretch that is looked at first.
        ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).putFloat(bytes.length - 4 * 1000, Float.NaN);
        Files.write(file, bytes);
        try (StoredCapture capture = StoredCapture.open(file, FIFTY, FRAMES - 1)) {
            String message = assertThrows(CaptureException.class, () -> capture.analyze(0, SETTINGS, share -> {}))
                    .getMessage();
            assertTrue(message.contains("no number in frame " + (FRAMES - 999) + " of channel 1"), message);
        }
    }

    @Test
    void limitsTheWholeByMemory() {
        long most = StoredCapture.mostFramesAtOnce();
        assertTrue(most >= 1 << 18 && most <= 1 << 22, () -> "limit " + most);
        assertTrue(most <= 1 << 18 || most * 128 <= Runtime.getRuntime().maxMemory());
    }
}
