// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class WavFileTest {
    private static final double[] ONE_VOLT = {1};

    @TempDir
    Path folder;

    /** Bytes from text (four-letter identifiers) and hexadecimal numbers, written apart. */
    private static byte[] bytes(String text) {
        List<Byte> bytes = new ArrayList<>();
        for (String word : text.trim().split("\\s+")) {
            if (word.startsWith("'")) {
                String letters = word.substring(1, word.length() - 1).replace('_', ' ');
                for (int i = 0; i < letters.length(); i++) {
                    bytes.add((byte) letters.charAt(i));
                }
            } else {
                for (int i = 0; i < word.length(); i += 2) {
                    bytes.add((byte) Integer.parseInt(word.substring(i, i + 2), 16));
                }
            }
        }
        byte[] result = new byte[bytes.size()];
        for (int i = 0; i < result.length; i++) {
            result[i] = bytes.get(i);
        }
        return result;
    }

    private Path file(String content) throws IOException {
        return Files.write(folder.resolve("take.wav"), bytes(content));
    }

    private Capture read(String content) throws IOException, CaptureException {
        return WavFile.read(file(content), ONE_VOLT);
    }

    private String refusal(String content) throws IOException {
        Path file = file(content);
        String message = assertThrows(CaptureException.class, () -> WavFile.read(file, ONE_VOLT))
                .getMessage();
        assertTrue(message.startsWith("take.wav "), message);
        assertTrue(message.endsWith("."), message);
        return message;
    }

    /** Format chunk body of 16 bytes: kind, channels, 48000 Hz, bytes per second (not used), frame bytes, bits. */
    private static String format(String kind, String channels, String frameBytes, String bits) {
        return "'fmt_' 10000000 " + kind + " " + channels + " 80BB0000 00000000 " + frameBytes + " " + bits + " ";
    }

    private static final String RIFF = "'RIFF' FF000000 'WAVE' ";
    private static final String MONO_16 = format("0100", "0100", "0200", "1000");

    @Test
    void readsSixteenBits() throws Exception {
        Capture capture = read(RIFF + MONO_16 + "'data' 08000000 0000 FF7F 0080 FFFF");
        assertEquals("WAV 16-bit integer, 1 channel, 48000 Hz", capture.formatText());
        assertEquals("take.wav", capture.sourceName());
        assertEquals(48_000, capture.sampleRateHz());
        assertArrayEquals(
                new double[] {0, 32767 / 32768.0, -1, -1 / 32768.0},
                capture.channels().get(0).toArray());
    }

    @Test
    void readsTwentyFourBitsInStereoWithAScaleForEachChannel() throws Exception {
        Path file = file(RIFF + format("0100", "0200", "0600", "1800") + "'data' 0C000000 000040 0000C0 010000 FFFFFF");
        Capture capture = WavFile.read(file, new double[] {40, 2});
        assertArrayEquals(
                new double[] {20, 40 / 8388608.0}, capture.channels().get(0).toArray());
        assertArrayEquals(
                new double[] {-1, -2 / 8388608.0}, capture.channels().get(1).toArray());
        assertEquals("WAV 24-bit integer, 2 channels, 48000 Hz", capture.formatText());
    }

    @Test
    void readsThirtyTwoBitsAndBothFloatingPointSizes() throws Exception {
        assertArrayEquals(
                new double[] {0.5, -1},
                read(RIFF + format("0100", "0100", "0400", "2000") + "'data' 08000000 00000040 00000080")
                        .channels()
                        .get(0)
                        .toArray());
        // 1.5 and -0.25 of IEEE 754.
        assertArrayEquals(
                new double[] {1.5, -0.25},
                read(RIFF + format("0300", "0100", "0400", "2000") + "'data' 08000000 0000C03F 000080BE")
                        .channels()
                        .get(0)
                        .toArray());
        assertArrayEquals(
                new double[] {1.5},
                read(RIFF + format("0300", "0100", "0800", "4000") + "'data' 08000000 000000000000F83F")
                        .channels()
                        .get(0)
                        .toArray());
    }

    @Test
    void readsExtensibleFormat() throws Exception {
        String extensible = "'fmt_' 28000000 FEFF 0100 80BB0000 00000000 0300 1800 1600 1800 04000000 ";
        String tail = "000000001000800000AA00389B71 ";
        Capture integer = read(RIFF + extensible + "0100" + tail + "'data' 03000000 000040 00");
        assertArrayEquals(new double[] {0.5}, integer.channels().get(0).toArray());
        assertTrue(refusal(RIFF + extensible + "0100" + tail.replace("71", "72") + "'data' 03000000 000040 00")
                .contains("not known"));
        assertTrue(refusal(RIFF + extensible + "0300" + tail + "'data' 03000000 000040 00")
                .contains("cannot be read"));
    }

    @Test
    void readsChunksInAnyOrderWithPadBytesAndUnknownOnes() throws Exception {
        String odd = "'LIST' 03000000 616263 00 ";
        String data = "'data' 02000000 0040 ";
        for (String order : new String[] {odd + MONO_16 + odd + data + odd, data + odd + MONO_16, MONO_16 + data}) {
            assertArrayEquals(
                    new double[] {0.5}, read(RIFF + order).channels().get(0).toArray());
        }
        String oddData = "'data' 03000000 000040 00 ";
        assertArrayEquals(
                new double[] {0.5},
                read(RIFF + oddData + format("0100", "0100", "0300", "1800"))
                        .channels()
                        .get(0)
                        .toArray());
    }

    @Test
    void readsWideFiles() throws Exception {
        String sizes = "'ds64' 1C000000 0000000000000000 0400000000000000 0000000000000000 00000000 ";
        String wide = "'RF64' FFFFFFFF 'WAVE' ";
        assertEquals(
                2, read(wide + sizes + MONO_16 + "'data' FFFFFFFF 0040 0000").size());
        assertTrue(refusal(wide + MONO_16 + "'data' FFFFFFFF 0040 0000").contains("without a valid size"));
        String lying = sizes.replace("04000000", "00000040");
        assertTrue(refusal(wide + lying + MONO_16 + "'data' FFFFFFFF 0040 0000").contains("promises"));
        String negative = sizes.replace("0400000000000000", "04000000000000F0");
        assertTrue(
                refusal(wide + negative + MONO_16 + "'data' FFFFFFFF 0040 0000").contains("without a valid size"));
    }

    @Test
    void saysHowManyFramesAreMissing() throws Exception {
        // A header may claim two gigabytes; only the file's own length is believed.
        String message = refusal(RIFF + MONO_16 + "'data' 00000080 0000 0000 0000");
        assertTrue(message.contains("promises 1073741824 frames, but only 3 are there"), message);
        assertTrue(message.contains("Copy the file again, or record again."), message);
    }

    @Test
    void recognisesUnfinishedRecordings() throws Exception {
        assertTrue(refusal("'RIFF' 24000000 'WAVE' " + MONO_16 + "'data' 00000000 0000 0000")
                .contains("unfinished"));
        assertTrue(refusal("'RIFF' 00000000 'WAVE' " + MONO_16 + "'data' 00000000 0000 0000")
                .contains("unfinished"));
        assertTrue(refusal("'RIFF' FFFFFFFF 'WAVE' " + MONO_16 + "'data' FFFFFFFF 0000 0000")
                .contains("unfinished"));
    }

    @Test
    void refusesWhatHoldsNoSamples() throws Exception {
        assertTrue(
                refusal("'RIFF' 24000000 'WAVE' " + MONO_16 + "'data' 00000000").contains("no samples"));
        assertTrue(refusal(RIFF + MONO_16).contains("no data chunk"));
        assertTrue(refusal(RIFF + "'data' 02000000 0000").contains("no format chunk"));
        assertTrue(refusal("'RIFF'").contains("only 4 bytes"));
        assertTrue(refusal("'RIFX' 00000000 'WAVE' 00000000").contains("does not begin as one"));
        assertTrue(refusal("'RIFF' 00000000 'AVI_' 00000000").contains("does not begin as one"));
    }

    @ParameterizedTest
    @CsvSource({
        // Kind, channels, frame bytes, bits of the header; part of the message.
        "0100, 0100, 0400, 1000, contradicts itself", "0100, 0200, 0200, 1000, contradicts itself",
        "0100, 0100, 0200, 0C00, cannot be read", "0100, 0100, 0100, 0800, cannot be read",
        "0300, 0100, 0200, 1000, cannot be read", "0200, 0100, 0200, 1000, cannot be read",
        "0100, 0000, 0000, 1000, states 0 channels", "0100, FFFF, FEFF, 1000, states 65535 channels"
    })
    void refusesHeadersThatMakeNoSense(String kind, String channels, String frameBytes, String bits, String part)
            throws Exception {
        String content = RIFF + format(kind, channels, frameBytes, bits) + "'data' 04000000 0000 0000";
        assertTrue(refusal(content).contains(part));
    }

    @Test
    void refusesDamagedData() throws Exception {
        assertTrue(refusal(RIFF + format("0100", "0200", "0400", "1000") + "'data' 06000000 0000 0000 0000")
                .contains("inside a frame"));
        // A NaN of IEEE 754.
        assertTrue(refusal(RIFF + format("0300", "0100", "0400", "2000") + "'data' 08000000 00000000 0000C07F")
                .contains("no number in frame 2 of channel 1"));
        assertTrue(refusal(RIFF + "'fmt_' 08000000 0100010080BB0000 'data' 02000000 0000")
                .contains("too short"));
        assertTrue(refusal(RIFF + "'fmt_' FFFFFF7F 0100010080BB0000").contains("beyond the end"));
    }

    @Test
    void survivesAnyByteBeingCutOffOrChanged() throws Exception {
        byte[] sound = bytes(RIFF + "'LIST' 03000000 616263 00 " + MONO_16 + "'data' 06000000 0040 0000 0000");
        Path file = folder.resolve("damaged.wav");
        for (int i = 0; i < sound.length; i++) {
            Files.write(file, Arrays.copyOf(sound, i));
            assertThrows(CaptureException.class, () -> WavFile.read(file, ONE_VOLT));
            for (int value : new int[] {0, 1, 0x7F, 0x80, 0xFF}) {
                byte[] changed = sound.clone();
                changed[i] = (byte) value;
                Files.write(file, changed);
                try {
                    assertTrue(WavFile.read(file, ONE_VOLT).size() <= 6);
                } catch (CaptureException e) {
                    assertTrue(e.getMessage().startsWith("damaged.wav "), e.getMessage());
                }
            }
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {16, 24, 32, 0})
    void writesWhatItReads(int bits) throws Exception {
        double[] left = Waves.withNoise(new double[10_001], 3, bits);
        double[] right = Waves.withNoise(new double[10_001], 0.1, bits + 1);
        Capture capture =
                new Capture(List.of(Waveform.of(44_100, left), Waveform.of(44_100, right)), "made here", "numbers");
        Path file = folder.resolve("written.wav");
        double[] scales = {20, 1};
        if (bits == 0) {
            WavFile.writeFloat(file, capture, scales);
        } else {
            WavFile.write(file, capture, bits, scales);
        }
        Capture back = WavFile.read(file, scales);
        assertEquals(44_100, back.sampleRateHz());
        double step = bits == 0 ? 0x1p-24 : Math.scalb(1.0, 1 - bits);
        for (int i = 0; i < left.length; i++) {
            assertEquals(left[i], back.channels().get(0).voltsAt(i), 0.51 * 20 * step);
            assertEquals(right[i], back.channels().get(1).voltsAt(i), 0.51 * step);
        }
        // A second writing of what was read gives the same bytes.
        byte[] first = Files.readAllBytes(file);
        if (bits == 0) {
            WavFile.writeFloat(file, back, scales);
        } else {
            WavFile.write(file, back, bits, scales);
        }
        assertArrayEquals(first, Files.readAllBytes(file));
        try (var files = Files.list(folder)) {
            assertEquals(1, files.count());
        }
    }

    @Test
    void padsOddData() throws Exception {
        Path file = folder.resolve("odd.wav");
        WavFile.write(file, capture(0.5), 24, ONE_VOLT);
        assertEquals(48, Files.size(file));
        assertEquals(0.5, WavFile.read(file, ONE_VOLT).channels().get(0).voltsAt(0));
    }

    private static Capture capture(double... samples) {
        return new Capture(List.of(Waveform.of(48_000, samples)), "made here", "numbers");
    }

    @Test
    void doesNotClipSilently() {
        Path file = folder.resolve("loud.wav");
        String message = assertThrows(
                        CaptureException.class, () -> WavFile.write(file, capture(0, -20.5, 3), 16, new double[] {20}))
                .getMessage();
        assertTrue(message.contains("sample 2 of channel 1 is -20.5") && message.contains("20 V"), message);
        assertFalse(Files.exists(file));
    }

    @Test
    void refusesWrongScalesRatesAndPlaces() throws Exception {
        Path file = file(RIFF + MONO_16 + "'data' 02000000 0000");
        assertThrows(IllegalArgumentException.class, () -> WavFile.read(file, new double[0]));
        assertThrows(IllegalArgumentException.class, () -> WavFile.read(file, new double[] {0}));
        assertThrows(IllegalArgumentException.class, () -> WavFile.write(file, capture(0), 20, ONE_VOLT));
        String scales = assertThrows(CaptureException.class, () -> WavFile.read(file, new double[] {1, 2}))
                .getMessage();
        assertTrue(scales.contains("has 1 channel, but volts per full scale are given for 2"), scales);
        Path missing = folder.resolve("missing").resolve("take.wav");
        assertTrue(assertThrows(CaptureException.class, () -> WavFile.read(missing, ONE_VOLT))
                .getMessage()
                .endsWith("take.wav does not exist. Check the name."));
        assertTrue(assertThrows(CaptureException.class, () -> WavFile.write(missing, capture(0), 16, ONE_VOLT))
                .getMessage()
                .contains("Check that the folder is there"));
        Capture odd = new Capture(List.of(Waveform.of(1000.5, new double[] {0})), "made here", "numbers");
        assertThrows(CaptureException.class, () -> WavFile.write(file, odd, 16, ONE_VOLT));
    }

    @Test
    void kindIsToldByContent() throws Exception {
        Path sound = Files.write(folder.resolve("a.csv"), bytes(RIFF + MONO_16 + "'data' 02000000 0040"));
        assertEquals(
                20, CaptureFile.read(sound, new double[] {40}).channels().get(0).voltsAt(0));
        Path table = Files.writeString(folder.resolve("b.wav"), "0,1\n0.001,2\n");
        assertEquals(2, CaptureFile.read(table, ONE_VOLT).channels().get(0).voltsAt(1));
        assertEquals(
                80, CaptureFile.read(table, new double[] {40}).channels().get(0).voltsAt(1));
    }

    private static String readingRefusal(Path file) {
        return assertThrows(CaptureException.class, () -> CaptureFile.read(file, ONE_VOLT))
                .getMessage();
    }

    @Test
    void saysInWordsWhyAFileCannotBeOpened() throws Exception {
        Path missing = folder.resolve("none.wav");
        assertEquals(missing + " does not exist. Check the name.", readingRefusal(missing));
        assertEquals(folder + " is a folder, not a file. Choose a file inside it.", readingRefusal(folder));
        assertEquals(
                folder + " is a folder, not a file. Choose a file inside it.",
                assertThrows(CaptureException.class, () -> WavFile.read(folder, ONE_VOLT))
                        .getMessage());
        assertEquals(
                folder + " is a folder, not a file. Choose a file inside it.",
                assertThrows(CaptureException.class, () -> CsvWaveform.read(folder))
                        .getMessage());
        Path file = Files.createFile(folder.resolve("locked.wav"));
        assertEquals("locked.wav is empty. Record or copy the file again.", readingRefusal(file));
        CaptureException locked = FileFailure.reading(file, new AccessDeniedException(file.toString()));
        assertTrue(locked.getMessage().startsWith(file + " may not be read. Ask"), locked.getMessage());
        CaptureException broken = FileFailure.reading(file, new IOException("Input/output error"));
        assertTrue(
                broken.getMessage().startsWith(file + " cannot be read: Input/output error. Check"),
                broken.getMessage());
        CaptureException occupied = assertThrows(
                CaptureException.class, () -> WavFile.write(file.resolve("a.wav"), capture(0), 16, ONE_VOLT));
        assertTrue(
                occupied.getMessage().contains("a.wav cannot be written: what should be its folder is a file."),
                occupied.getMessage());
        assertFalse(occupied.getMessage().contains("Exception"), occupied.getMessage());
    }
}
