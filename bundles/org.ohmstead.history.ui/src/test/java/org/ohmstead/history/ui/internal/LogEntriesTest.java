// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.history.ui.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.model.Mode;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.search.Find;
import org.ohmstead.workbench.session.WorkProgress;

class LogEntriesTest {
    private static final WorkProgress GOING_ON = new WorkProgress() {
        @Override
        public void step(int done, int total, String what) {
            // Nobody looks.
        }

        @Override
        public boolean cancelled() {
            return false;
        }
    };

    @TempDir
    Path folder;

    @Test
    void aLargeLogGivesWhatASmallOneGives() throws Exception {
        Amplifiers.write(folder, "0042", "2026-03-02", 1);
        Amplifiers.write(folder, "0107", "2026-03-03", 1);
        try (TestLog log = TestLog.open(folder.resolve(TestLog.FILE_NAME))) {
            log.note("Between.", "N. N.");
            log.voidEntry("R0002", "loose", "N. N.");
        }
        List<Find> stereo = List.of(Find.EVERYTHING.withMode(Optional.of(Mode.STEREO)));
        try (TestLog log = TestLog.openReadOnly(folder.resolve(TestLog.FILE_NAME))) {
            LogEntries small = new LogEntries(log, Optional.empty());
            LogEntries large = new LogEntries(log, Optional.empty(), 5);
            assertFalse(small.large());
            assertTrue(large.large());
            List<String> ids = ids(small.results(entry -> true, stereo, GOING_ON));
            assertEquals(List.of("R0001", "R0003", "R0004", "R0005", "R0006", "R0007", "R0008"), ids);
            assertEquals(ids, ids(large.results(entry -> true, stereo, GOING_ON)));
        }
    }

    private static List<String> ids(List<LogEntry> entries) {
        return entries.stream().map(LogEntry::id).toList();
    }
}
