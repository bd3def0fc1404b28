// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.Stream;
import java.util.zip.ZipFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.exchange.ExchangeProgress;
import org.ohmstead.exchange.PackLimits;
import org.ohmstead.exchange.ProjectPack;
import org.ohmstead.model.json.ProjectFile;
import org.ohmstead.model.json.ProjectLock;
import org.ohmstead.model.json.RecoveryFile;
import org.ohmstead.testlog.CaptureStore;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.LogQuery;
import org.ohmstead.testlog.TestLog;

/**
 * Kills a program at random moments while it writes a project, recovery copies, captures, entries, exports and packs. {@code
 * -Dohmstead.kills=300} does it for longer.
 */
class KilledWriterTest {
    private static final int KILLS = Integer.getInteger("ohmstead.kills", 6);
    private static final long LONGEST_NANOS = TimeUnit.MILLISECONDS.toNanos(40);
    private static final int MOST_SEEN = 12;

    @TempDir
    private Path folder;

    private final Random random = new Random(11);
    private final List<String> entries = new ArrayList<>();
    private final List<String> captures = new ArrayList<>();
    private final List<String> packs = new ArrayList<>();
    private final Map<String, String> last = new TreeMap<>();
    private Path project;
    private int acknowledged;
    private int leftovers;

    @Test
    @Timeout(3600)
    void nothingAcknowledgedIsLostAndNothingHindersTheNextStart() throws Exception {
        project = BenchWords.project(folder);
        for (int kill = 0; kill < KILLS; kill++) {
            startAndKill(kill);
            leftovers += unfinished().size();
            check();
        }
        System.out.println("killed writer: " + KILLS + " kills, " + acknowledged + " writes acknowledged, " + leftovers
                + " unfinished files found, nothing lost");
        assertTrue(acknowledged > KILLS, "next to nothing was written");
    }

    private void startAndKill(int number) throws Exception {
        Process process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-XX:TieredStopAtLevel=1",
                        "-XX:+UseSerialGC",
                        "-cp",
                        EndedRunTest.classPath(),
                        KillChild.class.getName(),
                        project.toString(),
                        Integer.toString(number))
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        BufferedReader output = process.inputReader(StandardCharsets.UTF_8);
        take(output.readLine());
        for (int seen = random.nextInt(MOST_SEEN); seen > 0; seen--) {
            take(output.readLine());
        }
        LockSupport.parkNanos((long) (random.nextDouble() * LONGEST_NANOS));
        // Through its handle, because the process itself would also close the output that is still to be read.
        assertTrue(process.toHandle().destroyForcibly());
        assertTrue(process.waitFor(60, TimeUnit.SECONDS));
        output.lines().forEach(this::take);
    }

    private void take(String line) {
        assertTrue(line != null && line.contains(" "), "the program does not start: " + line);
        String[] words = line.split(" ", 2);
        last.put(words[0], words[1]);
        acknowledged++;
        switch (words[0]) {
            case "entry" -> entries.add(words[1]);
            case "capture" -> captures.add(words[1]);
            case "pack" -> packs.add(words[1]);
            default -> {}
        }
    }

    private void check() throws Exception {
        String title = ProjectFile.read(project).project().title();
        if (last.containsKey("project")) {
            int further = number(title) - number(last.get("project"));
            boolean kept = other(title) ? number(title) == 0 : further == 0 || further == 1;
            assertTrue(kept, title + " after " + last.get("project"));
        }
        if (last.containsKey("recovery")) {
            RecoveryFile.read(project.resolve(RecoveryFile.FILE_NAME));
        }
        for (String sha256 : captures) {
            Path file =
                    project.resolve("captures").resolve(sha256.substring(0, 2)).resolve(sha256 + ".wav");
            assertEquals(sha256, CaptureStore.sha256(file));
        }
        try (ProjectLock lock = ProjectLock.acquire(project);
                TestLog log = TestLog.open(lock.folder().resolve(TestLog.FILE_NAME))) {
            List<String> there = log.entries(LogQuery.everything()).stream()
                    .map(LogEntry::id)
                    .toList();
            assertTrue(there.containsAll(entries), "acknowledged " + entries + ", there " + there);
            assertTrue(log.verify().intact());
        }
        if (last.containsKey("workbook")) {
            try (ZipFile workbook = new ZipFile(folder.resolve("out.xlsx").toFile())) {
                assertTrue(workbook.size() > 5);
            }
        }
        for (String pack : packs) {
            Path file = folder.resolve(pack + ".zip");
            ProjectPack.check(file, PackLimits.USUAL, ExchangeProgress.SILENT);
            Files.delete(file);
        }
        packs.clear();
        assertFalse(
                unfinished().stream().anyMatch(file -> file.getParent().equals(project)),
                "left beside the project: " + unfinished());
    }

    /** Returns the number of a save within its program. */
    private static int number(String title) {
        return title.matches("\\d+-\\d+") ? Integer.parseInt(title.substring(title.indexOf('-') + 1)) : 0;
    }

    /** Returns whether a title comes from another start than the one that was acknowledged last. */
    private boolean other(String title) {
        return !title.startsWith(last.get("project").replaceAll("-.*", "-"));
    }

    private List<Path> unfinished() throws Exception {
        try (Stream<Path> all = Files.walk(folder)) {
            return all.filter(Files::isRegularFile)
                    .filter(file -> file.getFileName().toString().endsWith(".part"))
                    .toList();
        }
    }
}
