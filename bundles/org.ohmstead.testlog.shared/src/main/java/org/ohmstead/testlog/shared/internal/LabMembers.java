// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.shared.internal;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.ohmstead.testlog.shared.LabRole;
import org.ohmstead.testlog.shared.SharedLabException;
import org.ohmstead.units.text.Messages;

/** Who has which role. */
public final class LabMembers {
    private static final Messages TEXTS = Messages.of(LabMembers.class);
    private final Connection connection;

    /** Works on an open connection. */
    public LabMembers(Connection connection) {
        this.connection = connection;
    }

    /** Gives a login one role and takes the others, or takes all. */
    public void set(String login, Optional<LabRole> role) throws SQLException, SharedLabException {
        if (!exists(login)) {
            throw new SharedLabException(SharedLabException.Reason.REFUSED, TEXTS.text("member.noLogin", login));
        }
        Set<LabRole> before = direct(login);
        for (LabRole each : LabRole.values()) {
            boolean wanted = role.filter(each::equals).isPresent();
            if (wanted && !before.contains(each)) {
                execute("GRANT %I TO %I", each, login);
            } else if (!wanted && before.contains(each)) {
                execute("REVOKE %I FROM %I", each, login);
            }
        }
        Set<LabRole> after = direct(login);
        Set<LabRole> wanted = role.map(Set::of).orElse(Set.of());
        if (!after.equals(wanted)) {
            throw new SharedLabException(SharedLabException.Reason.NO_RIGHT, TEXTS.text("member.notAll", login));
        }
    }

    private boolean exists(String login) throws SQLException {
        try (PreparedStatement statement =
                connection.prepareStatement("SELECT 1 FROM pg_roles WHERE rolname = ? AND rolcanlogin")) {
            statement.setString(1, login);
            try (ResultSet result = statement.executeQuery()) {
                return result.next();
            }
        }
    }

    private Set<LabRole> direct(String login) throws SQLException {
        Set<LabRole> roles = new TreeSet<>();
        try (PreparedStatement statement = connection.prepareStatement(
                "SELECT r.rolname FROM pg_auth_members m JOIN pg_roles r ON r.oid = m.roleid"
                        + " JOIN pg_roles u ON u.oid = m.member WHERE u.rolname = ?")) {
            statement.setString(1, login);
            try (ResultSet result = statement.executeQuery()) {
                while (result.next()) {
                    String name = result.getString(1);
                    for (LabRole role : LabRole.values()) {
                        if (role.databaseRole().equals(name)) {
                            roles.add(role);
                        }
                    }
                }
            }
        }
        return roles;
    }

    /** The server itself puts the names into the statement, so that none can be taken for a part of it. */
    private void execute(String pattern, LabRole role, String login) throws SQLException {
        String sql;
        try (PreparedStatement statement = connection.prepareStatement("SELECT format(?, ?, ?)")) {
            statement.setString(1, pattern);
            statement.setString(2, role.databaseRole());
            statement.setString(3, login);
            try (ResultSet result = statement.executeQuery()) {
                result.next();
                sql = result.getString(1);
            }
        }
        try (Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }
}
