// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CancellationException;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.model.Reading;

/** The levels of a logged reading, and the way back from the log to a capture. */
class LevelChoiceTest {
    private LoggedSweep sweep;
    private Reading reading;
    private List<LevelChoice> levels;

    @BeforeEach
    void logASweep(@TempDir Path folder) throws Exception {
        sweep = LoggedSweep.in(folder);
        reading = sweep.entry().reading().orElseThrow();
        levels = LevelChoice.of(reading);
    }

    private CaptureOrder order(int level) {
        return CaptureOrder.logged(
                reading, levels.get(level).used(), sweep.folder().resolve("captures"), sweep.project());
    }

    private LoadedCapture load(int level) throws Exception {
        return new CaptureLoading(order(level), () -> false).run(Waves.NO_PROGRESS);
    }

    @Test
    void listsTheLevelsFromLowToHighWithWhatEachGave() {
        assertEquals(4, levels.size());
        // 12 V peak into the load's own resistance, 20 log10(12 / 40) dB.
        double watts = 72 / reading.channels().get(0).loadOhms();
        assertTrue(
                levels.get(0).text(2).startsWith(String.format(Locale.ROOT, "-10.46 dB   %.4g / ", watts)),
                levels.get(0).text(2));
        assertFalse(levels.get(0).text(2).contains("clipped"));
        assertTrue(levels.get(3).text(2).contains("clipped"));
    }

    /** The end point (1 % of distortion) lies between 24 V, which is clean, and 28 V, which is cut at 27 V or 26 V. */
    @Test
    void namesTheLevelNearestToTheEndPoint() {
        List<Integer> marked = IntStream.range(0, 4)
                .filter(i -> levels.get(i).isEndPoint())
                .boxed()
                .toList();
        assertTrue(marked.contains(2), marked.toString());
        assertTrue(marked.stream().allMatch(i -> i == 1 || i == 2), marked.toString());
        assertTrue(levels.get(2).text(2).contains("nearest to the end point"));
    }

    @Test
    void readsTheSameFiguresThatWereLogged() throws Exception {
        LoadedCapture capture = load(3);
        for (int channel = 0; channel < 2; channel++) {
            var logged = reading.channels().get(channel).sweep().get(3);
            var analysis = capture.channels().get(channel).tone().orElseThrow().analysis();
            assertEquals(logged.powerWatts(), analysis.powerWatts(), 1e-9);
            assertEquals(logged.thdFRatio(), analysis.thdFRatio(), 1e-12);
        }
    }

    @Test
    void tellsTheUncertaintyOfVoltsAndPower() throws Exception {
        Certainty certainty = Certainty.of(sweep.project(), reading, levels.get(1));
        List<Figure> figures = Figures.of(load(1).channels(), certainty);
        Figure power = figures.stream()
                .filter(f -> f.name().equals("Power"))
                .findFirst()
                .orElseThrow();
        assertTrue(power.explanation(1).contains("U = "), power.explanation(1));
        assertTrue(power.explanation(1).contains("W (k = 2, 95 %)"), power.explanation(1));
        Figure volts = figures.stream()
                .filter(f -> f.name().equals("Output, RMS"))
                .findFirst()
                .orElseThrow();
        assertTrue(volts.explanation(0).contains("V (k = 2, 95 %)"), volts.explanation(0));
    }

    @Test
    void refusesACaptureThatWasChanged() throws IOException {
        Path file = sweep.captureFile(2);
        byte[] content = Files.readAllBytes(file);
        content[content.length - 1] ^= 1;
        Files.write(file, content);
        String message =
                assertThrows(CaptureMissingException.class, () -> load(2)).getMessage();
        assertTrue(message.contains("L03.wav was changed after it was logged"), message);
        assertTrue(message.contains("Bring"), message);
    }

    @Test
    void saysThatACaptureIsMissing() throws IOException {
        Files.delete(sweep.captureFile(0));
        String message =
                assertThrows(CaptureMissingException.class, () -> load(0)).getMessage();
        assertTrue(message.contains("The capture L01.wav is missing"), message);
        Files.delete(sweep.captureFile(0).getParent());
        assertThrows(CaptureMissingException.class, () -> load(0));
    }

    @Test
    void endsWhenSomethingElseIsWanted() {
        CaptureLoading loading = new CaptureLoading(order(0), () -> true);
        assertThrows(CancellationException.class, () -> loading.run(Waves.NO_PROGRESS));
    }
}
