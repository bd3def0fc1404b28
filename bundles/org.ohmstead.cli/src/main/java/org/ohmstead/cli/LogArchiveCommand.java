// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.ohmstead.exchange.Archive;
import org.ohmstead.jobs.LogTrust;
import org.ohmstead.jobs.ProjectFolder;
import org.ohmstead.jobs.SharingState;
import org.ohmstead.model.json.ProjectLock;
import org.ohmstead.testlog.TestLog;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Archives a project. */
@Command(
        name = "archive",
        description = {
            "Put the whole project into one file in a folder, read it back and check it, and say so in the log.",
            "",
            "Captures can be taken out of the project then; the log says in which archive they are. Nothing else is ever deleted.",
            ""
        },
        footer = {"", "Example: ohmstead log archive kestrel.ohmstead /media/archive --take-out-before 2025-01-01"})
final class LogArchiveCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Mixin
    private ProjectParameter project;

    @Parameters(index = "1", paramLabel = "FOLDER", description = "Where the archive goes; must exist.")
    private Path target;

    @Option(names = "--take-out-voided", description = "Delete the captures that only voided entries name.")
    private boolean voided;

    @Option(
            names = "--take-out-before",
            paramLabel = "DAY",
            description =
                    "Delete the captures whose readings were all taken before this day (UTC), such as 2025-01-01.")
    private LocalDate before;

    @Option(
            names = "--who",
            paramLabel = "NAME",
            description = "Who archives (default: the name you are logged in under).")
    private String who = System.getProperty("user.name", "");

    LogArchiveCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        if (voided && before != null) {
            throw new InputException("Take out either voided captures or those before a day, one after the other.");
        }
        ProjectFolder folder = project.open();
        folder.readLog().close();
        Archive.TakeOut takeOut = before != null
                ? new Archive.TakeOut.Before(before)
                : voided ? new Archive.TakeOut.Voided() : new Archive.TakeOut.Nothing();
        Archive.Report report;
        try (ProjectLock lock = ProjectLock.acquire(folder.folder());
                TestLog log = TestLog.open(folder.logFile())) {
            LogTrust.requireWhole(log);
            Archive.Who by = new Archive.Who(who, Ohmstead.version(), Instant.now());
            report = Archive.make(folder.folder(), log, target, takeOut, by, new ConsoleExchange(console));
        }
        Optional<SharingState> sharedLog =
                HandingOver.all(folder, report.entryIds().size());
        report.leftOut().forEach(sentence -> console.message("Not in the archive: " + sentence));
        report.notDeleted().forEach(console::message);
        if (json.wanted()) {
            ObjectNode root = JsonNodeFactory.instance.objectNode();
            root.put("archive", report.file().toString());
            root.put("sha256", report.sha256());
            ArrayNode entries = root.putArray("entries");
            report.entryIds().forEach(entries::add);
            root.put("takenOut", report.takenOut());
            root.put("freedBytes", report.freedBytes());
            ArrayNode leftOut = root.putArray("leftOut");
            report.leftOut().forEach(leftOut::add);
            HandingOver.fill(root, sharedLog);
            console.json(root);
        } else {
            console.line("archive  " + report.file());
            console.line("sha256   " + report.sha256());
            console.line("It was read back and is whole; entry " + String.join(", ", report.entryIds()) + " says so.");
            if (report.takenOut() > 0) {
                console.line(report.takenOut() + " captures were taken out, " + report.freedBytes() + " bytes.");
            }
            HandingOver.say(console, sharedLog);
        }
        return report.leftOut().isEmpty() && report.notDeleted().isEmpty() ? ExitCodes.DONE : ExitCodes.FELL_SHORT;
    }
}
