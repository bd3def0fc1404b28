// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.util.List;
import java.util.Locale;
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
        String low = Texts.three(question.likely().low());
        String high = Texts.three(question.likely().high());
        String prompt = unit.isEmpty()
                ? Texts.of("operator.ask", capital(question.what()), low, high)
                : Texts.of("operator.askIn", capital(question.what()), unit, low, high);
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
            Optional<String> answer = answer(Texts.of("operator.confirm", sentences));
            if (answer.isEmpty() || isOneOf("operator.no", answer.get())) {
                return false;
            }
            if (isOneOf("operator.yes", answer.get())) {
                return true;
            }
            console.message(Texts.of("operator.neither", answer.get()));
        }
    }

    @Override
    public void warn(String sentences) {
        console.message(sentences);
    }

    /** Returns what was typed; empty when it was nothing. */
    /** Returns whether an answer is one of the words of a text, which has "|" between them. */
    private static boolean isOneOf(String key, String answer) {
        return List.of(Texts.of(key).split("\\|")).contains(answer.toLowerCase(Locale.ROOT));
    }

    private Optional<String> answer(String prompt) throws InterruptedException {
        return console.ask(prompt).filter(line -> !line.isEmpty());
    }

    private static String capital(String text) {
        return text.isEmpty() ? text : Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }
}
