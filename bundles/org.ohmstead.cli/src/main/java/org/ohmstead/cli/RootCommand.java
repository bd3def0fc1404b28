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
        description = {"${bundle:root.does}", "", "${bundle:root.more}", ""},
        footer = {"", "${bundle:root.note}", "${bundle:root.exit}"},
        synopsisSubcommandLabel = "${bundle:usage.word}",
        mixinStandardHelpOptions = false)
final class RootCommand implements Runnable {
    private final Console console;

    @Spec
    private CommandSpec spec;

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            descriptionKey = "root.help")
    private boolean help;

    @Option(names = "--version", descriptionKey = "root.version")
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
