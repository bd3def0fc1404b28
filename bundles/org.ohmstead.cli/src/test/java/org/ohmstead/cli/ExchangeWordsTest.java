// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.model.CaptureUsed;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.Conditions;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.EndPointOutcome;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Provenance;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Stimulus;
import org.ohmstead.model.UncertaintyPart;
import org.ohmstead.report.LogCsv;
import org.ohmstead.testlog.CaptureStore;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.LogQuery;
import org.ohmstead.testlog.TestLog;

class ExchangeWordsTest {
    private static final String TABLE = "taken_at_utc,mode,load_ohm,frequency_Hz,end_point,power_W,"
            + "power_std_uncertainty_W,thd_f_percent,supply_V\n"
            + "2019-05-03T12:00:00Z,single,4,1000,clipping_onset,88.5,0.5,1,14.4\n";

    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private final ByteArrayOutputStream err = new ByteArrayOutputStream();

    @TempDir
    private Path folder;

    private Path project;
    private Path capture;

    @BeforeEach
    void makeAProjectWithALog() throws Exception {
        project = BenchWords.project(folder);
        Path level = Files.writeString(folder.resolve("level.wav"), "RIFF level");
        CaptureStore.StoredCapture stored = new CaptureStore(project).store(level);
        capture = stored.file();
        try (TestLog log = TestLog.open(project.resolve(TestLog.FILE_NAME))) {
            log.append(reading(stored.sha256(), "=1+1, not a formula"));
            log.append(reading(stored.sha256(), "\u03a9"));
            log.voidEntry("R0002", "lead was loose", "N. N.");
        }
    }

    private static Reading reading(String capture, String note) {
        return new Reading(
                "s1",
                Mode.STEREO,
                "4ohm",
                4,
                new Stimulus.ContinuousSine(1000),
                new EndPoint.ClippingOnset(),
                Instant.parse("2026-03-02T09:14:05Z"),
                new Conditions(OptionalDouble.of(22.6), OptionalDouble.empty()),
                List.of(new ChannelReading(
                        "A",
                        EndPointOutcome.REACHED,
                        4.02,
                        71.5,
                        0.4,
                        17.8,
                        1000,
                        0.01,
                        13.36,
                        OptionalDouble.empty(),
                        List.of(new UncertaintyPart("meter", 0.4, true)),
                        List.of(),
                        List.of())),
                new Provenance(
                        "cd".repeat(32),
                        "power-at-end-point",
                        "0.1.0",
                        "0.1.0",
                        "",
                        List.of(),
                        List.of(new CaptureUsed(capture, "level.wav", List.of(50.0)))),
                List.of(note));
    }

    private int run(Object... words) {
        out.reset();
        err.reset();
        String[] texts = new String[words.length];
        for (int index = 0; index < words.length; index++) {
            texts[index] = words[index].toString();
        }
        return Ohmstead.run(texts, new PrintStream(out), new PrintStream(err));
    }

    private String output() {
        return out.toString(StandardCharsets.UTF_8);
    }

    private String errors() {
        return err.toString(StandardCharsets.UTF_8);
    }

    private JsonNode json() throws Exception {
        return new ObjectMapper().readTree(output());
    }

    private List<LogEntry> entries() throws Exception {
        try (TestLog log = TestLog.openReadOnly(project.resolve(TestLog.FILE_NAME))) {
            assertTrue(log.verify().intact());
            return log.entries(LogQuery.everything());
        }
    }

    @Test
    void exportsTheSameTableAsTheSheetsWriter() throws Exception {
        StringBuilder expected = new StringBuilder();
        LogCsv.write(entries(), expected);
        assertEquals(0, run("log", "export", "csv", project));
        assertEquals(expected.toString(), output());
        assertEquals(0, run("log", "export", "csv", project, "--decimal-comma", "--output", folder.resolve("o.csv")));
        assertTrue(Files.readString(folder.resolve("o.csv")).contains(";71,5;0,4;17,8;"));
    }

    @Test
    void exportsWorkbooksAndLinesOfBothKinds() throws Exception {
        assertEquals(3, run("log", "export", "xlsx", project));
        assertTrue(errors().contains("--output"), errors());
        assertEquals(0, run("log", "export", "xlsx", project, "--output", folder.resolve("log.xlsx")));
        assertEquals(0, run("log", "export", "json", project));
        assertEquals(3, output().lines().count());
        assertEquals(0, run("log", "export", "jsonl", project));
        assertEquals(4, output().lines().count());
        List<String> shown = output().lines().skip(1).toList();
        assertEquals(0, run("log", "export", "jsonl", project, "--output", folder.resolve("log.jsonl")));
        // The first line holds the time of writing.
        assertEquals(shown, Files.readAllLines(folder.resolve("log.jsonl")).subList(1, 4));
        // What went out as a workbook is known when it comes back.
        assertEquals(0, run("log", "import", project, folder.resolve("log.xlsx"), "--json"));
        assertEquals(1, json().get("alreadyThere").asInt());
        assertEquals(3, entries().size());
    }

