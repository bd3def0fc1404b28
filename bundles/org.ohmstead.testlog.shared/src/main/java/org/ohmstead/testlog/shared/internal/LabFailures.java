// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.shared.internal;

import java.io.IOException;
import java.security.GeneralSecurityException;
import java.sql.SQLException;
import java.util.Optional;
import javax.net.ssl.SSLException;
import org.ohmstead.testlog.shared.LabAddress;
import org.ohmstead.testlog.shared.LabCredentials;
import org.ohmstead.testlog.shared.SharedLabException;
import org.ohmstead.testlog.shared.SharedLabException.Reason;
import org.postgresql.util.PSQLException;
import org.postgresql.util.ServerErrorMessage;

/** Turns what the server and the driver report into sentences. The codes are PostgreSQL's, appendix A of its documentation. */
public final class LabFailures {
    private static final String CLASS_OF_LOST_CONNECTIONS = "08";
    private static final String CLASS_OF_RESOURCES = "53";
    private static final String CLASS_OF_OPERATOR = "57";

    private final LabAddress address;
    private final LabCredentials credentials;

    /** Something done with the server. */
    @FunctionalInterface
    public interface Action<T> {
        /** Does it. */
        T run() throws SQLException, SharedLabException;
    }

    /** Speaks of a server and a user. */
    public LabFailures(LabAddress address, LabCredentials credentials) {
        this.address = address;
        this.credentials = credentials;
    }

    /** Does something; turns its failure into sentences. */
    public <T> T guard(String whatHappened, Action<T> action) throws SharedLabException {
        try {
            return action.run();
        } catch (SQLException failure) {
            throw of(whatHappened, failure);
        }
    }

    /** Returns the failure that a fault means. */
    public SharedLabException of(String whatHappened, SQLException failure) {
        Meaning meaning = meaning(failure);
        return new SharedLabException(meaning.reason(), whatHappened + ": " + meaning.sentences(), failure);
    }

    private record Meaning(Reason reason, String sentences) {}

    private Meaning meaning(SQLException failure) {
        String state = Optional.ofNullable(failure.getSQLState()).orElse("");
        if (serverMessage(failure).isEmpty()) {
            return withoutServer(state, failure);
        }
        Optional<Meaning> known = byCode(state, failure).or(() -> byRefusal(state, failure));
        return known.orElseGet(() -> byClass(state, failure));
    }

    /** Says what the driver found by itself, before the server had a say or when it fell silent. */
    private Meaning withoutServer(String state, SQLException failure) {
        if (causedBy(failure, SSLException.class) || causedBy(failure, GeneralSecurityException.class)) {
            return notTrusted(failure);
        }
        if (causedBy(failure, IOException.class)) {
            return unreachable(failure);
        }
        if ("08004".equals(state) && credentials.password().isEmpty()) {
            return new Meaning(
                    Reason.CREDENTIALS,
                    "the server " + address + " wants a password for " + credentials.user()
                            + ", but none was found. Set " + LabCredentials.PASSWORD_VARIABLE
                            + ", or write it into your password file.");
        }
        if ("08004".equals(state)) {
            return new Meaning(
                    Reason.NOT_TRUSTED,
                    "the server " + address
                            + " does not encrypt its connections, and without that passwords and readings"
                            + " would cross the network open to all. Let whoever runs the server switch TLS on.");
        }
        if ("08006".equals(state) && encrypts()) {
            return notTrusted(failure);
        }
        return state.startsWith(CLASS_OF_LOST_CONNECTIONS)
                ? unreachable(failure)
                : new Meaning(Reason.REFUSED, "the driver reports: " + failure.getMessage() + ".");
    }

    private boolean encrypts() {
        return address.certificate().isPresent() || !address.local();
    }

    private Meaning notTrusted(SQLException failure) {
        String means = address.certificate().isPresent()
                ? "it was not signed by the one in the file "
                        + address.certificate().get() + ", or was made for another name"
                : "this computer does not know who signed it, or it was made for another name. Set certificateFile of the shared"
                        + " log to a copy of the certificate that the laboratory uses";
        return new Meaning(
                Reason.NOT_TRUSTED,
                "the certificate of the server " + address + " is not trusted: " + means
                        + ". Do not work around it: somebody else may be posing as the server. (" + deepest(failure)
                        + ")");
    }

