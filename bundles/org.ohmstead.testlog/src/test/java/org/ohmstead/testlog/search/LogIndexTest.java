// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Reading;
import org.ohmstead.testlog.EntryKind;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.LogGenerator;
import org.ohmstead.testlog.LogQuery;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;

class LogIndexTest {
    private static final int MANY = 5000;

    @TempDir
    Path folder;

    private Path file() {
        return folder.resolve(TestLog.FILE_NAME);
    }

    private Path indexFile() {
        return LogIndex.beside(file());
    }

    private static List<String> ids(Found found) throws TestLogException {
        return found.page(0, Integer.MAX_VALUE).stream().map(IndexedEntry::id).toList();
    }

    private static List<String> ids(LogIndex index, String query) throws Exception {
        return ids(index.find(Find.parse(query), FindOrder.AS_LOGGED));
    }

    private void makeBigLog() throws Exception {
        LogGenerator.write(file(), MANY);
        Path other = folder.resolve("other.db");
        LogGenerator.write(other, 700);
        try (TestLog log = TestLog.open(file());
                TestLog second = TestLog.openReadOnly(other)) {
            log.note("\u03a9-Last note OF THE \u00c9tude", "\u00c9. Fuse");
            // The same entries under the same number would be the same chain; a note in front makes it another one.
            assertEquals(0, log.join(second, "Second bench", "N. N.").added());
        }
        Files.delete(other);
        try (TestLog second = TestLog.open(other)) {
            second.note("Second bench begins.", "");
            for (int number = 1; number < 150; number++) {
                second.append(LogGenerator.reading(50_000 + number));
            }
            second.voidEntry("R0007", "a lead was loose there", "");
        }
        try (TestLog log = TestLog.open(file());
                TestLog second = TestLog.openReadOnly(other)) {
            assertEquals(151, log.join(second, "Second bench", "N. N.").added());
            log.voidEntry("R0005", "found out late", "A. Bench");
        }
    }

    /** The index must find what filtering and sorting the entries themselves finds; seeded. */
    @Test
    void itFindsWhatFilteringAllEntriesFinds() throws Exception {
        makeBigLog();
        try (TestLog log = TestLog.open(file());
                LogIndex index = LogIndex.open(indexFile(), log.rows())) {
            List<LogEntry> entries = log.entries(LogQuery.everything());
            assertEquals(entries.size(), index.refresh(IndexProgress.NONE));
            assertEquals(new IndexState(entries.size(), entries.size(), true, ""), index.state());
            for (IndexColumn column : IndexColumn.values()) {
                for (boolean falling : new boolean[] {false, true}) {
                    FindOrder order = new FindOrder(column, falling);
                    assertEquals(
                            FindOracle.ids(entries, Find.EVERYTHING, order),
                            ids(index.find(Find.EVERYTHING, order)),
                            order.toString());
                }
            }
            Random random = new Random(5);
            int notEmpty = 0;
            for (int round = 0; round < 250; round++) {
                Find find = query(random);
                FindOrder order = new FindOrder(
                        IndexColumn.values()[random.nextInt(IndexColumn.values().length)], random.nextBoolean());
                List<String> expected = FindOracle.ids(entries, find, order);
                Found found = index.find(find, order);
                assertEquals(expected, ids(found), find.toText() + " by " + order);
                notEmpty += expected.isEmpty() ? 0 : 1;
                checkPlaces(found, expected, random);
            }
            assertTrue(notEmpty > 100, "queries that found something: " + notEmpty);
        }
    }

    private static void checkPlaces(Found found, List<String> expected, Random random) throws TestLogException {
        assertEquals(expected.size(), found.size());
        assertEquals(-1, found.indexOf("R999999"));
        assertEquals(-1, found.indexOf("nonsense"));
        if (!expected.isEmpty()) {
            int place = random.nextInt(expected.size());
            assertEquals(place, found.indexOf(expected.get(place).toLowerCase(java.util.Locale.ROOT)));
            assertEquals(expected.get(place), found.page(place, 1).get(0).id());
            assertEquals(List.of(), found.page(expected.size(), 5));
        }
    }

