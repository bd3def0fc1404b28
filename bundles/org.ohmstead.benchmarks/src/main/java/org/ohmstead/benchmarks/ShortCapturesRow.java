// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.benchmarks;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.ohmstead.signal.CaptureException;

/** Thousands of short captures, as a replayed plan has them. */
final class ShortCapturesRow implements Row {
    private static final int COUNT = 10_000;

    @Override
    public String name() {
        return "short-captures";
    }

    @Override
    public String about() {
        return COUNT
                + " captures of 0.25 s at 48 kHz, 24 bits, from the disk to their figures; against NumPy and SciPy";
    }

    @Override
    public List<Outcome> measure(Room room) throws IOException {
        Path folder = room.folder().resolve("captures");
        CaptureMaker.writeShort(folder, COUNT);
        List<String> words = List.of(Double.toString(CaptureMaker.VOLTS_PER_FULL_SCALE), folder.toString());
        try (Reference reference = Reference.start(room, room.python(true, "short_captures.py", words))) {
            agree(folder, reference);
            Jmh jmh = new Jmh(CaptureBenchmark.class, "many", room)
                    .with("path", folder)
                    .once()
                    .onOneCore();
            return List.of(Turns.of(room, jmh, reference, 1)
                    .outcome("short-captures", COUNT + " captures, one core", new Goal.Faster(10)));
        }
    }

    private static void agree(Path folder, Reference reference) throws IOException {
        Map<String, Double> sums;
        try {
            sums = CaptureJob.sums(folder);
        } catch (CaptureException e) {
            throw new IOException(e.getMessage(), e);
        }
        Agreement agreement = new Agreement(sums, reference.figures());
        agreement.near("count", 0);
        agreement.near("clipped", 0);
        agreement.within("voltsSum", 1e-6);
        agreement.within("thdSum", 1e-3);
    }
}
