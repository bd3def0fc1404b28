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
        description = {"${bundle:log.archive.does}", "", "${bundle:log.archive.more}", ""},
        footer = {"", "${bundle:log.archive.example}"})
final class LogArchiveCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    private HelpOption help;

    @Mixin
    private JsonOption json;

    @Mixin
    private ProjectParameter project;

    @Parameters(index = "1", paramLabel = "FOLDER", descriptionKey = "log.archive.FOLDER")
    private Path target;

    @Option(names = "--take-out-voided", descriptionKey = "log.archive.take-out-voided")
    private boolean voided;

    @Option(names = "--take-out-before", paramLabel = "DAY", descriptionKey = "log.archive.take-out-before")
    private LocalDate before;

    @Option(names = "--who", paramLabel = "NAME", descriptionKey = "log.archive.who")
    private String who = System.getProperty("user.name", "");

    LogArchiveCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Exception {
        if (voided && before != null) {
            throw new InputException(Texts.of("archive.either"));
        }
        ProjectFolder folder = project.open();
        folder.readLog().close();
        Archive.TakeOut takeOut = before != null
                ? new Archive.TakeOut.Before(before)
                : voided ? new Archive.TakeOut.Voided() : new Archive.TakeOut.Nothing();
        Archive.Report report;
        try (ProjectLock lock = ProjectLock.acquire(folder.folder());
                TestLog log = LogTrust.openToAdd(folder.logFile(), console::message)) {
            Archive.Who by = new Archive.Who(who, Ohmstead.version(), Instant.now());
            report = Archive.make(folder.folder(), log, target, takeOut, by, new ConsoleExchange(console));
        }
        Optional<SharingState> sharedLog =
                HandingOver.all(folder, report.entryIds().size());
        report.leftOut().forEach(sentence -> console.message(Texts.of("archive.leftOut", sentence)));
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
            console.line(Texts.of("archive.file", report.file()));
            console.line("sha256   " + report.sha256());
            console.line(Texts.of("archive.whole", String.join(", ", report.entryIds())));
            if (report.takenOut() > 0) {
                console.line(Texts.of("archive.takenOut", report.takenOut(), report.freedBytes()));
            }
            HandingOver.say(console, sharedLog);
        }
        return report.leftOut().isEmpty() && report.notDeleted().isEmpty() ? ExitCodes.DONE : ExitCodes.FELL_SHORT;
    }
}