    private static Find query(Random random) {
        Find find = Find.EVERYTHING;
        for (int conditions = 1 + random.nextInt(3); conditions > 0; conditions--) {
            find = switch (random.nextInt(16)) {
                case 0 ->
                    find.withWords(List.of(pick(
                            random,
                            "sagged",
                            "WARM",
                            "larkspur",
                            "R0005",
                            "b/r0007",
                            "\u03c9-last",
                            "\u00e9tude",
                            "n",
                            "12.3")));
                case 1 -> find.withWords(List.of("lead", pick(random, "was", "bench", "zzz", "loose at 1")));
                case 2 -> find.withKinds(Set.copyOf(List.of(EntryKind.values()[random.nextInt(6)], EntryKind.NOTE)));
                case 3 -> find.withChain(pick(random, "own", "B", "C"));
                case 4 -> find.withAmplifier(pick(random, "Larkspur 4.100", "kestrel*", "*5", "Lark", "*"));
                case 5 -> find.withSerialNumber(pick(random, "SN0*", "sn00017", "*9"));
                case 6 -> find.withBench(pick(random, "Bench 2", "bench*", "x"));
                case 7 -> find.withOperator(pick(random, "A. Bench", "\u00e9*", "*i*"));
                case 8 -> find.withMode(Optional.of(Mode.values()[random.nextInt(3)]));
                case 9 -> find.withLoadOhms(OptionalDouble.of(1 << random.nextInt(4)));
                case 10 -> find.withLoadId(pick(random, "4OHM", "?", "*m"));
                case 11 -> find.withStepId(pick(random, "step-3", "step-1*"));
                case 12 ->
                    find.withFrom(Optional.of(
                                    LogGenerator.reading(random.nextInt(MANY)).takenAt()))
                            .withTo(Optional.of(
                                    LogGenerator.reading(random.nextInt(MANY)).takenAt()));
                case 13 -> find.withRanges(List.of(range(random)));
                case 14 -> find.withStates(Set.of(EntryState.values()[random.nextInt(4)]));
                default -> find.withOverdueOnly(true);
            };
        }
        return find;
    }

    private static String pick(Random random, String... texts) {
        return texts[random.nextInt(texts.length)];
    }

    private static FigureRange range(Random random) {
        Reading some = LogGenerator.reading(random.nextInt(MANY));
        double power = some.channels().get(0).powerWatts();
        return switch (random.nextInt(5)) {
            case 0 -> new FigureRange("power", power, power);
            case 1 -> new FigureRange("power", power, Double.POSITIVE_INFINITY);
            case 2 -> new FigureRange("thd", 0, some.channels().get(0).thdFRatio());
            case 3 -> new FigureRange("supply", 12, 13.3);
            default -> new FigureRange("dampingFactor", 50, 60 + random.nextInt(100));
        };
    }

    @Test
    void aLineHoldsWhatTheEntryHolds() throws Exception {
        try (TestLog log = TestLog.open(file());
                LogIndex index = LogIndex.open(indexFile(), log.rows())) {
            Reading reading = LogGenerator.reading(3);
            log.append(reading);
            log.append(LogGenerator.figures(4));
            log.note("Fan\non.  Really ".repeat(30), "N. N.");
            index.refresh(IndexProgress.NONE);
            List<IndexedEntry> lines =
                    index.find(Find.EVERYTHING, FindOrder.AS_LOGGED).page(0, 9);
            IndexedEntry line = lines.get(0);
            assertEquals("R0001", line.id());
            assertEquals(log.entry("R0001").orElseThrow().recordedAt(), line.recordedAt());
            assertEquals(Optional.of(reading.takenAt()), line.takenAt());
            assertEquals(reading.provenance().specimen().orElseThrow().amplifier(), line.amplifier());
            assertEquals(reading.provenance().specimen().orElseThrow().serialNumber(), line.serialNumber());
            assertEquals(reading.provenance().specimen().orElseThrow().bench(), line.bench());
            assertEquals(OptionalDouble.of(reading.channels().get(0).powerWatts()), line.powerWatts());
            assertEquals(
                    OptionalDouble.of(reading.channels().get(0).standardUncertaintyWatts()),
                    line.standardUncertaintyWatts());
            assertEquals(OptionalDouble.of(reading.channels().get(0).thdFRatio()), line.thdFRatio());
            assertEquals(Optional.of(reading.channels().get(0).outcome()), line.outcome());
            assertEquals(OptionalDouble.of(reading.nominalLoadOhms()), line.nominalLoadOhms());
            assertEquals(Optional.of(reading.mode()), line.mode());
            assertEquals("power-at-end-point", line.measurement());
            assertEquals(EntryState.VALID, line.state());
            assertEquals(OptionalDouble.empty(), lines.get(1).powerWatts());
            assertEquals(
                    OptionalDouble.of(LogGenerator.figures(4).supplyVolts()),
                    lines.get(1).supplyVolts());
            assertTrue(
                    lines.get(2).text().startsWith("Fan on. Really Fan on. Really "),
                    lines.get(2).text());
            assertEquals(201, lines.get(2).text().length());
        }
    }

