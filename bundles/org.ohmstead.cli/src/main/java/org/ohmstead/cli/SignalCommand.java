// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import org.ohmstead.signal.stimulus.SoundOutput;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** The word before the words about test signals. */
@Command(
        name = "signal",
        description = {"${bundle:signal.does}", ""},
        synopsisSubcommandLabel = "${bundle:usage.word}",
        footer = {"", "${bundle:signal.note}", "${bundle:signal.note2}"})
final class SignalCommand implements Runnable {
    @Mixin
    private HelpOption help;

    @Spec
    private CommandSpec spec;

    private final Object[] words;

    SignalCommand(Console console, SoundOutput output) {
        words = new Object[] {
            new SignalListCommand(console),
            new SignalMakeCommand(console),
            new SignalSetCommand(console),
            new SignalAlignCommand(console),
            new SignalPlayCommand(console, output)
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
