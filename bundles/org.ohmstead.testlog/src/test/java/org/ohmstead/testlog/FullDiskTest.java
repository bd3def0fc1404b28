// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.testlog.search.Find;
import org.ohmstead.testlog.search.FindOrder;
import org.ohmstead.testlog.search.IndexProgress;
import org.ohmstead.testlog.search.LogIndex;
import org.ohmstead.units.text.Language;

/** A log on a small disk of its own that is full, again and again. To make such a disk takes a user who may mount. */
@Timeout(120)
class FullDiskTest {
    private static final int ROUNDS = 25;
    private static final int DISK_KILOBYTES = 8192;

    @TempDir
    private Path folder;

    private Path disk;

    @BeforeEach
    void mount() throws Exception {
        disk = Files.createDirectory(folder.resolve("disk"));
        boolean mounted = Files.exists(Path.of("/bin/mount"))
                && run("mount", "-t", "tmpfs", "-o", "size=" + DISK_KILOBYTES + "k", "tmpfs", disk.toString());
        if (!mounted) {
            disk = null;
        }
        assumeTrue(mounted, "this user may not mount a small disk, so a full one is not tried here");
    }

    @AfterEach
    void unmount() throws Exception {
        assertTrue(disk == null || run("umount", disk.toString()), "the small disk stays");
    }

    private static boolean run(String... words) throws IOException, InterruptedException {
        Process process = new ProcessBuilder(words)
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .start();
        return process.waitFor(20, TimeUnit.SECONDS) && process.exitValue() == 0;
    }

    /** Takes all room but so many bytes. */
    private void fill(int left) throws IOException {
        long room = Files.getFileStore(disk).getUsableSpace() - left;
        try (OutputStream filler = Files.newOutputStream(disk.resolve("filler"), StandardOpenOption.CREATE_NEW)) {
            for (; room > 0; room -= 4096) {
                filler.write(new byte[4096]);
            }
        }
    }

    private void makeRoom() throws IOException {
        Files.delete(disk.resolve("filler"));
    }

    @Test
    void nothingAcknowledgedIsLostAndWithRoomItGoesOn() throws Exception {
        Random random = new Random(5);
        List<String> acknowledged = new ArrayList<>();
        Path file = disk.resolve(TestLog.FILE_NAME);
        try (TestLog log = TestLog.open(file)) {
            for (int round = 0; round < ROUNDS; round++) {
                fill(random.nextInt(100_000));
                TestLogException full = untilFull(log, acknowledged);
                assertEquals(
                        "The entry was not added: the disk that holds the log " + file
                                + " is full. Make room and try again.",
                        full.getMessage());
                assertEquals(acknowledged, ids(log), "nothing more and nothing less than was acknowledged");
                assertTrue(log.verify().intact());
                makeRoom();
                acknowledged.add(log.append(SampleReadings.reading(round)).id());
            }
        }
        try (TestLog log = TestLog.openReadOnly(file)) {
            assertEquals(acknowledged, ids(log));
            assertTrue(log.verify().intact());
        }
        System.out.println("full disk: " + ROUNDS + " times, " + acknowledged.size() + " entries, nothing lost");
    }

    private static TestLogException untilFull(TestLog log, List<String> acknowledged) {
        return Language.<TestLogException, RuntimeException>speaking(
                Locale.ENGLISH,
                () -> assertThrows(TestLogException.class, () -> {
                    while (true) {
                        acknowledged.add(log.append(SampleReadings.reading(1)).id());
                    }
                }));
    }

    private static List<String> ids(TestLog log) throws TestLogException {
        return log.readings().stream().map(LogEntry::id).toList();
    }

    @Test
    void aSearchGoesOnOnAFullDiskAndANewLogSaysWhatToDo() throws Exception {
        Path file = disk.resolve(TestLog.FILE_NAME);
        try (TestLog log = TestLog.open(file)) {
            for (int number = 0; number < 40; number++) {
                log.append(SampleReadings.reading(number));
            }
            fill(0);
            assertEquals(40, indexed(log), "a search needs no room on the disk");
            Path other = disk.resolve("other.db");
            TestLogException made = assertThrows(
                    TestLogException.class, () -> TestLog.open(other).close());
            assertTrue(made.getMessage().contains("full"), made.getMessage());
            makeRoom();
            assertEquals(40, indexed(log));
            TestLog.open(other).close();
            assertEquals(40, log.readings().size());
        }
    }

    private static int indexed(TestLog log) throws TestLogException {
        try (LogIndex index = LogIndex.open(LogIndex.beside(log.file()), log.rows())) {
            index.refresh(IndexProgress.NONE);
            return index.find(Find.EVERYTHING, FindOrder.AS_LOGGED).size();
        }
    }

    @Test
    void aCaptureThatFindsNoRoomLeavesNothingBehind() throws Exception {
        Path source = Files.write(folder.resolve("take.wav"), new byte[300_000]);
        CaptureStore store = new CaptureStore(disk);
        fill(100_000);
        TestLogException full = assertThrows(TestLogException.class, () -> store.store(source));
        assertTrue(full.getMessage().contains("No space left on device"), full.getMessage());
        assertTrue(full.getMessage().contains("Check that you may write there and that the disk has room"));
        makeRoom();
        assertEquals(300_000, Files.size(store.store(source).file()));
    }
}
