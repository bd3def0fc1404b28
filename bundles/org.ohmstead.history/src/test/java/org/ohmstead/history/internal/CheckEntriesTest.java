// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.history.SampleProject;
import org.ohmstead.history.SampleReading;
import org.ohmstead.history.quality.TypedCheck;
import org.ohmstead.model.CheckStandard;
import org.ohmstead.model.Project;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.TestLog;

class CheckEntriesTest {
    @TempDir
    private Path folder;

    @Test
    void theIndexTellsTheSameAsTheWholeLog() throws Exception {
        CheckStandard standard = SampleProject.typedIn("r1", 4).withStepId("s1");
        Project project = SampleProject.with(standard);
        try (TestLog log = TestLog.open(folder.resolve(TestLog.FILE_NAME))) {
            for (int i = 1; i <= 40; i++) {
                Instant at = Instant.parse("2026-03-02T09:00:00Z").plusSeconds(i);
                log.append(SampleReading.at(at.toString())
                        .channel(14.4, 100 + i, 0.3, 0.4)
                        .reading());
                log.append(new TypedCheck(standard, i, OptionalDouble.empty(), "N. N.", at)
                        .figures(project, SampleProject.REVISION, "0.1.0"));
                log.note("Nothing special.", "");
            }
            log.voidEntry("R0003", "load was hot", "");
            List<LogEntry> whole = CheckEntries.of(log, project, 1000);
            List<LogEntry> indexed = CheckEntries.of(log, project, 10);
            assertEquals(80, whole.size());
            assertEquals(
                    whole.stream()
                            .filter(entry -> !entry.voided())
                            .map(LogEntry::id)
                            .sorted()
                            .toList(),
                    indexed.stream().map(LogEntry::id).sorted().toList());
            assertEquals(
                    whole.stream().filter(entry -> entry.id().equals("F0020")).toList(),
                    indexed.stream().filter(entry -> entry.id().equals("F0020")).toList());
        }
    }
}
