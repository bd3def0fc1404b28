// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.shared;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.testlog.ChainInfo;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.chain.ChainedRow;

/** Eight benches hand over at once, while the server is killed and the network is cut or falls silent. */
@Timeout(240)
class EightBenchesTest {
    private static final int BENCHES = 8;
    private static final int ROUNDS = 3;
    private static final LabTimeouts IMPATIENT = new LabTimeouts(2, 3, 2);

    @TempDir
    Path folder;

    private final AtomicBoolean rough = new AtomicBoolean(true);
    private final AtomicInteger failures = new AtomicInteger();
    private final AtomicInteger handOvers = new AtomicInteger();
    private final Map<String, Long> confirmed = new ConcurrentHashMap<>();

    @Test
    void nothingThatWasConfirmedIsLostAndNothingIsDoubled() throws Exception {
        ExecutorService threads = Executors.newFixedThreadPool(BENCHES);
        try (PostgresServer server = PostgresServer.start();
                CuttingProxy network = new CuttingProxy(server.port())) {
            LabAddress direct = server.prepared();
            LabAddress address = new LabAddress("127.0.0.1", network.port(), direct.database(), Optional.empty());
            List<Future<List<ChainedRow>>> benches = new ArrayList<>();
            for (int bench = 1; bench <= BENCHES; bench++) {
                benches.add(threads.submit(bench(bench, address)));
            }
            for (int round = 0; round < ROUNDS; round++) {
                pause(600);
                network.cut();
                pause(400);
                network.freeze();
                pause(1000L * (IMPATIENT.answerSeconds() + 1));
                network.thaw();
                pause(400);
                network.loseAcknowledgements(3);
                pause(400);
                Map<String, Long> known = Map.copyOf(confirmed);
                server.kill();
                pause(200);
                server.startAgain();
                requireKept(server, direct.database(), known);
            }
            rough.set(false);
            List<List<ChainedRow>> local = new ArrayList<>();
            for (Future<List<ChainedRow>> bench : benches) {
                local.add(bench.get());
            }
            assertTrue(failures.get() >= BENCHES, "the server and the network were not rough: " + failures.get());
            assertTrue(handOvers.get() > BENCHES, "nothing got through in between");
            requireSame(direct, local);
        } finally {
            threads.shutdownNow();
        }
    }

    private static void pause(long millis) {
        long end = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(millis);
        while (System.nanoTime() < end) {
            LockSupport.parkNanos(end - System.nanoTime());
        }
    }

    /** A bench that measures and hands over again and again; returns its whole log when all of that is handed over. */
    private Callable<List<ChainedRow>> bench(int number, LabAddress address) {
        return () -> {
            try (TestLog log = TestLog.open(folder.resolve("bench-" + number + ".db"))) {
                int measured = 0;
                while (rough.get()) {
                    for (int note = 0; note < 3; note++) {
                        measured++;
                        log.note("bench " + number + ", note " + measured, "N. N.");
                    }
                    if (handedOver(log, number, address, IMPATIENT)) {
                        handOvers.incrementAndGet();
                    } else {
                        failures.incrementAndGet();
                        pause(50);
                    }
                }
                while (!handedOver(log, number, address, LabTimeouts.USUAL)) {
                    pause(100);
                }
                return rows(log);
            }
        };
    }

    private boolean handedOver(TestLog log, int number, LabAddress address, LabTimeouts timeouts) throws Exception {
        try (SharedLab lab = SharedLab.connect(address, PostgresServer.credentials(), timeouts)) {
            new HandOver(lab, new ChainOrigin("bench " + number, "a project", "an amplifier"))
                    .run(log.rows(), (chain, sequence) -> confirmed.merge(chain, sequence, Math::max));
            return true;
        } catch (SharedLabException failure) {
            if (failure.reason().passing()) {
                return false;
            }
            throw failure;
        }
    }

    private static List<ChainedRow> rows(TestLog log) throws Exception {
        ChainInfo own = log.rows().chains().get(0);
        return log.rows().rows(own.chain(), 0, Integer.MAX_VALUE);
    }

    /** What was confirmed before the server died must be there as soon as it lives again, before anybody hands it over once more. */
    private static void requireKept(PostgresServer server, String database, Map<String, Long> known) throws Exception {
        try (Connection owner = server.owner(database);
                PreparedStatement statement =
                        owner.prepareStatement("SELECT count(*) FROM ohmstead.entry WHERE chain = ? AND seq <= ?")) {
            for (Map.Entry<String, Long> each : known.entrySet()) {
                statement.setString(1, each.getKey());
                statement.setLong(2, each.getValue());
                try (ResultSet result = statement.executeQuery()) {
                    result.next();
                    assertEquals(each.getValue(), result.getLong(1), "confirmed entries of " + each.getKey());
                }
            }
        }
    }

    private void requireSame(LabAddress direct, List<List<ChainedRow>> local) throws Exception {
        try (SharedLab lab = SharedLab.connect(direct, PostgresServer.credentials())) {
            assertEquals(BENCHES, lab.chains().size(), "each bench has one chain");
            Set<String> hashes = new HashSet<>();
            List<String> heads = new ArrayList<>();
            long all = 0;
            for (List<ChainedRow> rows : local) {
                String chain = rows.get(0).hash();
                assertEquals(rows, lab.rows().rows(chain, 0, Integer.MAX_VALUE));
                assertEquals(rows.size(), confirmed.get(chain));
                rows.forEach(row -> hashes.add(row.hash()));
                heads.add(rows.get(rows.size() - 1).hash());
                all += rows.size();
            }
            LabStatus status = lab.status();
            assertEquals(all, status.entries());
            assertEquals(all, hashes.size());
            assertEquals(List.of(), status.cautions());
            LabVerifyReport report = lab.verify(heads);
            assertEquals(List.of(), report.faults());
            assertEquals(all, report.entriesChecked());
        }
    }
}
