// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.shared;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ohmstead.testlog.chain.ChainedRow;
import org.ohmstead.testlog.shared.internal.ChainTable;
import org.ohmstead.testlog.shared.internal.LabConnection;
import org.ohmstead.testlog.shared.internal.LabFailures;
import org.ohmstead.testlog.shared.internal.LabMembers;
import org.ohmstead.testlog.shared.internal.LabSchema;
import org.ohmstead.testlog.shared.internal.LabTransaction;
import org.ohmstead.units.text.Messages;

/**
 * A connection to the shared log of a laboratory, a PostgreSQL database to which several benches hand over their entries. Entries are added
 * and never changed or deleted; what a user may do is decided by the database.
 *
 * <p>Threads may share one, but wait for each other. After a failure that is {@linkplain SharedLabException.Reason#passing() passing},
 * close it and connect again.
 */
public final class SharedLab implements AutoCloseable {
    private static final Messages TEXTS = Messages.of(SharedLab.class);
    private final LabAddress address;
    private final LabFailures failures;
    private final Connection connection;
    private final ChainTable table;

    private SharedLab(LabAddress address, LabFailures failures, Connection connection) {
        this.address = address;
        this.failures = failures;
        this.connection = connection;
        this.table = new ChainTable(connection);
    }

    /** Connects with the {@linkplain LabTimeouts#USUAL usual} patience. */
    public static SharedLab connect(LabAddress address, LabCredentials credentials) throws SharedLabException {
        return connect(address, credentials, LabTimeouts.USUAL);
    }

    /**
     * Connects to a shared log. The connection is encrypted and the server's certificate and name are checked, always unless the server is
     * on this computer.
     *
     * @throws SharedLabException when that fails, or the database has no shared log of this version, or the user has no role in it
     */
    public static SharedLab connect(LabAddress address, LabCredentials credentials, LabTimeouts timeouts)
            throws SharedLabException {
        LabFailures failures = new LabFailures(address, credentials);
        return opened(address, credentials, timeouts, connection -> {
            failures.guard(TEXTS.text("failed.open"), () -> {
                requirePrepared(address, credentials, connection);
                connection.commit();
                return null;
            });
            return new SharedLab(address, failures, connection);
        });
    }

    private static void requirePrepared(LabAddress address, LabCredentials credentials, Connection connection)
            throws SQLException, SharedLabException {
        Optional<Boolean> usable = LabSchema.schema(connection);
        if (usable.isEmpty()) {
            throw new SharedLabException(SharedLabException.Reason.OTHER_VERSION, TEXTS.text("open.none", address));
        }
        if (!usable.get()) {
            throw new SharedLabException(
                    SharedLabException.Reason.NO_RIGHT, TEXTS.text("open.noRole", credentials.user(), address));
        }
        LabSchema.require(connection, LabSchema.steps(), false);
    }

    /**
     * Makes the shared log in a database, or brings it to the newest version. Only the owner of the database can; several may try at
     * once.
     *
     * @return the number of steps that were needed; 0 when it was the newest already
     */
    public static int prepare(LabAddress address, LabCredentials credentials, LabTimeouts timeouts)
            throws SharedLabException {
        LabFailures failures = new LabFailures(address, credentials);
        try (Connection connection = LabConnection.open(address, credentials, timeouts)) {
            return failures.guard(TEXTS.text("failed.prepare"), () -> LabSchema.migrate(connection, LabSchema.steps()));
        } catch (SQLException failure) {
            throw failures.of(TEXTS.text("failed.close"), failure);
        }
    }

    private interface Opening {
        SharedLab from(Connection connection) throws SharedLabException;
    }

    private static SharedLab opened(
            LabAddress address, LabCredentials credentials, LabTimeouts timeouts, Opening opening)
            throws SharedLabException {
        Connection connection = LabConnection.open(address, credentials, timeouts);
        SharedLab lab = null;
        try {
            lab = opening.from(connection);
            return lab;
        } finally {
            if (lab == null) {
                closeAfterFailure(connection);
            }
        }
    }

    private static void closeAfterFailure(Connection connection) {
        try {
            connection.close();
        } catch (SQLException alreadyGone) {
            System.getLogger(SharedLab.class.getName()).log(System.Logger.Level.DEBUG, "not closed", alreadyGone);
        }
    }

    /** Returns where it lies. */
    public LabAddress address() {
        return address;
    }

    /** Returns what the user may do. */
    public LabRole role() throws SharedLabException {
        return work(TEXTS.text("failed.role"), () -> role(connection));
    }