    @Test
    void importsATableAllOrNothing() throws Exception {
        Path bad = Files.writeString(
                folder.resolve("bad.csv"),
                TABLE
                        + TABLE.lines()
                                .skip(1)
                                .findFirst()
                                .orElseThrow()
                                .replace("88.5", "much")
                                .replace("2019", "2020"));
        assertEquals(3, run("log", "import", project, bad));
        assertTrue(errors().contains("Line 3, column \"power_W\": \"much\" is no number"), errors());
        assertEquals(3, entries().size());
        assertEquals(1, run("log", "import", project, bad, "--dry-run"));
        assertTrue(output().contains("1 readings can come in, 1 cannot."), output());
        assertEquals(3, entries().size());
        assertEquals(1, run("log", "import", project, bad, "--skip-bad"));
        assertTrue(output().contains("1 readings were added, R0003 to R0003."), output());
        Reading added = entries().get(3).reading().orElseThrow();
        assertEquals("org.ohmstead.import", added.provenance().procedureId());
        assertTrue(added.provenance().specimen().isPresent());
        assertEquals(0, run("log", "import", project, Files.writeString(folder.resolve("good.csv"), TABLE)));
        assertTrue(output().contains("1 were in the log already."), output());
    }

    @Test
    void takesUncertaintyAndAmplifierFromTheWords() throws Exception {
        Path table = Files.writeString(
                folder.resolve("semi.csv"),
                TABLE.replace("power_std_uncertainty_W,", "")
                        .replace("88.5,0.5,", "88.5,")
                        .replace(",", ";")
                        .replace('.', ','));
        assertEquals(3, run("log", "import", project, table, "--decimal-comma"));
        assertTrue(errors().contains("uncertainty of the power is missing"), errors());
        assertEquals(
                0,
                run(
                        "log",
                        "import",
                        project,
                        table,
                        "--decimal-comma",
                        "--uncertainty-percent",
                        "2",
                        "--amplifier",
                        "Foxglove 2x50",
                        "--serial",
                        "7"));
        Reading added = entries().get(3).reading().orElseThrow();
        assertEquals(1.77, added.channels().get(0).standardUncertaintyWatts(), 1e-12);
        assertEquals(
                "Foxglove 2x50", added.provenance().specimen().orElseThrow().amplifier());
        assertEquals("7", added.provenance().specimen().orElseThrow().serialNumber());
    }

    @Test
    void joinsAnotherBenchsLog() throws Exception {
        Path other = Files.createDirectory(folder.resolve("second"));
        Path theirs = BenchWords.project(other);
        try (TestLog log = TestLog.open(theirs.resolve(TestLog.FILE_NAME))) {
            log.note("warm-up over", "");
        }
        assertEquals(3, run("log", "import", project, theirs));
        assertTrue(errors().contains("--bench"), errors());
        assertEquals(0, run("log", "import", project, theirs, "--bench", "bench 2"));
        assertTrue(output().contains("1 entry of bench 2 came as chain B"), output());
        assertTrue(entries().stream().anyMatch(entry -> entry.id().equals("B/N0001")));
        assertEquals(0, run("log", "export", "jsonl", theirs, "--output", folder.resolve("theirs.jsonl")));
        assertEquals(0, run("log", "import", project, folder.resolve("theirs.jsonl"), "--bench", "bench 2", "--json"));
        assertEquals(0, json().get("joined").asInt());
    }

    @Test
    void packsAndUnpacksAProject() throws Exception {
        Path zip = folder.resolve("trial.zip");
        assertEquals(0, run("project", "pack", project, zip));
        assertEquals(3, run("project", "pack", project, folder.resolve("none/trial.zip")));
        Path other = folder.resolve("other.ohmstead");
        assertEquals(0, run("project", "unpack", zip, other, "--json"));
        assertEquals(3, json().get("entries").asInt());
        assertTrue(Files.exists(other.resolve(project.relativize(capture))));
        assertEquals(3, run("project", "unpack", zip, other));
        assertTrue(errors().contains("already there"), errors());
        assertEquals(3, run("log", "import", project, zip));
        assertTrue(errors().contains("project unpack"), errors());
    }

    @Test
    void archivesTakesOutChecksAndRestores() throws Exception {
        Path shelf = Files.createDirectory(folder.resolve("shelf"));
        assertEquals(0, run("log", "captures", project));
        assertTrue(output().startsWith("1 captures are there as recorded, 0 missing"), output());
        Path aside = Files.move(capture, folder.resolve("aside"));
        assertEquals(1, run("log", "captures", project));
        assertTrue(errors().contains("is missing"), errors());
        Files.move(aside, capture);
        assertEquals(0, run("log", "archive", project, shelf, "--take-out-before", "2026-03-03", "--json"));
        assertEquals(1, json().get("takenOut").asInt());
        Path archive = Path.of(json().get("archive").asText());
        assertFalse(Files.exists(capture));
        assertEquals(0, run("log", "captures", project));
        assertTrue(output().contains("lies in the archive " + archive.getFileName()), output());
        assertEquals(0, run("log", "restore", project, archive));
        assertEquals("RIFF level", Files.readString(capture));
        Files.writeString(capture, "RIFF lever");
        assertEquals(1, run("log", "captures", project, "--json"));
        assertEquals(1, json().get("changed").asInt());
        // Lost again, it still lies in the archive.
        Files.delete(capture);
        assertEquals(0, run("log", "captures", project));
        assertTrue(output().contains("lies in the archive " + archive.getFileName()), output());
    }
}