    private Meaning unreachable(SQLException failure) {
        return new Meaning(
                Reason.UNREACHABLE,
                "the server " + address + " does not answer, or the connection was cut (" + deepest(failure)
                        + "). Check the network and that the server runs; what is in the bench's own log stays there and is handed"
                        + " over later.");
    }

    private Optional<Meaning> byCode(String state, SQLException failure) {
        return switch (state) {
            case "28P01" -> meaning(
                    Reason.WRONG_PASSWORD,
                    "the server " + address + " does not accept the password of " + credentials.user() + " from "
                            + credentials.origin()
                            + ". Correct it there; the server's administrator can set a new one.");
            case "28000" -> meaning(
                    Reason.WRONG_PASSWORD,
                    "the server " + address + " does not let " + credentials.user() + " in from here ("
                            + message(failure)
                            + "). Let its administrator make the login, and allow it in pg_hba.conf.");
            case "3D000" -> meaning(
                    Reason.NO_DATABASE,
                    "the server has no database \"" + address.database()
                            + "\". Correct its name in project.json, or let the server's administrator make it.");
            case "42501" -> meaning(
                    Reason.NO_RIGHT,
                    "the role of " + credentials.user() + " does not include it (" + message(failure)
                            + "). A lead can give a role: ohmstead lab grant.");
            case "40001", "40P01", "55P03", "55006" -> meaning(
                    Reason.BUSY, "others use the same entries just now (" + message(failure) + "). Try again.");
            default -> Optional.empty();
        };
    }

    /** Says what the triggers of the shared log refuse. */
    private Optional<Meaning> byRefusal(String state, SQLException failure) {
        return switch (state) {
            case "OHM03" -> meaning(
                    Reason.CLOSED,
                    "the chain was closed, for this reason: " + message(failure)
                            + " It takes no more entries until a lead opens it again.");
            case "OHM01", "OHM02", "OHM04", "OHM05", "OHM06", "OHM07" -> meaning(
                    Reason.REFUSED, "the shared log refuses it: " + message(failure));
            case "22021", "22P05" -> meaning(
                    Reason.REFUSED,
                    "an entry holds characters that the database cannot keep (" + message(failure)
                            + "). Verify the bench's own log.");
            default -> Optional.empty();
        };
    }

    private Meaning byClass(String state, SQLException failure) {
        if (state.startsWith(CLASS_OF_LOST_CONNECTIONS)) {
            return unreachable(failure);
        }
        if (state.startsWith(CLASS_OF_OPERATOR) || state.startsWith(CLASS_OF_RESOURCES)) {
            return new Meaning(
                    Reason.BUSY,
                    "the server " + address + " starts, stops or has no room just now (" + message(failure)
                            + "). Try again later; if it stays so, tell whoever runs it.");
        }
        return new Meaning(
                Reason.REFUSED,
                "the server " + address + " reports: " + message(failure) + " (code " + state
                        + "). Verify the shared log; if that fails too, tell whoever runs it.");
    }

    private static Optional<Meaning> meaning(Reason reason, String sentences) {
        return Optional.of(new Meaning(reason, sentences));
    }

    private static Optional<ServerErrorMessage> serverMessage(SQLException failure) {
        return failure instanceof PSQLException known
                ? Optional.ofNullable(known.getServerErrorMessage())
                : Optional.empty();
    }

    private static String message(SQLException failure) {
        return serverMessage(failure)
                .map(ServerErrorMessage::getMessage)
                .or(() -> Optional.ofNullable(failure.getMessage()))
                .orElse("no reason given");
    }

    private static boolean causedBy(Throwable failure, Class<? extends Throwable> kind) {
        for (Throwable cause = failure.getCause(); cause != null; cause = cause.getCause()) {
            if (kind.isInstance(cause)) {
                return true;
            }
        }
        return false;
    }

    private static String deepest(Throwable failure) {
        Throwable deepest = failure;
        while (deepest.getCause() != null) {
            deepest = deepest.getCause();
        }
        return Optional.ofNullable(deepest.getMessage())
                .orElse(deepest.getClass().getSimpleName());
    }
}
