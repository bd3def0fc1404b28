// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.stimulus;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.signal.Capture;
import org.ohmstead.signal.CaptureException;
import org.ohmstead.signal.SampleFormat;
import org.ohmstead.signal.WavFile;

class SignalSetTest {
    private static final SignalSet SHORT = new SignalSet(
            List.of(
                    new SignalSet.Item("sine-1kHz-overlap", new TestSignal.Sine(1000, -10, 1), false),
                    new SignalSet.Item("log-sweep", new TestSignal.LogSweep(20, 20_000, -20, 1, 0.1, 0.1), true),
                    new SignalSet.Item("own", new TestSignal.TwoTone(60, 7000, 4, -10, 1), false)),
            10);

    @TempDir
    Path folder;

    @Test
    void theStandardSetIsSeamlessAndFitsItsOverlap() {
        SignalSet set = SignalSet.standard(10);
        assertEquals(15, set.items().size());
        assertEquals("02-sine-1kHz-overlap.wav", set.fileName(1));
        for (int i = 0; i < set.items().size(); i++) {
            SignalFile file = set.file(i, SignalSet.Making.USUAL);
            assertTrue(file.stimulus().usable(), set.fileName(i));
            assertTrue(file.stimulus().facts().seamless(), set.fileName(i));
            assertTrue(
                    file.stimulus().remarks().stream()
                            .noneMatch(remark -> remark.key().startsWith("burst")),
                    set.fileName(i));
        }
        assertEquals(-10, set.file(1, SignalSet.Making.USUAL).stimulus().facts().rmsDbfs());
        // An eighth of the power of the end point.
        assertEquals(
                -19.0309,
                set.file(14, SignalSet.Making.USUAL).stimulus().facts().rmsDbfs(),
                1e-4);
        // It fits on anything: 16 bits, two channels, about ten minutes.
        assertTrue(set.bytes(SignalSet.Making.USUAL) < 150e6, "bytes " + set.bytes(SignalSet.Making.USUAL));
    }

    @Test
    void writesTheFilesAndBothFormsOfTheIndex() throws Exception {
        List<SignalFile.Written> written =
                SHORT.write(folder.resolve("set"), SignalSet.Making.USUAL, ratio -> ratio >= 0 && ratio <= 1);
        assertEquals(3, written.size());
        Capture first = WavFile.read(folder.resolve("set/01-sine-1kHz-overlap.wav"), new double[] {1});
        assertEquals("WAV 16-bit integer, 2 channels, 44100 Hz", first.formatText());
        String text = Files.readString(folder.resolve("set/index.txt"));
        String page = Files.readString(folder.resolve("set/index.html"));
        for (String both : List.of(text, page)) {
            assertTrue(both.contains("02-log-sweep.wav"), both);
            assertTrue(both.contains("Take the loudspeakers off"), both);
            assertTrue(both.contains("end point lies here"), both);
            assertTrue(both.contains("with markers for aligning a recording"), both);
            assertTrue(both.contains("60 Hz + 7 kHz"), both);
        }
        assertTrue(page.contains("<td class=\"n\">-10.00 dBFS</td>"), page);
        // Self-contained: it asks for nothing from elsewhere.
        assertFalse(page.contains("http") || page.contains("src=") || page.contains("url("), page);
        assertTrue(page.contains("@page"));
    }

    @Test
    void theIndexSpeaksGermanToo() {
        List<SignalFile> files = List.of(
                SHORT.file(0, SignalSet.Making.USUAL),
                SHORT.file(1, SignalSet.Making.USUAL),
                SHORT.file(2, SignalSet.Making.USUAL));
        SetIndex index = new SetIndex(SHORT, files, SignalSet.Making.USUAL, Locale.GERMAN);
        assertTrue(index.page().contains("<html lang=\"de\">"));
        assertTrue(index.text().contains("Klemmen Sie die Lautsprecher ab"), index.text());
        assertTrue(index.text().contains("-10,00 dBFS"), index.text());
    }

    @Test
    void stoppingKeepsWhatIsWhole() {
        SignalSet.Making making = new SignalSet.Making(48_000, SampleFormat.INTEGER_24, ChannelUse.MONO, 1);
        assertThrows(CancellationException.class, () -> SHORT.write(folder, making, ratio -> ratio < 0.4));
        assertTrue(Files.exists(folder.resolve("01-sine-1kHz-overlap.wav")));
        assertFalse(Files.exists(folder.resolve("03-own.wav")));
    }

    @Test
    void aFolderThatCannotBeMadeIsSaid() throws Exception {
        Path file = Files.writeString(folder.resolve("file"), "x");
        CaptureException refused =
                assertThrows(CaptureException.class, () -> SHORT.write(file, SignalSet.Making.USUAL, ratio -> true));
        assertTrue(refused.getMessage().contains("cannot be written to"), refused.getMessage());
    }
}
