// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.InputStream;
import java.io.PipedInputStream;
import java.io.PipedOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.model.Reading;
import org.ohmstead.testlog.EntryKind;
import org.ohmstead.testlog.LogEntry;

/** The word run with the benches that there are, and with people. */
class RunBenchesTest {
    private static final String COLD = "stereo-8ohm-11V5";
    private static final String HOT = "stereo-4ohm-14V4";
    private static final List<String> STEPS = List.of(HOT, "stereo-2ohm-12V5");

    @TempDir
    private Path folder;

    private Path project;

    @BeforeEach
    void makeProject() throws IOException {
        project = BenchWords.project(folder);
    }

    private BenchWords run(String... options) {
        return BenchWords.run(new BuiltPlugins(), words(options));
    }

    private String[] words(String... options) {
        String[] words = new String[options.length + 2];
        words[0] = "run";
        words[1] = project.toString();
        System.arraycopy(options, 0, words, 2, options.length);
        return words;
    }

    private List<LogEntry> log() throws Exception {
        return BenchWords.log(project);
    }

    @Test
    void aPersonIsAskedForAReason() throws Exception {
        BenchWords no = atTerminal("", "--driver", "simulated", "--step", HOT);
        assertEquals(1, no.exitCode(), no.err());
        assertFalse(no.err().contains("Nobody can be asked"), no.err());
        assertEquals(List.of(), log());
        BenchWords yes = atTerminal("nobody is near", "--driver", "simulated", "--step", HOT, "--operator", "N. N.");
        assertEquals(0, yes.exitCode(), yes.err());
        assertTrue(yes.err().contains("Type why"), yes.err());
        assertTrue(log().get(0).note().orElseThrow().text().contains("nobody is near"));
        assertTrue(yes.out().contains("1 of 1 are in the log"), yes.out());
    }

    /** A terminal forgets what was typed before the question; so the answer comes when the question stands there. */
    private BenchWords atTerminal(String answer, String... options) throws IOException {
        try (PipedOutputStream keys = new PipedOutputStream();
                PipedInputStream in = new PipedInputStream(keys)) {
            InputStream typing = new InputStream() {
                private boolean typed;

                @Override
                public int read() throws IOException {
                    return in.read();
                }

                @Override
                public int read(byte[] buffer, int offset, int length) throws IOException {
                    if (!typed) {
                        typed = true;
                        keys.write((answer + "\n").getBytes(StandardCharsets.US_ASCII));
                        keys.close();
                    }
                    return in.read(buffer, offset, length);
                }
            };
            return BenchWords.run(new BuiltPlugins(), new ConsoleInput(typing, true), words(options));
        }
    }

    @Test
    void settingsGoToTheDriverAndToTheMeasurement() throws Exception {
        BenchWords run = run(
                "--driver",
                "bench.simulated",
                "--step",
                COLD,
                "--set",
                "driver.ideal=true",
                "--set",
                "driver.clipVolts=10 V",
                "--set",
                "startDb=-30 dB",
                "--json");
        assertEquals(0, run.exitCode(), run.err());
        LogEntry figures = log().stream()
                .filter(entry -> entry.kind() == EntryKind.FIGURES)
                .findFirst()
                .orElseThrow();
        assertEquals("10.0", figures.figures().orElseThrow().driver().settings().get("clipVolts"));
        assertEquals("-30.0", figures.figures().orElseThrow().settings().get("startDb"));
        assertEquals("10 V", run.json().at("/driver/settings/clipVolts").asText());
        // Closed form: a sine that is clipped symmetrically at 10 V peak has 1 % of harmonics when its fundamental is a
        // little above 10 V.
        double watts = run.json().at("/items/0/results/0/channels/0/powerWatts").asDouble();
        assertTrue(watts > 100 / 2.0 / 8 && watts < 1.05 * 100 / 2.0 / 8, String.valueOf(watts));
    }

