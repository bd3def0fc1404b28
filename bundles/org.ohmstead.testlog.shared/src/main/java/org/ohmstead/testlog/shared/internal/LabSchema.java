// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.shared.internal;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import org.ohmstead.testlog.shared.SharedLabException;
import org.ohmstead.units.text.Messages;

/**
 * The tables of the shared log, and how a database comes to have them: numbered files of SQL, each run once, in order. The database keeps
 * the checksum of each.
 */
public final class LabSchema {
    private static final Messages TEXTS = Messages.of(LabSchema.class);
    /** Names this work to the server, so that of several who prepare a database at once one does and the others wait. */
    private static final long ADVISORY_LOCK = 0x4F484D53_0001L;

    private static final List<String> FILES = List.of("0001-chains.sql");

    /**
     * A step from one version to the next.
     *
     * @param version that it leads to
     * @param name of its file
     * @param sql what is run
     */
    public record Step(int version, String name, String sql) {
        /** Returns the SHA-256 of its text. */
        public String checksum() {
            try {
                return HexFormat.of()
                        .formatHex(MessageDigest.getInstance("SHA-256").digest(sql.getBytes(StandardCharsets.UTF_8)));
            } catch (NoSuchAlgorithmException missing) {
                throw new IllegalStateException("every Java platform must provide SHA-256", missing);
            }
        }
    }

    private LabSchema() {}

    /** Returns the steps of this version of Ohmstead. */
    public static List<Step> steps() {
        List<Step> steps = new ArrayList<>();
        for (String file : FILES) {
            steps.add(new Step(steps.size() + 1, file, text(file)));
        }
        return List.copyOf(steps);
    }

    private static String text(String file) {
        try (InputStream in = LabSchema.class.getResourceAsStream(file)) {
            if (in == null) {
                throw new IllegalStateException("the bundle must hold " + file);
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8).replace("\r\n", "\n");
        } catch (IOException failure) {
            throw new UncheckedIOException(failure);
        }
    }

    /**
     * Brings a database to the newest version, in one transaction; several may do so at once.
     *
     * @return the number of steps that were run
     */
    public static int migrate(Connection connection, List<Step> steps) throws SQLException, SharedLabException {
        try (Statement statement = connection.createStatement()) {
            statement.execute("SELECT pg_advisory_xact_lock(" + ADVISORY_LOCK + ")");
            requireUnicode(statement);
            if (schema(connection).isEmpty()) {
                statement.execute("CREATE SCHEMA ohmstead");
                statement.execute("REVOKE ALL ON SCHEMA ohmstead FROM PUBLIC");
                statement.execute(
                        "CREATE TABLE ohmstead.schema_version (version integer PRIMARY KEY, name text NOT NULL,"
                                + " checksum text NOT NULL, applied_at timestamptz NOT NULL DEFAULT clock_timestamp(),"
                                + " applied_by text NOT NULL DEFAULT session_user)");
            }
            int version = require(connection, steps, true);
            for (Step step : steps.subList(version, steps.size())) {
                statement.execute(step.sql());
                record(connection, step);
            }
            connection.commit();
            return steps.size() - version;
        }
    }

    private static void requireUnicode(Statement statement) throws SQLException, SharedLabException {
        try (ResultSet result = statement.executeQuery("SHOW server_encoding")) {
            result.next();
            if (!"UTF8".equals(result.getString(1))) {
                throw new SharedLabException(
                        SharedLabException.Reason.OTHER_VERSION, TEXTS.text("schema.encoding", result.getString(1)));
            }
        }
    }

    private static void record(Connection connection, Step step) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(
                "INSERT INTO ohmstead.schema_version (version, name, checksum) VALUES (?, ?, ?)")) {
            statement.setInt(1, step.version());
            statement.setString(2, step.name());
            statement.setString(3, step.checksum());
            statement.executeUpdate();
        }
    }

    /** Returns whether the user may look into the shared log; empty when there is none. */
    public static Optional<Boolean> schema(Connection connection) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet result = statement.executeQuery(
                        "SELECT has_schema_privilege(oid, 'USAGE') FROM pg_namespace WHERE nspname = 'ohmstead'")) {
            return result.next() ? Optional.of(result.getBoolean(1)) : Optional.empty();
        }
    }

    /**
     * Makes sure that a database has the shared log as this version of Ohmstead knows it.
     *
     * @param older whether an older version will do
     * @return its version
     */
    public static int require(Connection connection, List<Step> steps, boolean older)
            throws SQLException, SharedLabException {
        int version = 0;
        try (Statement statement = connection.createStatement();
                ResultSet result = statement.executeQuery(
                        "SELECT version, checksum FROM ohmstead.schema_version ORDER BY version")) {
            while (result.next()) {
                version = result.getInt(1);
                if (version > steps.size()) {
                    continue;
                }
                if (!steps.get(version - 1).checksum().equals(result.getString(2))) {
                    throw otherVersion(TEXTS.text("schema.otherMake", version));
                }
            }
        }
        if (version > steps.size()) {
            throw otherVersion(TEXTS.text("schema.newer", version, steps.size()));
        }
        if (version < steps.size() && !older) {
            throw otherVersion(TEXTS.text("schema.older", version, steps.size()));
        }
        return version;
    }

    private static SharedLabException otherVersion(String sentences) {
        return new SharedLabException(SharedLabException.Reason.OTHER_VERSION, sentences);
    }
}
