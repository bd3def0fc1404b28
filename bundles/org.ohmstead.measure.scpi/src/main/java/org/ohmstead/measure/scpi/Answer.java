// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.scpi;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.ohmstead.units.text.Messages;

/** Reads the texts of answers: numbers, strings and lists as IEEE 488.2 chapter 8 and SCPI 1999 volume 1 chapter 7 have them. */
final class Answer {
    private static final Messages TEXTS = Messages.of(Answer.class);
    private static final Pattern NUMBER = Pattern.compile("[+-]?(\\d+\\.?\\d*|\\.\\d+)([Ee][+-]?\\d{1,5})?");
    private static final int SHOWN = 60;
    private static final double INFINITY = 9.9e37;
    private static final double NOT_A_NUMBER = 9.91e37;
    private static final double SAME = 1e-5;

    private Answer() {}

    /** Returns a text for a message: short, and without what cannot be printed. */
    static String shown(String text) {
        StringBuilder shown = new StringBuilder();
        for (int i = 0; i < text.length() && shown.length() < SHOWN; i++) {
            char letter = text.charAt(i);
            shown.append(Character.isISOControl(letter) ? '?' : letter);
        }
        return shown.length() < text.length() ? shown + "..." : shown.toString();
    }

    /** Returns the remedy for an answer of another form than the command set says. */
    static String suits() {
        return TEXTS.text("answer.suits");
    }

    /** Reads NR1, NR2 or NR3. */
    static double number(String text) throws AnswerFault {
        String stripped = text.strip();
        if (!NUMBER.matcher(stripped).matches()) {
            throw new AnswerFault(
                    AnswerFault.After.IN_STEP, () -> TEXTS.text("answer.noNumber", shown(text)), Answer::suits);
        }
        return sound(Double.parseDouble(stripped));
    }

    /** Refuses the numbers that SCPI sets aside (1999, volume 1, 7.2.1.4 and 7.2.1.5). */
    static double sound(double value) throws AnswerFault {
        double size = Math.abs(value);
        if (Double.isNaN(value) || Math.abs(size - NOT_A_NUMBER) <= SAME * NOT_A_NUMBER) {
            throw new AnswerFault(
                    AnswerFault.After.IN_STEP,
                    () -> TEXTS.text("answer.notANumber"),
                    () -> TEXTS.text("answer.notANumber.remedy"));
        }
        if (size >= INFINITY * (1 - SAME)) {
            throw new AnswerFault(
                    AnswerFault.After.IN_STEP,
                    () -> TEXTS.text("answer.overload"),
                    () -> TEXTS.text("answer.overload.remedy"));
        }
        return value;
    }

    static int whole(String text) throws AnswerFault {
        String stripped = text.strip();
        if (!stripped.matches("[+-]?\\d{1,9}")) {
            throw new AnswerFault(
                    AnswerFault.After.IN_STEP, () -> TEXTS.text("answer.noWhole", shown(text)), Answer::suits);
        }
        return Integer.parseInt(stripped);
    }

    /** Reads a string in double or single quotes, of which a doubled one stands for itself; what has no quotes is taken as it is. */
    static String string(String text) throws AnswerFault {
        String stripped = text.strip();
        if (stripped.isEmpty() || stripped.charAt(0) != '"' && stripped.charAt(0) != '\'') {
            return stripped;
        }
        String quote = stripped.substring(0, 1);
        String inside = stripped.length() < 2 ? quote : stripped.substring(1, stripped.length() - 1);
        if (stripped.length() < 2
                || !stripped.endsWith(quote)
                || inside.replace(quote + quote, "").contains(quote)) {
            throw new AnswerFault(
                    AnswerFault.After.IN_STEP, () -> TEXTS.text("answer.textQuotes", shown(text)), Answer::suits);
        }
        return inside.replace(quote + quote, quote);
    }

    /** Cuts at commas outside of quotes. */
    static List<String> list(String text) throws AnswerFault {
        List<String> fields = new ArrayList<>();
        char quote = 0;
        int from = 0;
        for (int i = 0; i < text.length(); i++) {
            char letter = text.charAt(i);
            if (quote != 0) {
                quote = letter == quote ? 0 : quote;
            } else if (letter == '"' || letter == '\'') {
                quote = letter;
            } else if (letter == ',') {
                fields.add(text.substring(from, i).strip());
                from = i + 1;
            }
        }
        if (quote != 0) {
            throw new AnswerFault(
                    AnswerFault.After.IN_STEP, () -> TEXTS.text("answer.listQuotes", shown(text)), Answer::suits);
        }
        fields.add(text.substring(from).strip());
        return fields;
    }

    /** Reads a list of numbers. */
    static double[] numbers(String text) throws AnswerFault {
        String[] fields = text.split(",", -1);
        double[] values = new double[fields.length];
        for (int i = 0; i < fields.length; i++) {
            values[i] = number(fields[i]);
        }
        return values;
    }

    static ScpiIdentity identity(String text) throws AnswerFault {
        List<String> fields = list(text);
        if (fields.size() != 4 || fields.stream().anyMatch(String::isEmpty)) {
            throw new AnswerFault(
                    AnswerFault.After.IN_STEP,
                    () -> TEXTS.text("answer.noIdentity", shown(text)),
                    () -> TEXTS.text("answer.noIdentity.remedy"));
        }
        return new ScpiIdentity(
                string(fields.get(0)), string(fields.get(1)), string(fields.get(2)), string(fields.get(3)));
    }

    /** Reads an entry of an error queue; empty when the queue is. */
    static Optional<ScpiError> error(String text) throws AnswerFault {
        List<String> fields = list(text);
        int code = whole(fields.get(0));
        return code == 0
                ? Optional.empty()
                : Optional.of(new ScpiError(code, fields.size() < 2 ? "" : string(fields.get(1))));
    }

    /** Reads the answer to *OPC?, which can only be 1; returns it. */
    static String ready(String text) throws AnswerFault {
        if (!text.strip().equals("1")) {
            throw new AnswerFault(
                    AnswerFault.After.IN_STEP, () -> TEXTS.text("answer.notReady", shown(text)), Answer::suits);
        }
        return "1";
    }
}
