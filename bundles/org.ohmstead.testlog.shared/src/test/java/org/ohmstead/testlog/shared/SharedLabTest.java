// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.shared;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.InetAddress;
import java.net.ServerSocket;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.extension.ExtendWith;
import org.ohmstead.testlog.shared.SharedLabException.Reason;

@Timeout(120)
@ExtendWith(SharedServer.class)
class SharedLabTest {
    private static final ChainOrigin ORIGIN = new ChainOrigin("bench 1", "a project", "an amplifier");

    private final PostgresServer server = SharedServer.get();

    private static SharedLabException refused(Reason reason, org.junit.jupiter.api.function.Executable what) {
        SharedLabException failure = assertThrows(SharedLabException.class, what);
        assertEquals(reason, failure.reason(), failure.getMessage());
        assertTrue(failure.getMessage().endsWith(".") || failure.getMessage().endsWith(")"), failure.getMessage());
        return failure;
    }

    private SharedLab as(String login, LabAddress address) throws SharedLabException {
        return SharedLab.connect(address, PostgresServer.credentials(login));
    }

    @Test
    void aNewDatabaseIsPreparedOnce() throws Exception {
        LabAddress address = server.address(server.database());
        refused(Reason.OTHER_VERSION, () -> as(PostgresServer.OWNER, address));
        assertEquals(1, SharedLab.prepare(address, PostgresServer.credentials(), LabTimeouts.USUAL));
        assertEquals(0, SharedLab.prepare(address, PostgresServer.credentials(), LabTimeouts.USUAL));
        try (SharedLab lab = as(PostgresServer.OWNER, address)) {
            LabStatus status = lab.status();
            assertEquals(1, status.schemaVersion());
            assertEquals(LabRole.LEAD, status.role());
            assertEquals(0, status.entries());
            assertEquals(1, status.cautions().size(), "this server is run without fsync");
            assertTrue(
                    status.cautions().get(0).contains("fsync = off"),
                    status.cautions().get(0));
            assertTrue(lab.verify(List.of()).intact());
        }
    }

    @Test
    void severalMayPrepareTheSameDatabaseAtOnce() throws Exception {
        LabAddress address = server.address(server.database());
        ExecutorService threads = Executors.newFixedThreadPool(6);
        try {
            List<Future<Integer>> steps = new ArrayList<>();
            for (int thread = 0; thread < 6; thread++) {
                steps.add(threads.submit(
                        () -> SharedLab.prepare(address, PostgresServer.credentials(), LabTimeouts.USUAL)));
            }
            int sum = 0;
            for (Future<Integer> each : steps) {
                sum += each.get();
            }
            assertEquals(1, sum, "one of them did it, the others found it done");
        } finally {
            threads.shutdownNow();
        }
    }

    @Test
    void aDatabaseOfANewerOrAnotherOhmsteadIsRefusedUntouched() throws Exception {
        LabAddress address = server.prepared();
        server.execute(
                address.database(),
                "INSERT INTO ohmstead.schema_version (version, name, checksum) VALUES (2, '0002-later.sql', 'x')");
        SharedLabException newer = refused(Reason.OTHER_VERSION, () -> as(PostgresServer.OWNER, address));
        assertTrue(newer.getMessage().contains("version 2"), newer.getMessage());
        refused(
                Reason.OTHER_VERSION,
                () -> SharedLab.prepare(address, PostgresServer.credentials(), LabTimeouts.USUAL));
        server.execute(
                address.database(),
                "DELETE FROM ohmstead.schema_version WHERE version = 2",
                "UPDATE ohmstead.schema_version SET checksum = 'y'");
        SharedLabException other = refused(
                Reason.OTHER_VERSION,
                () -> SharedLab.prepare(address, PostgresServer.credentials(), LabTimeouts.USUAL));
        assertTrue(other.getMessage().contains("step 1"), other.getMessage());
    }

    @Test
    void aFailedPreparationLeavesNothingBehind() throws Exception {
        LabAddress address = server.address(server.database());
        server.login("somebody");
        refused(
                Reason.NO_RIGHT,
                () -> SharedLab.prepare(address, PostgresServer.credentials("somebody"), LabTimeouts.USUAL));
        try (Connection owner = server.owner(address.database());
                Statement statement = owner.createStatement();
                ResultSet result =
                        statement.executeQuery("SELECT count(*) FROM pg_namespace WHERE nspname = 'ohmstead'")) {
            result.next();
            assertEquals(0, result.getInt(1));
        }
    }

    @Test
    void aDatabaseInAnotherEncodingIsRefused() throws Exception {
        server.execute(
                "postgres", "CREATE DATABASE latin ENCODING 'LATIN1' LC_COLLATE 'C' LC_CTYPE 'C' TEMPLATE template0");
        SharedLabException failure = refused(
                Reason.OTHER_VERSION,
                () -> SharedLab.prepare(server.address("latin"), PostgresServer.credentials(), LabTimeouts.USUAL));
        assertTrue(failure.getMessage().contains("LATIN1"), failure.getMessage());
    }

