// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** The word before the words about the test log. */
@Command(
        name = "log",
        description = {"${bundle:log.does}", "${bundle:log.more}", "", "${bundle:log.more2}", ""},
        synopsisSubcommandLabel = "${bundle:usage.word}")
final class LogCommand implements Runnable {
    @Mixin
    private HelpOption help;

    @Spec
    private CommandSpec spec;

    private final Object[] words;

    LogCommand(Console console) {
        words = new Object[] {
            new LogListCommand(console),
            new LogFindCommand(console),
            new LogJoinCommand(console),
            new LogShowCommand(console),
            new LogBudgetCommand(console),
            new LogVerifyCommand(console),
            new LogVoidCommand(console),
            new LogExportCommand(console),
            new LogImportCommand(console),
            new LogCapturesCommand(console),
            new LogArchiveCommand(console),
            new LogRestoreCommand(console),
            new LogCheckCommand(console),
            new LogQualityCommand(console),
            new LogTrendCommand(console)
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
