// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import net.jqwik.api.lifecycle.BeforeContainer;
import org.ohmstead.testlog.chain.ChainCheck;
import org.ohmstead.testlog.chain.ChainedRow;

/** Whatever is done to a log by its own means leaves it whole, and whatever is done to its rows otherwise is found where it was done. */
class ChainLawsTest {
    private static final int MOST = 10_000;

    /** The rows of a log with entries of every kind. */
    private static final List<ChainedRow> ROWS = new ArrayList<>();

    @BeforeContainer
    static void makeALog() throws Exception {
        Path folder = Files.createTempDirectory("ohmstead-chain");
        try (TestLog log = TestLog.open(folder.resolve("one.db"));
                TestLog other = TestLog.open(folder.resolve("other.db"))) {
            other.append(LogGenerator.reading(500));
            Play play = new Play(log, other);
            for (int what : new int[] {0, 1, 2, 0, 3, 0, 4, 0, 5, 0, 3, 2}) {
                play.play(what, 7);
            }
            ROWS.addAll(log.rows().rows(log.chains().get(0).chain(), 0, MOST));
        } finally {
            delete(folder);
        }
        assertEquals(12, ROWS.size());
        assertEquals(List.of(), faults(ROWS));
    }

    @Property(seed = "20261191", tries = 20)
    void everySequenceOfActionsLeavesAWholeLog(
            @ForAll @Size(min = 1, max = 12) List<@IntRange(max = 5) Integer> actions,
            @ForAll @IntRange(max = 1000) int choice)
            throws Exception {
        Path folder = Files.createTempDirectory("ohmstead-chain");
        try (TestLog log = TestLog.open(folder.resolve("one.db"));
                TestLog other = TestLog.open(folder.resolve("other.db"))) {
            other.append(LogGenerator.reading(500));
            Play play = new Play(log, other);
            for (int what : actions) {
                play.play(what, choice);
            }
            assertTrue(log.verify().intact(), () -> faultsOf(log));
            for (String head : play.heads) {
                assertTrue(log.verify(Optional.of(head)).intact(), head);
            }
            for (String id : play.ids) {
                assertEquals(
                        play.voided.contains(id), log.entry(id).orElseThrow().voided(), id);
            }
            for (ChainInfo chain : log.chains()) {
                List<ChainedRow> rows = log.rows().rows(chain.chain(), 0, MOST);
                assertEquals(chain.entries(), rows.size());
                assertEquals(chain.headHash(), rows.get(rows.size() - 1).hash());
                assertEquals(List.of(), faults(rows));
            }
            assertEquals(play.entries, log.chains().get(0).entries());
        } finally {
            delete(folder);
        }
    }

    @Property(seed = "20261192", tries = 600)
    void anyChangedLetterIsFoundInItsEntry(
            @ForAll @IntRange(max = 11) int which,
            @ForAll @IntRange(max = 5) int field,
            @ForAll @IntRange(max = 100_000) int place,
            @ForAll @IntRange(min = 1, max = 126) int otherBy,
            @ForAll @IntRange(max = 2) int how) {
        List<ChainedRow> rows = new ArrayList<>(ROWS);
        ChainedRow row = rows.get(which);
        String[] texts = {row.kind(), row.entryId(), row.recordedAt(), row.body(), row.previousHash(), row.hash()};
        int at = place % texts[field].length();
        char letter = (char) ((texts[field].charAt(at) + otherBy) % 127);
        String behind = texts[field].substring(how == 1 ? at : at + 1);
        texts[field] = texts[field].substring(0, at) + (how == 2 ? "" : letter) + behind;
        rows.set(which, new ChainedRow(row.sequence(), texts[0], texts[1], texts[2], texts[3], texts[4], texts[5]));
        assertFirst(row.sequence(), rows);
    }

    @Property(seed = "20261193", tries = 200)
    void deletedSwappedAndDoubledEntriesAreFound(
            @ForAll @IntRange(max = 11) int one, @ForAll @IntRange(max = 11) int other) {
        List<ChainedRow> less = new ArrayList<>(ROWS);
        less.remove(one);
        if (one < less.size()) {
            assertFirst(one + 2, less);
        }
        List<ChainedRow> doubled = new ArrayList<>(ROWS);
        doubled.add(one + 1, ROWS.get(one));
        assertFirst(one + 1, doubled);
        if (one != other) {
            List<ChainedRow> swapped = new ArrayList<>(ROWS);
            swapped.set(one, at(ROWS.get(other), one + 1));
            swapped.set(other, at(ROWS.get(one), other + 1));
            assertFirst(Math.min(one, other) + 1, swapped);
        }
    }

