// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import org.ohmstead.exchange.ExchangeException;
import org.ohmstead.exchange.LogLines;
import org.ohmstead.jobs.JobException;
import org.ohmstead.jobs.LogTrust;
import org.ohmstead.jobs.ProjectFolder;
import org.ohmstead.jobs.SharingState;
import org.ohmstead.model.json.ProjectFileException;
import org.ohmstead.model.json.ProjectLock;
import org.ohmstead.testlog.JoinReport;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;

/**
 * Another bench's log that is joined to a project's.
 *
 * @param file the other project's folder or project.json, its log, or its entries as jsonl
 * @param name what the other bench is called
 * @param who joins it
 */
record Joining(Path file, String name, String who) {
    /** Joins it, hands over what came, and says so. */
    int to(ProjectFolder folder, Console console, boolean json)
            throws ExchangeException, TestLogException, ProjectFileException, JobException, IOException,
                    InterruptedException {
        JoinReport report;
        try (ProjectLock lock = ProjectLock.acquire(folder.folder());
                TestLog log = LogTrust.openToAdd(folder.logFile(), console::message)) {
            report = isLines() ? LogLines.join(file, log, name, who) : joinLog(log);
        }
        Optional<SharingState> sharedLog =
                HandingOver.all(folder, report.added() + (report.entry().isPresent() ? 1 : 0));
        if (json) {
            ObjectNode root = JsonNodeFactory.instance.objectNode();
            root.put("joined", report.added());
            report.entry().ifPresent(entry -> root.put("entry", entry.id()).put("hash", entry.hash()));
            root.put("sentence", report.sentence());
            HandingOver.fill(root, sharedLog);
            console.json(root);
        } else {
            console.line(report.sentence());
            HandingOver.say(console, sharedLog);
        }
        return ExitCodes.DONE;
    }

    private boolean isLines() {
        return String.valueOf(file.getFileName()).toLowerCase(Locale.ROOT).endsWith(".jsonl");
    }

    private JoinReport joinLog(TestLog log) throws TestLogException {
        try (TestLog theirs = TestLog.openReadOnly(otherLog())) {
            return log.join(theirs, name, who);
        }
    }

    private Path otherLog() {
        if (Files.isDirectory(file)) {
            return file.resolve(TestLog.FILE_NAME);
        }
        return file.endsWith("project.json") ? file.resolveSibling(TestLog.FILE_NAME) : file;
    }
}
