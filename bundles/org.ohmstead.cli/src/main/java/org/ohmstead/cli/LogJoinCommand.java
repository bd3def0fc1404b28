// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Joins another bench's log. */
@Command(
        name = "join",
        description = {
            "Join another bench's log to that of a project. Its entries come as they are, with their own chain; a"
                    + " further entry of the project's log holds the head of that chain.",
            "",
            "Joining again takes only what is new. A copy of the same log that went another way comes from where they"
                    + " parted.",
            ""
        },
        footer = {
            "",
            "Example: ohmstead log join kestrel.ohmstead second.ohmstead --name \"Second bench\" --operator \"N. N.\""
        })
final class LogJoinCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Mixin
    private ProjectParameter project;

    @Parameters(
            index = "1",
            paramLabel = "OTHER",
            description = "The other project's folder, its log.db, or its entries as jsonl.")
    private Path other;

    @Option(names = "--name", paramLabel = "NAME", required = true, description = "What the other bench is called.")
    private String name;

    @Option(
            names = "--operator",
            paramLabel = "NAME",
            description = "Who joins it (default: the name you are logged in under).")
    private String operator = System.getProperty("user.name", "");

    LogJoinCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        return new Joining(other, name, operator).to(project.open(), console, json.wanted());
    }
}