    /** The forger counts the entries behind anew and gives what is put in its right hash; only the next one tells. */
    @Property(seed = "20261194", tries = 100)
    void aForgedEntryIsFoundByTheNextOne(@ForAll @IntRange(max = 11) int which, @ForAll @IntRange(max = 11) int like) {
        List<ChainedRow> rows = new ArrayList<>(ROWS.subList(0, which));
        ChainedRow model = ROWS.get(like);
        String previous = which == 0
                ? ChainedRow.FIRST_PREVIOUS_HASH
                : ROWS.get(which - 1).hash();
        rows.add(ChainedRow.chained(
                which + 1, "note", "N0999", model.recordedAt(), ROWS.get(2).body(), previous));
        for (int i = which; i < ROWS.size(); i++) {
            rows.add(at(ROWS.get(i), i + 2));
        }
        assertFirst(which + 2, rows);
    }

    @Property(seed = "20261195", tries = 30)
    void aChainThatWasCutOffOrBuiltAnewHasAnotherHead(@ForAll @IntRange(max = 11) int kept) {
        ChainCheck whole = checked(ROWS);
        ChainCheck cut = checked(ROWS.subList(0, kept));
        assertEquals(kept, cut.checked());
        assertNotEquals(whole.headHash(), cut.headHash());
        List<ChainedRow> anew = new ArrayList<>(ROWS.subList(0, kept));
        String previous = cut.headHash();
        for (ChainedRow row : ROWS.subList(kept, ROWS.size())) {
            String time = row.sequence() == kept + 1 ? row.recordedAt().replace('2', '1') : row.recordedAt();
            anew.add(ChainedRow.chained(row.sequence(), row.kind(), row.entryId(), time, row.body(), previous));
            previous = anew.get(anew.size() - 1).hash();
        }
        assertNotEquals(whole.headHash(), checked(anew).headHash());
    }

    /** A log and what it should hold. */
    private static final class Play {
        private final TestLog log;
        private final TestLog other;
        private final List<String> ids = new ArrayList<>();
        private final Set<String> voided = new TreeSet<>();
        private final List<String> heads = new ArrayList<>();
        private int entries;
        private int number;

        Play(TestLog log, TestLog other) {
            this.log = log;
            this.other = other;
        }

        void play(int what, int choice) throws TestLogException {
            number++;
            switch (what) {
                case 0 -> added(log.append(LogGenerator.reading(number)));
                case 1 -> added(log.append(LogGenerator.figures(number)));
                case 2 -> {
                    log.note("Remark " + number + " \u03a9\n\"as is\"", "N. N.");
                    entries++;
                }
                case 3 -> voidOne(choice);
                case 4 -> join();
                default -> {
                    log.archive(new ArchiveNote("a.zip", "ab".repeat(32), "cd".repeat(32), List.of(), "N. N."));
                    entries++;
                }
            }
            if (entries > 0) {
                heads.add(log.headHash());
            }
        }

        private void added(LogEntry entry) {
            ids.add(entry.id());
            entries++;
        }

        private void voidOne(int choice) throws TestLogException {
            List<String> left = ids.stream().filter(id -> !voided.contains(id)).toList();
            if (!left.isEmpty()) {
                String id = left.get(choice % left.size());
                log.voidEntry(id, "a lead was loose", "");
                voided.add(id);
                entries++;
            }
        }

        private void join() throws TestLogException {
            other.append(LogGenerator.reading(500 + number));
            assertTrue(log.join(other, "Second bench", "N. N.").added() > 0);
            entries++;
            JoinReport again = log.join(other, "Second bench", "N. N.");
            assertEquals(0, again.added());
            assertEquals(Optional.empty(), again.entry());
        }
    }

    private static ChainedRow at(ChainedRow row, long sequence) {
        return new ChainedRow(
                sequence, row.kind(), row.entryId(), row.recordedAt(), row.body(), row.previousHash(), row.hash());
    }

    private static ChainCheck checked(List<ChainedRow> rows) {
        ChainCheck check = new ChainCheck();
        rows.forEach(check::check);
        return check;
    }

    private static List<VerifyFault> faults(List<ChainedRow> rows) {
        return checked(rows).faults();
    }

    private static void assertFirst(long sequence, List<ChainedRow> rows) {
        List<VerifyFault> faults = faults(rows);
        assertFalse(faults.isEmpty(), "it was not seen");
        assertEquals(sequence, faults.get(0).sequence(), () -> faults.toString());
    }

    private static String faultsOf(TestLog log) {
        try {
            return log.verify().faults().toString();
        } catch (TestLogException failure) {
            return failure.getMessage();
        }
    }

    private static void delete(Path folder) throws IOException {
        try (var files = Files.walk(folder)) {
            for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(file);
            }
        }
    }
}
