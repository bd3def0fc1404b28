// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

/** What comes from files of others must not steer the terminal that it is shown on. */
class ConsoleTest {
    /** Clears a screen in seven and in eight bits, rings, goes back, and turns the direction of writing. */
    private static final String HOSTILE = "a\u001b[2J\u009b2J\u0007\u0008\r\nb\u202ec\u2066d\u2028e\u00e4\ud83d\ude00";

    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private final ByteArrayOutputStream err = new ByteArrayOutputStream();
    private final Console console = new Console(
            new PrintStream(out, true, StandardCharsets.UTF_8),
            new PrintStream(err, true, StandardCharsets.UTF_8),
            new ConsoleInput(new ByteArrayInputStream(new byte[0]), false));

    @Test
    void textsLoseWhatSteers() {
        console.line(HOSTILE);
        console.message(HOSTILE);
        String harmless = "a [2J 2J    b c d e\u00e4\ud83d\ude00";
        assertEquals(harmless, out.toString(StandardCharsets.UTF_8).strip());
        assertEquals(
                "ohmstead: " + harmless, err.toString(StandardCharsets.UTF_8).strip());
    }

    @Test
    void jsonHasItEscapedAndMeansTheSame() throws Exception {
        console.json(JsonNodeFactory.instance.objectNode().put("name", HOSTILE));
        String printed = out.toString(StandardCharsets.UTF_8);
        assertTrue(
                printed.codePoints()
                        .allMatch(each -> each >= ' ' && each < 0x7f
                                || each == '\n'
                                || each == '\r'
                                || each == 0xe4
                                || each == 0x1f600),
                printed);
        assertEquals(HOSTILE, new ObjectMapper().readTree(printed).get("name").asText());
    }
}
