// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.util.concurrent.Callable;
import org.ohmstead.testlog.shared.LabAddress;
import org.ohmstead.testlog.shared.LabCredentials;
import org.ohmstead.testlog.shared.LabTimeouts;
import org.ohmstead.testlog.shared.SharedLab;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Makes the shared log in a database. */
@Command(
        name = "prepare",
        description = {"${bundle:lab.prepare.does}", ""},
        footer = {"", "${bundle:lab.prepare.example}"})
final class LabPrepareCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Mixin
    private ProjectParameter project;

    LabPrepareCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        LabAddress address = LabAccess.of(project.open()).address();
        int steps = SharedLab.prepare(address, LabCredentials.find(address), LabTimeouts.USUAL);
        if (json.wanted()) {
            console.json(JsonNodeFactory.instance
                    .objectNode()
                    .put("database", address.database())
                    .put("steps", steps));
        } else {
            console.line(steps == 0 ? Texts.of("lab.newest", address) : Texts.of("lab.ready", address));
        }
        return ExitCodes.DONE;
    }
}
