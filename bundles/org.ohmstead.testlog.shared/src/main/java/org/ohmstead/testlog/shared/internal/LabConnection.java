// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.shared.internal;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.concurrent.TimeUnit;
import org.ohmstead.testlog.shared.LabAddress;
import org.ohmstead.testlog.shared.LabCredentials;
import org.ohmstead.testlog.shared.LabTimeouts;
import org.ohmstead.testlog.shared.SharedLabException;
import org.ohmstead.units.text.Messages;
import org.postgresql.ds.PGSimpleDataSource;

/** Opens connections to the server. */
public final class LabConnection {
    private static final Messages TEXTS = Messages.of(LabConnection.class);
    /** Fewest major version of the server: the first whose triggers are called as the schema says and which has SHA-256. */
    private static final int OLDEST_SERVER = 11;

    private LabConnection() {}

    /** Connects; the transaction is the caller's. */
    public static Connection open(LabAddress address, LabCredentials credentials, LabTimeouts timeouts)
            throws SharedLabException {
        LabFailures failures = new LabFailures(address, credentials);
        return failures.guard(TEXTS.text("failed.open"), () -> {
            boolean ready = false;
            Connection connection = source(address, credentials, timeouts).getConnection();
            try {
                int version = connection.getMetaData().getDatabaseMajorVersion();
                if (version < OLDEST_SERVER) {
                    throw new SharedLabException(
                            SharedLabException.Reason.OTHER_VERSION,
                            TEXTS.text("server.old", address, version, OLDEST_SERVER));
                }
                connection.setTransactionIsolation(Connection.TRANSACTION_READ_COMMITTED);
                connection.setAutoCommit(false);
                ready = true;
                return connection;
            } finally {
                if (!ready) {
                    connection.close();
                }
            }
        });
    }

    private static PGSimpleDataSource source(LabAddress address, LabCredentials credentials, LabTimeouts timeouts)
            throws SQLException {
        PGSimpleDataSource source = new PGSimpleDataSource();
        source.setServerNames(new String[] {address.host()});
        source.setPortNumbers(new int[] {address.port()});
        source.setDatabaseName(address.database());
        source.setUser(credentials.user());
        // Even when there is none: the driver would otherwise look into password files by rules of its own.
        source.setPassword(credentials.password().orElse(""));
        source.setApplicationName("ohmstead");
        source.setConnectTimeout(timeouts.connectSeconds());
        source.setLoginTimeout(timeouts.loginSeconds());
        source.setSslResponseTimeout((int) TimeUnit.SECONDS.toMillis(timeouts.loginSeconds()));
        source.setSocketTimeout(timeouts.answerSeconds());
        source.setCancelSignalTimeout(timeouts.connectSeconds());
        source.setTcpKeepAlive(true);
        source.setGssEncMode("disable");
        source.setOptions(options(timeouts));
        if (address.certificate().isPresent()) {
            source.setSslMode("verify-full");
            source.setSslRootCert(address.certificate().get().toString());
        } else if (address.local()) {
            source.setSslMode("prefer");
        } else {
            source.setSslMode("verify-full");
            source.setSslfactory("org.postgresql.ssl.DefaultJavaSSLFactory");
        }
        return source;
    }

    /** A bench that vanished in the middle of a transaction must not keep the others waiting. */
    private static String options(LabTimeouts timeouts) {
        long answer = TimeUnit.SECONDS.toMillis(timeouts.answerSeconds());
        return "-c idle_in_transaction_session_timeout=" + answer + " -c lock_timeout=" + answer
                + " -c statement_timeout=0 -c synchronous_commit=on -c search_path=pg_catalog"
                + " -c standard_conforming_strings=on -c tcp_keepalives_idle=30 -c tcp_keepalives_interval=10"
                + " -c tcp_keepalives_count=3";
    }
}
