// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.shared;

import java.nio.file.Path;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.ohmstead.testlog.shared.internal.PasswordFile;
import org.ohmstead.units.text.Messages;

/**
 * Who asks the server, and how that is proved. Never part of a project. The text of this does not show the password.
 *
 * @param user name of the login
 * @param password its password; empty when none was found, which does where the server wants none
 * @param origin where it was found, for people
 */
public record LabCredentials(String user, Optional<String> password, String origin) {
    private static final Messages TEXTS = Messages.of(LabCredentials.class);
    /** Variable of the environment with the user name. */
    public static final String USER_VARIABLE = "OHMSTEAD_LOG_USER";

    /** Variable of the environment with the password. */
    public static final String PASSWORD_VARIABLE = "OHMSTEAD_LOG_PASSWORD";

    /**
     * Variable of the environment with the server, as {@code host} or {@code host:port}, that the password of the environment is for. The
     * server stands in the project, which may come from a stranger: whoever sets this gives the password to no other.
     */
    public static final String SERVER_VARIABLE = "OHMSTEAD_LOG_SERVER";

    /** Variable of the environment with the name of a password file. */
    public static final String FILE_VARIABLE = "OHMSTEAD_LOG_PASSFILE";

    private static final String POSTGRESQL_FILE_VARIABLE = "PGPASSFILE";

    public LabCredentials {
        Objects.requireNonNull(password, "password");
        Objects.requireNonNull(origin, "origin");
        if (user.isBlank()) {
            throw new IllegalArgumentException("user is blank; it must name a login");
        }
    }

    /** Returns those of the process's environment and the user's home; see {@link #find(LabAddress, Map, Path)}. */
    public static LabCredentials find(LabAddress address) throws SharedLabException {
        return find(address, System.getenv(), Path.of(System.getProperty("user.home", "")));
    }

    /**
     * Looks for user name and password: first in the variables {@value #USER_VARIABLE} and {@value #PASSWORD_VARIABLE} (which
     * {@value #SERVER_VARIABLE} keeps for one server), then in a
     * password file as PostgreSQL describes it, with lines {@code host:port:database:user:password}. The file is the one that
     * {@value #FILE_VARIABLE} names, else the one of PGPASSFILE, else {@code .pgpass} in the home folder ({@code
     * %APPDATA%\postgresql\pgpass.conf} on Windows).
     *
     * @param address of the server
     * @param environment variables
     * @param home the user's home folder
     * @throws SharedLabException when no user is named, or the password file cannot be read or may be read by others
     */
    public static LabCredentials find(LabAddress address, Map<String, String> environment, Path home)
            throws SharedLabException {
        Optional<String> user = variable(environment, USER_VARIABLE);
        Optional<String> password = variable(environment, PASSWORD_VARIABLE);
        Optional<String> server = variable(environment, SERVER_VARIABLE);
        if (password.isPresent() && server.isPresent() && !isServer(server.get(), address)) {
            throw new SharedLabException(
                    SharedLabException.Reason.CREDENTIALS,
                    TEXTS.text("credentials.otherServer", PASSWORD_VARIABLE, server.get(), address, SERVER_VARIABLE));
        }
        if (user.isPresent() && password.isPresent()) {
            return new LabCredentials(user.get(), password, TEXTS.text("origin.environment"));
        }
        if (password.isPresent()) {
            throw new SharedLabException(
                    SharedLabException.Reason.CREDENTIALS,
                    TEXTS.text("credentials.whose", PASSWORD_VARIABLE, USER_VARIABLE));
        }
        Optional<LabCredentials> filed = file(environment, home, address, user);
        if (filed.isPresent()) {
            return filed.get();
        }
        if (user.isPresent()) {
            return new LabCredentials(user.get(), Optional.empty(), TEXTS.text("origin.environment"));
        }
        throw new SharedLabException(
                SharedLabException.Reason.CREDENTIALS,
                TEXTS.text("credentials.none", address, USER_VARIABLE, PASSWORD_VARIABLE));
    }

    private static boolean isServer(String named, LabAddress address) {
        return named.strip().equalsIgnoreCase(address.host())
                || named.strip().equalsIgnoreCase(address.host() + ":" + address.port());
    }

    private static Optional<LabCredentials> file(
            Map<String, String> environment, Path home, LabAddress address, Optional<String> user)
            throws SharedLabException {
        Optional<String> named =
                variable(environment, FILE_VARIABLE).or(() -> variable(environment, POSTGRESQL_FILE_VARIABLE));
        Path file = named.isPresent() ? PasswordFile.path(named.get()) : PasswordFile.usual(environment, home);
        Optional<PasswordFile.Line> line = PasswordFile.find(file, named.isPresent(), address, user);
        return line.map(found ->
                new LabCredentials(found.user(), Optional.of(found.password()), TEXTS.text("origin.file", file)));
    }

    private static Optional<String> variable(Map<String, String> environment, String name) {
        return Optional.ofNullable(environment.get(name)).filter(value -> !value.isEmpty());
    }

    /** Returns the user and where the password was found, without the password. */
    @Override
    public String toString() {
        return user + " (" + origin + ")";
    }
}
