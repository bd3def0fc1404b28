// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.model.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A folder from a stranger whose files are none: nobody waits for them. */
@Timeout(value = 20, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class PipeTest {
    @TempDir
    private Path folder;

    private static void makePipe(Path pipe) throws Exception {
        assumeTrue(Files.isExecutable(Path.of("/usr/bin/mkfifo")), "this system has no named pipes");
        assertEquals(0, new ProcessBuilder("mkfifo", pipe.toString()).start().waitFor());
    }

    @Test
    void aProjectThatIsAPipeIsRefusedAtOnce() throws Exception {
        Path pipe = folder.resolve(ProjectFile.FILE_NAME);
        makePipe(pipe);
        for (Path given : new Path[] {folder, pipe}) {
            ProjectFileException refused = assertThrows(ProjectFileException.class, () -> ProjectFile.read(given));
            assertTrue(
                    refused.getMessage().contains("cannot be read (it is a pipe or a device and no file)"),
                    refused.getMessage());
            assertTrue(refused.getMessage().contains(pipe.toString()), refused.getMessage());
        }
    }

    @Test
    void aRecoveryCopyThatIsAPipeIsRefusedAtOnce() throws Exception {
        Path pipe = folder.resolve(RecoveryFile.FILE_NAME);
        makePipe(pipe);
        ProjectFileException refused = assertThrows(ProjectFileException.class, () -> RecoveryFile.read(pipe));
        assertTrue(refused.getMessage().contains("a pipe or a device"), refused.getMessage());
    }

    @Test
    void aLockThatIsAPipeEndsAtOnce() throws Exception {
        makePipe(folder.resolve(ProjectLock.FILE_NAME));
        assertThrows(ProjectFileException.class, () -> ProjectLock.acquire(folder));
    }
}
