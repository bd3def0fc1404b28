// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.shared;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.extension.BeforeAllCallback;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.api.extension.ExtensionContext.Namespace;

/**
 * Keeps one server for all test classes of a run that are content with a database of their own. It encrypts with a certificate of its own
 * making, as a small laboratory's does.
 */
final class SharedServer implements BeforeAllCallback {
    private static final Namespace NAMESPACE = Namespace.create(SharedServer.class);

    private static PostgresServer server;
    private static Certificate certificate;

    /** What is kept until the end of the run. */
    private record Kept(PostgresServer running, Certificate files) implements AutoCloseable {
        @Override
        public void close() throws Exception {
            running.close();
            files.delete();
        }
    }

    @Override
    public void beforeAll(ExtensionContext context) throws Exception {
        if (context.getRoot().getStore(NAMESPACE).get("server") == null) {
            Path folder = Files.createTempDirectory("ohmstead-certificate");
            certificate = Certificate.make(folder, "own", "dns:localhost,ip:127.0.0.1");
            // Nobody pulls this one's plug.
            server = PostgresServer.start("fsync=off");
            server.install(certificate.certificate(), certificate.key());
            server.execute(
                    "postgres",
                    "ALTER SYSTEM SET ssl_cert_file = 'own.crt'",
                    "ALTER SYSTEM SET ssl_key_file = 'own.key'",
                    "ALTER SYSTEM SET ssl = on",
                    "SELECT pg_reload_conf()");
            context.getRoot().getStore(NAMESPACE).put("server", new Kept(server, certificate));
        }
    }

    static PostgresServer get() {
        return server;
    }

    static Certificate certificate() {
        return certificate;
    }
}
