// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.ohmstead.exchange.EntrySource;
import org.ohmstead.exchange.ExchangeProgress;
import org.ohmstead.exchange.LogLines;
import org.ohmstead.exchange.LogWorkbook;
import org.ohmstead.exchange.ProjectPack;
import org.ohmstead.model.json.LoadedProject;
import org.ohmstead.model.json.ProjectFile;
import org.ohmstead.model.json.ProjectLock;
import org.ohmstead.model.json.RecoveryCopy;
import org.ohmstead.model.json.RecoveryFile;
import org.ohmstead.testlog.CaptureStore;
import org.ohmstead.testlog.LogQuery;
import org.ohmstead.testlog.TestLog;

/** Writes everything that a project has, over and over, and says what it has written as soon as that is acknowledged. */
final class KillChild {
    private static final Instant NOON = Instant.parse("2026-03-03T12:00:00Z");

    private KillChild() {}

    public static void main(String[] arguments) throws Exception {
        Path project = Path.of(arguments[0]);
        Random random = new Random(Long.parseLong(arguments[1]));
        try (ProjectLock lock = ProjectLock.acquire(project);
                TestLog log = TestLog.open(project.resolve(TestLog.FILE_NAME))) {
            say("ready", lock.folder().getFileName().toString());
            for (int number = 0; ; number++) {
                write(project, log, number, random);
            }
        }
    }

    private static void write(Path project, TestLog log, int number, Random random) throws Exception {
        LoadedProject loaded = ProjectFile.read(project);
        String title = ProcessHandle.current().pid() + "-" + number;
        ProjectFile.write(project, loaded.project().withTitle(title), Optional.of(loaded.document()));
        say("project", title);
        RecoveryFile.write(
                project.resolve(RecoveryFile.FILE_NAME),
                new RecoveryCopy(NOON, loaded.revisionSha256(), List.of(title), 1, loaded.project()));
        say("recovery", title);
        byte[] samples = new byte[20_000 + random.nextInt(200_000)];
        random.nextBytes(samples);
        Path source = Files.write(project.resolveSibling("take.wav"), samples);
        say("capture", new CaptureStore(project).store(source).sha256());
        say("entry", log.note(title, "").id());
        LogLines.write(log, new LogLines.Head("Sample", "0.1.0", NOON), project.resolveSibling("out.jsonl"));
        say("lines", title);
        LogWorkbook.write(
                EntrySource.of(log, LogQuery.everything()),
                new LogWorkbook.About("Sample", "0.1.0", NOON, log.headHash()),
                project.resolveSibling("out.xlsx"));
        say("workbook", title);
        Path pack = project.resolveSibling(title + ".zip");
        ProjectPack.pack(project, pack, "0.1.0", ExchangeProgress.SILENT);
        say("pack", title);
    }

    private static void say(String what, String which) {
        System.out.println(what + " " + which);
        System.out.flush();
    }
}