    private static LabRole role(Connection connection) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet result = statement.executeQuery("SELECT has_any_column_privilege('ohmstead.entry', 'INSERT'),"
                        + " has_any_column_privilege('ohmstead.chain_mark', 'INSERT')")) {
            result.next();
            if (result.getBoolean(2)) {
                return LabRole.LEAD;
            }
            return result.getBoolean(1) ? LabRole.OPERATOR : LabRole.READER;
        }
    }

    /** Returns what the server says about itself. */
    public LabStatus status() throws SharedLabException {
        List<LabChain> chains = chains();
        return work(TEXTS.text("failed.status"), () -> {
            String encryption = text("SELECT CASE WHEN ssl THEN version || ' ' || cipher ELSE '' END FROM pg_stat_ssl"
                    + " WHERE pid = pg_backend_pid()");
            List<String> cautions = new ArrayList<>();
            caution(cautions, "fsync", TEXTS.text("caution.disk"));
            caution(cautions, "full_page_writes", TEXTS.text("caution.pages"));
            return new LabStatus(
                    text("SHOW server_version"),
                    LabSchema.require(connection, LabSchema.steps(), false),
                    role(connection),
                    encryption,
                    chains.size(),
                    chains.stream().mapToLong(chain -> chain.info().entries()).sum(),
                    cautions);
        });
    }

    private void caution(List<String> cautions, String setting, String sentences) throws SQLException {
        if ("off".equals(text("SHOW " + setting))) {
            cautions.add(sentences);
        }
    }

    private String text(String query) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet result = statement.executeQuery(query)) {
            return result.next() ? Optional.ofNullable(result.getString(1)).orElse("") : "";
        }
    }

    /** Returns all chains, in the order in which they were begun. */
    public List<LabChain> chains() throws SharedLabException {
        return work(TEXTS.text("failed.chains"), table::chains);
    }

    /** Returns all chains as a source of rows that uses this connection. */
    public SharedRows rows() {
        return new SharedRows(this);
    }

    List<ChainedRow> rows(String chain, long after, int most) throws SharedLabException {
        return work(TEXTS.text("failed.rows"), () -> table.rows(chain, after, most));
    }

    /**
     * Checks what protects the tables, and every entry of every chain, without trusting the server's own checks. Entries cut off at the end of
     * a chain leave no trace there; they are found by heads that were noted elsewhere.
     *
     * @param expectedHeads hashes of entries that must be there, such as the heads of the benches' own logs or of results sheets
     */
    public LabVerifyReport verify(List<String> expectedHeads) throws SharedLabException {
        return new LabVerification(this, expectedHeads).run();
    }

    /**
     * Gives a login a role, and takes any other role of the shared log from it. A lead can make readers and operators; only the owner of
     * the database can make or unmake leads.
     *
     * @param login name of a login that the server has
     * @param role to be given; empty takes every role
     */
    public void grant(String login, Optional<LabRole> role) throws SharedLabException {
        work(TEXTS.text("failed.grant"), () -> {
            new LabMembers(connection).set(login, role);
            return null;
        });
    }

    /**
     * Closes a chain, so that nobody can add to it any more. Only a lead can.
     *
     * @param chain its id
     * @param reason why, a whole sentence; not blank
     */
    public void close(String chain, String reason) throws SharedLabException {
        mark(TEXTS.text("failed.closeChain"), chain, "closed", reason);
    }

    /** Opens a closed chain again. Only a lead can. */
    public void reopen(String chain, String reason) throws SharedLabException {
        mark(TEXTS.text("failed.openChain"), chain, "opened", reason);
    }

    private void mark(String whatHappened, String chain, String mark, String reason) throws SharedLabException {
        if (reason.isBlank()) {
            throw new SharedLabException(SharedLabException.Reason.REFUSED, TEXTS.text("mark.noReason", whatHappened));
        }
        work(whatHappened, () -> {
            table.mark(chain, mark, reason.strip());
            return null;
        });
    }

    /** Something done with the tables in one transaction. */
    interface TableWork<T> {
        T run(ChainTable table) throws SQLException, SharedLabException;
    }

    /** Does something in a transaction of its own. */
    <T> T work(String whatHappened, TableWork<T> work) throws SharedLabException {
        return work(whatHappened, () -> work.run(table));
    }

    private synchronized <T> T work(String whatHappened, LabTransaction.Work<T> work) throws SharedLabException {
        return failures.guard(whatHappened, () -> LabTransaction.run(connection, work));
    }

    /** Returns something read from the server outside the tables of the log. */
    <T> T look(String whatHappened, Looking<T> looking) throws SharedLabException {
        return work(whatHappened, () -> looking.at(connection));
    }

    /** Something read from the server. */
    interface Looking<T> {
        T at(Connection connection) throws SQLException;
    }

    /** Closes the connection. */
    @Override
    public synchronized void close() throws SharedLabException {
        failures.guard(TEXTS.text("failed.close"), () -> {
            connection.close();
            return null;
        });
    }
}
