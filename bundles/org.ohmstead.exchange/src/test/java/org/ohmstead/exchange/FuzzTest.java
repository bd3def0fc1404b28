// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.model.Specimen;
import org.ohmstead.testlog.TestLog;

/**
 * Files that were good and then changed at random: whatever comes of it, it is taken in as what it says or refused with the one
 * declared exception, and a refusal leaves nothing behind. The same rounds come each time, as many as fit into the time.
 */
class FuzzTest {
    private static final long SEED = 0x0855_7EAD;
    private static final int MOST_ROUNDS = 4000;
    private static final long NANOS_EACH = TimeUnit.SECONDS.toNanos(4);
    private static final int FEWEST_ROUNDS = 20;
    private static final ImportSettings PLAIN = ImportSettings.of(Samples.REVISION, "0.1.0");
    private static final PackLimits SMALL = new PackLimits(100, 4 << 20, 16 << 20, 100, 4 << 20);
    private static final List<String> NASTY = List.of(
            "\"",
            ",",
            ";",
            "\r",
            "\n",
            "\0",
            "\uFEFF",
            "'",
            "=1+1",
            "<",
            ">",
            "&",
            "&#0;",
            "]]>",
            "<!DOCTYPE a>",
            "{",
            "}",
            "[",
            "\\u0000",
            "\\ud800",
            "-",
            "1e400",
            "NaN",
            "99999999999999999999",
            "../",
            "/",
            ":");

    @TempDir
    private Path folder;

    private Path project;
    private TestLog log;

    @AfterEach
    void closeTheLog() throws Exception {
        log.close();
    }

    @BeforeEach
    void makeAProject() throws Exception {
        project = Samples.project(folder, "kestrel");
        String hash = Samples.capture(project, "RIFF level");
        log = Samples.log(project);
        log.append(Samples.reading(
                1,
                Samples.provenance(Optional.of(new Specimen("=Larkspur", "0042", "bench 1")), hash),
                "=note, \"quoted\""));
        log.append(Samples.reading(2));
        log.append(Samples.figures(1));
    }

    /** One try with changed bytes; says whether they were taken in. */
    private interface Attempt {
        boolean takes(byte[] bytes) throws Exception;
    }

    private void fuzz(List<Mutator> mutators, Attempt attempt) throws Exception {
        Random random = new Random(SEED);
        long end = System.nanoTime() + NANOS_EACH;
        int refused = 0;
        int rounds = 0;
        while (rounds < MOST_ROUNDS && (rounds < FEWEST_ROUNDS || System.nanoTime() < end)) {
            byte[] bytes = mutators.get(rounds % mutators.size()).mutated(random);
            String round = "round " + rounds + " of seed " + SEED;
            refused += assertDoesNotThrow(() -> attempt.takes(bytes), round) ? 0 : 1;
            rounds++;
        }
        assertTrue(refused > rounds / 10, refused + " of " + rounds + " were refused");
    }

    /** Gives other bytes each time. */
    private interface Mutator {
        byte[] mutated(Random random) throws Exception;
    }

    private static byte[] mutate(byte[] good, Random random) {
        byte[] bytes = good.clone();
        for (int change = 1 + random.nextInt(3); change > 0 && bytes.length > 0; change--) {
            int at = random.nextInt(bytes.length);
            int length = Math.min(bytes.length - at, 1 + random.nextInt(40));
            switch (random.nextInt(7)) {
                case 0 -> bytes[at] = (byte) random.nextInt();
                case 1 -> bytes[at] ^= (byte) (1 << random.nextInt(8));
                case 2 -> bytes = joined(bytes, at, new byte[0], at + length);
                case 3 -> bytes = joined(bytes, at, Arrays.copyOfRange(bytes, at, at + length), at);
                case 4 ->
                    bytes = joined(
                            bytes, at, NASTY.get(random.nextInt(NASTY.size())).getBytes(StandardCharsets.UTF_8), at);
                case 5 -> bytes = Arrays.copyOf(bytes, at);
                default -> {
                    byte[] noise = new byte[length];
                    random.nextBytes(noise);
                    bytes = joined(bytes, at, noise, at + length);
                }
            }
        }
        return bytes;
    }

