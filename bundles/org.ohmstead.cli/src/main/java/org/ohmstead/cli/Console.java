// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.regex.Pattern;

/** Where a word's results, messages and progress go. */
final class Console {
    private static final int LINE_WIDTH = 100;
    private static final String TURNING = "\\u2028\\u2029\\u202a-\\u202e\\u2066-\\u2069";
    private static final Pattern STEERING = Pattern.compile("[\\u007f-\\u009f" + TURNING + "]");
    private static final Pattern STEERING_LINES =
            Pattern.compile("[\\u0000-\\u001f\\u007f-\\u009f" + TURNING + "&&[^\\r\\n\\t]]");

    private final PrintStream out;
    private final PrintStream err;
    private final ConsoleInput in;
    private final boolean terminal;
    private boolean progressShown;

    Console(PrintStream out, PrintStream err) {
        this(out, err, new ConsoleInput(System.in, System.console() != null));
    }

    Console(PrintStream out, PrintStream err, ConsoleInput in) {
        this.out = new PrintStream(out, true, StandardCharsets.UTF_8);
        this.err = new PrintStream(err, true, StandardCharsets.UTF_8);
        this.in = in;
        this.terminal = System.console() != null;
    }

    /** Returns whether a person sits before it who can be asked. */
    boolean hasPerson() {
        return in.terminal();
    }

    /** Asks for a line; beside the results, so that these can go elsewhere. Empty at the end of the input. */
    Optional<String> ask(String prompt) throws InterruptedException {
        clearProgress();
        in.forgetEarlier();
        err.print(harmless(prompt));
        err.flush();
        Optional<String> answer = in.line();
        if (answer.isEmpty() || !in.terminal()) {
            // Nobody's Enter has ended the line.
            err.println();
        }
        return answer;
    }

    /** Prints a line of results. */
    void line(String text) {
        clearProgress();
        out.println(harmless(text));
    }

    /** Prints one JSON document. */
    void json(JsonNode document) throws JsonProcessingException {
        clearProgress();
        String text = new ObjectMapper().writerWithDefaultPrettyPrinter().writeValueAsString(document);
        // JSON lets these stand in its strings, where alone they can be; escaped they mean the same to a program.
        out.println(STEERING.matcher(text)
                .replaceAll(
                        found -> String.format("\\\\u%04x", (int) found.group().charAt(0))));
    }

    /** Prints raw text of an export, without anything added. */
    void raw(String text) {
        clearProgress();
        out.print(terminal ? STEERING_LINES.matcher(text).replaceAll(" ") : text);
        out.flush();
    }

    /** Prints a message for people. */
    void message(String text) {
        clearProgress();
        err.println("ohmstead: " + harmless(text));
    }

    /** Prints a line that belongs to the message before it. */
    void note(String text) {
        err.println("  " + harmless(text));
    }

    /** Prints a line about how far something is; for people, beside the results. */
    void status(String text) {
        clearProgress();
        err.println(harmless(text));
    }

    /**
     * Returns a text without control characters, and without those that turn the direction of writing or end a line: what comes from a
     * file shall not steer the terminal, feign lines, or look like another text.
     */
    private static String harmless(String text) {
        return STEERING_LINES.matcher(text).replaceAll(" ").replaceAll("[\\r\\n\\t]", " ");
    }

    /** Shows how far something is: on a terminal one line that is written over, elsewhere nothing. */
    void progress(int done, int total, String what) {
        if (terminal) {
            String text = String.format("%3d/%d  %s", done, total, harmless(what));
            err.print("\r" + (text.length() > LINE_WIDTH ? text.substring(0, LINE_WIDTH) : text) + "\u001b[K");
            err.flush();
            progressShown = true;
        }
    }

    private void clearProgress() {
        if (progressShown) {
            err.print("\r\u001b[K");
            err.flush();
            progressShown = false;
        }
    }
}
