// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** The word before the words about lessons. */
@Command(
        name = "lesson",
        description = {"${bundle:lesson.does}", "", "${bundle:lesson.more}", ""},
        synopsisSubcommandLabel = "${bundle:usage.word}",
        footer = {"", "${bundle:lesson.note}"})
final class LessonCommand implements Runnable {
    @Mixin
    private HelpOption help;

    @Spec
    private CommandSpec spec;

    private final Object[] words;

    LessonCommand(Console console) {
        words = new Object[] {
            new LessonListCommand(console), new LessonShowCommand(console), new LessonSheetCommand(console)
        };
    }

    /** Returns the words below this one, for the command line to add. */
    Object[] words() {
        return words.clone();
    }

    @Override
    public void run() {
        spec.commandLine().usage(spec.commandLine().getOut());
    }
}
