// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.testlog.TestLog;

/** What becomes of the entries that words add, with a server, without one, and where people must put something right. */
@Timeout(300)
class HandingOverTest {
    private static final String STEP = "stereo-8ohm-11V5";
    private static final String RECORDED = "stereo-4ohm-14V4";

    @TempDir
    private Path folder;

    private String homeBefore;
    private Path project;

    @BeforeEach
    void makeProject() throws Exception {
        homeBefore = System.getProperty("user.home");
        System.setProperty("user.home", folder.toString());
        project = BenchWords.project(folder);
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

    private void shareWith(String certificateFile) throws Exception {
        share("lab.example.org", 5432, "tests", certificateFile);
    }

    private void share(String host, int port, String database, String certificateFile) throws Exception {
        ObjectMapper mapper = new ObjectMapper();
        File file = project.resolve("project.json").toFile();
        ObjectNode root = (ObjectNode) mapper.readTree(file);
        root.putObject("sharedLog")
                .put("host", host)
                .put("port", port)
                .put("database", database)
                .put("bench", "Bench 1")
                .put("certificateFile", certificateFile);
        mapper.writeValue(file, root);
    }

    private BenchWords words(String... words) {
        BenchWords ended = BenchWords.run(new BuiltPlugins(), words);
        assertEquals(0, ended.exitCode(), ended.out() + ended.err());
        return ended;
    }

    private BenchWords measure(String... more) {
        String[] words = new String[more.length + 5];
        System.arraycopy(new String[] {"run", project.toString(), "--driver", "simulated", "--yes"}, 0, words, 0, 5);
        System.arraycopy(more, 0, words, 5, more.length);
        return BenchWords.run(new BuiltPlugins(), words);
    }

    @Test
    void aRunIsDoneAlthoughNothingCouldBeHandedOver() throws Exception {
        shareWith("missing.pem");
        BenchWords run = measure("--step", STEP, "--json");
        assertEquals(0, run.exitCode(), run.err());
        JsonNode document = run.json();
        assertTrue(document.get("complete").asBoolean());
        JsonNode sharedLog = document.get("sharedLog");
        assertEquals("stopped", sharedLog.get("state").asText());
        assertEquals("lab.example.org:5432/tests", sharedLog.get("place").asText());
        assertEquals(0, sharedLog.get("handedOver").asInt());
        assertEquals(BenchWords.log(project).size(), sharedLog.get("waiting").asInt(), sharedLog.toString());
        assertTrue(sharedLog.get("sentence").asText().contains("missing.pem"), sharedLog.toString());
    }

    @Test
    void saysInOneLineWhatWaitsAndWhy() throws Exception {
        shareWith("missing.pem");
        Path recordings = BenchWords.recordings(folder, List.of(RECORDED));
        BenchWords replay = words("run", project.toString(), "--replay", recordings.toString());
        List<String> lines = replay.err().lines().toList();
        String last = lines.get(lines.size() - 1);
        assertTrue(
                last.startsWith("ohmstead: 1 entry waits here for the shared log lab.example.org:5432/tests."), last);
        assertTrue(last.contains("missing.pem") && last.endsWith("workbench."), last);
        BenchWords voided = words("log", "void", project.toString(), "R0001", "--reason", "A trial.");
        assertTrue(voided.out().contains("no longer counts"), voided.out());
        assertTrue(voided.err().contains("1 entry waits here"), voided.err());
    }

    @Test
    void aProjectWithoutASharedLogSaysNothingOfOne() {
        BenchWords run = measure("--step", STEP, "--json");
        assertEquals(0, run.exitCode(), run.err());
        assertFalse(run.json().has("sharedLog"));
        assertFalse((run.out() + run.err()).contains("shared log"));
    }

    @Test
    void whatWaitedForTheServerGoesOverWithTheNextWordAndNothingTwice() throws Exception {
        be("bench1");
        share("127.0.0.1", 1, "postgres", "");
        Path recordings = BenchWords.recordings(folder, List.of(RECORDED));
        JsonNode away = words("run", project.toString(), "--replay", recordings.toString(), "--json")
                .json()
                .get("sharedLog");
        assertEquals("waiting", away.get("state").asText());
        assertEquals(1, away.get("waiting").asInt());
        assertTrue(away.get("sentence").asText().contains("does not answer"), away.toString());
        try (LabServer server = LabServer.start("bench1")) {
            share("127.0.0.1", server.port(), "postgres", "");
            be(LabServer.OWNER);
            words("lab", "prepare", project.toString());
            words("lab", "grant", project.toString(), "bench1", "operator");
            be("bench1");
            BenchWords voided = words("log", "void", project.toString(), "R0001", "--reason", "A trial.");
            assertTrue(
                    voided.out()
                            .contains("127.0.0.1:" + server.port()
                                    + "/postgres has all entries of this log; 2 entries were handed over."),
                    voided.out() + voided.err());
            BenchWords run = measure("--step", STEP, "--json");
            assertEquals(0, run.exitCode(), run.err());
            JsonNode inStep = run.json().get("sharedLog");
            int entries = BenchWords.log(project).size();
            assertEquals("in-step", inStep.get("state").asText(), inStep.toString());
            assertEquals(0, inStep.get("waiting").asInt());
            assertEquals(entries - 2, inStep.get("handedOver").asInt(), inStep.toString());
            JsonNode pushed = words("lab", "push", project.toString(), "--json").json();
            assertEquals(0, pushed.get("handedOver").asInt());
            assertEquals(entries, pushed.get("alreadyThere").asInt());
            joinGoesOverToo();
        }
    }

    private void joinGoesOverToo() throws Exception {
        Path theirs = BenchWords.project(folder.resolve("theirs"));
        try (TestLog log = TestLog.open(theirs.resolve(TestLog.FILE_NAME))) {
            log.note("The other bench was cold.", "N. N.");
        }
        JsonNode joined = words("log", "import", project.toString(), theirs.toString(), "--bench", "bench 2", "--json")
                .json()
                .get("sharedLog");
        assertEquals("in-step", joined.get("state").asText(), joined.toString());
        assertEquals(2, joined.get("handedOver").asInt(), "the joined entry, and the one that says so");
        try (TestLog log = TestLog.open(theirs.resolve(TestLog.FILE_NAME))) {
            log.note("The other bench was warm.", "N. N.");
        }
        JsonNode again = words("log", "join", project.toString(), theirs.toString(), "--name", "bench 2", "--json")
                .json()
                .get("sharedLog");
        assertEquals(2, again.get("handedOver").asInt(), again.toString());
    }
}
