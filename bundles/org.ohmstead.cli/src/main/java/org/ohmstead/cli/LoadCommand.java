// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** The word before the words about loads. */
@Command(
        name = "load",
        description = {"${bundle:load.does}", "", "${bundle:load.more}", ""},
        synopsisSubcommandLabel = "${bundle:usage.word}",
        footer = {"", "${bundle:load.note}"})
final class LoadCommand implements Runnable {
    @Mixin
    private HelpOption help;

    @Spec
    private CommandSpec spec;

    private final Object[] words;

    LoadCommand(Console console) {
        words = new Object[] {new LoadFindCommand(console), new LoadShowCommand(console), new LoadBankCommand(console)};
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
