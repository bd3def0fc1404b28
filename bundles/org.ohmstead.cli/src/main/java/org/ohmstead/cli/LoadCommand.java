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
        description = {
            "Design loads: find networks of resistors for a resistance, look at one, plan the straps of a whole bank.",
            "",
            "Networks are written as + in series, || in parallel, with brackets: (8R2||8R2||15)+(3R3||0R47).",
            ""
        },
        synopsisSubcommandLabel = "WORD",
        footer = {
            "",
            "Load resistors get hot enough to burn and to set things on fire: mount them clear of whatever burns, with air around"
                    + " them, and let them cool before you touch them. With a bridged output neither terminal is ground."
        })
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
