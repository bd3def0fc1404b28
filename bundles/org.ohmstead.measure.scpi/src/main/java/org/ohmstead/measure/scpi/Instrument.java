// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.scpi;

import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BooleanSupplier;
import java.util.stream.Collectors;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.units.text.Messages;
import org.ohmstead.units.text.Said;

/** A command set at work on a connection. */
final class Instrument {
    private static final Messages TEXTS = Messages.of(Instrument.class);
    static final Duration USUAL_WAIT = ScpiOptions.USUAL.answerWait();
    static final BooleanSupplier ALWAYS = () -> true;

    private static final String USUAL_ERRORS = "SYSTem:ERRor?";

    private final ScpiConnection connection;
    private final CommandSet set;
    private final String channel;
    private final BooleanSupplier allowed;

    /**
     * Makes an instrument.
     *
     * @param channel what stands for {channel} where nothing else is said
     * @param allowed whether commands that bring power or signals may be sent, asked at the last moment
     */
    Instrument(
            ScpiConnection connection, CommandSet set, InstrumentRole role, String channel, BooleanSupplier allowed) {
        this.connection = Checks.present(connection, "connection");
        this.set = Checks.present(set, "set");
        this.channel = Checks.present(channel, "channel");
        this.allowed = Checks.present(allowed, "allowed");
        if (set.role() != role) {
            throw new IllegalArgumentException(
                    "set is for a " + set.role().word() + "; it must be for a " + role.word());
        }
    }

    ScpiConnection connection() {
        return connection;
    }

    CommandSet set() {
        return set;
    }

    /** Makes sure that it is there and ready: who it is, no errors left, its state after *RST if wanted. */
    void begin(boolean reset) throws MeasurementException, InterruptedException {
        String expected = set.key("identity", "");
        if (!expected.equals("any")) {
            ScpiIdentity identity = connection.identify();
            String said = identity.maker() + "," + identity.model() + "," + identity.serialNumber() + ","
                    + identity.firmware();
            if (!said.contains(expected)) {
                throw MeasurementException.of(() -> TEXTS.text(
                        "instrument.other",
                        connection.address(),
                        Answer.shown(said),
                        set.id(),
                        Answer.shown(expected)));
            }
        }
        // Clears the power-on event too, so that from here on it tells of another one.
        connection.clear();
        connection.powerWatch().begin();
        if (reset) {
            connection.reset();
            connection.finish(Duration.ofSeconds(15));
        }
    }

    /** Runs the commands after *RST that the set has. */
    void start() throws MeasurementException, InterruptedException {
        run("start", Map.of());
    }

    /** Does something that is harmless at any time. */
    void run(String action, Map<String, String> values) throws MeasurementException, InterruptedException {
        run(action, values, USUAL_WAIT, ALWAYS);
    }

    /** Does something that the bench must not do once it was made safe. */
    void runGuarded(String action, Map<String, String> values) throws MeasurementException, InterruptedException {
        run(action, values, USUAL_WAIT, allowed);
    }

    void run(String action, Map<String, String> values, Duration wait, BooleanSupplier guard)
            throws MeasurementException, InterruptedException {
        List<CommandLine> lines = set.lines(action);
        int link = connection.powerWatch().check();
        for (CommandLine line : lines) {
            String command = line.filled(filling(values));
            if (line.answer().isPresent()) {
                explained(() -> connection.ask(command, wait, false, from -> Answer.ready(from.line())));
            } else {
                connection.command(command, guard);
            }
        }
        if (!lines.isEmpty()) {
            requireNoErrors(action);
        }
        if (connection.linkNumber() != link) {
            throw connection.trouble().madeAnewWithin(action);
        }
    }

