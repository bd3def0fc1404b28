// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.util.Optional;
import java.util.OptionalDouble;
import org.ohmstead.measure.bench.OperatorPort;
import org.ohmstead.units.QuantityException;
import org.ohmstead.units.QuantityParser;
import org.ohmstead.units.Unit;

/** A person at the bench who reads and types on the console. An empty line gives up. */
final class ConsoleOperator implements OperatorPort {
    private final Console console;

    ConsoleOperator(Console console) {
        this.console = console;
    }

    @Override
    public OptionalDouble ask(Question question) throws InterruptedException {
        String unit = question.unit().symbol();
        String prompt = capital(question.what()) + (unit.isEmpty() ? "" : " in " + unit) + " (about "
                + Texts.three(question.likely().low()) + " to "
                + Texts.three(question.likely().high()) + "): ";
        while (true) {
            Optional<String> answer = answer(prompt);
            if (answer.isEmpty()) {
                return OptionalDouble.empty();
            }
            try {
                return OptionalDouble.of(value(answer.get(), question.unit()));
            } catch (QuantityException unreadable) {
                console.message(unreadable.getMessage());
            }
        }
    }

    private static double value(String text, Unit unit) throws QuantityException {
        return QuantityParser.parse(text, unit).value();
    }

    @Override
    public Optional<String> askText(String what) throws InterruptedException {
        return answer(what + " ");
    }

    @Override
    public boolean confirm(String sentences) throws InterruptedException {
        while (true) {
            Optional<String> answer = answer(sentences + " Type y for yes: ");
            if (answer.isEmpty() || answer.get().matches("(?i)no?")) {
                return false;
            }
            if (answer.get().matches("(?i)y(es)?")) {
                return true;
            }
            console.message("\"" + answer.get() + "\" is neither yes nor no. Type y or n; an empty line means no.");
        }
    }

    @Override
    public void warn(String sentences) {
        console.message(sentences);
    }

    /** Returns what was typed; empty when it was nothing. */
    private Optional<String> answer(String prompt) throws InterruptedException {
        return console.ask(prompt).filter(line -> !line.isEmpty());
    }

    private static String capital(String text) {
        return text.isEmpty() ? text : Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }
}
