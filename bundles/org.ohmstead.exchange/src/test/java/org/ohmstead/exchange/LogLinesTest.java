// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.ohmstead.model.Reading;
import org.ohmstead.testlog.ChainInfo;
import org.ohmstead.testlog.JoinReport;
import org.ohmstead.testlog.TestLog;

class LogLinesTest {
    private static final LogLines.Head HEAD =
            new LogLines.Head("Kestrel", "0.1.0", Instant.parse("2026-11-26T12:00:00Z"));

    @TempDir
    private static Path shared;

    private static Path theirs;

    @TempDir
    private Path folder;

    private Path file;

    @BeforeEach
    void takeTheOtherBenchsLog() throws Exception {
        file = Files.copy(shared.resolve("theirs.jsonl"), folder.resolve("theirs.jsonl"));
    }

    @BeforeAll
    static void writeTheOtherBenchsLog() throws Exception {
        theirs = shared.resolve("theirs.db");
        Path file = shared.resolve("theirs.jsonl");
        try (TestLog log = TestLog.open(theirs)) {
            for (int number = 1; number <= 270; number++) {
                log.append(Samples.reading(number, "line\nbreak \"and\" \u03a9"));
            }
            log.append(Samples.figures(3));
            log.note("warm-up over", "N. N.");
            log.voidEntry("R0002", "lead was loose", "N. N.");
            LogLines.write(log, HEAD, file);
        }
    }

    @Test
    void holdsEachEntryAsItIsStored() throws Exception {
        List<String> lines = Files.readAllLines(file);
        assertEquals(274, lines.size());
        ObjectMapper mapper = new ObjectMapper();
        String previous = "0".repeat(64);
        for (String text : lines.subList(1, lines.size())) {
            JsonNode line = mapper.readTree(text);
            // The rule that the documentation states, by an implementation of its own.
            String hashed = String.join(
                    "\n",
                    previous,
                    line.get("sequence").asText(),
                    line.get("kind").asText(),
                    line.get("id").asText(),
                    line.get("recordedAt").asText(),
                    line.get("body").asText());
            previous = HandMadeZip.sha256(hashed.getBytes(StandardCharsets.UTF_8));
            assertEquals(previous, line.get("hash").asText());
        }
        JsonNode chain = mapper.readTree(lines.get(0)).get("chains").get(0);
        assertEquals(previous, chain.get("headHash").asText());
        assertEquals(273, chain.get("entries").asInt());
    }

    @Test
    void joinsAsAChainOfItsOwnAndOnlyOnce() throws Exception {
        try (TestLog log = TestLog.open(folder.resolve("ours.db"));
                TestLog other = TestLog.openReadOnly(theirs)) {
            log.append(Samples.reading(1));
            JoinReport report = LogLines.join(file, log, "bench two", "N. N.");
            assertEquals(273, report.added());
            assertTrue(log.verify().intact());
            ChainInfo chain = log.chains().get(1);
            assertEquals("B", chain.label());
            assertEquals("bench two", chain.name());
            assertEquals(other.headHash(), chain.headHash());
            assertEquals(
                    other.entry("R0270").orElseThrow().hash(),
                    log.entry("B/R0270").orElseThrow().hash());
            assertEquals(0, LogLines.join(file, log, "bench two", "N. N.").added());
            // And on, with both chains in it.
            Path both = folder.resolve("both.jsonl");
            LogLines.write(log, HEAD, both);
            Path again = folder.resolve("again.db");
            LogLines.rebuild(both, again);
            try (TestLog rebuilt = TestLog.openReadOnly(again)) {
                assertEquals(log.chains(), rebuilt.chains());
                assertEquals(Samples.entries(log), Samples.entries(rebuilt));
                assertTrue(rebuilt.verify(Optional.of(log.headHash())).intact());
            }
        }
        assertEquals(
                List.of("again.db", "both.jsonl", "ours.db", "theirs.jsonl"),
                Samples.everythingIn(folder).stream()
                        .filter(name -> !name.endsWith("-wal") && !name.endsWith("-shm"))
                        .toList());
    }

    @Test
    void bringsReadingsAsImportedOnes() throws Exception {
        ReadingImport readings = LogLines.readings(file, ImportSettings.of(Samples.REVISION, "0.1.0"));
        assertEquals(269, readings.readings().size());
        Reading reading = readings.readings().get(0);
        assertEquals("org.ohmstead.import", reading.provenance().procedureId());
        assertEquals(2, reading.channels().get(0).sweep().size());
        assertEquals(
                "Imported from \"theirs.jsonl\" (SHA-256 " + readings.sha256() + ").",
                reading.notes().get(0));
        try (TestLog log = TestLog.open(folder.resolve("ours.db"))) {
            assertEquals(
                    269,
                    readings.addTo(log, false, ExchangeProgress.SILENT).added().size());
            assertEquals(
                    269, readings.addTo(log, false, ExchangeProgress.SILENT).alreadyThere());
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2, 3, 4, 5, 6, 7})
    void refusesALogThatWasTamperedWith(int how) throws Exception {
        List<String> lines = new ArrayList<>(Files.readAllLines(file));
        String tenth = lines.get(10);
        switch (how) {
            case 0 -> lines.set(10, tenth.replace("\\\"powerWatts\\\":80.5", "\\\"powerWatts\\\":90.5"));
            case 1 -> lines.remove(10);
            case 2 -> lines.remove(lines.size() - 1);
            case 3 -> lines.add(10, tenth);
            case 4 -> lines.set(10, lines.set(11, tenth));
            case 5 -> lines.set(0, lines.get(0).replace("\"formatVersion\":1", "\"formatVersion\":2"));
            case 6 -> lines.set(10, tenth.substring(0, 200));
            default -> lines.set(10, "{}");
        }
        assertFalse(how == 0 && lines.get(10).equals(tenth));
        Files.write(file, lines);
        try (TestLog log = TestLog.open(folder.resolve("ours.db"))) {
            log.append(Samples.reading(1));
            String head = log.headHash();
            ExchangeException refusal =
                    assertThrows(ExchangeException.class, () -> LogLines.join(file, log, "bench two", "N. N."));
            assertFalse(refusal.causedOutside());
            assertEquals(head, log.headHash());
            assertEquals(1, log.chains().size());
        }
    }
}
