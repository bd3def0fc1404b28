// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.testlog.TestLog;

/** The words that find entries, join logs and verify what was joined. */
class FindJoinWordsTest {
    @TempDir
    private Path folder;

    private Path project;
    private Path other;

    @BeforeEach
    void makeTwoBenches() throws Exception {
        project = BenchWords.project(folder.resolve("one"));
        other = BenchWords.project(folder.resolve("two"));
        try (TestLog log = TestLog.open(project.resolve(TestLog.FILE_NAME))) {
            log.note("The lead was warm.", "N. N.");
            log.note("Fan on.", "A. Bench");
            log.voidEntry("N0001", "measured too soon", "N. N.");
        }
        try (TestLog log = TestLog.open(other.resolve(TestLog.FILE_NAME))) {
            log.note("Second bench, warm lead.", "C. Dial");
        }
    }

    private static BenchWords run(String... words) {
        return BenchWords.run(new BuiltPlugins(), words);
    }

    private BenchWords join() {
        return run(
                "log", "join", project.toString(), other.toString(), "--name", "Second bench", "--operator", "N. N.");
    }

    private static List<String> ids(JsonNode found) {
        List<String> ids = new ArrayList<>();
        found.get("entries").forEach(entry -> ids.add(entry.get("id").asText()));
        return ids;
    }

    @Test
    void findsByWordsAndConditionsAndCountsWhatItDoesNotList() {
        BenchWords all = run("log", "find", project.toString(), "--json");
        assertEquals(0, all.exitCode(), all.err());
        assertEquals(List.of("N0001", "N0002", "V0001"), ids(all.json()));
        JsonNode voided = run("log", "find", project.toString(), "state:voided", "warm", "--json")
                .json();
        assertEquals(1, voided.get("found").asInt());
        assertEquals("voided", voided.get("entries").get(0).get("state").asText());
        JsonNode newest = run("log", "find", project.toString(), "--falling", "--limit", "1", "--json")
                .json();
        assertEquals(3, newest.get("found").asInt());
        assertEquals(List.of("V0001"), ids(newest));
        BenchWords text = run("log", "find", project.toString(), "operator:\"A. Bench\"");
        assertTrue(text.out().contains("N0002"), text.out());
        assertTrue(text.out().contains("Fan on."), text.out());
        assertTrue(text.out().endsWith("1 entry found." + System.lineSeparator()), text.out());
        assertTrue(Files.exists(project.resolve("log-index.db")));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {"mode:quad|is not known behind", "ampl:x|which is not known", "power:high|is not a range"})
    void aMistakeInAQueryIsBadInput(String query, String sentence) {
        BenchWords refused = run("log", "find", project.toString(), query);
        assertEquals(3, refused.exitCode());
        assertTrue(refused.err().contains(sentence), refused.err());
    }

    @Test
    void joinsAnotherLogOnceAndShowsBothChains() throws Exception {
        BenchWords joined = join();
        assertEquals(0, joined.exitCode(), joined.err());
        assertTrue(joined.out().startsWith("1 entry of Second bench came as chain B; the entry J0001"), joined.out());
        BenchWords again = join();
        assertEquals(0, again.exitCode(), again.err());
        assertTrue(again.out().startsWith("Nothing was joined"), again.out());
        assertEquals(5, BenchWords.log(project).size());
        BenchWords verified = run("log", "verify", project.toString());
        assertEquals(0, verified.exitCode(), verified.err());
        assertTrue(verified.out().contains("joined chain B, Second bench: 1 entry, head "), verified.out());
        JsonNode chains =
                run("log", "verify", project.toString(), "--json").json().get("chains");
        assertEquals(2, chains.size());
        assertEquals(4, chains.get(0).get("entries").asInt());
        assertEquals("B", chains.get(1).get("label").asText());
        assertEquals(
                List.of("B/N0001"),
                ids(run("log", "find", project.toString(), "chain:B", "lead", "--json")
                        .json()));
    }

    @Test
    void aLogThatIsMissingOrNotWholeIsNotJoined() throws Exception {
        BenchWords missing = run("log", "join", project.toString(), folder.toString(), "--name", "x");
        assertEquals(3, missing.exitCode(), missing.err());
        assertTrue(missing.err().contains("There is no log"), missing.err());
        Path theirs = other.resolve(TestLog.FILE_NAME);
        String content = Files.readString(theirs, StandardCharsets.ISO_8859_1);
        assertTrue(content.contains("warm lead"), "the entry stands in the file");
        Files.writeString(theirs, content.replace("warm lead", "cold lead"), StandardCharsets.ISO_8859_1);
        BenchWords refused = join();
        assertEquals(3, refused.exitCode(), refused.err());
        assertTrue(refused.err().contains("Nothing was joined."), refused.err());
        assertEquals(3, BenchWords.log(project).size());
    }

    @Test
    void verifyingFindsALogCutOffSinceItWasSearched() throws Exception {
        Path own = project.resolve(TestLog.FILE_NAME);
        Path older = Files.copy(own, folder.resolve("older.db"));
        try (TestLog log = TestLog.open(own)) {
            log.note("Cut off later.", "N. N.");
        }
        run("log", "find", project.toString());
        Files.copy(older, own, StandardCopyOption.REPLACE_EXISTING);
        BenchWords verified = run("log", "verify", project.toString(), "--json");
        assertEquals(3, verified.exitCode());
        assertEquals("CUT_OFF", verified.json().at("/firstBad/kind").asText());
        assertEquals(4, verified.json().at("/firstBad/sequence").asInt());
    }
}