    @Test
    void itCatchesUpAndWhatWasFoundStaysAsItWas() throws Exception {
        try (TestLog log = TestLog.open(file());
                LogIndex index = LogIndex.open(indexFile(), log.rows())) {
            assertEquals(0, index.refresh(IndexProgress.NONE));
            assertEquals(List.of(), ids(index, ""));
            log.append(LogGenerator.reading(1));
            log.append(LogGenerator.figures(2));
            assertEquals(2, index.refresh(IndexProgress.NONE));
            Found before = index.find(Find.EVERYTHING, FindOrder.NEWEST_FIRST);
            log.note("Fan on.", "");
            log.voidEntry("R0001", "a lead was loose", "");
            assertFalse(index.state().upToDate());
            assertEquals(2, index.refresh(IndexProgress.NONE));
            assertEquals(0, index.refresh(IndexProgress.NONE));
            assertTrue(index.state().upToDate());
            assertEquals(List.of("F0001", "R0001"), ids(before));
            assertEquals(List.of("R0001", "F0001", "N0001", "V0001"), ids(index, ""));
            assertEquals(List.of("R0001"), ids(index, "state:voided"));
            assertEquals(List.of("R0001", "V0001"), ids(index, "R0001"), "its id, and what speaks of it");
        }
        try (TestLog log = TestLog.open(file());
                LogIndex again = LogIndex.open(indexFile(), log.rows())) {
            assertEquals(4, again.state().indexed());
            log.append(LogGenerator.figures(5));
            assertEquals(1, again.refresh(IndexProgress.NONE));
            assertEquals(List.of("F0001", "F0002"), ids(again, "dampingFactor:0.."));
            assertEquals(List.of("F0001", "F0002"), ids(again, "kind:figures"));
        }
    }

    /** So many texts that their order is kept; those that come behind are put where they belong. */
    @Test
    void theOrderOfManyTextsIsKeptAndLaterOnesArePutBetween() throws Exception {
        int many = 4 * IndexColumns.SEGMENT + 300;
        LogGenerator.write(file(), many);
        try (TestLog log = TestLog.open(file());
                LogIndex index = LogIndex.open(indexFile(), log.rows())) {
            index.refresh(IndexProgress.NONE);
            for (String text : List.of(
                    "The load was HOT.", "The load", "aaa", "zzz", "\u03a9", "The supply sagged to 11.500 V", "aaa")) {
                log.note(text, "");
            }
            index.refresh(IndexProgress.NONE);
            List<LogEntry> entries = log.entries(LogQuery.everything());
            for (boolean falling : new boolean[] {false, true}) {
                FindOrder order = new FindOrder(IndexColumn.TEXT, falling);
                assertEquals(FindOracle.ids(entries, Find.EVERYTHING, order), ids(index.find(Find.EVERYTHING, order)));
            }
        }
    }

    @Test
    void itCanBeStoppedAndGoesOnLater() throws Exception {
        LogGenerator.write(file(), MANY);
        try (TestLog log = TestLog.open(file());
                LogIndex index = LogIndex.open(indexFile(), log.rows())) {
            int[] asked = {0};
            long first = index.refresh(new IndexProgress() {
                @Override
                public void indexed(long done, long total) {
                    assertEquals(MANY, total);
                    assertTrue(done <= total);
                }

                @Override
                public boolean cancelled() {
                    return ++asked[0] > 3;
                }
            });
            assertTrue(first > 0 && first < MANY, "taken in: " + first);
            assertEquals(first, index.state().indexed());
            assertEquals(MANY - first, index.refresh(IndexProgress.NONE));
            List<LogEntry> entries = log.entries(LogQuery.everything());
            assertEquals(FindOracle.ids(entries, Find.EVERYTHING, FindOrder.AS_LOGGED), ids(index, ""));
            Set<String> amplifiers = new TreeSet<>(entries.stream()
                    .flatMap(entry -> entry.reading().stream())
                    .flatMap(reading -> reading.provenance().specimen().stream())
                    .map(specimen -> specimen.amplifier())
                    .toList());
            assertEquals(new ArrayList<>(amplifiers), index.distinct(IndexColumn.AMPLIFIER));
            assertThrows(IllegalArgumentException.class, () -> index.distinct(IndexColumn.POWER_WATTS));
        }
    }
}
