// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model;

/**
 * Where the laboratory's shared log lies, to which the bench hands over the entries of its own log. User name and password never
 * belong here: they come from the environment or from a password file.
 *
 * @param host name or address of the database server; empty while it is not yet known
 * @param port its port, 1 to 65535
 * @param database name of the database; empty while it is not yet known
 * @param bench name under which this bench hands over; empty while it is not yet known
 * @param certificateFile file with the certificate that the server's own must be signed by; may be empty
 */
public record SharedLog(String host, int port, String database, String bench, String certificateFile) {
    /** The port on which PostgreSQL listens unless it is told otherwise. */
    public static final int USUAL_PORT = 5432;

    public SharedLog {
        Checks.present(host, "host");
        Checks.within(port, 1, 65_535, "port");
        Checks.present(database, "database");
        Checks.present(bench, "bench");
        Checks.present(certificateFile, "certificateFile");
    }

    /** Returns this shared log with another server. */
    public SharedLog withHost(String newHost) {
        return new SharedLog(newHost, port, database, bench, certificateFile);
    }

    /** Returns this shared log with another port. */
    public SharedLog withPort(int newPort) {
        return new SharedLog(host, newPort, database, bench, certificateFile);
    }

    /** Returns this shared log with another database. */
    public SharedLog withDatabase(String newDatabase) {
        return new SharedLog(host, port, newDatabase, bench, certificateFile);
    }

    /** Returns this shared log with another name of this bench. */
    public SharedLog withBench(String newBench) {
        return new SharedLog(host, port, database, newBench, certificateFile);
    }

    /** Returns this shared log with another certificate file. */
    public SharedLog withCertificateFile(String newCertificateFile) {
        return new SharedLog(host, port, database, bench, newCertificateFile);
    }
}
