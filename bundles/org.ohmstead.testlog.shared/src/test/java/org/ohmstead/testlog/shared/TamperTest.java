// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.shared;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ohmstead.testlog.VerifyFault;

/** What somebody does who rules the server and takes the triggers off: the benches find it by themselves. */
@Timeout(120)
@ExtendWith(SharedServer.class)
class TamperTest {
    private final PostgresServer server = SharedServer.get();
    private final BenchRows bench = new BenchRows().notes("note", 20);
    private final BenchRows copy = bench.copy();
    private LabAddress address;

    @BeforeEach
    void handOver() throws Exception {
        address = server.prepared();
        bench.notes("own", 5);
        copy.voiding("N0003");
        copy.notes("copy", 3);
        try (SharedLab lab = SharedLab.connect(address, PostgresServer.credentials())) {
            new HandOver(lab, new ChainOrigin("bench 1", "", "")).run(bench);
            new HandOver(lab, new ChainOrigin("bench 2", "", "")).run(copy);
            assertTrue(lab.verify(List.of()).intact());
        }
    }

    private List<VerifyFault> faultsAfter(String... statements) throws Exception {
        List<String> all = new ArrayList<>(List.of("SET search_path = ohmstead"));
        for (String table : List.of("chain", "entry")) {
            all.add("ALTER TABLE " + table + " DISABLE TRIGGER ALL");
        }
        all.addAll(List.of(statements));
        for (String trigger : List.of(
                "chain ENABLE TRIGGER ALL",
                "entry ENABLE TRIGGER ALL",
                "chain ENABLE ALWAYS TRIGGER chain_fits",
                "chain ENABLE ALWAYS TRIGGER chain_is_never_changed",
                "entry ENABLE ALWAYS TRIGGER entry_continues_its_chain",
                "entry ENABLE ALWAYS TRIGGER entry_is_never_changed")) {
            all.add("ALTER TABLE " + trigger);
        }
        server.execute(address.database(), all.toArray(String[]::new));
        try (SharedLab lab = SharedLab.connect(address, PostgresServer.credentials())) {
            LabVerifyReport report = lab.verify(
                    List.of(bench.own().get(24).hash(), copy.own().get(23).hash()));
            assertFalse(report.intact());
            assertEquals(
                    List.of(),
                    report.guards().stream()
                            .filter(fault -> fault.kind() == VerifyFault.Kind.GUARDS_CHANGED)
                            .toList());
            return report.faults();
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "UPDATE entry SET body = replace(body, 'note 7', 'note 8') WHERE seq = 7 | 7 | A/N0007",
                "UPDATE entry SET recorded_at = '2026-03-02T09:14:06Z' WHERE seq = 1 | 1 | A/N0001",
                "UPDATE entry SET kind = 'reading' WHERE seq = 12 | 12 | A/N0012",
                "UPDATE entry SET entry_id = 'N0099' WHERE seq = 25 | 25 | A/N0099",
                "UPDATE entry SET seq = 30 WHERE seq = 25 | 30 | A/N0025",
                "DELETE FROM entry WHERE seq = 9 | 10 | A/N0010",
                "DELETE FROM entry WHERE seq = 1 | 2 | A/N0002",
                "UPDATE entry SET body = replace(body, 'copy 2', 'copy 3') WHERE seq = 23 | 23 | B/N0023",
                "DELETE FROM entry WHERE seq = 22 AND entry_id = 'N0022' AND chain <> (SELECT id FROM chain WHERE place = 1) | 23 | B/N0023",
            })
    void theFirstEntryThatIsNotAsItWasIsNamed(String statement, long sequence, String id) throws Exception {
        List<VerifyFault> faults = faultsAfter(statement);
        VerifyFault first = faults.stream()
                .filter(fault -> fault.sequence() > 0)
                .findFirst()
                .orElseThrow();
        assertEquals(sequence, first.sequence(), faults.toString());
        assertEquals(id, first.entryId(), faults.toString());
    }

    @Test
    void aRewrittenChainIsFoundByTheHeadsOfTheBenches() throws Exception {
        // Whoever computes all hashes anew makes a chain that is whole, but not the benches'.
        BenchRows forged = new BenchRows().notes("note", 19).notes("forged", 6);
        List<String> statements = new ArrayList<>();
        for (int index = 19; index < 25; index++) {
            var row = forged.own().get(index);
            statements.add("UPDATE entry SET body = '" + row.body() + "', recorded_at = '" + row.recordedAt()
                    + "', previous_hash = '" + row.previousHash() + "', hash = '" + row.hash() + "' WHERE seq = "
                    + row.sequence() + " AND chain = (SELECT id FROM chain WHERE place = 1)");
        }
        List<VerifyFault> faults = faultsAfter(statements.toArray(String[]::new));
        assertTrue(
                faults.stream().anyMatch(fault -> fault.kind() == VerifyFault.Kind.HEAD_NOT_FOUND), faults.toString());
        assertTrue(
                faults.stream()
                        .anyMatch(fault -> fault.sentence().contains("The chain B (bench 2) continues an entry that")),
                faults.toString());
    }

    @Test
    void aChainCutOffAtItsEndIsFoundByItsHead() throws Exception {
        List<VerifyFault> faults = faultsAfter("DELETE FROM entry WHERE seq > 23");
        assertEquals(2, faults.size(), faults.toString());
        assertEquals(VerifyFault.Kind.HEAD_NOT_FOUND, faults.get(0).kind());
    }

    @Test
    void aChainWithoutEntriesIsFound() throws Exception {
        assertTrue(
                faultsAfter("DELETE FROM entry WHERE seq > 20 AND chain = (SELECT id FROM chain WHERE place = 2)")
                        .stream()
                        .anyMatch(fault -> fault.sentence().contains("has no entries any more")));
    }

    @Test
    void aChainWithoutItsBeginningIsFound() throws Exception {
        assertTrue(
                faultsAfter("DELETE FROM entry WHERE seq < 24 AND chain = (SELECT id FROM chain WHERE place = 2)")
                        .stream()
                        .anyMatch(fault -> fault.sentence().contains("does not begin with its first entry")));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "ALTER TABLE ohmstead.entry DISABLE TRIGGER entry_is_never_changed | entry_is_never_changed",
                "DROP TRIGGER entry_continues_its_chain ON ohmstead.entry | entry_continues_its_chain",
                "ALTER TABLE ohmstead.chain ENABLE TRIGGER chain_fits | chain_fits",
                "CREATE OR REPLACE FUNCTION ohmstead.refuse_change() RETURNS trigger LANGUAGE plpgsql AS 'BEGIN RETURN NEW; END' | refuse_change",
                "CREATE TRIGGER extra BEFORE INSERT ON ohmstead.entry FOR EACH ROW EXECUTE FUNCTION ohmstead.check_entry() | extra",
                "CREATE FUNCTION ohmstead.extra() RETURNS int LANGUAGE sql AS 'SELECT 1' | extra",
            })
    void guardsThatWereTakenAwayOrChangedAreFound(String statement, String name) throws Exception {
        server.execute(address.database(), statement);
        try (SharedLab lab = SharedLab.connect(address, PostgresServer.credentials())) {
            LabVerifyReport report = lab.verify(List.of());
            assertEquals(1, report.faults().size(), report.faults().toString());
            assertEquals(VerifyFault.Kind.GUARDS_CHANGED, report.guards().get(0).kind());
            assertTrue(
                    report.guards().get(0).sentence().contains(" " + name + " "),
                    report.guards().toString());
        }
    }
}
