// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.MappingIterator;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.dataformat.csv.CsvMapper;
import com.fasterxml.jackson.dataformat.csv.CsvSchema;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.ohmstead.model.ChannelReading;
import org.ohmstead.model.Reading;
import org.ohmstead.testlog.EntryKind;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.LogNote;
import org.ohmstead.testlog.VoidNote;

class LogExportTest {
    private static final String ZEROS = "0".repeat(64);
    private static final Instant RECORDED = Instant.parse("2026-03-02T09:05:00Z");

    private final List<LogEntry> entries = new ArrayList<>();

    @BeforeEach
    void takeTheSample() {
        for (SheetReading entry : SampleSheet.plain().build().readings()) {
            String id = "R" + entry.entryId();
            Optional<VoidNote> voided =
                    entry.voidReason().map(reason -> new VoidNote("V0001", id, reason, "", RECORDED));
            entries.add(entry(id, entry.reading(), "{\"stepId\":\"x\"}", voided));
        }
    }

    private LogEntry entry(String id, Reading reading, String body, Optional<VoidNote> voided) {
        long sequence = entries.size() + 1L;
        return new LogEntry(
                sequence,
                EntryKind.READING,
                id,
                RECORDED,
                body,
                ZEROS,
                "ab".repeat(32),
                Optional.of(reading),
                Optional.empty(),
                Optional.empty(),
                voided);
    }

    private static LogEntry note(String text, String body) {
        return new LogEntry(
                99,
                EntryKind.NOTE,
                "N0001",
                RECORDED,
                body,
                ZEROS,
                "cd".repeat(32),
                Optional.empty(),
                Optional.of(new LogNote(text, "")),
                Optional.empty(),
                Optional.empty());
    }

    private static String csv(List<LogEntry> list) throws Exception {
        StringBuilder text = new StringBuilder();
        LogCsv.write(list, text);
        return text.toString();
    }

    private static List<Map<String, String>> parsed(String text) throws Exception {
        try (MappingIterator<Map<String, String>> rows = new CsvMapper()
                .readerForMapOf(String.class)
                .with(CsvSchema.emptySchema().withHeader())
                .readValues(text)) {
            return rows.readAll();
        }
    }

    private Reading withNote(Reading reading, String note) {
        return new Reading(
                reading.stepId(),
                reading.mode(),
                reading.loadId(),
                reading.nominalLoadOhms(),
                reading.stimulus(),
                reading.endPoint(),
                reading.takenAt(),
                reading.conditions(),
                reading.channels(),
                reading.provenance(),
                List.of(note));
    }

    @Test
    void hasARowForEachChannelOfEachReading() throws Exception {
        List<Map<String, String>> rows = parsed(csv(entries));
        int channels = entries.stream()
                .mapToInt(entry -> entry.reading().orElseThrow().channels().size())
                .sum();
        assertEquals(channels, rows.size());
        assertEquals(LogCsv.headings(), List.copyOf(rows.get(0).keySet()));
    }

    @Test
    void keepsNumbersExactly() throws Exception {
        List<Map<String, String>> rows = parsed(csv(entries));
        int row = 0;
        for (LogEntry entry : entries) {
            for (ChannelReading channel : entry.reading().orElseThrow().channels()) {
                Map<String, String> cells = rows.get(row++);
                assertEquals(channel.channel(), cells.get("channel"));
                assertEquals(channel.powerWatts(), Double.parseDouble(cells.get("power_W")));
                assertEquals(channel.supplyVolts(), Double.parseDouble(cells.get("supply_V")));
                assertEquals(channel.supplyAmps().orElseThrow(), Double.parseDouble(cells.get("supply_A")));
                assertEquals(channel.thdFRatio() * 100, Double.parseDouble(cells.get("thd_f_percent")));
                assertEquals(
                        channel.standardUncertaintyWatts(), Double.parseDouble(cells.get("power_std_uncertainty_W")));
            }
        }
    }

