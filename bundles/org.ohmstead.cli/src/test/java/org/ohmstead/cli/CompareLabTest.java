// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.model.SharedLog;
import org.ohmstead.model.json.LoadedProject;
import org.ohmstead.model.json.ProjectFile;

/** A comparison with what other benches handed over, against a server of its own. */
@Timeout(300)
class CompareLabTest {
    private static final List<String> STEPS = List.of("stereo-4ohm-12V5", "stereo-4ohm-14V4");

    @TempDir
    private Path folder;

    private String homeBefore;
    private Path recordings;

    @BeforeEach
    void prepare() throws Exception {
        homeBefore = System.getProperty("user.home");
        System.setProperty("user.home", folder.toString());
        recordings = BenchWords.recordings(folder, STEPS);
    }

    @AfterEach
    void giveTheHomeBack() {
        System.setProperty("user.home", homeBefore);
    }

    private void be(String login) throws Exception {
        Path file = Files.writeString(
                folder.resolve(".pgpass"), "127.0.0.1:*:*:" + login + ":" + LabServer.PASSWORD + "\n");
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-------"));
    }

    /** Returns a project of another bench for a specimen. */
    private Path project(String bench, String serialNumber, int port) throws Exception {
        Path project = BenchWords.project(folder.resolve(bench));
        LoadedProject loaded = ProjectFile.read(project);
        ProjectFile.write(
                project,
                loaded.project()
                        .withAmplifier(loaded.project().amplifier().withSerialNumber(serialNumber))
                        .withSharedLog(Optional.of(new SharedLog("127.0.0.1", port, "postgres", bench, ""))),
                Optional.empty());
        return project;
    }

    private BenchWords words(int exitCode, String... words) {
        BenchWords ended = BenchWords.run(new BuiltPlugins(), words);
        assertEquals(exitCode, ended.exitCode(), ended.out() + ended.err());
        assertFalse(ended.err().contains("fault in Ohmstead"), ended.err());
        return ended;
    }

    private BenchWords compare(int exitCode, Path project, String... further) {
        String[] words = new String[further.length + 6];
        System.arraycopy(new String[] {"compare", project.toString(), "--at", "13.5", "--load", "4"}, 0, words, 0, 6);
        System.arraycopy(further, 0, words, 6, further.length);
        return words(exitCode, words);
    }

    private void measure(Path project) {
        words(0, "run", project.toString(), "--replay", recordings.toString());
    }

    @Test
    void whatItNeedsIsSaidWhenItIsMissing() throws Exception {
        Path alone = BenchWords.project(folder);
        measure(alone);
        assertTrue(compare(3, alone, "--lab").err().contains("names no shared log"));
        compare(3, alone, "--lab-find", "power:many");
        Path unreachable = project("bench1", "0001", 1);
        be("bench1");
        assertTrue(compare(4, unreachable, "--lab").err().contains("does not answer"));
    }

    @Test
    void comparesWithTheSpecimensOfOtherBenchesAndCountsNothingTwice() throws Exception {
        try (LabServer server = LabServer.start("bench1")) {
            Path mine = project("bench1", "0001", server.port());
            Path theirs = project("bench2", "0002", server.port());
            be(LabServer.OWNER);
            words(0, "lab", "prepare", mine.toString());
            words(0, "lab", "grant", mine.toString(), "bench1", "operator");
            be("bench1");
            assertTrue(compare(3, mine, "--lab").err().contains("Neither the projects nor the shared log"));
            measure(mine);
            words(0, "lab", "push", mine.toString());
            BenchWords alone = compare(0, mine, "--lab", "--json");
            assertEquals(1, alone.json().get("powers").size(), "what was handed over is the project's own");
            assertTrue(alone.err().contains("Besides those of the projects, the shared log holds no valid reading."));

            measure(theirs);
            words(0, "lab", "push", theirs.toString());
            JsonNode both = compare(0, mine, "--lab", "--json").json();
            assertEquals(2, both.get("powers").size(), both.toString());
            assertEquals("0001", both.at("/powers/0/serialNumber").asText());
            assertEquals("trial", both.at("/powers/0/source").asText());
            assertEquals("0002", both.at("/powers/1/serialNumber").asText());
            assertEquals("lab", both.at("/powers/1/source").asText());
            // Both were replayed from the same recordings.
            assertEquals(0, both.at("/differences/0/differenceWatts").asDouble(), 1e-9);
            assertEquals(
                    1,
                    compare(0, mine, "--lab-find", "serial:0009", "--json")
                            .json()
                            .get("powers")
                            .size());
            assertEquals(
                    2,
                    compare(0, mine, "--lab-find", "serial:0002", "--json")
                            .json()
                            .get("powers")
                            .size());

            words(0, "log", "void", theirs.toString(), "R0001", "--reason", "The lead was loose.");
            words(0, "lab", "push", theirs.toString());
            BenchWords voided = compare(1, mine, "--lab");
            assertTrue(voided.out().contains("0002"), voided.out());

            server.sql("ALTER TABLE ohmstead.entry DISABLE TRIGGER entry_is_never_changed;\n"
                    + "UPDATE ohmstead.entry SET recorded_at = '2020-03-02T09:14:06Z' WHERE entry_id = 'R0002';\n"
                    + "ALTER TABLE ohmstead.entry ENABLE ALWAYS TRIGGER entry_is_never_changed;\n");
            String changed = compare(3, mine, "--lab").err();
            assertTrue(changed.contains("The shared log is not whole") && changed.contains("R0002"), changed);
        }
    }
}
