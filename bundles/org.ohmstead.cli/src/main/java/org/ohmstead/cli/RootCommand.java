// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** The word before the words. */
@Command(
        name = "ohmstead",
        description = {
            "Bench tests of 12 V audio power amplifiers: captures in, judged results sheet out.",
            "",
            "The usual way: %n"
                    + "  ohmstead check PROJECT                  is the project complete and safe to run?%n"
                    + "  ohmstead setup gain PROJECT             level, sensitivity and gain to set for a rating%n"
                    + "  ohmstead signal set FOLDER              test signals for a player; signal list, make, align and play%n"
                    + "  ohmstead thermal plan PROJECT           how hot, how much current, how long; the best order and rests%n"
                    + "  ohmstead plugins                        benches, measurements and precautions that there are%n"
                    + "  ohmstead run PROJECT --driver BENCH     carry out the plan on a bench; try --driver simulated%n"
                    + "  ohmstead run PROJECT --replay FOLDER    analyse recorded captures, log a reading for each step%n"
                    + "  ohmstead curves PROJECT                 power against supply voltage%n"
                    + "  ohmstead compare PROJECT... --at V      amplifiers, or years of one, at a common voltage and load%n"
                    + "  ohmstead report PROJECT                 ratings against measurement, as HTML and PDF%n"
                    + "  ohmstead log list PROJECT               every reading, with its conditions%n"
                    + "  ohmstead lab push PROJECT               hand the log over to the laboratory's shared one",
            ""
        },
        footer = {
            "",
            "PROJECT is a folder that holds project.json. Every word explains itself with --help.",
            "Exit codes: 0 done, 1 done but something fell short, 2 wrong usage, 3 bad input, 4 outside failure."
        },
        synopsisSubcommandLabel = "WORD",
        mixinStandardHelpOptions = false)
final class RootCommand implements Runnable {
    private final Console console;

    @Spec
    private CommandSpec spec;

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "Show this help.")
    private boolean help;

    @Option(names = "--version", description = "Print the version.")
    private boolean version;

    RootCommand(Console console) {
        this.console = console;
    }

    @Override
    public void run() {
        if (version) {
            console.line("ohmstead " + Ohmstead.version());
        } else {
            spec.commandLine().usage(spec.commandLine().getOut());
        }
    }
}
