// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.ohmstead.jobs.ProjectFolder;
import org.ohmstead.lessons.Lesson;
import org.ohmstead.lessons.LessonFiles;
import org.ohmstead.lessons.LessonFolder;
import org.ohmstead.lessons.LessonProvider;
import org.ohmstead.lessons.Lessons;
import org.ohmstead.units.text.Language;
import org.osgi.framework.Bundle;
import org.osgi.framework.BundleContext;
import org.osgi.framework.FrameworkUtil;
import org.osgi.framework.InvalidSyntaxException;
import org.osgi.framework.ServiceReference;
import picocli.CommandLine.Option;

/** Where the words about lessons have them from: those that Ohmstead brings, those of plug-ins, those that a trainer described. */
final class LessonSource {
    @Option(names = "--project", paramLabel = "PROJECT", descriptionKey = "lesson.source.project")
    private Path project;

    @Option(names = "--lessons", paramLabel = "FOLDER", descriptionKey = "lesson.source.lessons")
    private Path folder;

    /** Reads them all. */
    LessonFolder read(Console console) throws Exception {
        List<Lesson> lessons = new ArrayList<>(Lessons.builtIn());
        addOfPlugins(lessons, console);
        List<String> problems = new ArrayList<>();
        if (project != null) {
            addDescribed(ProjectFolder.open(project).folder().resolve(LessonFiles.FOLDER), lessons, problems);
        }
        if (folder != null) {
            if (!Files.isDirectory(folder)) {
                throw new InputException(Texts.of("lesson.noFolder", folder));
            }
            addDescribed(folder, lessons, problems);
        }
        return new LessonFolder(lessons, problems);
    }

    /** Returns the lesson of an id, and tells about descriptions that could not be read. */
    Lesson lesson(String id, Console console) throws Exception {
        LessonFolder found = read(console);
        found.problems().forEach(console::message);
        return Lessons.find(found.lessons(), id)
                .orElseThrow(() -> new InputException(Texts.of(
                        "lesson.none",
                        id,
                        found.lessons().stream().map(Lesson::id).collect(Collectors.joining(", ")))));
    }

    private static void addDescribed(Path described, List<Lesson> lessons, List<String> problems) {
        LessonFolder read = LessonFiles.readFolder(described, lessons);
        lessons.addAll(read.lessons());
        problems.addAll(read.problems());
    }

    private static void addOfPlugins(List<Lesson> lessons, Console console) throws OutsideException {
        Bundle own = FrameworkUtil.getBundle(LessonSource.class);
        BundleContext context = own == null ? null : own.getBundleContext();
        if (context == null) {
            return;
        }
        DropIns.install(context, console);
        FrameworkPlugins.startComponents(context);
        Locale language = Language.current();
        try {
            for (ServiceReference<LessonProvider> reference :
                    context.getServiceReferences(LessonProvider.class, null)) {
                LessonProvider provider = context.getService(reference);
                if (provider != null) {
                    provider.lessons(language).stream()
                            .filter(lesson -> Lessons.find(lessons, lesson.id()).isEmpty())
                            .toList()
                            .forEach(lessons::add);
                    context.ungetService(reference);
                }
            }
        } catch (InvalidSyntaxException never) {
            throw new IllegalStateException("no filter is given", never);
        }
    }
}
