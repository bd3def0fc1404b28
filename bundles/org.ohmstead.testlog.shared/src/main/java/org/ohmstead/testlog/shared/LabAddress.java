// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.shared;

import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Pattern;
import org.ohmstead.model.SharedLog;
import org.ohmstead.units.text.Messages;

/**
 * Where the shared log lies.
 *
 * @param host name or address of the server, not blank
 * @param port its port
 * @param database name of the database, not blank
 * @param certificate file with the certificate, in PEM, that the server's own must be signed by; empty for those that Java trusts
 */
public record LabAddress(String host, int port, String database, Optional<Path> certificate) {
    private static final Messages TEXTS = Messages.of(LabAddress.class);
    private static final Pattern LOOPBACK =
            Pattern.compile("localhost|127\\.\\d{1,3}\\.\\d{1,3}\\.\\d{1,3}|::1|\\[::1]");
    private static final Pattern HOST = Pattern.compile("[\\p{L}\\p{N}_.:%\\[\\]-]{1,253}");
    private static final int HIGHEST_PORT = 65_535;

    public LabAddress {
        Objects.requireNonNull(certificate, "certificate");
        if (host.isBlank() || database.isBlank() || port < 1 || port > HIGHEST_PORT) {
            throw new IllegalArgumentException("the address is " + host + ":" + port + "/" + database
                    + "; host and database must not be blank and the port must lie between 1 and " + HIGHEST_PORT);
        }
    }

    /**
     * Returns the address that a project names.
     *
     * @param settings as in the project
     * @param projectFolder against which a relative file name is taken
     * @throws SharedLabException when something is missing or cannot be
     */
    public static LabAddress of(SharedLog settings, Path projectFolder) throws SharedLabException {
        for (String[] part : new String[][] {
            {settings.host(), "address.noServer"},
            {settings.database(), "address.noDatabase"},
            {settings.bench(), "address.noBench"}
        }) {
            if (part[0].isBlank()) {
                throw new SharedLabException(SharedLabException.Reason.SETTINGS, TEXTS.text(part[1]));
            }
        }
        if (!HOST.matcher(settings.host()).matches()) {
            throw new SharedLabException(
                    SharedLabException.Reason.SETTINGS, TEXTS.text("address.host", settings.host()));
        }
        return new LabAddress(
                settings.host(),
                settings.port(),
                settings.database(),
                certificate(settings.certificateFile(), projectFolder));
    }

    private static Optional<Path> certificate(String name, Path projectFolder) throws SharedLabException {
        if (name.isBlank()) {
            return Optional.empty();
        }
        if (name.startsWith("\\\\") || name.startsWith("//")) {
            // Windows would log in to the computer that such a name begins with, for whoever wrote the project.
            throw new SharedLabException(
                    SharedLabException.Reason.SETTINGS, TEXTS.text("address.certificateName", name));
        }
        try {
            Path file = projectFolder.resolve(name);
            if (Files.isRegularFile(file) && Files.isReadable(file)) {
                return Optional.of(file);
            }
        } catch (InvalidPathException impossible) {
            throw new SharedLabException(
                    SharedLabException.Reason.SETTINGS, TEXTS.text("address.certificateName", name), impossible);
        }
        throw new SharedLabException(SharedLabException.Reason.SETTINGS, TEXTS.text("address.certificate", name));
    }

    /** Returns whether the server is on this computer, so that the connection need not be encrypted. */
    public boolean local() {
        return LOOPBACK.matcher(host.toLowerCase(Locale.ROOT)).matches();
    }

    /** Returns it as people write it: {@code host:port/database}. */
    @Override
    public String toString() {
        return host + ":" + port + "/" + database;
    }
}
