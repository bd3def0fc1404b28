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
        description = {
            "Test signals: as files with exact levels, as a numbered set for a player, by the sound card; and aligning what was recorded.",
            ""
        },
        synopsisSubcommandLabel = "WORD",
        footer = {
            "",
            "Levels are in dBFS: a sine whose peak just reaches full scale has 0 (AES17).",
            "Take the loudspeakers off before test signals go into an amplifier: they destroy loudspeakers and hearing. Resistive loads"
                    + " only; begin with the volume down."
        })
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
