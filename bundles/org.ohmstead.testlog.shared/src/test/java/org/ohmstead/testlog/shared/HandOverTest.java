// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.shared;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.extension.ExtendWith;
import org.ohmstead.testlog.ChainInfo;
import org.ohmstead.testlog.chain.ChainedRow;
import org.ohmstead.testlog.shared.SharedLabException.Reason;

@Timeout(120)
@ExtendWith(SharedServer.class)
class HandOverTest {
    private static final ChainOrigin FIRST = new ChainOrigin("bench 1", "a project", "an amplifier");
    private static final ChainOrigin SECOND = new ChainOrigin("bench 2", "a project", "an amplifier");

    private final PostgresServer server = SharedServer.get();
    private LabAddress address;
    private SharedLab lab;

    @BeforeEach
    void connect() throws Exception {
        address = server.prepared();
        lab = SharedLab.connect(address, PostgresServer.credentials());
    }

    @AfterEach
    void disconnect() throws Exception {
        lab.close();
    }

    private List<ChainedRow> all(String chain) throws Exception {
        return lab.rows().rows(chain, 0, 1_000_000);
    }

    private HandOverReport handOver(BenchRows bench, ChainOrigin origin) throws Exception {
        return new HandOver(lab, origin).run(bench);
    }

    @Test
    void anEmptyLogHasNothingToHandOver() throws Exception {
        HandOverReport report = handOver(new BenchRows(), FIRST);
        assertEquals(0, report.handedOver());
        assertEquals(List.of(), lab.chains());
        assertTrue(report.sentence().contains("no entries yet"), report.sentence());
    }

    @Test
    void whatIsThereIsNotSentAgain() throws Exception {
        BenchRows bench = new BenchRows().notes("note", 1234);
        assertEquals(1234, new HandOver(lab, FIRST).waiting(bench));
        List<Long> confirmed = new ArrayList<>();
        HandOverReport first = new HandOver(lab, FIRST).run(bench, (chain, sequence) -> confirmed.add(sequence));
        assertEquals(List.of(500L, 1000L, 1234L), confirmed);
        assertEquals(1234, first.handedOver());
        assertEquals(0, first.alreadyThere());
        HandOverReport again = handOver(bench, FIRST);
        assertEquals(0, again.handedOver());
        assertEquals(1234, again.alreadyThere());
        bench.notes("later", 3);
        assertEquals(3, new HandOver(lab, FIRST).waiting(bench));
        HandOverReport more = handOver(bench, FIRST);
        assertEquals(3, more.handedOver());
        assertEquals(1234, more.alreadyThere());
        assertEquals("3 entries were handed over, 1234 were there already.", more.sentence());
        assertEquals(bench.own(), all(bench.own().get(0).hash()));
        LabChain chain = lab.chains().get(0);
        assertEquals(FIRST, chain.origin());
        assertEquals(PostgresServer.OWNER, chain.createdBy());
        assertEquals(1237, chain.info().entries());
        assertEquals(bench.own().get(1236).hash(), chain.info().headHash());
        assertTrue(lab.verify(List.of(chain.info().headHash())).intact());
    }

    @Test
    void everyPossibleEndIsFound() throws Exception {
        // 32 questions at a time: lengths around one and two rounds of the search.
        for (int length : new int[] {1, 2, 31, 32, 33, 34, 63, 64, 65, 66, 100}) {
            BenchRows bench = new BenchRows().notes("of " + length, length);
            assertEquals(length, handOver(bench, FIRST).handedOver());
            bench.notes("more", 100 - length);
            assertEquals(100 - length, handOver(bench, FIRST).handedOver());
        }
        assertEquals(1100, lab.status().entries());
        assertTrue(lab.verify(List.of()).intact());
    }

    @Test
    void largeEntriesGoOverInSmallerBatches() throws Exception {
        BenchRows bench = new BenchRows();
        for (int number = 0; number < 10; number++) {
            bench.note("x".repeat(3_000_000));
        }
        List<Long> confirmed = new ArrayList<>();
        new HandOver(lab, FIRST).run(bench, (chain, sequence) -> confirmed.add(sequence));
        assertEquals(List.of(3L, 6L, 9L, 10L), confirmed);
        assertEquals(bench.own(), all(bench.own().get(0).hash()));
    }

