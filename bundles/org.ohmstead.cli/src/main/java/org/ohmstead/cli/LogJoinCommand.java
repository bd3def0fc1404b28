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
        description = {"${bundle:log.join.does}", "", "${bundle:log.join.more}", ""},
        footer = {"", "${bundle:log.join.example}"})
final class LogJoinCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Mixin
    private ProjectParameter project;

    @Parameters(index = "1", paramLabel = "OTHER", descriptionKey = "log.join.OTHER")
    private Path other;

    @Option(names = "--name", paramLabel = "NAME", required = true, descriptionKey = "log.join.name")
    private String name;

    @Option(names = "--operator", paramLabel = "NAME", descriptionKey = "log.join.operator")
    private String operator = System.getProperty("user.name", "");

    LogJoinCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        return new Joining(other, name, operator).to(project.open(), console, json.wanted());
    }
}
