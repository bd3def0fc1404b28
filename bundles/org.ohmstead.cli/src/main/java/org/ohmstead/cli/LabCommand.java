// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** The word before the words about the shared log of a laboratory. */
@Command(
        name = "lab",
        description = {"${bundle:lab.does}", "", "${bundle:lab.more}", ""},
        synopsisSubcommandLabel = "${bundle:usage.word}")
final class LabCommand implements Runnable {
    @Mixin
    private HelpOption help;

    @Spec
    private CommandSpec spec;

    private final Object[] words;

    LabCommand(Console console) {
        words = new Object[] {
            new LabStatusCommand(console),
            new LabPrepareCommand(console),
            new LabPushCommand(console),
            new LabFindCommand(console),
            new LabVerifyCommand(console),
            new LabGrantCommand(console),
            new LabCloseCommand(console)
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