    @Test
    void whatAnItemMeasuresMayBeChosen() throws Exception {
        BenchWords run = run("--driver", "simulated", "--step", COLD, "--measurement", "gain,idle-draw", "--json");
        assertEquals(0, run.exitCode(), run.err());
        assertEquals("org.ohmstead.gain", run.json().at("/items/0/measurement").asText());
        assertEquals(
                "org.ohmstead.idle-draw", run.json().at("/items/1/measurement").asText());
        assertTrue(log().stream().allMatch(entry -> entry.kind() == EntryKind.FIGURES));
    }

    @Test
    void recordingsArePlayedBackAtTheLevelsThatTheyHave() throws Exception {
        String recordings = BenchWords.DEMO.resolve("recordings").toString();
        BenchWords bench = run(
                "--driver",
                "replayed",
                "--set",
                "driver.folder=" + recordings,
                "--step",
                String.join(",", STEPS),
                "--yes",
                "--json");
        assertEquals(0, bench.exitCode(), bench.err());
        Path other = BenchWords.project(folder.resolve("other"));
        BenchWords replay = BenchWords.run(
                new BuiltPlugins(),
                "run",
                other.toString(),
                "--replay",
                BenchWords.recordings(folder, STEPS).toString());
        assertEquals(0, replay.exitCode(), replay.err());
        for (LogEntry entry : log()) {
            if (entry.reading().isEmpty()) {
                continue;
            }
            Reading played = entry.reading().get();
            Reading read = BenchWords.log(other).stream()
                    .flatMap(each -> each.reading().stream())
                    .filter(each -> each.stepId().equals(played.stepId()))
                    .findFirst()
                    .orElseThrow();
            assertEquals(
                    read.channels().get(0).powerWatts(),
                    played.channels().get(0).powerWatts(),
                    1e-6);
            assertTrue(
                    played.notes().stream().anyMatch(note -> note.contains("recordings")),
                    played.notes().toString());
        }
        BenchWords nowhere = run("--driver", "replayed", "--step", COLD);
        assertEquals(3, nowhere.exitCode(), nowhere.err());
        assertTrue(nowhere.err().contains("driver.folder"), nowhere.err());
    }

    @Test
    void aPersonTypesWhatTheInstrumentsShow() throws Exception {
        BenchWords run = BenchWords.run(
                new BuiltPlugins(),
                BenchWords.typed(
                        "perhaps", "y", // the load
                        "y", // the supply
                        "11.5 V", "plenty", "700 mA", "31", "11.5", "0.9", "31"),
                words(
                        "--driver",
                        "typed",
                        "--set",
                        "driver.output=nothing",
                        "--set",
                        "readings=2",
                        "--step",
                        COLD,
                        "--measurement",
                        "idle-draw",
                        "--json"));
        assertEquals(0, run.exitCode(), run.err());
        assertTrue(run.err().contains("neither yes nor no"), run.err());
        assertTrue(run.err().contains("Connect the load \"8ohm\""), run.err());
        assertTrue(run.err().contains("Supply current in A (about"), run.err());
        assertTrue(run.err().contains("plenty"), run.err());
        JsonNode amps = run.json().at("/items/0/results/0/figures/0");
        assertEquals("idleAmps", amps.get("id").asText());
        assertEquals(0.8, amps.get("value").asDouble(), 1e-9);
        assertEquals("real", run.json().at("/driver/kind").asText());
    }

    @Test
    void anEmptyLineGivesUp() throws Exception {
        BenchWords run = BenchWords.run(
                new BuiltPlugins(),
                BenchWords.typed("y", ""),
                words(
                        "--driver",
                        "typed",
                        "--set",
                        "driver.output=nothing",
                        "--step",
                        COLD,
                        "--measurement",
                        "idle-draw"));
        assertEquals(1, run.exitCode(), run.err());
        assertTrue(run.err().contains("The person at the bench cancelled"), run.err());
        assertTrue(run.err().contains("switch the supply off now"), run.err());
    }
}
