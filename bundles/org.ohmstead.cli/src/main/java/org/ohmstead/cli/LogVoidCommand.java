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
        description = {
            "Void a bad reading with a reason. The reading stays in the log; a further entry says that it no longer counts.",
            ""
        },
        footer = {"", "Example: ohmstead log void kestrel.ohmstead R0003 --reason \"load lead was loose\""})
final class LogVoidCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Mixin
    private ProjectParameter project;

    @Parameters(index = "1", paramLabel = "ENTRY", description = "Id of the reading, for example R0003.")
    private String id;

    @Option(names = "--reason", paramLabel = "TEXT", required = true, description = "Why it does not count.")
    private String reason;

    @Option(
            names = "--who",
            paramLabel = "NAME",
            description = "Who says so (default: the name you are logged in under).")
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
                TestLog log = TestLog.open(folder.logFile())) {
            LogTrust.requireWhole(log);
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
            console.line(id + " no longer counts; entry " + entry.id() + " says why.");
            HandingOver.say(console, sharedLog);
        }
        return ExitCodes.DONE;
    }
}
