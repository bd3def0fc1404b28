// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import org.ohmstead.measure.Acquisition;
import org.ohmstead.model.CaptureUsed;
import org.ohmstead.signal.Capture;
import org.ohmstead.signal.CaptureException;
import org.ohmstead.signal.WavFile;
import org.ohmstead.testlog.CaptureStore;
import org.ohmstead.testlog.TestLogException;
import org.ohmstead.units.text.Said;

/** Puts the recordings of a run into the project's store, each as it comes. */
final class CaptureKeeper {
    private final CaptureStore store;
    private final List<KeptCapture> kept = new ArrayList<>();
    private int count;

    CaptureKeeper(Path projectFolder) {
        this.store = new CaptureStore(projectFolder);
    }

    synchronized int count() {
        return count;
    }

    synchronized List<KeptCapture> kept() {
        return List.copyOf(kept);
    }

    synchronized void keep(Acquisition acquisition) throws TestLogException {
        count++;
        String name = String.format(Locale.ROOT, "recording-%02d", count);
        kept.add(stored(acquisition.output(), name, acquisition.voltsPerFullScale(), false));
        if (acquisition.input().isPresent()) {
            Capture input = acquisition.input().get();
            kept.add(stored(
                    input, name + "-input", Collections.nCopies(input.channels().size(), 1.0), true));
        }
    }

    private KeptCapture stored(Capture capture, String name, List<Double> voltsPerFullScale, boolean input)
            throws TestLogException {
        try {
            Path folder = Files.createTempDirectory("ohmstead");
            Path file = folder.resolve(name + ".wav");
            try {
                WavFile.writeFloat(
                        file,
                        capture,
                        voltsPerFullScale.stream()
                                .mapToDouble(Double::doubleValue)
                                .toArray());
                CaptureStore.StoredCapture stored = store.store(file);
                CaptureUsed used = new CaptureUsed(stored.sha256(), name + ".wav", voltsPerFullScale);
                return new KeptCapture(used, capture.contentSha256(), input);
            } finally {
                Files.deleteIfExists(file);
                Files.deleteIfExists(folder);
            }
        } catch (IOException | CaptureException failed) {
            throw new TestLogException(Sentences.of("keep.failed", name, Said.by(failed)), failed);
        }
    }
}
