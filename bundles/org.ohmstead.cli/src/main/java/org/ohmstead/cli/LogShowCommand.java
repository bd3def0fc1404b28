// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.concurrent.Callable;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.TestLog;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Shows one entry of the log as it is stored. */
@Command(name = "show", description = "${bundle:log.show.does}")
final class LogShowCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Mixin
    private ProjectParameter project;

    @Parameters(index = "1", paramLabel = "ENTRY", descriptionKey = "log.show.ENTRY")
    private String id;

    LogShowCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        try (TestLog log = project.open().readLog()) {
            LogEntry entry =
                    log.entry(id).orElseThrow(() -> new InputException(Texts.of("log.noEntry", id, project.path())));
            ObjectNode node = EntryJson.summary(entry);
            node.remove("channels");
            node.put("previousHash", entry.previousHash());
            node.set("body", new ObjectMapper().readTree(entry.bodyText()));
            console.json(node);
        }
        return ExitCodes.DONE;
    }
}
