// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** The word before the words about sound in the vehicle. */
@Command(
        name = "sound",
        description = {"${bundle:sound.does}", ""},
        synopsisSubcommandLabel = "${bundle:usage.word}",
        footer = {"", "${bundle:sound.note}"})
final class SoundCommand implements Runnable {
    @Mixin
    private HelpOption help;

    @Spec
    private CommandSpec spec;

    private final Object[] words;

    SoundCommand(Console console) {
        words = new Object[] {
            new SoundLevelCommand(console),
            new SoundSumCommand(console),
            new SoundChangeCommand(console),
            new SoundShowCommand(console),
            new SoundCompareCommand(console),
            new SoundExposureCommand(console)
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
