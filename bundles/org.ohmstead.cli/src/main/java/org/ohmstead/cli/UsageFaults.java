// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.ResourceBundle;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/**
 * Says what is wrong with a command line in the reader's language.
 *
 * <p>The parser makes its sentences in English and gives their parts nowhere else, so they are recognised by the English texts, which
 * are the parser's own. One that is not known stays as it is.
 */
final class UsageFaults {
    /** Whole sentences. The first that fits counts. */
    private static final List<String> SENTENCES = List.of(
            "fault.missing.option",
            "fault.missing.options",
            "fault.missing.parameter",
            "fault.missing.parameters",
            "fault.missing.both",
            "fault.value.missing",
            "fault.value.other",
            "fault.value.number",
            "fault.value.long",
            "fault.value.real",
            "fault.value.switch",
            "fault.value.form",
            "fault.value.choice",
            "fault.once",
            "fault.unknown.option",
            "fault.unknown.options",
            "fault.unknown.word",
            "fault.unknown.words",
            "fault.hint.meant",
            "fault.hint.options");

    /** Beginnings, behind which the reason is a sentence of its own. */
    private static final List<String> BEGINNINGS = List.of("fault.value.invalid", "fault.place.invalid");

    private static final String OR = "fault.hint.or";
    private static final Pattern PLACE = Pattern.compile("\\$\\d");

    private UsageFaults() {}

    /** Returns the names of the texts. */
    static Set<String> keys() {
        Set<String> keys = new TreeSet<>(SENTENCES);
        keys.addAll(BEGINNINGS);
        keys.add(OR);
        return keys;
    }

    /** Says what is wrong, and what may have been meant or else how the word is used; returns the exit code. */
    static int explain(ParameterException fault) {
        CommandLine command = fault.getCommandLine();
        PrintWriter err = command.getErr();
        err.println(command.getColorScheme().errorText(said(fault.getMessage(), Words.spoken())));
        StringWriter hint = new StringWriter();
        if (UnmatchedArgumentException.printSuggestions(fault, new PrintWriter(hint))) {
            err.println(hint(hint.toString().strip(), Words.spoken()));
        } else {
            command.usage(err, command.getColorScheme());
        }
        return command.getCommandSpec().exitCodeOnInvalidInput();
    }

    /** Returns the parser's sentence in a language; the sentence itself when its form is not known. */
    static String said(String sentence, ResourceBundle words) {
        ResourceBundle parsers = Words.in(Locale.ENGLISH);
        for (String key : BEGINNINGS) {
            Matcher found = form(parsers.getString(key)).matcher(sentence);
            if (found.lookingAt()) {
                return filled(found, words.getString(key)) + said(sentence.substring(found.end()), words);
            }
        }
        for (String key : SENTENCES) {
            Matcher found = form(parsers.getString(key)).matcher(sentence);
            if (found.matches()) {
                return filled(found, words.getString(key));
            }
        }
        return sentence;
    }

    /** Returns the parser's proposals in a language. */
    private static String hint(String proposals, ResourceBundle words) {
        return said(proposals, words).replace(Words.in(Locale.ENGLISH).getString(OR), words.getString(OR));
    }

    /** Returns the form of the sentences that a text with places makes. */
    private static Pattern form(String text) {
        return Pattern.compile(
                Arrays.stream(PLACE.split(text, -1)).map(Pattern::quote).collect(Collectors.joining("(.*?)")),
                Pattern.DOTALL);
    }

    private static String filled(Matcher found, String text) {
        return PLACE.matcher(text)
                .replaceAll(place -> Matcher.quoteReplacement(
                        found.group(Integer.parseInt(place.group().substring(1)))));
    }
}
