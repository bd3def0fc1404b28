// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** The word before the words about setting source and amplifier to each other. */
@Command(
        name = "setup",
        description = {"${bundle:setup.does}", ""},
        synopsisSubcommandLabel = "${bundle:usage.word}",
        footer = {"", "${bundle:setup.note}"})
final class SetupCommand implements Runnable {
    @Mixin
    private HelpOption help;

    @Spec
    private CommandSpec spec;

    private final Object[] words;

    SetupCommand(Console console) {
        words = new Object[] {new SetupGainCommand(console), new SetupMatchCommand(console)};
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
