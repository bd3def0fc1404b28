// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LessonFilesTest {
    private static final String GOOD =
            """
            # Our own
            lesson = our-subwoofer
            model = load-and-power
            title = Load and power in Jürgen's workshop
            question = We connect a second equal subwoofer in parallel. By what factor does the power grow?
            start.load = 2R2
            least.load = 1 ohm
            most.load = 4
            fixed.supply = 13.8 V
            tolerance = 5
            source.1 = Data sheet of the subwoofer
            caution.1 = The box is heavy: lift it by two.
            """;

    @TempDir
    private Path folder;

    private Path write(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text);
    }

    private static Lesson read(Path file) throws LessonException {
        return LessonFiles.read(file, BuiltIn.LESSONS);
    }

    @Test
    void aDescriptionMakesALessonOfAnothersModel() throws Exception {
        Lesson lesson = read(write("sub.properties", GOOD));
        assertEquals("our-subwoofer", lesson.id());
        assertEquals("Load and power in Jürgen's workshop", lesson.title());
        assertEquals(
                List.of("load", "output"),
                lesson.controls().stream().map(Control::id).toList());
        assertEquals(2.2, lesson.start().number("load"), 1e-12);
        Control.Slider load = (Control.Slider) lesson.controls().get(0);
        assertEquals(4, load.most(), 0);
        // Of the other lesson: its sources and cautions stay.
        Lesson base = BuiltIn.lesson("load-and-power");
        assertTrue(lesson.sources().containsAll(base.sources()));
        assertTrue(lesson.cautions().containsAll(base.cautions()));
        assertEquals(
                "The box is heavy: lift it by two.",
                lesson.cautions().get(base.cautions().size()));
        assertEquals(base.idea(), lesson.idea());
        // Closed form of 13.8 V and 4 ohm, as in the lesson itself: 151.125473 W.
        LessonResult result = lesson.at(lesson.start().with("load", 4));
        assertEquals(151.125473, result.figure("power").value(), 1e-5);
        // 5 % of 1.906 and no more.
        assertTrue(lesson.feedback(1.82, result).right());
        assertFalse(lesson.feedback(1.80, result).right());
    }

    @Test
    void aChoiceCanStartElsewhereAndBeKept() throws Exception {
        Lesson lesson = read(
                write(
                        "bridge.properties",
                        """
                lesson = our-bridge
                model = bridging
                start.lowest = ohm-4
                fixed.load = 4
                """));
        assertEquals("ohm-4", lesson.start().chosen("lowest"));
        assertEquals("too-low", ((Answer.Choice) lesson.at(lesson.start()).answer()).optionId());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "model = nothing; 'model'; load-and-power, supply-voltage",
                "lesson = Our Lesson; 'lesson'; small letters",
                "start.lod = 3; 'start.lod'; load, supply, output",
                "start.load = 3 V; 'start.load'; 4R7",
                "start.load = 40; 'start.load'; from 1",
                "least.load = 0.1; 'least.load'; from 1",
                "most.load = 1; 'most.load'; least.load",
                "tolerance = 200; 'tolerance'; 0 to 100",
                "tolerance.absolute = -1; 'tolerance.absolute'; 0 on",
                "fixed.load = low; 'fixed.load'; number",
                "colour = red; 'colour'; lesson, model, title",
                "source.2 = second; 'source.2'; source.1",
                "model =; 'model'; model = ",
            })
    void saysFileKeyAndWhatIsRight(String line, String key, String right) throws Exception {
        String name = line.substring(0, line.indexOf('=')).strip();
        String others = ("lesson = our-lesson\nmodel = load-and-power\n")
                .lines()
                .filter(other -> !other.startsWith(name + " "))
                .reduce("", (all, other) -> all + other + "\n");
        Path file = write("ours.properties", others + line + "\n");
        LessonException wrong = assertThrows(LessonException.class, () -> read(file));
        assertTrue(wrong.getMessage().contains("ours.properties"), wrong.getMessage());
        assertTrue(wrong.getMessage().contains(key), wrong.getMessage());
        assertTrue(wrong.getMessage().contains(right), wrong.getMessage());
    }

    @Test
    void refusesAKeyThatComesTwiceAndAllControlsFixed() throws Exception {
        Path twice = write("twice.properties", "lesson = a\nmodel = decibels\nlesson = b\n");
        assertTrue(assertThrows(LessonException.class, () -> read(twice))
                .getMessage()
                .contains("comes twice"));
        Path all = write("all.properties", "lesson = a\nmodel = decibels\nfixed.first = 1\nfixed.second = 2\n");
        assertTrue(assertThrows(LessonException.class, () -> read(all))
                .getMessage()
                .contains("all controls"));
        Path option = write("option.properties", "lesson = a\nmodel = decibels\ntolerance = 5\n");
        assertTrue(assertThrows(LessonException.class, () -> read(option))
                .getMessage()
                .contains("asks for an option"));
    }

    @Test
    void refusesWhatIsNoTextFile() throws Exception {
        Path latin = folder.resolve("latin.properties");
        Files.write(latin, "title = Bücher".getBytes(StandardCharsets.ISO_8859_1));
        assertTrue(assertThrows(LessonException.class, () -> read(latin))
                .getMessage()
                .contains("UTF-8"));
        Path escape = write("escape.properties", "title = \\u12");
        assertTrue(assertThrows(LessonException.class, () -> read(escape))
                .getMessage()
                .contains("hexadecimal"));
        Path large = write("large.properties", "#".repeat(1 << 19));
        assertTrue(assertThrows(LessonException.class, () -> read(large))
                .getMessage()
                .contains("larger"));
        Path none = folder.resolve("none.properties");
        assertTrue(assertThrows(LessonException.class, () -> read(none))
                .getMessage()
                .contains("none.properties"));
    }

    @Test
    void oneBadFileDoesNotKeepTheOthersAway() throws Exception {
        write("a.properties", GOOD);
        write("b.properties", "lesson = second\nmodel = nothing\n");
        write("c.properties", GOOD);
        write("d.properties", "lesson = decibels\nmodel = decibels\n");
        write("notes.txt", "not a lesson");
        LessonFolder found = LessonFiles.readFolder(folder, BuiltIn.LESSONS);
        assertEquals(
                List.of("our-subwoofer"),
                found.lessons().stream().map(Lesson::id).toList());
        assertEquals(3, found.problems().size());
        assertTrue(found.problems().get(0).contains("b.properties"));
        assertTrue(found.problems().get(1).contains("c.properties"));
        assertTrue(found.problems().get(2).contains("'decibels'"));
        assertEquals(
                0,
                LessonFiles.readFolder(folder.resolve("nowhere"), BuiltIn.LESSONS)
                        .problems()
                        .size());
    }

    /** Whatever is in a file: a lesson that works, or a sentence. */
    @Test
    void damagedDescriptionsNeverDoAnythingElse() throws Exception {
        Random random = new Random(9);
        String signs = "=:\\#!.\n \t0189aZ\u00e4\u03a9-+,eR%'{}$<&";
        int read = 0;
        for (int i = 0; i < 1500; i++) {
            StringBuilder text = new StringBuilder(GOOD);
            for (int n = 1 + random.nextInt(4); n > 0; n--) {
                int place = random.nextInt(text.length());
                char sign = signs.charAt(random.nextInt(signs.length()));
                switch (random.nextInt(3)) {
                    case 0 -> text.setCharAt(place, sign);
                    case 1 -> text.insert(place, sign);
                    default -> text.delete(place, Math.min(text.length(), place + random.nextInt(12)));
                }
            }
            try {
                Lesson lesson = read(write("fuzzed.properties", text.toString()));
                assertFalse(lesson.at(lesson.start()).figures().isEmpty());
                read++;
            } catch (LessonException wrong) {
                assertTrue(wrong.getMessage().contains("fuzzed.properties"), wrong.getMessage());
                assertTrue(wrong.getMessage().endsWith("."), wrong.getMessage());
            }
        }
        // Many changes only touch texts, so both happen.
        assertTrue(read > 300 && read < 1400, "read " + read);
    }
}
