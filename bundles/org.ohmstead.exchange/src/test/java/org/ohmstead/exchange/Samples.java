// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.ohmstead.model.BenchKind;
import org.ohmstead.model.CaptureUsed;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.Conditions;
import org.ohmstead.model.DistortionMeasure;
import org.ohmstead.model.DriverUsed;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.MeasuredFigure;
import org.ohmstead.model.MeasuredFigures;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Provenance;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Specimen;
import org.ohmstead.model.Stimulus;
import org.ohmstead.model.SweepPoint;
import org.ohmstead.model.UncertaintyPart;
import org.ohmstead.testlog.CaptureStore;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.LogQuery;
import org.ohmstead.testlog.TestLog;

/** Projects and readings to send about. */
final class Samples {
    static final Path DEMO = Path.of("..", "..", "demo-data", "larkspur.ohmstead")
            .toAbsolutePath()
            .normalize();
    static final String REVISION = "cd".repeat(32);
    static final Instant TAKEN = Instant.parse("2026-03-02T09:14:05.250Z");

    private Samples() {}

    static ChannelReading channel(String name, double powerWatts) {
        return new ChannelReading(
                name,
                EndPointOutcome.REACHED,
                4.02,
                powerWatts,
                0.4,
                17.8,
                1000,
                0.01,
                13.36,
                OptionalDouble.of(17.52),
                List.of(new UncertaintyPart("output volts meter", 0.3, true)),
                List.of(
                        new SweepPoint(
                                -3, 17.5, 60, 0.002, 0.003, false, 13.4, OptionalDouble.empty(), "ab".repeat(32)),
                        new SweepPoint(-2, 18.5, 80, 0.02, 0.03, true, 13.3, OptionalDouble.of(18), "ab".repeat(32))),
                List.of());
    }

    static Provenance provenance(Optional<Specimen> specimen, String... captures) {
        return new Provenance(
                REVISION,
                "power-at-end-point",
                "0.1.0",
                "0.1.0",
                "N. N.",
                List.of(),
                Stream.of(captures)
                        .map(hash -> new CaptureUsed(hash, "level.wav", List.of(50.0)))
                        .toList(),
                specimen);
    }

    static Reading reading(int number, Provenance provenance, String... notes) {
        return new Reading(
                "step-" + number,
                Mode.STEREO,
                "4ohm",
                4,
                new Stimulus.ContinuousSine(1000),
                new EndPoint.DistortionLimit(0.01, DistortionMeasure.THD_F),
                TAKEN.plusSeconds(60L * number),
                new Conditions(OptionalDouble.of(22.6), OptionalDouble.empty()),
                List.of(channel("A", 70.5 + number), channel("B", 69.25 + number)),
                provenance,
                List.of(notes));
    }

    static Reading reading(int number, String... notes) {
        return reading(number, provenance(Optional.empty()), notes);
    }

    static MeasuredFigures figures(int number, String... captures) {
        return new MeasuredFigures(
                "step-" + number,
                Mode.STEREO,
                "4ohm",
                14.4,
                TAKEN,
                new DriverUsed("simulated", "0.1.0", BenchKind.SIMULATED, Map.of()),
                Map.of(),
                List.of(
                        new MeasuredFigure("gain", "A", "1 kHz", 26.1, "dB", OptionalDouble.of(0.05)),
                        new MeasuredFigure("dampingFactor", "A", "", 120, "", OptionalDouble.empty())),
                new Conditions(OptionalDouble.empty(), OptionalDouble.empty()),
                provenance(Optional.empty(), captures),
                List.of());
    }

    /** Makes a project with no log. */
    static Path project(Path folder, String name) throws IOException {
        Path project = Files.createDirectory(folder.resolve(name + ".ohmstead"));
        Files.copy(DEMO.resolve("project.json"), project.resolve("project.json"));
        return project;
    }

    /** Puts a capture with some content into a project's store, and returns its hash. */
    static String capture(Path project, String content) throws Exception {
        Path file = Files.createTempFile(project.getParent(), "level", ".wav");
        Files.writeString(file, content);
        String hash = new CaptureStore(project).store(file).sha256();
        Files.delete(file);
        return hash;
    }

    static Path captureFile(Path project, String hash) {
        return project.resolve("captures").resolve(hash.substring(0, 2)).resolve(hash + ".wav");
    }

    static TestLog log(Path project) throws Exception {
        return TestLog.open(project.resolve(TestLog.FILE_NAME));
    }

    static List<LogEntry> entries(TestLog log) throws Exception {
        return log.entries(LogQuery.everything());
    }

    /** Returns the names of everything in a folder, however deep. */
    static List<String> everythingIn(Path folder) throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            return all.map(path -> folder.relativize(path).toString())
                    .filter(name -> !name.isEmpty())
                    .sorted()
                    .toList();
        }
    }
}