    @Test
    void saysWhatWasVoidedAndWhy() throws Exception {
        List<Map<String, String>> voided = parsed(csv(entries)).stream()
                .filter(row -> row.get("voided").equals("yes"))
                .toList();
        assertEquals(2, voided.size());
        assertTrue(voided.get(0).get("void_reason").startsWith("A probe had slipped off."));
        assertEquals("V0001", voided.get(0).get("void_entry"));
        assertEquals("ab".repeat(32), voided.get(0).get("entry_hash"));
    }

    @Test
    void endsLinesAsRfc4180Wants() throws Exception {
        String text = csv(entries);
        assertTrue(text.endsWith("\r\n"));
        assertTrue(text.startsWith("entry,recorded_at_utc,"));
        assertEquals(
                text.replace("\r\n", "").length(),
                text.replace("\n", "").replace("\r", "").length());
    }

    @ParameterizedTest
    @ValueSource(strings = {"=1+1", "+1", "-1", "@SUM(A1)", "\tx", "\r=1", "\n=1"})
    void takesTheSenseOutOfFormulas(String note) throws Exception {
        Reading reading = withNote(entries.get(0).reading().orElseThrow(), note);
        List<Map<String, String>> rows = parsed(csv(List.of(entry("R1", reading, "{}", Optional.empty()))));
        assertEquals("'" + note, rows.get(0).get("notes"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"plain", "comma, quote \" and more", "two\r\nlines", "4 \u03a9 \u00b1 1 %", "1-2"})
    void leavesOtherTextsAlone(String note) throws Exception {
        Reading reading = withNote(entries.get(0).reading().orElseThrow(), note);
        List<Map<String, String>> rows = parsed(csv(List.of(entry("R1", reading, "{}", Optional.empty()))));
        assertEquals(note, rows.get(0).get("notes"));
    }

    @Test
    void leavesNotesAndVoidsOutOfTheTable() throws Exception {
        assertEquals(0, parsed(csv(List.of(note("Warm-up ended.", "{}")))).size());
    }

    @Test
    void writesEveryEntryAsALineOfJson() throws Exception {
        entries.add(note("first\nsecond", "{\"text\":\"first\\nsecond\",\n\"who\":\"\"}"));
        StringBuilder text = new StringBuilder();
        LogJson.write(entries, text);
        String[] lines = text.toString().split("\n");
        assertEquals(entries.size(), lines.length);
        ObjectMapper mapper = new ObjectMapper();
        for (int index = 0; index < lines.length; index++) {
            JsonNode line = mapper.readTree(lines[index]);
            LogEntry entry = entries.get(index);
            assertEquals(entry.id(), line.get("id").textValue());
            assertEquals(entry.sequence(), line.get("sequence").longValue());
            assertEquals(entry.hash(), line.get("hash").textValue());
            assertEquals(entry.voided(), line.get("voided").booleanValue());
            assertEquals(entry.voided(), line.has("voidReason"));
            assertEquals(mapper.readTree(entry.bodyText()), line.get("body"));
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "{\"a\":", "{} {}", "not json"})
    void exportsWhatIsNoJsonAsText(String body) throws Exception {
        StringBuilder text = new StringBuilder();
        LogJson.write(List.of(note("x", body)), text);
        JsonNode line = new ObjectMapper().readTree(text.toString());
        assertFalse(line.has("body"));
        assertEquals(body, line.get("unreadableBody").textValue());
    }

    @Test
    void writesBothAsFiles(@TempDir Path folder) throws Exception {
        LogCsv.write(entries, folder.resolve("log.csv"));
        LogJson.write(entries, folder.resolve("log.jsonl"));
        assertEquals(csv(entries), Files.readString(folder.resolve("log.csv")));
        assertEquals(
                entries.size(), Files.readAllLines(folder.resolve("log.jsonl")).size());
        try (var files = Files.list(folder)) {
            assertEquals(2, files.count());
        }
    }
}
