// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import picocli.CommandLine.Option;

/** The option that every word has. */
final class HelpOption {
    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            descriptionKey = "help.help")
    private boolean help;
}
