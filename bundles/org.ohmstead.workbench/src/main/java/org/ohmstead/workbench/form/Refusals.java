// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.form;

import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Numbers;

/** The words of a refused value as they stand beside a field. */
public final class Refusals {
    private static final Messages TEXTS = Messages.of(Refusals.class);
    private static final Pattern PARAMETER =
            Pattern.compile("(?s)[A-Za-z ]+ is .*; (it (?:must|needs|may|has) .*)|[A-Za-z ]+ is (missing)");

    /** What the records of the model ask for, which they say in English: the text for people of each. */
    private static final List<Asked> ASKED = List.of(
            new Asked("it must be a finite number above (\\S+)", "refusal.above"),
            new Asked("it must be a finite number of at least (\\S+)", "refusal.atLeast"),
            new Asked("it must be a finite number", "refusal.number"),
            new Asked("it must lie between (\\S+) and (\\S+)", "refusal.between"),
            new Asked("it must be above (\\S+) and at most (\\S+) times the rated power", "refusal.ratedPower"),
            new Asked("it must be above (\\S+) and at most (\\S+)", "refusal.aboveUpTo"),
            new Asked("it must be above ([A-Za-z]+), which is (\\S+)", "refusal.aboveOther"),
            new Asked("it must be at least ([A-Za-z]+), which is (\\S+)", "refusal.atLeastOther"),
            new Asked("it must lie within the project's folder, such as (.+)", "refusal.inProject"),
            new Asked("it needs a text", "refusal.text"));

    private static final Pattern NUMBER = Pattern.compile("-?\\d+(?:\\.\\d+)?(?:E-?\\d+)?");

    private Refusals() {}

    /** A demand as it is written and the name of the text that says it. */
    private record Asked(Pattern written, String key) {
        Asked(String written, String key) {
            this(Pattern.compile(written), key);
        }

        Optional<String> said(String demand) {
            Matcher found = written.matcher(demand);
            if (!found.matches()) {
                return Optional.empty();
            }
            Object[] arguments = new Object[found.groupCount()];
            for (int index = 0; index < arguments.length; index++) {
                arguments[index] = word(found.group(index + 1));
            }
            return Optional.of(TEXTS.text(key, arguments));
        }

        private static String word(String written) {
            if (TEXTS.has("other." + written)) {
                return TEXTS.text("other." + written);
            }
            return NUMBER.matcher(written).matches() ? Numbers.localised(written) : written;
        }
    }

    /**
     * Returns the message of a refusal as a sentence for the person at the field. The field's label already says what it is about, so
     * that of "loadOhms is -4.0; it must be a finite number above 0" remains "It must be a number above 0."
     */
    public static String sentence(IllegalArgumentException refused) {
        String message = refused.getMessage() == null
                ? TEXTS.text("refusal.plain")
                : refused.getMessage().strip();
        Matcher parameter = PARAMETER.matcher(message);
        if (parameter.matches()) {
            message = parameter.group(1) == null ? TEXTS.text("refusal.missing") : said(parameter.group(1));
        }
        message = Character.toUpperCase(message.charAt(0)) + message.substring(1);
        return message.endsWith(".") || message.endsWith("!") || message.endsWith("?") ? message : message + ".";
    }

    private static String said(String demand) {
        return ASKED.stream()
                .flatMap(asked -> asked.said(demand).stream())
                .findFirst()
                .orElseGet(() -> demand.replace("a finite number", "a number"));
    }

    /** Returns whether a sentence says what was refused: whether it quotes anything. */
    public static boolean quotes(String sentence) {
        return sentence.indexOf('"') >= 0 || sentence.indexOf('\u201e') >= 0;
    }

    /** Returns whether a sentence quotes a text. */
    public static boolean quotes(String sentence, String text) {
        return sentence.contains("\"" + text + "\"") || sentence.contains("\u201e" + text + "\u201c");
    }
}