    /** Asks for a number. */
    double number(String action, Map<String, String> values) throws MeasurementException, InterruptedException {
        connection.powerWatch().check();
        double[] found = {0};
        for (CommandLine line : set.lines(action)) {
            String command = line.filled(filling(values));
            if (line.answer().orElse(null) instanceof AnswerShape.Number shape) {
                found[0] = shape.factor()
                        * explained(() ->
                                connection.ask(command, USUAL_WAIT, true, from -> field(from.line(), shape.field())));
            } else {
                other(line, command, USUAL_WAIT);
            }
        }
        return found[0];
    }

    /** Asks for samples as they are sent. */
    double[] samples(String action, Map<String, String> values, Duration wait)
            throws MeasurementException, InterruptedException {
        connection.powerWatch().check();
        double[] found = {};
        for (CommandLine line : set.lines(action)) {
            String command = line.filled(filling(values));
            AnswerShape shape = line.answer().orElse(null);
            if (shape instanceof AnswerShape.Block block) {
                found = explained(() -> connection.ask(
                        command, wait, true, from -> block.format().samples(from.block(), block.order())));
            } else if (shape instanceof AnswerShape.Numbers) {
                found = explained(() -> connection.ask(command, wait, true, from -> Answer.numbers(from.longLine())));
            } else {
                other(line, command, wait);
            }
        }
        return found;
    }

    /** Returns what to send for something that has no answers. */
    List<String> commands(String action, Map<String, String> values) {
        return set.lines(action).stream()
                .filter(line -> line.answer().isEmpty())
                .map(line -> line.filled(filling(values)))
                .toList();
    }

    private void other(CommandLine line, String command, Duration wait)
            throws MeasurementException, InterruptedException {
        if (line.answer().isPresent()) {
            explained(() -> connection.ask(command, wait, false, from -> Answer.ready(from.line())));
        } else {
            connection.command(command);
        }
    }

    private static double field(String line, int field) throws AnswerFault {
        if (field == 0) {
            return Answer.number(line);
        }
        List<String> fields = Answer.list(line);
        if (fields.size() < field) {
            throw new AnswerFault(
                    AnswerFault.After.IN_STEP,
                    () -> TEXTS.text("answer.fewFields", String.valueOf(fields.size()), String.valueOf(field)),
                    () -> TEXTS.text("answer.fewFields.remedy"));
        }
        return Answer.number(fields.get(field - 1));
    }

    private Map<String, String> filling(Map<String, String> values) {
        if (values.containsKey("channel")) {
            return values;
        }
        Map<String, String> all = new HashMap<>(values);
        all.put("channel", channel);
        return all;
    }

    /** A question. */
    private interface Question<T> {
        T ask() throws MeasurementException, InterruptedException;
    }

    /** Asks; if that fails, adds what the error queue has to say about it, such as that it does not know the query. */
    private <T> T explained(Question<T> question) throws MeasurementException, InterruptedException {
        try {
            return question.ask();
        } catch (MeasurementException failed) {
            List<ScpiError> errors;
            try {
                errors = errors();
            } catch (MeasurementException alsoFailed) {
                failed.addSuppressed(alsoFailed);
                throw failed;
            }
            if (errors.isEmpty()) {
                throw failed;
            }
            throw MeasurementException.of(
                    () -> TEXTS.text("instrument.queue", Said.by(failed).text(), listed(errors)), failed);
        }
    }

    private void requireNoErrors(String action) throws MeasurementException, InterruptedException {
        List<ScpiError> errors = errors();
        if (!errors.isEmpty()) {
            throw MeasurementException.of(
                    () -> TEXTS.text("instrument.reports", connection.address(), listed(errors), action, set.id()));
        }
    }

    private List<ScpiError> errors() throws MeasurementException, InterruptedException {
        String query = set.key("errors", USUAL_ERRORS);
        return query.equals("none") ? new ArrayList<>() : connection.errors(query);
    }

    private static String listed(List<ScpiError> errors) {
        return errors.stream().limit(3).map(ScpiError::toString).collect(Collectors.joining(", "));
    }
}
