// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.it.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.ohmstead.cli.Ohmstead;

/**
 * One command line and what came of it.
 *
 * @param exitCode what the process would end with
 * @param out what went to standard output
 * @param err what went to standard error
 */
record Words(int exitCode, String out, String err) {
    static Words run(List<String> words) {
        return run(words.toArray(String[]::new));
    }

    static Words run(String... words) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int exitCode = Ohmstead.run(
                words,
                new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8));
        return new Words(exitCode, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }

    JsonNode json() {
        try {
            return new ObjectMapper().readTree(out);
        } catch (JsonProcessingException e) {
            throw new AssertionError("not one JSON document: " + out + err, e);
        }
    }

    /** Checks that bad input was refused as it should be, and returns the sentence. */
    String isRefused() {
        assertEquals(3, exitCode, out + err);
        assertTrue(err.startsWith("ohmstead: "), err);
        assertTrue(err.strip().endsWith("."), "not a whole sentence: " + err);
        assertFalse(err.contains("\tat ") || err.contains("Exception"), "a stack trace or class name: " + err);
        return err;
    }
}
