// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CsvWaveformTest {
    @TempDir
    Path folder;

    private Capture read(String text) throws IOException, CaptureException {
        return CsvWaveform.read(Files.writeString(folder.resolve("scope.csv"), text));
    }

    private String refusal(String text) {
        String message = assertThrows(CaptureException.class, () -> read(text)).getMessage();
        assertTrue(message.startsWith("scope.csv") && message.endsWith("."), message);
        return message;
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "0,1.5,-2\n0.001,2.5,-3\n0.002,3.5,-4\n",
                "time,a,b\n0,1.5,-2\n0.001,2.5,-3\n0.002,3.5,-4",
                "time;a;b\r\n0;1,5;-2\r\n0,001;2,5;-3\r\n0,002;3,5;-4\r\n",
                "0;1.5;-2\n0.001;2.5;-3\n0.002;3.5;-4\n\n\n",
                "\uFEFF0\t1,5\t-2\n1e-3\t2.5\t-3\n2E-3\t3.5\t-4\n",
                "\uFEFF\"t (s)\",\"a\",\"b\"\r\n\"-0.001\",\"1.5\",\"-2\"\r\n0,2.5,-3\r\n.001,3.5,-4\r\n",
                "\n 0 , 1.5 , -2\n0.001,2.5,-3.\n+0.002,3.5,-40e-1\n"
            })
    void readsTheUsualForms(String text) throws Exception {
        Capture capture = read(text);
        assertEquals(1000, capture.sampleRateHz());
        assertArrayEquals(
                new double[] {1.5, 2.5, 3.5}, capture.channels().get(0).toArray());
        assertArrayEquals(new double[] {-2, -3, -4}, capture.channels().get(1).toArray());
        assertEquals("scope.csv", capture.sourceName());
        assertEquals("CSV, 2 channels, 1000 Hz", capture.formatText());
    }

    @Test
    void multipliesByTheVoltsOfAOne() throws Exception {
        Path file = Files.writeString(folder.resolve("scope.csv"), "t,a,b\n0,0.5,-2\n0.001,0.25,-3\n");
        Capture same = CaptureFile.read(file, new double[] {50});
        assertArrayEquals(new double[] {25, 12.5}, same.channels().get(0).toArray());
        assertArrayEquals(new double[] {-100, -150}, same.channels().get(1).toArray());
        Capture each = CaptureFile.read(file, new double[] {50, 0.5});
        assertArrayEquals(new double[] {25, 12.5}, each.channels().get(0).toArray());
        assertArrayEquals(new double[] {-1, -1.5}, each.channels().get(1).toArray());
        // The times keep their unit.
        assertEquals(1000, each.sampleRateHz());
        assertEquals(
                "scope.csv has 2 channels, but volts per full scale are given for 3. Give one value, or one for each"
                        + " channel.",
                assertThrows(CaptureException.class, () -> CaptureFile.read(file, new double[] {1, 2, 3}))
                        .getMessage());
        assertThrows(IllegalArgumentException.class, () -> CaptureFile.read(file, new double[] {-1}));
        Path huge = Files.writeString(folder.resolve("huge.csv"), "0,1\n0.001,1e308\n");
        assertTrue(assertThrows(CaptureException.class, () -> CaptureFile.read(huge, new double[] {50}))
                .getMessage()
                .startsWith("huge.csv: line 2, column 2"));
    }

    @ParameterizedTest
    @ValueSource(ints = {6, 7, 9, 12})
    void takesTheRateFromRoundedTimes(int digits) throws Exception {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < 4800; i++) {
            text.append(String.format(
                    Locale.ROOT, "%." + digits + "f,%.9f%n", i / 48_000.0, Math.sin(2 * Math.PI * i / 48)));
        }
        Capture capture = read(text.toString());
        assertEquals(48_000, capture.sampleRateHz());
        ChannelAnalysis analysis =
                WaveformAnalyzer.analyze(capture.channels().get(0), AnalysisSettings.forResistance(4));
        assertEquals(1000, analysis.frequencyHz(), 1e-4);
        assertEquals(0.125, analysis.powerWatts(), 1e-7);
    }

    private static String significant(double seconds, int digits) {
        return new BigDecimal(seconds).round(new MathContext(digits)).toPlainString();
    }

    @ParameterizedTest
    @CsvSource({
        "5, 48000, 0",
        "5, 44100, 0",
        "5, 22050, -0.025",
        "4, 96000, 0",
        "6, 48000, 1.5",
        "5, 8000, 0",
        "6, 192000, 0"
    })
    void takesTheRateFromTimesOfAFewSignificantDigits(int digits, int rateHz, double startSeconds) throws Exception {
        // Late times lose decimals: at 5 digits those from 0.1 s on are written in steps of 10 microseconds.
        StringBuilder text = new StringBuilder("t,v\n");
        for (int i = 0; i < rateHz / 2; i++) {
            text.append(significant(startSeconds + (double) i / rateHz, digits))
                    .append(String.format(Locale.ROOT, ",%.9f%n", Math.sin(2 * Math.PI * 1000 * i / rateHz)));
        }
        Capture capture = read(text.toString());
        assertEquals(rateHz, capture.sampleRateHz());
        ChannelAnalysis analysis =
                WaveformAnalyzer.analyze(capture.channels().get(0), AnalysisSettings.forResistance(4));
        assertEquals(1000, analysis.frequencyHz(), 1e-4);
    }

    @ParameterizedTest
    @ValueSource(ints = {5, 6, 7})
    void takesTheRoundestRateThatTheDigitsAllow(int digits) throws Exception {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < 400; i++) {
            text.append(String.format(Locale.ROOT, "%." + digits + "f,1%n", i / 8000.0));
        }
        assertEquals(8000, read(text.toString()).sampleRateHz());
    }

    @Test
    void namesTheGapAmongTimesOfAFewDigits() {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < 4801; i++) {
            if (i != 2000) {
                text.append(significant(i / 48_000.0, 5)).append(",0.5\n");
            }
        }
        assertTrue(refusal(text.toString()).contains("at line 2001 the step is 0.000042 s"));
        StringBuilder even = new StringBuilder();
        for (int i = 0; i < 1000; i++) {
            even.append(String.format(Locale.ROOT, "%.3f,0.5%n", (i < 500 ? i : i + 1) / 1000.0));
        }
        assertTrue(refusal(even.toString()).contains("at line 501 the step is 0.002 s instead of 0.001 s"));
    }

    @Test
    void refusesTimesThatTellNoRate() {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < 500; i++) {
            text.append(String.format(Locale.ROOT, "%.3f,0.5%n", 1.5 + i / 8000.0));
        }
        assertTrue(refusal(text.toString()).contains("too few digits"));
        assertTrue(refusal("-1e308,1\n1e308,2\n").contains("no recorder does"));
        assertTrue(refusal("0,1\n1e-320,2\n").contains("no recorder does"));
        assertTrue(refusal("0,1\n1e300,2\n2e300,3\n").contains("no recorder does"));
    }

    @Test
    void refusesALineThatHasNoEnd() {
        assertTrue(refusal("t,v\r\n0," + "1".repeat(70_000)).contains("line 2 is longer than 65536 characters"));
    }

    @Test
    void namesLineAndColumnOfWhatIsNoNumber() {
        assertTrue(refusal("t,a\n0,1\n0.1,NaN\n").contains("line 3, column 2 reads \"NaN\", which is no number"));
        assertTrue(refusal("t,a,b\n0,1,2\n0.1,,3\n").contains("line 3, column 2 is empty"));
        assertTrue(refusal("0,1\n0.1,overload\n").contains("line 2, column 2 reads \"overload\""));
        assertTrue(refusal("0,1\nx,2\n").contains("line 2, column 1"));
        assertTrue(refusal("0,1\n0.1,Infinity\n").contains("no number"));
        assertTrue(refusal("0,1\n0.1,1e999\n").contains("no number"));
        assertTrue(refusal("0,1\n0.1,0x1p3\n").contains("no number"));
        assertTrue(refusal("0,1\n0.1,2d\n").contains("no number"));
        assertTrue(refusal("0,1\n0.1," + "z".repeat(500) + "\n").length() < 200);
    }

    @Test
    void namesTheLineWhereTheTableBreaks() {
        assertTrue(refusal("t,a\n0,1\n0.1,2,3\n").contains("line 3 has 3 columns, but the lines before have 2"));
        assertTrue(refusal("0,1\n0.1,2\n\n0.2,3\n").contains("line 3 is blank"));
        assertTrue(refusal("1\n2\n3\n").contains("line 1 has 1 column;"));
        assertTrue(refusal("t,a\nu,b\n0,1\n").contains("line 2, column 1"));
    }

    @Test
    void namesTheLineWhereTheTimesAreUneven() {
        StringBuilder gap = new StringBuilder("t,v\n");
        for (int i = 0; i < 1000; i++) {
            gap.append(String.format(Locale.ROOT, "%.6f,0.5%n", (i < 500 ? i : i + 1) / 10_000.0));
        }
        // The step from sample 500 to 501 (line 502, as the title is line 1) is two steps long.
        assertTrue(refusal(gap.toString()).contains("at line 502 the step is 0.0002 s instead of 0.0001 s"));
        assertTrue(refusal("0,1\n0.100,1\n0.205,1\n0.300,1\n").contains("not evenly spaced"));
        assertTrue(refusal("0,1\n0.1,1\n0.05,1\n0.2,1\n").contains("not evenly spaced"));
        StringBuilder drift = new StringBuilder();
        for (int i = 0; i < 1000; i++) {
            drift.append(String.format(Locale.ROOT, "%.9f,0.5%n", 0.001 * i + 1e-9 * i * i));
        }
        assertTrue(refusal(drift.toString()).contains("not evenly spaced"));
    }

    @Test
    void refusesTimesThatDoNotRise() {
        assertTrue(refusal("0,1\n0,2\n0,3\n").contains("do not rise"));
        assertTrue(refusal("2,1\n1,2\n0,3\n").contains("do not rise"));
    }

    @Test
    void refusesWhatHoldsTooLittle() throws IOException {
        assertTrue(refusal("").contains("no samples"));
        assertTrue(refusal("t,a\n").contains("no samples"));
        assertTrue(refusal("0,1\n").contains("only one sample"));
        Path binary = Files.write(folder.resolve("scope.csv"), new byte[] {(byte) 0xFF, (byte) 0xFE, 0, (byte) 0xC0});
        assertTrue(assertThrows(CaptureException.class, () -> CsvWaveform.read(binary))
                .getMessage()
                .contains("neither a WAV file nor text"));
        assertThrows(CaptureException.class, () -> CsvWaveform.read(folder.resolve("none.csv")));
    }
}
