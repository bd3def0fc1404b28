// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** The word before the words about whole projects. */
@Command(
        name = "project",
        description = {"${bundle:project.does}", ""},
        synopsisSubcommandLabel = "${bundle:usage.word}")
final class ProjectCommand implements Runnable {
    @Mixin
    private HelpOption help;

    @Spec
    private CommandSpec spec;

    private final Object[] words;

    ProjectCommand(Console console) {
        words = new Object[] {new ProjectPackCommand(console), new ProjectUnpackCommand(console)};
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