    @Test
    void everyCharacterArrivesAsItWas() throws Exception {
        BenchRows bench = new BenchRows();
        bench.note(
                "ohm \u03a9, degree \u00b0C, emoji \ud83d\udd0a, tab \\t, quote \\\", backslash \\\\, percent %, dollar $$, brace {");
        handOver(bench, FIRST);
        assertEquals(bench.own(), all(bench.own().get(0).hash()));
        assertTrue(lab.verify(List.of()).intact());
    }

    @Test
    void aCopyThatWentItsOwnWayBecomesAChainOfItsOwn() throws Exception {
        BenchRows bench = new BenchRows().notes("common", 30);
        BenchRows copy = bench.copy();
        bench.notes("bench 1", 5);
        copy.voiding("N0007");
        copy.notes("bench 2", 4);
        handOver(bench, FIRST);
        HandOverReport report = handOver(copy, SECOND);
        assertEquals(5, report.handedOver());
        assertEquals(30, report.alreadyThere());
        assertTrue(report.sentence().contains("after entry number 30"), report.sentence());
        List<LabChain> chains = lab.chains();
        assertEquals(2, chains.size());
        LabChain parted = chains.get(1);
        assertTrue(parted.forked());
        assertEquals(bench.own().get(29).hash(), parted.parentHash());
        assertEquals(copy.own().get(30).hash(), parted.info().chain());
        assertEquals(31, parted.info().firstSequence());
        assertEquals("bench 2", parted.info().name());
        assertEquals(copy.own().subList(30, 35), all(parted.info().chain()));
        assertEquals(40, lab.status().entries(), "what both have in common is there once");
        // The copy goes on, and so does a copy of the copy.
        BenchRows third = copy.copy();
        copy.notes("bench 2 again", 2);
        third.notes("bench 3", 2);
        assertEquals(2, handOver(third, new ChainOrigin("bench 3", "", "")).handedOver());
        assertEquals(2, handOver(copy, SECOND).handedOver());
        assertEquals(0, handOver(bench, FIRST).handedOver());
        assertEquals(44, lab.status().entries());
        LabVerifyReport verified = lab.verify(List.of(
                bench.own().get(34).hash(),
                copy.own().get(36).hash(),
                third.own().get(36).hash()));
        assertEquals(List.of(), verified.faults());
        assertEquals(44, verified.entriesChecked());
    }

    @Test
    void theFirstOneToGoOnContinuesTheChainWhoeverItIs() throws Exception {
        BenchRows bench = new BenchRows().notes("common", 10);
        BenchRows copy = bench.copy();
        handOver(bench, FIRST);
        copy.notes("copy", 2);
        assertEquals(2, handOver(copy, SECOND).handedOver());
        assertEquals(1, lab.chains().size());
        bench.note("original");
        HandOverReport report = handOver(bench, FIRST);
        assertEquals(1, report.handedOver());
        assertEquals(2, lab.chains().size());
        assertEquals(lab.chains().get(1).info().chain(), report.chains().get(0).sharedChain());
        assertTrue(lab.verify(List.of()).intact());
    }

    @Test
    void joinedChainsAreHandedOverAsTheirOwn() throws Exception {
        BenchRows other = new BenchRows().notes("other", 7);
        BenchRows bench = new BenchRows().notes("own", 5);
        bench.join(other, "B", "bench 2", 0);
        HandOverReport report = handOver(bench, FIRST);
        assertEquals(12, report.handedOver());
        assertEquals(
                List.of("bench 1", "bench 2"),
                lab.chains().stream().map(chain -> chain.origin().bench()).toList());
        // The other bench comes by itself and finds its entries there.
        other.notes("later", 2);
        HandOverReport others = handOver(other, SECOND);
        assertEquals(2, others.handedOver());
        assertEquals(7, others.alreadyThere());
        assertEquals(2, lab.chains().size());
        assertTrue(lab.verify(List.of()).intact());
    }

    @Test
    void joinedChainsThatPartFromTheOwnOneFollowIt() throws Exception {
        BenchRows bench = new BenchRows().notes("common", 20);
        BenchRows copy = bench.copy().notes("copy", 6);
        bench.notes("own", 3);
        bench.join(copy, "B", "bench 2", 20);
        HandOverReport report = handOver(bench, FIRST);
        assertEquals(29, report.handedOver());
        assertEquals(0, handOver(copy, SECOND).handedOver());
        assertEquals(0, handOver(bench, FIRST).handedOver());
        assertTrue(lab.verify(List.of()).intact());
    }

