// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.search.LogIndex;

/** The words that search the log, join another one and check both. */
class LogWordsTest {
    private static final List<String> STEPS = List.of("stereo-4ohm-12V5", "stereo-4ohm-14V4");

    @TempDir
    private Path folder;

    private Path project;

    @BeforeEach
    void measure() throws Exception {
        project = BenchWords.project(folder);
        Path recordings = BenchWords.recordings(folder, STEPS);
        BenchWords run =
                BenchWords.run(new BuiltPlugins(), "run", project.toString(), "--replay", recordings.toString());
        assertEquals(0, run.exitCode(), run.err());
    }

    private Path logFile() {
        return project.resolve(TestLog.FILE_NAME);
    }

    private BenchWords log(int exitCode, String word, String... further) {
        String[] words = new String[further.length + 3];
        words[0] = "log";
        words[1] = word;
        words[2] = project.toString();
        System.arraycopy(further, 0, words, 3, further.length);
        BenchWords ended = BenchWords.run(new BuiltPlugins(), words);
        assertEquals(exitCode, ended.exitCode(), ended.out() + ended.err());
        assertFalse(ended.err().contains("fault in Ohmstead"), ended.err());
        return ended;
    }

    private Path otherBench(String... notes) throws Exception {
        Path other = Files.createDirectories(folder.resolve("second.ohmstead"));
        try (TestLog log = TestLog.open(other.resolve(TestLog.FILE_NAME))) {
            for (String note : notes) {
                log.note(note, "N. N.");
            }
        }
        return other;
    }

    @Test
    void findsWhatTheQuerySaysAndCatchesUpWithTheLog() throws Exception {
        JsonNode found =
                log(0, "find", "mode:stereo load:4 kind:reading", "--json").json();
        assertEquals(2, found.get("found").asInt(), found.toString());
        assertTrue(Files.exists(LogIndex.beside(logFile())));
        double first = found.at("/entries/0/powerWatts").asDouble();
        double second = found.at("/entries/1/powerWatts").asDouble();
        double between = (first + second) / 2;
        // More supply gives more power.
        JsonNode stronger = log(0, "find", "power:" + between + "..", "--json").json();
        assertEquals(1, stronger.get("found").asInt());
        assertEquals(STEPS.get(1), stronger.at("/entries/0/step").asText());
        JsonNode falling = log(0, "find", "kind:reading", "--sort", "power_watts", "--falling", "--json")
                .json();
        assertEquals(STEPS.get(1), falling.at("/entries/0/step").asText());
        try (TestLog log = TestLog.open(logFile())) {
            log.note("The fan was sagging.", "N. N.");
        }
        BenchWords note = log(0, "find", "sagging");
        assertTrue(note.out().contains("The fan was sagging.") && note.out().contains("1 entry found."), note.out());
    }

    @Test
    void aQueryThatIsNotUnderstoodIsBadInput() {
        log(1, "find", "nothing of the kind");
        assertTrue(log(0, "find", "--limit", "1").out().contains("the first 1 are listed"));
        BenchWords wrong = log(3, "find", "power:many");
        assertTrue(wrong.err().contains("many"), wrong.err());
        BenchWords help = BenchWords.run(new BuiltPlugins(), "log", "find", "--help");
        assertEquals(0, help.exitCode());
        assertTrue(help.out().contains("power:80..120") && help.out().contains("amplifier:"), help.out());
    }

