// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.shared.internal;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.ohmstead.testlog.shared.LabAddress;
import org.ohmstead.testlog.shared.SharedLabException;
import org.ohmstead.units.text.Messages;

/**
 * PostgreSQL's password file: lines of host, port, database, user and password with colons between them. The first four may be a star,
 * which stands for anything; a backslash takes the special meaning from a colon or backslash. The first line that fits counts.
 * (PostgreSQL documentation, libpq, "The Password File".)
 */
public final class PasswordFile {
    private static final Messages TEXTS = Messages.of(PasswordFile.class);
    private static final int FIELDS = 5;
    private static final long MOST_BYTES = 1_000_000;
    private static final String ANY = "*";
    private static final Set<PosixFilePermission> OWNERS_ALONE = EnumSet.of(
            PosixFilePermission.OWNER_READ, PosixFilePermission.OWNER_WRITE, PosixFilePermission.OWNER_EXECUTE);

    /**
     * What a line says.
     *
     * @param user name of the login
     * @param password its password
     */
    public record Line(String user, String password) {
        @Override
        public String toString() {
            return user;
        }
    }

    private PasswordFile() {}

    /** Returns the file of a name from the environment. */
    public static Path path(String name) throws SharedLabException {
        try {
            return Path.of(name);
        } catch (InvalidPathException impossible) {
            throw refusal(TEXTS.text("password.name", name), impossible);
        }
    }

    /** Returns where the file lies when nothing else is said. */
    public static Path usual(Map<String, String> environment, Path home) {
        String roaming = environment.get("APPDATA");
        return roaming != null && System.getProperty("os.name", "").startsWith("Windows")
                ? Path.of(roaming, "postgresql", "pgpass.conf")
                : home.resolve(".pgpass");
    }

    /**
     * Looks for the first line that fits.
     *
     * @param required whether the file must be there
     * @param user who is asked for; empty takes whom the line names
     */
    public static Optional<Line> find(Path file, boolean required, LabAddress address, Optional<String> user)
            throws SharedLabException {
        if (!Files.isRegularFile(file)) {
            if (required) {
                throw refusal(TEXTS.text("password.none", file), null);
            }
            return Optional.empty();
        }
        try {
            requirePrivate(file);
            if (Files.size(file) > MOST_BYTES) {
                throw refusal(TEXTS.text("password.large", file), null);
            }
            for (String line : new String(Files.readAllBytes(file), StandardCharsets.UTF_8)
                    .lines()
                    .toList()) {
                Optional<Line> found = fitting(line, address, user);
                if (found.isPresent()) {
                    return found;
                }
            }
            return Optional.empty();
        } catch (IOException failure) {
            throw refusal(TEXTS.text("password.unread", file), failure);
        }
    }

    private static void requirePrivate(Path file) throws IOException, SharedLabException {
        if (!Files.getFileStore(file).supportsFileAttributeView("posix")) {
            return;
        }
        Set<PosixFilePermission> permissions = Files.getPosixFilePermissions(file);
        if (!OWNERS_ALONE.containsAll(permissions)) {
            throw refusal(TEXTS.text("password.others", file, PosixFilePermissions.toString(permissions)), null);
        }
    }

    private static Optional<Line> fitting(String line, LabAddress address, Optional<String> user) {
        if (line.startsWith("#")) {
            return Optional.empty();
        }
        List<Field> fields = fields(line);
        if (fields.size() != FIELDS) {
            return Optional.empty();
        }
        boolean fits = fields.get(0).fits(address.host())
                && fields.get(1).fits(Integer.toString(address.port()))
                && fields.get(2).fits(address.database());
        Field login = fields.get(3);
        boolean whose =
                user.map(login::fits).orElse(!login.any() && !login.text().isEmpty());
        return fits && whose
                ? Optional.of(new Line(user.orElse(login.text()), fields.get(4).text()))
                : Optional.empty();
    }

    private record Field(String text, boolean any) {
        boolean fits(String value) {
            return any || text.equals(value);
        }
    }

    /** Divides a line. The password ends at a further colon, and may itself be a star. */
    private static List<Field> fields(String line) {
        List<Field> fields = new ArrayList<>();
        StringBuilder text = new StringBuilder();
        int begin = 0;
        int at = 0;
        while (at < line.length()) {
            char character = line.charAt(at);
            if (character == '\\' && at + 1 < line.length()) {
                at++;
                text.append(line.charAt(at));
            } else if (character == ':' && fields.size() == FIELDS - 1) {
                break;
            } else if (character == ':') {
                fields.add(new Field(text.toString(), ANY.equals(line.substring(begin, at))));
                text.setLength(0);
                begin = at + 1;
            } else {
                text.append(character);
            }
            at++;
        }
        fields.add(new Field(text.toString(), false));
        return fields;
    }

    private static SharedLabException refusal(String sentences, Exception cause) {
        return new SharedLabException(SharedLabException.Reason.CREDENTIALS, sentences, cause);
    }
}
