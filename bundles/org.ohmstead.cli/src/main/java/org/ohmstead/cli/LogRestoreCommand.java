// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.ohmstead.exchange.Archive;
import org.ohmstead.exchange.PackLimits;
import org.ohmstead.jobs.ProjectFolder;
import org.ohmstead.model.json.ProjectLock;
import org.ohmstead.testlog.TestLog;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Brings captures back from an archive. */
@Command(
        name = "restore",
        description = {"${bundle:log.restore.does}", ""},
        footer = {"", "${bundle:log.restore.example}"})
final class LogRestoreCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Mixin
    private ProjectParameter project;

    @Parameters(index = "1", paramLabel = "ARCHIVE", descriptionKey = "log.restore.ARCHIVE")
    private Path archive;

    LogRestoreCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        ProjectFolder folder = project.open();
        Archive.Restored restored;
        try (ProjectLock lock = ProjectLock.acquire(folder.folder());
                TestLog log = folder.readLog()) {
            restored = Archive.restore(archive, folder.folder(), log, PackLimits.USUAL, new ConsoleExchange(console));
        }
        if (json.wanted()) {
            console.json(JsonNodeFactory.instance
                    .objectNode()
                    .put("restored", restored.restored())
                    .put("mended", restored.mended())
                    .put("alreadyThere", restored.alreadyThere())
                    .put("notNamed", restored.notNamed()));
        } else {
            console.line(Texts.of(
                    "restore.summary",
                    restored.restored(),
                    restored.mended(),
                    restored.alreadyThere(),
                    restored.notNamed()));
        }
        return ExitCodes.DONE;
    }
}