    @Test
    void aJoinedChainIsNamedWithItsHeadAndWhereItJoined() throws Exception {
        Path other = otherBench("cold", "colder");
        JsonNode joined = log(0, "join", other.toString(), "--name", "Second bench", "--operator", "T. Rial", "--json")
                .json();
        assertEquals(2, joined.get("joined").asInt());
        String joinId = joined.get("entry").asText();
        assertTrue(
                log(0, "join", other.toString(), "--name", "Second bench").out().contains("Nothing was joined"));
        otherBench("warm again");
        String laterId = log(0, "join", other.toString(), "--name", "Second bench", "--json")
                .json()
                .get("entry")
                .asText();
        List<LogEntry> theirs = BenchWords.log(other);
        JsonNode document = log(0, "verify", "--json").json();
        assertEquals(2, document.get("chains").size());
        assertEquals(0, document.at("/chains/0/joins").size());
        JsonNode chain = document.at("/chains/1");
        assertEquals("B", chain.get("label").asText());
        assertEquals("Second bench", chain.get("name").asText());
        assertEquals(3, chain.get("entries").asInt());
        assertEquals(theirs.get(2).hash(), chain.get("headHash").asText());
        assertEquals(joinId, chain.at("/joins/0/id").asText());
        assertEquals(theirs.get(1).hash(), chain.at("/joins/0/headHash").asText());
        assertEquals("T. Rial", chain.at("/joins/0/who").asText());
        assertEquals(laterId, chain.at("/joins/1/id").asText());
        assertEquals(3, chain.at("/joins/1/firstSequence").asInt());
        assertEquals(3, chain.at("/joins/1/lastSequence").asInt());
        BenchWords text = log(0, "verify");
        assertTrue(
                text.out()
                        .contains("joined chain B, Second bench: 3 entries, head "
                                + theirs.get(2).hash() + ", joined by the entry " + joinId + " on "),
                text.out());
        assertTrue(text.out().contains(" by T. Rial, " + laterId + " on "), text.out());
    }

    @Test
    void theIndexTellsOfALogThatWasCutOff() throws Exception {
        JsonNode before = log(0, "verify", "--json").json();
        assertFalse(before.at("/witness/there").asBoolean());
        assertFalse(before.at("/witness/cutOff").asBoolean());
        assertTrue(log(0, "verify").out().contains("No index lies beside it"));
        Path earlier = Files.copy(logFile(), folder.resolve("earlier.db"));
        try (TestLog log = TestLog.open(logFile())) {
            log.note("the last entry", "N. N.");
        }
        log(0, "find", "last");
        assertTrue(log(0, "verify").out().contains("has seen nothing that is missing at its end"));
        Files.copy(earlier, logFile(), StandardCopyOption.REPLACE_EXISTING);
        JsonNode cut = log(3, "verify", "--json").json();
        assertTrue(cut.at("/witness/there").asBoolean());
        assertTrue(cut.at("/witness/cutOff").asBoolean(), cut.toString());
        assertEquals("CUT_OFF", cut.at("/firstBad/kind").asText());
        BenchWords text = log(3, "verify");
        assertTrue(text.err().contains("cut off at its end"), text.err());
        assertTrue(text.err().contains("The log " + logFile() + " was changed"), text.err());
        assertFalse(text.out().contains("whole"), text.out());
    }

    @Test
    void aClockThatWasSetBackIsToldToWhoAddsAndStandsInTheCheck() throws Exception {
        Files.delete(logFile());
        FutureLog.write(logFile());
        assertEquals(
                0, log(0, "verify", "--json").json().at("/clockWentBack/count").asInt());
        BenchWords voided = log(0, "void", "N0001", "--reason", "it is from the future");
        assertTrue(
                voided.err().contains("The computer's clock was set back: the entry V0001 was added to the log at"),
                voided.err());
        assertTrue(voided.err().contains(FutureLog.TIME), voided.err());
        BenchWords text = log(0, "verify");
        assertTrue(text.out().contains("The log is whole"), text.out());
        assertTrue(text.out().contains("The entry V0001, number 2 of the log, says that it was added at"), text.out());
        JsonNode clock = log(0, "verify", "--json").json().get("clockWentBack");
        assertEquals(1, clock.get("count").asInt());
        assertEquals("V0001", clock.at("/first/0/id").asText());
        assertEquals(2, clock.at("/first/0/sequence").asInt());
    }
}
