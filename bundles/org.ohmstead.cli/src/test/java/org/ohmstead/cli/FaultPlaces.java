// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.ohmstead.exchange.Archive;
import org.ohmstead.exchange.CsvDialect;
import org.ohmstead.exchange.EntrySource;
import org.ohmstead.exchange.ExchangeProgress;
import org.ohmstead.exchange.LogLines;
import org.ohmstead.exchange.LogWorkbook;
import org.ohmstead.exchange.PackLimits;
import org.ohmstead.exchange.ProjectPack;
import org.ohmstead.exchange.ReadingsCsv;
import org.ohmstead.model.Project;
import org.ohmstead.model.json.LoadedProject;
import org.ohmstead.model.json.ProjectFile;
import org.ohmstead.model.json.RecoveryCopy;
import org.ohmstead.model.json.RecoveryFile;
import org.ohmstead.report.LogCsv;
import org.ohmstead.report.LogJson;
import org.ohmstead.signal.stimulus.SignalFile;
import org.ohmstead.signal.stimulus.SignalSet;
import org.ohmstead.signal.stimulus.TestSignal;
import org.ohmstead.testlog.CaptureStore;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.LogQuery;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.units.files.WholeFiles;

/**
 * Everything that Ohmstead writes into files of its own making. The log and its index are a database's, which is tested apart;
 * results sheets take seconds to make and go through the same hands as the log's CSV.
 */
final class FaultPlaces implements AutoCloseable {
    private static final Instant NOON = Instant.parse("2026-03-03T12:00:00Z");
    private static final String OLD = "what was there before";

    private final Path sample;
    private final Path pack;
    private final Path capture;
    private final TestLog log;

    /** A file that is written. */
    @FunctionalInterface
    interface Writing {
        void to(Path target) throws Exception;
    }

    /**
     * Where something is written.
     *
     * @param name what it is
     * @param target which file or folder, from the folder of the test
     * @param old what lies there before; empty when nothing does
     * @param positions how many places in the file are tried where the disk runs full
     * @param writing writes it
     */
    record Place(String name, String target, String old, int positions, Writing writing) {
        /** Returns whether its words are those of the caller, who knows what the file is. */
        boolean wordless() {
            return name.startsWith("lesson");
        }

        /** Returns whether more than one file is written, each whole by itself. */
        boolean several() {
            return name.startsWith("index of a set") || name.equals("capture from an archive");
        }

        /** Returns whether the time of writing is packed into it, so that its length is not quite the same each time. */
        boolean timed() {
            return name.equals("workbook");
        }

        void prepare(Path folder) throws IOException {
            Path file = folder.resolve(target);
            Files.createDirectories(file.getParent());
            if (!old.isEmpty()) {
                Files.writeString(file, old);
            }
        }

        @Override
        public String toString() {
            return name;
        }
    }

    /** Measures a few steps, so that there is something to write. */
    FaultPlaces(Path folder) throws Exception {
        sample = BenchWords.project(folder);
        BenchWords run = BenchWords.run(
                new BuiltPlugins(), "run", sample.toString(), "--driver", "simulated", "--step", "stereo-8ohm-11V5");
        if (run.exitCode() != 0) {
            throw new IllegalStateException(run.err());
        }
        pack = folder.resolve("sample.zip");
        ProjectPack.pack(sample, pack, "0.1.0", ExchangeProgress.SILENT);
        log = TestLog.open(sample.resolve(TestLog.FILE_NAME));
        try (Stream<Path> files = Files.walk(sample.resolve("captures"))) {
            capture = files.filter(Files::isRegularFile).findFirst().orElseThrow();
        }
    }

    /** Returns all places. */
    List<Place> all() throws Exception {
        List<Place> places = new ArrayList<>(project());
        places.addAll(exports());
        places.addAll(signals());
        places.addAll(packs());
        return places;
    }

    private List<Place> project() throws Exception {
        LoadedProject loaded = ProjectFile.read(sample);
        Project other = loaded.project().withTitle("Another title");
        RecoveryCopy copy = new RecoveryCopy(NOON, loaded.revisionSha256(), List.of("Name it"), 1, other);
        String stored =
                "captures/" + sample.resolve("captures").relativize(capture).toString();
        return List.of(
                new Place(
                        "project",
                        ProjectFile.FILE_NAME,
                        Files.readString(sample.resolve(ProjectFile.FILE_NAME)),
                        40,
                        target -> ProjectFile.write(target, other, Optional.of(loaded.document()))),
                new Place("recovery copy", RecoveryFile.FILE_NAME, OLD, 40, target -> RecoveryFile.write(target, copy)),
                new Place("capture", stored, "", 30, target -> new CaptureStore(project(target)).store(capture)));
    }

    private List<Place> exports() throws Exception {
        List<LogEntry> entries = log.entries(LogQuery.everything());
        EntrySource source = EntrySource.of(entries);
        LogWorkbook.About about = new LogWorkbook.About("Sample", "0.1.0", NOON, log.headHash());
        LogLines.Head head = new LogLines.Head("Sample", "0.1.0", NOON);
        return List.of(
                new Place(
                        "readings CSV",
                        "out.csv",
                        OLD,
                        40,
                        target -> ReadingsCsv.write(source, CsvDialect.values()[0], target)),
                new Place("workbook", "out.xlsx", OLD, 25, target -> LogWorkbook.write(source, about, target)),
                new Place("lines", "out.jsonl", OLD, 40, target -> LogLines.write(log, head, target)),
                new Place("log CSV", "log.csv", OLD, 40, target -> LogCsv.write(entries, target)),
                new Place("log JSON", "log.json", OLD, 40, target -> LogJson.write(entries, target)));
    }

    private List<Place> signals() {
        TestSignal sine = new TestSignal.Sine(1000, -10, 0.5);
        SignalSet set = new SignalSet(List.of(new SignalSet.Item("tone", sine, false)), 10);
        SignalFile signal = set.file(0, SignalSet.Making.USUAL);
        return List.of(
                new Place(
                        "lesson sheet or chart",
                        "lesson.html",
                        OLD,
                        25,
                        target -> WholeFiles.writeText(target, "a page\n".repeat(300))),
                new Place("signal", "tone.wav", OLD, 25, target -> signal.write(target, ratio -> true)),
                new Place(
                        "index of a set of signals",
                        "index.html",
                        OLD,
                        25,
                        target -> set.write(target.getParent(), SignalSet.Making.USUAL, ratio -> true)));
    }

    private List<Place> packs() throws Exception {
        String stored =
                "captures/" + sample.resolve("captures").relativize(capture).toString();
        return List.of(
                new Place(
                        "packed project",
                        "packed.zip",
                        "",
                        3,
                        target -> ProjectPack.pack(sample, target, "0.1.0", ExchangeProgress.SILENT)),
                new Place(
                        "unpacked project",
                        "back.ohmstead/project.json",
                        "",
                        3,
                        target -> ProjectPack.unpack(
                                pack, target.getParent(), PackLimits.USUAL, ExchangeProgress.SILENT)),
                new Place(
                        "capture from an archive",
                        stored,
                        "cut off",
                        6,
                        target -> Archive.restore(
                                pack, project(target), log, PackLimits.USUAL, ExchangeProgress.SILENT)));
    }

    /** Returns the folder of the project that a capture lies in. */
    private static Path project(Path stored) {
        return stored.getParent().getParent().getParent();
    }

    @Override
    public void close() throws Exception {
        log.close();
    }
}
