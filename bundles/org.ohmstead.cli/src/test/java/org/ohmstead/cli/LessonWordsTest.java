// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LessonWordsTest {
    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private final ByteArrayOutputStream err = new ByteArrayOutputStream();

    @TempDir
    private Path folder;

    private int run(String... words) {
        out.reset();
        err.reset();
        return Ohmstead.run(words, new PrintStream(out), new PrintStream(err));
    }

    private String output() {
        return out.toString(StandardCharsets.UTF_8);
    }

    private String errors() {
        return err.toString(StandardCharsets.UTF_8);
    }

    private JsonNode json() throws Exception {
        return new ObjectMapper().readTree(output());
    }

    @Test
    void listsTheLessons() throws Exception {
        assertEquals(0, run("lesson", "list"));
        assertTrue(output().contains("load-and-power"), output());
        assertTrue(output().contains("1 % against 10 % distortion"), output());
        assertEquals(0, run("lesson", "list", "--json"));
        assertEquals(11, json().path("lessons").size());
        assertEquals(0, json().path("problems").size());
    }

    @Test
    void keepsTheAnswerBackUntilItIsPredicted() {
        assertEquals(0, run("lesson", "show", "load-and-power", "--set", "load=4"));
        assertTrue(output().contains("By what factor does the power grow?"), output());
        assertFalse(output().contains("1.906"), output());
        assertTrue(output().contains("Caution: Load resistors"), output());
        assertEquals(0, run("lesson", "show", "load-and-power", "--predict", "2"));
        // Closed form: 2 (4.1 / 4.2)^2 = 1.905896 at 4 ohm with 0.1 ohm inside.
        assertTrue(output().contains("Not quite: it is 1.91"), output());
        assertTrue(output().contains("1.906"), output());
        assertEquals(0, run("lesson", "show", "load-and-power", "--answer"));
        assertTrue(output().contains("Source: "), output());
    }

    @Test
    void takesAnOptionAsPrediction() {
        assertEquals(0, run("lesson", "show", "bridging"));
        assertTrue(output().contains("  too-low: no, it is too low"), output());
        assertEquals(0, run("lesson", "show", "bridging", "--set", "lowest=ohm-4", "--predict", "too-low"));
        assertTrue(output().contains("Right: no, it is too low."), output());
    }

    @Test
    void showsFiguresAsJson() throws Exception {
        assertEquals(
                0,
                run(
                        "lesson",
                        "show",
                        "four-wires",
                        "--set",
                        "load=4",
                        "--set",
                        "contacts=0.04",
                        "--set",
                        "length=1.16",
                        "--set",
                        "section=mm2-4",
                        "--json"));
        // Closed form: 0.05 ohm of leads to 4 ohm, (4.05 / 4)^2 - 1.
        assertEquals("overstated", json().path("figures").get(0).path("id").textValue());
        assertEquals(2.515625, json().path("figures").get(0).path("value").doubleValue(), 1e-9);
        assertEquals(2.515625, json().path("answer").path("value").doubleValue(), 1e-9);
        assertEquals("mm2-4", json().path("settings").path("section").textValue());
        assertEquals(0.04, json().path("settings").path("contacts").doubleValue(), 1e-9);
    }

    @Test
    void writesBothSheets() throws Exception {
        Path exercise = folder.resolve("exercise.html");
        Path solution = folder.resolve("solution.html");
        assertEquals(0, run("lesson", "sheet", "clipping", exercise.toString(), "--set", "drive=6"));
        assertEquals(0, run("lesson", "sheet", "clipping", solution.toString(), "--solution", "--paper", "letter"));
        assertTrue(Files.readString(exercise).contains("size: 210.0mm 297.0mm"));
        assertTrue(Files.readString(exercise).contains("6.00 dB"));
        assertFalse(Files.readString(exercise).contains("Explanation"));
        assertTrue(Files.readString(solution).contains("size: 215.9mm 279.4mm"));
        assertTrue(Files.readString(solution).contains("Explanation"));
        assertEquals(
                4,
                run("lesson", "sheet", "clipping", folder.resolve("none/x.html").toString()));
    }

    @Test
    void bringsInATrainersLessons() throws Exception {
        Files.writeString(
                folder.resolve("sub.properties"),
                """
                lesson = our-subwoofer
                model = load-and-power
                title = Our subwoofer
                start.load = 2
                """);
        assertEquals(0, run("lesson", "list", "--lessons", folder.toString()));
        assertTrue(output().contains("our-subwoofer"), output());
        assertEquals(0, run("lesson", "show", "our-subwoofer", "--lessons", folder.toString(), "--json"));
        assertEquals(2, json().path("settings").path("load").doubleValue(), 0);
        Files.writeString(folder.resolve("wrong.properties"), "lesson = x\nmodel = nothing\n");
        assertEquals(1, run("lesson", "list", "--lessons", folder.toString()));
        assertTrue(errors().contains("wrong.properties"), errors());
    }

    @Test
    void bringsInTheLessonsOfAProject() throws Exception {
        Path project = BenchWords.project(folder);
        Files.createDirectories(project.resolve("lessons"));
        Files.writeString(project.resolve("lessons/ours.properties"), "lesson = ours\nmodel = decibels\n");
        assertEquals(0, run("lesson", "list", "--project", project.toString(), "--json"));
        assertEquals("ours", json().path("lessons").get(11).path("id").textValue());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "show nothing; The lessons are: load-and-power",
                "show decibels --set volume=3; first, second",
                "show decibels --set first=0.1; It goes from 1 W",
                "show decibels --set first; sets nothing",
                "show decibels --predict 3; not-heard, at-best",
                "show clipping --predict loud; no answer",
                "list --lessons nowhere; There is no folder",
            })
    void saysWhatWouldBeRight(String words, String part) {
        assertEquals(3, run(("lesson " + words).split(" ")));
        assertTrue(errors().contains(part), errors());
    }
}
