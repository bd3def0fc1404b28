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
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.model.SharedLog;
import org.ohmstead.model.json.LoadedProject;
import org.ohmstead.model.json.ProjectFile;
import org.ohmstead.testlog.TestLog;

/** The words about the shared log, against a server of their own. */
@Timeout(180)
class LabWordsTest {
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

    private void names(int port, String bench) throws Exception {
        LoadedProject loaded = ProjectFile.read(project);
        ProjectFile.write(
                project,
                loaded.project().withSharedLog(Optional.of(new SharedLog("127.0.0.1", port, "postgres", bench, ""))),
                Optional.empty());
    }

    private void be(String login, String password) throws Exception {
        Path file = Files.writeString(folder.resolve(".pgpass"), "127.0.0.1:*:*:" + login + ":" + password + "\n");
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-------"));
    }

    private void note(String text) throws Exception {
        try (TestLog log = TestLog.open(project.resolve(TestLog.FILE_NAME))) {
            log.note(text, "N. N.");
        }
    }

    private BenchWords lab(int exitCode, String word, String... further) {
        String[] words = new String[further.length + 3];
        words[0] = "lab";
        words[1] = word;
        words[2] = project.toString();
        System.arraycopy(further, 0, words, 3, further.length);
        BenchWords ended = BenchWords.run(new BuiltPlugins(), words);
        assertEquals(exitCode, ended.exitCode(), ended.out() + ended.err());
        assertFalse(ended.err().contains("fault in Ohmstead"), ended.err());
        return ended;
    }

    @Test
    void aProjectWithoutASharedLogSaysHowToNameOne() {
        assertTrue(lab(3, "status").err().contains("sharedLog"));
    }

    @Test
    void withoutCredentialsOrServerItSaysWhatIsMissing() throws Exception {
        names(1, "bench 1");
        note("first");
        assertTrue(lab(3, "push").err().contains("OHMSTEAD_LOG_USER"));
        be("bench1", LabServer.PASSWORD);
        String unreachable = lab(4, "push").err();
        assertTrue(unreachable.contains("127.0.0.1:1/postgres does not answer"), unreachable);
        Files.setPosixFilePermissions(folder.resolve(".pgpass"), PosixFilePermissions.fromString("rw-r--r--"));
        assertTrue(lab(3, "push").err().contains("chmod 600"));
    }

    @Test
    void wrongWordsAreRefusedBeforeTheServerIsAsked() throws Exception {
        names(1, "bench 1");
        be("bench1", LabServer.PASSWORD);
        assertTrue(lab(3, "grant", "bench1", "king").err().contains("reader, operator, lead or none"));
        assertTrue(lab(3, "verify", "--expected-head", "abc").err().contains("64 hexadecimal digits"));
        assertTrue(lab(3, "find", "--limit", "0").err().contains("at least 1"));
        lab(3, "find", "power:many");
        lab(2, "close", "B");
    }