    @Test
    void labelsAreUniqueAndStay() throws Exception {
        for (int number = 0; number < 30; number++) {
            handOver(new BenchRows().notes("bench " + number, 1), new ChainOrigin("bench", "", ""));
        }
        List<String> labels = lab.rows().chains().stream().map(ChainInfo::label).toList();
        assertEquals("A", labels.get(0));
        assertEquals("Z", labels.get(25));
        assertEquals("AD", labels.get(29));
        assertEquals(30, labels.stream().distinct().count());
    }

    @Test
    void severalMayHandOverTheSameLogAtOnce() throws Exception {
        BenchRows common = new BenchRows().notes("note", 3000);
        BenchRows copy = common.copy().notes("copy", 700);
        common.notes("own", 700);
        ExecutorService threads = Executors.newFixedThreadPool(6);
        try {
            List<Future<HandOverReport>> reports = new ArrayList<>();
            for (int thread = 0; thread < 6; thread++) {
                BenchRows rows = thread % 2 == 0 ? common : copy;
                reports.add(threads.submit(() -> {
                    try (SharedLab own = SharedLab.connect(address, PostgresServer.credentials())) {
                        return new HandOver(own, FIRST).run(rows);
                    }
                }));
            }
            long sum = 0;
            for (Future<HandOverReport> report : reports) {
                sum += report.get().handedOver();
                assertEquals(3700, report.get().handedOver() + report.get().alreadyThere());
            }
            assertEquals(4400, sum, "each entry was handed over by one of them");
        } finally {
            threads.shutdownNow();
        }
        assertEquals(4400, lab.status().entries());
        assertEquals(
                List.of(),
                lab.verify(List.of(
                                common.own().get(3699).hash(),
                                copy.own().get(3699).hash()))
                        .faults());
    }

    @Test
    void aChangedLogIsNotHandedOver() throws Exception {
        BenchRows bench = new BenchRows().notes("note", 600);
        ChainedRow row = bench.own().get(550);
        bench.replace(
                550,
                new ChainedRow(
                        row.sequence(),
                        row.kind(),
                        row.entryId(),
                        row.recordedAt(),
                        "{\"text\":\"better\",\"who\":\"\"}",
                        row.previousHash(),
                        row.hash()));
        SharedLabException changed = assertThrows(SharedLabException.class, () -> handOver(bench, FIRST));
        assertEquals(Reason.LOCAL_LOG, changed.reason());
        assertTrue(changed.getMessage().contains("number 551"), changed.getMessage());
        assertEquals(500, lab.status().entries(), "the batch before is kept");
        ChainedRow rehashed = ChainedRow.chained(
                row.sequence(),
                row.kind(),
                row.entryId(),
                row.recordedAt(),
                "{\"text\":\"better\",\"who\":\"\"}",
                row.previousHash());
        assertNotEquals(row.hash(), rehashed.hash());
        bench.replace(550, rehashed);
        SharedLabException broken = assertThrows(SharedLabException.class, () -> handOver(bench, FIRST));
        assertEquals(Reason.LOCAL_LOG, broken.reason());
        assertTrue(broken.getMessage().contains("number 552"), broken.getMessage());
        assertTrue(lab.verify(List.of()).intact());
    }

    @Test
    void anEntryWhoseConfirmationWasLostIsFoundThere() throws Exception {
        BenchRows bench = new BenchRows().notes("note", 40);
        try (CuttingProxy proxy = new CuttingProxy(server.port())) {
            LabAddress way = new LabAddress("127.0.0.1", proxy.port(), address.database(), Optional.empty());
            List<Long> confirmed = new ArrayList<>();
            try (SharedLab far = SharedLab.connect(way, PostgresServer.credentials())) {
                HandOver handOver = new HandOver(far, FIRST);
                assertEquals(40, handOver.run(bench).handedOver());
                bench.notes("more", 10);
                // What is there already is confirmed first; the next that the server commits are the ten entries.
                SharedLabException cut = assertThrows(
                        SharedLabException.class,
                        () -> handOver.run(bench, (chain, sequence) -> {
                            confirmed.add(sequence);
                            proxy.loseAcknowledgements(1);
                        }));
                assertEquals(Reason.UNREACHABLE, cut.reason());
            }
            assertEquals(0, proxy.acknowledgementsLeftToLose());
            assertEquals(List.of(40L), confirmed, "the ten were not confirmed");
            assertEquals(50, lab.status().entries(), "but the server has them");
            HandOverReport again = handOver(bench, FIRST);
            assertEquals(0, again.handedOver());
            assertEquals(50, again.alreadyThere());
        }
    }
}
