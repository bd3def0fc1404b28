// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

@Timeout(value = 20, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class CapturePipeTest {
    @TempDir
    private Path folder;

    private static void makePipe(Path pipe) throws Exception {
        assumeTrue(Files.isExecutable(Path.of("/usr/bin/mkfifo")), "this system has no named pipes");
        assertEquals(0, new ProcessBuilder("mkfifo", pipe.toString()).start().waitFor());
    }

    @Test
    void aCaptureThatIsAPipeIsRefusedAtOnce() throws Exception {
        Path pipe = folder.resolve("a.wav");
        makePipe(pipe);
        CaptureException refused = assertThrows(CaptureException.class, () -> CaptureFile.read(pipe, new double[] {1}));
        assertTrue(refused.getMessage().contains("it is a pipe or a device and no file"), refused.getMessage());
    }
}