    private static byte[] joined(byte[] bytes, int until, byte[] between, int from) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.write(bytes, 0, until);
        out.write(between, 0, between.length);
        out.write(bytes, from, bytes.length - from);
        return out.toByteArray();
    }

    /** Changes one of the files in a zip, and packs it properly again. */
    private static byte[] mutateInside(Map<String, byte[]> parts, Random random) throws Exception {
        List<String> names = new ArrayList<>(parts.keySet());
        String changed = names.get(random.nextInt(names.size()));
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (ZipOutputStream packed = new ZipOutputStream(out)) {
            for (Map.Entry<String, byte[]> part : parts.entrySet()) {
                boolean here = part.getKey().equals(changed);
                byte[] name = part.getKey().getBytes(StandardCharsets.UTF_8);
                boolean rename = here && random.nextInt(5) == 0;
                packed.putNextEntry(new ZipEntry(
                        rename ? new String(mutate(name, random), StandardCharsets.ISO_8859_1) : part.getKey()));
                packed.write(here && !rename ? mutate(part.getValue(), random) : part.getValue());
                packed.closeEntry();
            }
        }
        return out.toByteArray();
    }

    private static Map<String, byte[]> parts(Path file) throws Exception {
        Map<String, byte[]> parts = new LinkedHashMap<>();
        try (ZipFile zip = new ZipFile(file.toFile())) {
            for (ZipEntry entry : zip.stream().map(ZipEntry.class::cast).toList()) {
                try (InputStream in = zip.getInputStream(entry)) {
                    parts.put(entry.getName(), in.readAllBytes());
                }
            }
        }
        return parts;
    }

    private boolean imports(Path file, byte[] bytes) throws Exception {
        Files.write(file, bytes);
        List<String> before = Samples.everythingIn(folder);
        String head = log.headHash();
        try {
            ReadingImport.read(file, PLAIN).faults().forEach(ImportFault::text);
            return true;
        } catch (ExchangeException refusal) {
            assertFalse(refusal.causedOutside(), refusal.getMessage());
            assertFalse(refusal.getMessage().isBlank());
            return false;
        } finally {
            assertEquals(before, Samples.everythingIn(folder));
            assertEquals(head, log.headHash());
        }
    }

    @Test
    void survivesChangedTextTables() throws Exception {
        List<Mutator> mutators = new ArrayList<>();
        for (CsvDialect dialect : CsvDialect.values()) {
            Path file = folder.resolve(dialect + ".csv");
            ReadingsCsv.write(EntrySource.of(Samples.entries(log)), dialect, file);
            byte[] good = Files.readAllBytes(file);
            int heads = new String(good, StandardCharsets.UTF_8).indexOf("entry_hash");
            byte[] rest = Arrays.copyOfRange(good, heads, good.length);
            mutators.add(random -> mutate(good, random));
            // In the headings, where a change means most.
            mutators.add(random -> {
                byte[] changed = mutate(Arrays.copyOf(good, heads), random);
                return joined(changed, changed.length, rest, changed.length);
            });
        }
        fuzz(mutators, bytes -> imports(folder.resolve("changed.csv"), bytes));
    }

    @Test
    void survivesChangedWorkbooks() throws Exception {
        Path file = folder.resolve("good.xlsx");
        LogWorkbook.write(
                EntrySource.of(Samples.entries(log)),
                new LogWorkbook.About("Kestrel", "0.1.0", Instant.EPOCH, ""),
                file);
        byte[] good = Files.readAllBytes(file);
        Map<String, byte[]> parts = parts(file);
        fuzz(
                List.of(random -> mutate(good, random), random -> mutateInside(parts, random)),
                bytes -> imports(folder.resolve("changed.xlsx"), bytes));
    }

    @Test
    void survivesChangedLogLines() throws Exception {
        Path file = folder.resolve("good.jsonl");
        LogLines.write(log, new LogLines.Head("Kestrel", "0.1.0", Instant.EPOCH), file);
        byte[] good = Files.readAllBytes(file);
        String goodHead = log.headHash();
        Path changed = folder.resolve("changed.jsonl");
        Path rebuilt = folder.resolve("rebuilt.db");
        fuzz(List.of(random -> mutate(good, random)), bytes -> {
            Files.write(changed, bytes);
            List<String> before = Samples.everythingIn(folder);
            try {
                LogLines.rebuild(changed, rebuilt);
            } catch (ExchangeException refusal) {
                assertEquals(before, Samples.everythingIn(folder));
                return false;
            }
            try (TestLog back = TestLog.openReadOnly(rebuilt)) {
                // Only what does not belong to the chain may have changed, such as the title.
                assertEquals(goodHead, back.headHash());
            }
            deleteLog(rebuilt);
            return true;
        });
    }

    private static void deleteLog(Path file) throws Exception {
        for (String ending : List.of("", "-wal", "-shm")) {
            Files.deleteIfExists(file.resolveSibling(file.getFileName() + ending));
        }
    }

    @Test
    void survivesChangedPackedProjects() throws Exception {
        Path file = folder.resolve("good.zip");
        ProjectPack.pack(project, file, "0.1.0", ExchangeProgress.SILENT);
        byte[] good = Files.readAllBytes(file);
        Map<String, byte[]> parts = parts(file);
        Path changed = folder.resolve("changed.zip");
        Path target = folder.resolve("unpacked");
        String head = log.headHash();
        List<Mutator> mutators = List.of(
                random -> mutate(good, random),
                random -> mutateInside(parts, random),
                random -> withTrueHashes(parts, head, random));
        fuzz(mutators, bytes -> {
            Files.write(changed, bytes);
            List<String> before = Samples.everythingIn(folder);
            try {
                PackManifest manifest = ProjectPack.unpack(changed, target, SMALL, ExchangeProgress.SILENT);
                assertEquals(
                        manifest.files().stream()
                                .map(PackManifest.PackedFile::name)
                                .sorted()
                                .toList(),
                        filesIn(target));
                delete(target);
                return true;
            } catch (ExchangeException refusal) {
                assertFalse(Files.exists(target, LinkOption.NOFOLLOW_LINKS));
                assertFalse(refusal.getMessage().isBlank());
                return false;
            } finally {
                assertEquals(before, Samples.everythingIn(folder));
            }
        });
    }

    /** Changes the project or its log, with a manifest that knows of it, so that what reads them must find out. */
    private byte[] withTrueHashes(Map<String, byte[]> parts, String head, Random random) throws Exception {
        boolean changeLog = random.nextInt(3) > 0;
        byte[] json = parts.get("project.json");
        byte[] database = parts.get("log.db");
        Path made = new HandMadeZip()
                .file("project.json", changeLog ? json : mutate(json, random))
                .file("log.db", changeLog ? mutate(database, random) : database)
                .write(folder.resolve("made.zip"), head);
        byte[] bytes = Files.readAllBytes(made);
        Files.delete(made);
        return bytes;
    }

    private static List<String> filesIn(Path target) throws Exception {
        try (Stream<Path> all = Files.walk(target)) {
            return all.filter(Files::isRegularFile)
                    .map(path -> target.relativize(path).toString().replace('\\', '/'))
                    .sorted()
                    .toList();
        }
    }

    private static void delete(Path target) throws Exception {
        List<Path> all;
        try (Stream<Path> walked = Files.walk(target)) {
            all = new ArrayList<>(walked.toList());
        }
        for (int index = all.size() - 1; index >= 0; index--) {
            Files.delete(all.get(index));
        }
    }
}