    @Test
    void saysWhatIsWrongWithTheConnection() throws Exception {
        LabAddress address = server.prepared();
        SharedLabException password = refused(
                Reason.WRONG_PASSWORD,
                () -> SharedLab.connect(
                        address, new LabCredentials(PostgresServer.OWNER, Optional.of("wrong"), "the environment")));
        assertTrue(password.getMessage().contains("from the environment"), password.getMessage());
        assertFalse(password.getMessage().contains("wrong"), "the password is not shown: " + password.getMessage());
        refused(Reason.WRONG_PASSWORD, () -> as("nobody of this name", address));
        refused(
                Reason.CREDENTIALS,
                () -> SharedLab.connect(
                        address, new LabCredentials(PostgresServer.OWNER, Optional.empty(), "the environment")));
        SharedLabException database =
                refused(Reason.NO_DATABASE, () -> as(PostgresServer.OWNER, server.address("no such")));
        assertTrue(database.getMessage().contains("\"no such\""), database.getMessage());
        int free;
        try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            free = socket.getLocalPort();
        }
        refused(
                Reason.UNREACHABLE,
                () -> as(PostgresServer.OWNER, new LabAddress("127.0.0.1", free, "lab", Optional.empty())));
    }

    @Test
    void aServerThatNeverAnswersIsGivenUp() throws Exception {
        try (ServerSocket silent = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            LabAddress address = new LabAddress("127.0.0.1", silent.getLocalPort(), "lab", Optional.empty());
            long begun = System.nanoTime();
            refused(
                    Reason.UNREACHABLE,
                    () -> SharedLab.connect(address, PostgresServer.credentials(), new LabTimeouts(1, 1, 1)));
            assertTrue(System.nanoTime() - begun < 20e9, "it took too long");
        }
    }

    @Test
    void eachRoleMayDoWhatItIsFor() throws Exception {
        LabAddress address = server.prepared();
        for (String login : List.of("r", "o", "l", "stranger")) {
            server.login(login);
        }
        try (SharedLab owner = as(PostgresServer.OWNER, address)) {
            owner.grant("l", Optional.of(LabRole.LEAD));
        }
        try (SharedLab lead = as("l", address)) {
            assertEquals(LabRole.LEAD, lead.role());
            lead.grant("r", Optional.of(LabRole.READER));
            lead.grant("o", Optional.of(LabRole.OPERATOR));
            refused(Reason.NO_RIGHT, () -> lead.grant("o", Optional.of(LabRole.LEAD)));
            refused(Reason.REFUSED, () -> lead.grant("no such login", Optional.of(LabRole.READER)));
        }
        refused(Reason.NO_RIGHT, () -> as("stranger", address));
        BenchRows bench = new BenchRows().notes("note", 3);
        String chain = bench.own().get(0).hash();
        try (SharedLab reader = as("r", address)) {
            assertEquals(LabRole.READER, reader.role());
            refused(Reason.NO_RIGHT, () -> new HandOver(reader, ORIGIN).run(bench));
            assertEquals(3, new HandOver(reader, ORIGIN).waiting(bench));
        }
        try (SharedLab operator = as("o", address)) {
            assertEquals(LabRole.OPERATOR, operator.role());
            assertEquals(3, new HandOver(operator, ORIGIN).run(bench).handedOver());
            refused(Reason.NO_RIGHT, () -> operator.close(chain, "It was done."));
            refused(Reason.NO_RIGHT, () -> operator.grant("r", Optional.of(LabRole.OPERATOR)));
        }
        try (SharedLab reader = as("r", address)) {
            assertEquals("bench 1", reader.chains().get(0).info().name());
            assertEquals(bench.own(), reader.rows().rows(chain, 0, 10));
            assertTrue(reader.verify(List.of(bench.own().get(2).hash())).intact());
            refused(Reason.NO_RIGHT, () -> reader.close(chain, "It was done."));
        }
    }

    @Test
    void noRoleMayChangeOrDeleteEvenWithStatementsOfItsOwn() throws Exception {
        LabAddress address = server.prepared();
        server.login("o2");
        server.login("l2");
        BenchRows bench = new BenchRows().notes("note", 3);
        try (SharedLab owner = as(PostgresServer.OWNER, address)) {
            owner.grant("o2", Optional.of(LabRole.OPERATOR));
            owner.grant("l2", Optional.of(LabRole.LEAD));
            new HandOver(owner, ORIGIN).run(bench);
        }
        List<String> attempts = List.of(
                "UPDATE ohmstead.entry SET body = 'x'",
                "DELETE FROM ohmstead.entry",
                "TRUNCATE ohmstead.entry CASCADE",
                "UPDATE ohmstead.chain SET bench = 'x'",
                "DELETE FROM ohmstead.chain",
                "DELETE FROM ohmstead.chain_mark",
                "DROP TRIGGER entry_is_never_changed ON ohmstead.entry",
                "ALTER TABLE ohmstead.entry DISABLE TRIGGER ALL",
                "UPDATE ohmstead.schema_version SET version = 9",
                "INSERT INTO ohmstead.entry (chain, seq, kind, entry_id, recorded_at, body, previous_hash, hash, received_by)"
                        + " SELECT chain, 4, kind, 'N9', recorded_at, body, hash, hash, 'me' FROM ohmstead.entry WHERE seq = 3");
        for (String login : List.of("o2", "l2")) {
            try (SharedLab lab = as(login, address)) {
                for (String attempt : attempts) {
                    refused(
                            Reason.NO_RIGHT,
                            () -> lab.look("Tried", connection -> {
                                try (Statement statement = connection.createStatement()) {
                                    return statement.execute(attempt);
                                }
                            }));
                }
            }
        }
        // The owner has the right, and is stopped by the triggers.
        try (SharedLab owner = as(PostgresServer.OWNER, address)) {
            for (String attempt : attempts.subList(0, 6)) {
                refused(
                        Reason.REFUSED,
                        () -> owner.look("Tried", connection -> {
                            try (Statement statement = connection.createStatement()) {
                                return statement.execute(attempt);
                            }
                        }));
            }
            assertTrue(owner.verify(List.of()).intact());
        }
    }

    @Test
    void theServerItselfRefusesWhatDoesNotContinueItsChain() throws Exception {
        LabAddress address = server.prepared();
        BenchRows bench = new BenchRows().notes("note", 3);
        String columns =
                "INSERT INTO ohmstead.entry (chain, seq, kind, entry_id, recorded_at, body, previous_hash, hash) ";
        try (SharedLab owner = as(PostgresServer.OWNER, address)) {
            new HandOver(owner, ORIGIN).run(bench);
            for (String attempt : List.of(
                    columns
                            + "SELECT chain, 5, kind, 'N9', recorded_at, body, hash, repeat('a', 64) FROM ohmstead.entry WHERE seq = 3",
                    columns
                            + "SELECT chain, 4, kind, 'N9', recorded_at, body, previous_hash, repeat('a', 64) FROM ohmstead.entry"
                            + " WHERE seq = 3",
                    columns
                            + "SELECT chain, 4, kind, 'N9', recorded_at, body, hash, repeat('a', 64) FROM ohmstead.entry WHERE seq = 3",
                    columns
                            + "SELECT repeat('a', 64), 1, kind, 'N9', recorded_at, body, hash, repeat('a', 64) FROM ohmstead.entry",
                    "INSERT INTO ohmstead.chain (id, parent_hash, first_seq, bench, project, amplifier) VALUES (repeat('b', 64),"
                            + " repeat('c', 64), 2, 'x', '', '')",
                    "INSERT INTO ohmstead.chain (id, parent_hash, first_seq, bench, project, amplifier) SELECT repeat('b', 64), hash,"
                            + " seq + 2, 'x', '', '' FROM ohmstead.entry WHERE seq = 1",
                    "INSERT INTO ohmstead.chain (id, parent_hash, first_seq, bench, project, amplifier) VALUES (repeat('b', 64),"
                            + " repeat('0', 64), 2, 'x', '', '')")) {
                refused(
                        Reason.REFUSED,
                        () -> owner.look("Tried", connection -> {
                            try (Statement statement = connection.createStatement()) {
                                return statement.execute(attempt);
                            }
                        }));
            }
            assertEquals(3, owner.status().entries());
        }
    }

    @Test
    void aClosedChainTakesNothingUntilItIsOpenedAgain() throws Exception {
        LabAddress address = server.prepared();
        BenchRows bench = new BenchRows().notes("note", 3);
        String chain = bench.own().get(0).hash();
        try (SharedLab lead = as(PostgresServer.OWNER, address)) {
            new HandOver(lead, ORIGIN).run(bench);
            refused(Reason.REFUSED, () -> lead.close(chain, " "));
            refused(Reason.REFUSED, () -> lead.close("f".repeat(64), "There is none."));
            lead.close(chain, "The bench was taken down.");
            assertEquals(
                    Optional.of("The bench was taken down."),
                    lead.chains().get(0).closedBecause());
            refused(Reason.REFUSED, () -> lead.close(chain, "Once more."));
            bench.note("one more");
            SharedLabException closed = refused(Reason.CLOSED, () -> new HandOver(lead, ORIGIN).run(bench));
            assertTrue(closed.getMessage().contains("The bench was taken down."), closed.getMessage());
            lead.reopen(chain, "The bench is back.");
            refused(Reason.REFUSED, () -> lead.reopen(chain, "Once more."));
            assertEquals(1, new HandOver(lead, ORIGIN).run(bench).handedOver());
            assertTrue(lead.verify(List.of()).intact());
        }
    }

    @Test
    void aRoleIsTakenAgain() throws Exception {
        LabAddress address = server.prepared();
        server.login("o3");
        try (SharedLab owner = as(PostgresServer.OWNER, address)) {
            owner.grant("o3", Optional.of(LabRole.OPERATOR));
            owner.grant("o3", Optional.of(LabRole.READER));
            try (SharedLab now = as("o3", address)) {
                assertEquals(LabRole.READER, now.role());
            }
            owner.grant("o3", Optional.empty());
        }
        refused(Reason.NO_RIGHT, () -> as("o3", address));
    }
}
