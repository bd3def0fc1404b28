// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.it.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.cli.Ohmstead;

/** Odd words, odd texts and a full disk: what a user is told, and with which exit code. */
class OddInputsTest {
    @TempDir
    private Path folder;

    @Test
    void outputThatCannotBeWrittenIsAnOutsideFailure() {
        OutputStream full = new OutputStream() {
            @Override
            public void write(int value) throws IOException {
                throw new IOException("No space left on device");
            }
        };
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int exitCode = Ohmstead.run(
                new String[] {"--version"},
                new PrintStream(full, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8));
        assertEquals(4, exitCode);
        assertTrue(err.toString(StandardCharsets.UTF_8).contains("could not be written"));
    }

    @Test
    void aWordWithAnAtSignIsNoFileOfWords() throws IOException {
        Path words = Files.writeString(folder.resolve("words"), "--help");
        String sentence = Words.run("check", "@" + words).isRefused();
        assertTrue(sentence.contains("@" + words), sentence);
    }

    @Test
    void anEmptyNameIsWrongUsageAndNotTheCurrentFolder() {
        for (List<String> words : List.of(List.of("check", ""), List.of("report", "x", "--output", ""))) {
            Words run = Words.run(words);
            assertEquals(2, run.exitCode(), run.err());
            assertTrue(run.err().contains("the name is empty"), run.err());
            assertFalse(run.err().contains("java."), run.err());
        }
    }

    @Test
    void noVoltagesAreAskedForAndNotAnEmptyTable() {
        assertTrue(
                Words.run("curves", folder.toString(), "--at", ",").isRefused().contains("--at"));
    }

    @Test
    void controlCharactersOfAProjectDoNotReachTheTerminal() throws IOException {
        Path project = project("\"id\": \"4-ohm\"", "\"id\": \"4-ohm\\u001b[2J\\nNo problems.\"");
        String text = Files.readString(project)
                .replace(
                        "\"kind\": \"continuousSine\"",
                        "\"kind\": \"toneBurst\","
                                + " \"onSeconds\": 0.02, \"periodSeconds\": 0.5, \"lowLevelDb\": -20");
        Files.writeString(project, text);
        Words check = Words.run("check", project.toString());
        assertTrue(check.out().contains("4-ohm"), check.out() + check.err());
        assertFalse(check.out().contains("\u001b"), check.out());
        assertFalse(check.out().lines().anyMatch(line -> line.startsWith("No problems.")), check.out());
    }

    @Test
    void halfACharacterIsRefusedWithItsPlace() throws IOException {
        Path project = project("\"model\": \"L2-90\"", "\"model\": \"L2-\\ud800\"");
        assertTrue(Words.run("check", project.toString()).isRefused().contains("$.amplifier.model"));
    }

    private Path project(String from, String to) throws IOException {
        String text = Files.readString(
                Path.of(System.getProperty("ohmstead.root"), "demo-data/larkspur.ohmstead/project.json"));
        assertTrue(text.contains(from), from);
        return Files.writeString(folder.resolve("project.json"), text.replace(from, to));
    }
}
