// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.ohmstead.jobs.LogTrust;
import org.ohmstead.jobs.ProjectFolder;
import org.ohmstead.jobs.SharingState;
import org.ohmstead.model.json.ProjectLock;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.TestLog;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Voids a reading. */
@Command(
        name = "void",
        description = {"${bundle:log.void.does}", ""},
        footer = {"", "${bundle:log.void.example}"})
final class LogVoidCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Mixin
    private ProjectParameter project;

    @Parameters(index = "1", paramLabel = "ENTRY", descriptionKey = "log.void.ENTRY")
    private String id;

    @Option(names = "--reason", paramLabel = "TEXT", required = true, descriptionKey = "log.void.reason")
    private String reason;

    @Option(names = "--who", paramLabel = "NAME", descriptionKey = "log.void.who")
    private String who = System.getProperty("user.name", "");

    LogVoidCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        ProjectFolder folder = project.open();
        folder.readLog().close();
        LogEntry entry;
        try (ProjectLock lock = ProjectLock.acquire(folder.folder());
                TestLog log = LogTrust.openToAdd(folder.logFile(), console::message)) {
            entry = log.voidEntry(id, reason, who);
        }
        Optional<SharingState> sharedLog = HandingOver.all(folder, 1);
        if (json.wanted()) {
            ObjectNode document = JsonNodeFactory.instance
                    .objectNode()
                    .put("id", entry.id())
                    .put("voids", id)
                    .put("hash", entry.hash());
            HandingOver.fill(document, sharedLog);
            console.json(document);
        } else {
            console.line(Texts.of("void.done", id, entry.id()));
            HandingOver.say(console, sharedLog);
        }
        return ExitCodes.DONE;
    }
}
