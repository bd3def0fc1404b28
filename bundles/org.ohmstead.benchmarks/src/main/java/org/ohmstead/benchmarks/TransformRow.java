// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.benchmarks;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/** The transform alone. */
final class TransformRow implements Row {
    /** A short capture and one of a second, each as it is and as analyses pad it, a long one, and one of 10 s at 192 kHz. */
    private static final int[] SIZES = {12_000, 16_384, 48_000, 65_536, 192_000, 262_144, 1_920_000};

    private static final double SAME_RATIO = 1e-9;
    private static final int STRETCH_MILLIS = 500;
    private static final double PIECE_SAMPLES = 2e6;
    private static final int REFERENCE_TIMES = 25;

    @Override
    public String name() {
        return "fft";
    }

    @Override
    public String about() {
        return "the transform of real samples alone, at several sizes, one core; against FFTW 3 with a measured plan";
    }

    @Override
    public List<Outcome> measure(Room room) throws IOException {
        List<Outcome> outcomes = new ArrayList<>();
        for (int size : SIZES) {
            // Many short transforms are timed as one, so that calling the library counts for nothing.
            int piece = (int) Math.max(1, PIECE_SAMPLES / size);
            List<String> words = List.of(Integer.toString(size), Integer.toString(piece));
            try (Reference reference = Reference.start(room, room.python(true, "fftw.py", words))) {
                Agreement agreement = new Agreement(TransformBenchmark.figures(size), reference.figures());
                agreement.within("sum", SAME_RATIO);
                for (String figure : reference.figures().keySet()) {
                    // A bin that is nearly empty agrees to what the whole rounds to.
                    agreement.near(
                            figure,
                            figure.equals("sum")
                                    ? Double.MAX_VALUE
                                    : SAME_RATIO * reference.figures().get("sum") / size);
                }
                Jmh jmh = new Jmh(TransformBenchmark.class, "forward", room)
                        .with("size", size)
                        .stretch(STRETCH_MILLIS)
                        .onOneCore();
                outcomes.add(Turns.of(room, jmh, reference, REFERENCE_TIMES, piece)
                        .outcome("fft-" + size, size + " samples, one core", new Goal.TimesAsLong(2)));
            }
        }
        return outcomes;
    }
}
