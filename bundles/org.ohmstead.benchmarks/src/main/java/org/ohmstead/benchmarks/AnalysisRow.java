// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.benchmarks;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.ohmstead.signal.CaptureException;

/** The full analysis of a long capture, on one core, and of two at once on two. */
final class AnalysisRow implements Row {
    private static final int SAMPLE_RATE_HZ = 192_000;
    private static final long FRAMES = 10L * SAMPLE_RATE_HZ;
    private static final int STRETCH_MILLIS = 3000;
    private static final int REFERENCE_TIMES = 4;
    private static final Goal GOAL = new Goal.Faster(5);

    @Override
    public String name() {
        return "analysis";
    }

    @Override
    public String about() {
        return "read and analyse captures of 2 channels, 10 s, 192 kHz, 24 bits; against NumPy and SciPy";
    }

    @Override
    public List<Outcome> measure(Room room) throws IOException {
        Path one = room.folder().resolve("one.wav");
        Path other = room.folder().resolve("other.wav");
        for (Path file : List.of(one, other)) {
            CaptureMaker.write(
                    file,
                    SAMPLE_RATE_HZ,
                    FRAMES,
                    file.equals(one) ? 1 : 2,
                    new CaptureMaker.Tone(997.3, 28, Double.POSITIVE_INFINITY),
                    new CaptureMaker.Tone(997.3, 30, 26));
        }
        String scale = Double.toString(CaptureMaker.VOLTS_PER_FULL_SCALE);
        List<Outcome> outcomes = new ArrayList<>();
        try (Reference reference =
                Reference.start(room, room.python(true, "analysis.py", List.of(scale, one.toString())))) {
            agree(one, reference);
            Jmh jmh = new Jmh(CaptureBenchmark.class, "one", room)
                    .with("path", one)
                    .stretch(STRETCH_MILLIS)
                    .onOneCore();
            outcomes.add(
                    Turns.of(room, jmh, reference, REFERENCE_TIMES).outcome("analysis", "a capture, one core", GOAL));
        }
        List<String> both = List.of(scale, one.toString(), other.toString());
        try (Reference reference = Reference.start(room, room.python(false, "analysis.py", both))) {
            agree(one, reference);
            Jmh jmh = new Jmh(CaptureBenchmark.class, "two", room)
                    .with("path", one)
                    .with("other", other)
                    .stretch(STRETCH_MILLIS);
            outcomes.add(Turns.of(room, jmh, reference, REFERENCE_TIMES)
                    .outcome("analysis-two", "two captures at once, two cores", GOAL));
        }
        return outcomes;
    }

    private static void agree(Path file, Reference reference) throws IOException {
        Map<String, Double> figures;
        try {
            figures = CaptureJob.figures(file);
        } catch (CaptureException e) {
            throw new IOException(e.getMessage(), e);
        }
        Agreement agreement = new Agreement(figures, reference.figures());
        for (int channel = 0; channel < 2; channel++) {
            agreement.within("frequencyHz." + channel, 1e-9);
            agreement.within("outputVoltsRms." + channel, 1e-7);
            agreement.within("outputVoltsPeak." + channel, 1e-6);
            agreement.near("dcVolts." + channel, 1e-5);
            agreement.near("crestFactorDb." + channel, 1e-5);
            agreement.within("fundamentalVoltsRms." + channel, 1e-7);
            agreement.within("thdFRatio." + channel, 1e-3);
            // Noise is summed over other bins with another window there.
            agreement.within("thdPlusNoiseRRatio." + channel, 0.01);
            agreement.near("driveOverOnsetDb." + channel, 0.01);
            agreement.within("spectrumPeakVolts." + channel, 1e-9);
        }
    }
}