    @Test
    void aLaboratoryFromTheFirstDayOn() throws Exception {
        try (LabServer server = LabServer.start("bench1", "guest")) {
            names(server.port(), "bench 1");
            note("the first entry");
            note("the second entry");
            be(LabServer.OWNER, "wrong");
            assertTrue(lab(4, "status").err().contains("does not accept the password of " + LabServer.OWNER));
            be(LabServer.OWNER, LabServer.PASSWORD);
            assertTrue(lab(4, "status").err().contains("lab prepare"));
            assertEquals(1, lab(0, "prepare", "--json").json().path("steps").intValue());
            lab(0, "prepare");
            lab(0, "grant", "bench1", "operator");
            assertEquals(
                    "reader",
                    lab(0, "grant", "guest", "reader", "--json")
                            .json()
                            .path("role")
                            .textValue());

            be("guest", LabServer.PASSWORD);
            assertTrue(lab(4, "push").err().contains("role of guest does not include it"));
            be("bench1", LabServer.PASSWORD);
            JsonNode pushed = lab(0, "push", "--json").json();
            assertEquals(2, pushed.path("handedOver").intValue());
            assertEquals(2, lab(0, "push", "--json").json().path("alreadyThere").intValue());
            note("the third entry");
            BenchWords status = lab(0, "status", "--json");
            assertEquals("operator", status.json().path("role").textValue());
            assertEquals(1, status.json().path("waiting").intValue());
            assertEquals("bench 1", status.json().at("/chains/0/bench").textValue());
            assertEquals(2, status.json().at("/chains/0/entries").intValue());
            assertTrue(status.err().contains("fsync = off"), "the server of this test does not wait for its disk");
            assertTrue(lab(0, "push").out().contains("1 entry was handed over, 2 were there already."));
            assertTrue(lab(0, "status").out().contains("has every entry of this project"));

            JsonNode found = lab(0, "find", "third", "--json").json();
            assertEquals(1, found.path("found").intValue());
            assertEquals("A/N0003", found.at("/entries/0/id").textValue());
            assertEquals("bench 1", found.at("/entries/0/chainBench").textValue());
            lab(1, "find", "nothing of the kind");
            assertTrue(lab(0, "find", "--limit", "2").out().contains("3 found; the newest 2 are shown."));

            String head = BenchWords.log(project).get(2).hash();
            assertEquals(
                    3,
                    lab(0, "verify", "--expected-head", head, "--json")
                            .json()
                            .path("entriesChecked")
                            .intValue());
            assertTrue(lab(3, "verify", "--expected-head", "a".repeat(64)).err().contains("expected head"));

            assertTrue(lab(4, "close", "A", "--reason", "done").err().contains("lab grant"));
            be(LabServer.OWNER, LabServer.PASSWORD);
            lab(3, "close", "Q", "--reason", "done");
            lab(0, "close", "a", "--reason", "The bench was taken down.");
            note("too late");
            assertTrue(lab(3, "push").err().contains("The bench was taken down."));
            lab(
                    0,
                    "close",
                    pushed.at("/chains/0/sharedChain").textValue().substring(0, 12),
                    "--reason",
                    "It is back.",
                    "--reopen");
            lab(0, "push");
            lab(0, "grant", "bench1", "none");
            be("bench1", LabServer.PASSWORD);
            assertTrue(lab(4, "push").err().contains("has no role in the shared log"));
        }
    }

    @Test
    void aClockThatWasSetBackStandsInTheCheckOfTheSharedLog() throws Exception {
        try (LabServer server = LabServer.start("bench1")) {
            names(server.port(), "bench 1");
            Files.deleteIfExists(project.resolve(TestLog.FILE_NAME));
            FutureLog.write(project.resolve(TestLog.FILE_NAME));
            be(LabServer.OWNER, LabServer.PASSWORD);
            lab(0, "prepare");
            lab(0, "push");
            JsonNode before = lab(0, "verify", "--json").json();
            assertEquals(0, before.at("/clockWentBack/count").asInt(-1));
            assertEquals(0, before.at("/chains/0/clockWentBack").asInt(-1));
            for (int number = 0; number < 2; number++) {
                note("the clock is set right");
            }
            lab(0, "push");
            BenchWords text = lab(0, "verify");
            assertTrue(text.out().contains("The shared log is whole"), text.out());
            assertTrue(
                    text.out().contains("The entry A/N0002, number 2 of the joined chain A, says that it was added at"),
                    text.out());
            assertTrue(text.out().contains(FutureLog.TIME), text.out());
            assertFalse(text.out().contains("A/N0003"), text.out());
            JsonNode after = lab(0, "verify", "--json").json();
            assertEquals(1, after.at("/clockWentBack/count").asInt());
            assertEquals("A/N0002", after.at("/clockWentBack/first/0/id").asText());
            assertEquals(2, after.at("/clockWentBack/first/0/sequence").asInt());
            assertEquals(1, after.at("/chains/0/clockWentBack").asInt());
        }
    }
}
