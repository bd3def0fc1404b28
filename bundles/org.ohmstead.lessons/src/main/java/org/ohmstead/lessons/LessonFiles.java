// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons;

import java.io.IOException;
import java.io.Reader;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.ohmstead.lessons.internal.DescribedLesson;
import org.ohmstead.lessons.internal.DescriptionKeys;
import org.ohmstead.lessons.internal.Faults;

/**
 * Lessons that a trainer describes in a file: another lesson's model with own texts, start values, ranges and question. A description is
 * a properties file in UTF-8:
 *
 * <pre>
 * lesson = our-subwoofer
 * model = load-and-power
 * title = Load and power in our workshop
 * question = We connect a second equal subwoofer in parallel. By what factor does the power grow?
 * start.load = 2 ohm
 * least.load = 1
 * most.load = 4
 * fixed.supply = 13.8 V
 * tolerance = 5
 * source.1 = Data sheet of the subwoofer
 * </pre>
 *
 * {@code lesson} and {@code model} are needed, the rest comes from the other lesson. Ranges must lie within those of the other lesson;
 * {@code fixed} takes a control away and keeps it at a value; {@code tolerance} is percent of the answer, {@code tolerance.absolute} is in its
 * unit. {@code formula.1} and on replace the formulas; {@code source.1} and {@code caution.1} and on are added to what the other lesson has.
 */
public final class LessonFiles {
    /** The folder within a project that descriptions lie in. */
    public static final String FOLDER = "lessons";

    /** How the names of descriptions end. */
    public static final String ENDING = ".properties";

    private static final long MOST_BYTES = 1 << 18;

    private LessonFiles() {}

    /**
     * Reads one description.
     *
     * @param file the description
     * @param bases lessons whose models it may name
     * @throws LessonException if it cannot be read or used; the message names the file, the key and what would be right
     */
    public static Lesson read(Path file, List<Lesson> bases) throws LessonException {
        String name = String.valueOf(file.getFileName());
        DescriptionKeys keys = new DescriptionKeys(name);
        try {
            if (Files.size(file) > MOST_BYTES) {
                throw Faults.of("file.large", name, MOST_BYTES);
            }
            try (Reader reader = Files.newBufferedReader(file, StandardCharsets.UTF_8)) {
                keys.load(reader);
            }
        } catch (CharacterCodingException e) {
            throw Faults.because(e, "file.encoding", name);
        } catch (IOException e) {
            throw Faults.because(e, "file.unread", name, e.getMessage());
        }
        return DescribedLesson.of(keys, bases);
    }

    /**
     * Reads all descriptions of a folder, those with the ending {@value #ENDING}. One that is wrong does not keep the others away.
     *
     * @param folder the folder; when there is none, there are no lessons
     * @param bases lessons whose models they may name, and whose ids they may not take
     */
    public static LessonFolder readFolder(Path folder, List<Lesson> bases) {
        List<Lesson> lessons = new ArrayList<>();
        List<String> problems = new ArrayList<>();
        if (!Files.isDirectory(folder)) {
            return new LessonFolder(lessons, problems);
        }
        Set<String> taken = new HashSet<>();
        bases.forEach(base -> taken.add(base.id()));
        for (Path file : descriptions(folder, problems)) {
            try {
                Lesson lesson = read(file, bases);
                if (taken.add(lesson.id())) {
                    lessons.add(lesson);
                } else {
                    problems.add(Faults.say("file.taken", file.getFileName(), lesson.id()));
                }
            } catch (LessonException e) {
                problems.add(e.getMessage());
            }
        }
        return new LessonFolder(lessons, problems);
    }

    private static List<Path> descriptions(Path folder, List<String> problems) {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(
                            file -> String.valueOf(file.getFileName()).endsWith(ENDING) && Files.isRegularFile(file))
                    .sorted()
                    .toList();
        } catch (IOException e) {
            problems.add(Faults.say("folder.unread", folder.getFileName(), e.getMessage()));
            return List.of();
        }
    }
}
