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
import org.ohmstead.units.text.Messages;
import org.postgresql.util.PSQLException;
import org.postgresql.util.ServerErrorMessage;

/** Turns what the server and the driver report into sentences. The codes are PostgreSQL's, appendix A of its documentation. */
public final class LabFailures {
    private static final Messages TEXTS = Messages.of(LabFailures.class);
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
        return new SharedLabException(
                meaning.reason(), TEXTS.text("failed", whatHappened, meaning.sentences()), failure);
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
                    TEXTS.text("server.noPassword", address, credentials.user(), LabCredentials.PASSWORD_VARIABLE));
        }
        if ("08004".equals(state)) {
            return new Meaning(Reason.NOT_TRUSTED, TEXTS.text("server.noTls", address));
        }
        if ("08006".equals(state) && encrypts()) {
            return notTrusted(failure);
        }
        return state.startsWith(CLASS_OF_LOST_CONNECTIONS)
                ? unreachable(failure)
                : new Meaning(Reason.REFUSED, TEXTS.text("server.driver", failure.getMessage()));
    }

    private boolean encrypts() {
        return address.certificate().isPresent() || !address.local();
    }

    private Meaning notTrusted(SQLException failure) {
        return new Meaning(
                Reason.NOT_TRUSTED,
                address.certificate().isPresent()
                        ? TEXTS.text(
                                "server.otherSigner",
                                address,
                                deepest(failure),
                                address.certificate().get())
                        : TEXTS.text("server.unknownSigner", address, deepest(failure)));
    }

    private Meaning unreachable(SQLException failure) {
        return new Meaning(Reason.UNREACHABLE, TEXTS.text("server.unreachable", address, deepest(failure)));
    }

    private Optional<Meaning> byCode(String state, SQLException failure) {
        return switch (state) {
            case "28P01" ->
                meaning(
                        Reason.WRONG_PASSWORD,
                        TEXTS.text("server.password", address, credentials.user(), credentials.origin()));
            case "28000" ->
                meaning(
                        Reason.WRONG_PASSWORD,
                        TEXTS.text("server.login", address, credentials.user(), message(failure)));
            case "3D000" -> meaning(Reason.NO_DATABASE, TEXTS.text("server.noDatabase", address.database()));
            case "42501" ->
                meaning(Reason.NO_RIGHT, TEXTS.text("server.noRight", credentials.user(), message(failure)));
            case "40001", "40P01", "55P03", "55006" ->
                meaning(Reason.BUSY, TEXTS.text("server.inUse", message(failure)));
            default -> Optional.empty();
        };
    }

    /** Says what the triggers of the shared log refuse. */
    private Optional<Meaning> byRefusal(String state, SQLException failure) {
        return switch (state) {
            case "OHM03" -> meaning(Reason.CLOSED, TEXTS.text("server.closed", message(failure)));
            case "OHM01", "OHM02", "OHM04", "OHM05", "OHM06", "OHM07" ->
                meaning(Reason.REFUSED, TEXTS.text("server.refused", message(failure)));
            case "22021", "22P05" -> meaning(Reason.REFUSED, TEXTS.text("server.characters", message(failure)));
            default -> Optional.empty();
        };
    }

    private Meaning byClass(String state, SQLException failure) {
        if (state.startsWith(CLASS_OF_LOST_CONNECTIONS)) {
            return unreachable(failure);
        }
        if (state.startsWith(CLASS_OF_OPERATOR) || state.startsWith(CLASS_OF_RESOURCES)) {
            return new Meaning(Reason.BUSY, TEXTS.text("server.busy", address, message(failure)));
        }
        return new Meaning(Reason.REFUSED, TEXTS.text("server.other", address, message(failure), state));
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
                .orElse(TEXTS.text("reason.none"));
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
