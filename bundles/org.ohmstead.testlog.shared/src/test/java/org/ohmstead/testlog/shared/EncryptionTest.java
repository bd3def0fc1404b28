// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.shared;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.testlog.shared.SharedLabException.Reason;

@Timeout(120)
@ExtendWith(SharedServer.class)
class EncryptionTest {
    /** PostgreSQL documentation, "Message Formats", SSLRequest: a length and a code of four bytes each. */
    private static final int SSL_REQUEST_BYTES = 8;

    @TempDir
    static Path folder;

    private static Certificate other;
    private static String database;

    private final AtomicInteger sentInTheOpen = new AtomicInteger();
    private final PostgresServer server = SharedServer.get();
    private final Certificate own = SharedServer.certificate();

    @BeforeAll
    static void prepare() throws Exception {
        other = Certificate.make(folder, "other", "dns:localhost,ip:127.0.0.1");
        database = SharedServer.get().prepared().database();
    }

    private LabStatus status(String host, Optional<Path> certificate) throws SharedLabException {
        try (SharedLab lab = SharedLab.connect(
                new LabAddress(host, server.port(), database, certificate), PostgresServer.credentials())) {
            return lab.status();
        }
    }

    private void notTrusted(String part, String host, int port, Optional<Path> certificate) {
        SharedLabException failure = assertThrows(
                SharedLabException.class,
                () -> SharedLab.connect(
                        new LabAddress(host, port, database, certificate), PostgresServer.credentials()));
        assertEquals(Reason.NOT_TRUSTED, failure.reason(), failure.getMessage());
        assertTrue(failure.getMessage().contains(part), failure.getMessage());
    }

    @Test
    void theCertificateOfTheProjectIsTrustedForItsNames() throws Exception {
        for (String host : List.of("localhost", "127.0.0.1")) {
            LabStatus status = status(host, Optional.of(own.certificate()));
            assertTrue(status.encryption().startsWith("TLSv1."), status.encryption());
        }
    }

    @Test
    void anotherCertificateIsNot() {
        notTrusted("other.crt", "localhost", server.port(), Optional.of(other.certificate()));
    }

    @Test
    void anotherNameIsNot() {
        // Leads to the same server, whose certificate does not have this spelling of its address.
        notTrusted("made for another name", "127.1", server.port(), Optional.of(own.certificate()));
    }

    @Test
    void withoutACertificateInTheProjectOnlyThoseCountThatJavaKnows() {
        notTrusted("certificateFile", "127.1", server.port(), Optional.empty());
    }

    @Test
    void aServerOnThisComputerNeedsNone() throws Exception {
        assertTrue(
                status("localhost", Optional.empty()).encryption().startsWith("TLSv1."), "it is used when it is there");
    }

    @Test
    void nothingGoesOverInTheOpenWhenSomebodyInBetweenTakesTheEncryptionAway() throws Exception {
        try (ServerSocket between = new ServerSocket(0, 5, InetAddress.getLoopbackAddress())) {
            Thread thread = new Thread(() -> refuseEncryption(between));
            thread.setDaemon(true);
            thread.start();
            notTrusted("does not encrypt", "localhost", between.getLocalPort(), Optional.of(own.certificate()));
            notTrusted("does not encrypt", "127.1", between.getLocalPort(), Optional.empty());
        }
        assertEquals(0, sentInTheOpen.get());
    }

    /** Answers every request to encrypt with a no, as the protocol has it, and counts what comes all the same. */
    private void refuseEncryption(ServerSocket between) {
        while (!between.isClosed()) {
            try (Socket socket = between.accept()) {
                socket.getInputStream().readNBytes(SSL_REQUEST_BYTES);
                socket.getOutputStream().write('N');
                socket.getOutputStream().flush();
                sentInTheOpen.addAndGet(socket.getInputStream().readAllBytes().length);
            } catch (IOException over) {
                // The client hung up, as it should, or the test is over.
            }
        }
    }

    @Test
    void aFileThatIsNoCertificateIsRefused() {
        notTrusted("own.key", "localhost", server.port(), Optional.of(own.key()));
    }
}
