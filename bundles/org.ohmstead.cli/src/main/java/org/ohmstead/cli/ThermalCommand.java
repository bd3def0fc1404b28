// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** The word before the words about heat, duty and supply. */
@Command(
        name = "thermal",
        description = {"${bundle:thermal.does}", ""},
        synopsisSubcommandLabel = "${bundle:usage.word}",
        footer = {"", "${bundle:thermal.note}"})
final class ThermalCommand implements Runnable {
    @Mixin
    private HelpOption help;

    @Spec
    private CommandSpec spec;

    private final Object[] words;

    ThermalCommand(Console console) {
        words = new Object[] {
            new ThermalPlanCommand(console),
            new ThermalStepCommand(console),
            new ThermalCableCommand(console),
            new ThermalFuseCommand(console),
            new ThermalSinkCommand(console),
            new ThermalIdentifyCommand(console)
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
