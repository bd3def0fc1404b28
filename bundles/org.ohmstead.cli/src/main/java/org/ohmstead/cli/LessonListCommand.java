// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.concurrent.Callable;
import org.ohmstead.lessons.Lesson;
import org.ohmstead.lessons.LessonFolder;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Lists the lessons. */
@Command(
        name = "list",
        description = {"${bundle:lesson.list.does}", ""},
        footer = {"", "${bundle:lesson.list.exit}", "${bundle:lesson.list.example}"})
final class LessonListCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Mixin
    private LessonSource source;

    LessonListCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        LessonFolder found = source.read(console);
        if (json.wanted()) {
            console.json(document(found));
        } else {
            TextTable table = TextTable.named("lesson.columns");
            found.lessons().forEach(lesson -> table.row(lesson.id(), lesson.title()));
            table.print(console);
        }
        found.problems().forEach(console::message);
        return found.problems().isEmpty() ? ExitCodes.DONE : ExitCodes.FELL_SHORT;
    }

    private static ObjectNode document(LessonFolder found) {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        ArrayNode lessons = root.putArray("lessons");
        for (Lesson lesson : found.lessons()) {
            lessons.addObject()
                    .put("id", lesson.id())
                    .put("language", lesson.locale().toLanguageTag())
                    .put("title", lesson.title())
                    .put("idea", lesson.idea())
                    .put("question", lesson.prediction().question());
        }
        ArrayNode problems = root.putArray("problems");
        found.problems().forEach(problems::add);
        return root;
    }
}
