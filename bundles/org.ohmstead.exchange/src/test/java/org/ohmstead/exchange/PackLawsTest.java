// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.From;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tuple;
import net.jqwik.api.constraints.Size;
import org.ohmstead.model.Specimen;
import org.ohmstead.testlog.CaptureStore;
import org.ohmstead.testlog.ChainInfo;
import org.ohmstead.testlog.EntryKind;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.chain.ChainedRow;

/** What a project holds comes out of its pack again, byte by byte and entry by entry, or is said not to be in it. */
class PackLawsTest {
    private static final int MOST = 10_000;

    /** Something that is added to a log. */
    private enum Kind {
        READING,
        FIGURES,
        NOTE,
        VOID,
        JOIN
    }

    /** One such step, with a text for it and a number that chooses what it is about. */
    private record Step(Kind kind, String text, int number) {}

    /** A file, with the name that it has or would have. */
    private record Content(String name, byte[] bytes) {}

    @Provide
    Arbitrary<Step> steps() {
        Arbitrary<String> texts = Arbitraries.strings()
                .withCharRange(' ', '~')
                .withChars('\u0000', '\n', '\r', '\t', '\u007f', '\u00e9', '\u5b57', '\uffff')
                .ofMaxLength(30);
        return Combinators.combine(
                        Arbitraries.frequency(
                                Tuple.of(4, Kind.READING),
                                Tuple.of(2, Kind.FIGURES),
                                Tuple.of(2, Kind.NOTE),
                                Tuple.of(3, Kind.VOID),
                                Tuple.of(1, Kind.JOIN)),
                        texts,
                        Arbitraries.integers().between(0, 1000))
                .as(Step::new);
    }

    private static Arbitrary<byte[]> bytes() {
        Arbitrary<byte[]> few = Arbitraries.bytes().array(byte[].class).ofMaxSize(40);
        // Longer than what is read at once, and such that packing makes much of it.
        Arbitrary<byte[]> many = Combinators.combine(few, Arbitraries.integers().between(1, 70_000))
                .as((beginning, zeros) -> {
                    byte[] all = new byte[beginning.length + zeros];
                    System.arraycopy(beginning, 0, all, 0, beginning.length);
                    return all;
                });
        return Arbitraries.frequencyOf(Tuple.of(3, few), Tuple.of(1, many));
    }

    @Provide
    Arbitrary<Content> captures() {
        Arbitrary<String> names =
                Arbitraries.of("level.wav", "LEVEL.WAV", "sweep.flac", "scope.csv", "without", "a.tar.gz", "x.longer");
        return Combinators.combine(names, bytes()).as(Content::new);
    }

    @Provide
    Arbitrary<Content> sheets() {
        Arbitrary<String> stems = Arbitraries.frequencyOf(
                Tuple.of(
                        3,
                        Arbitraries.strings()
                                .withCharRange('a', 'c')
                                .withChars('A', 'B', 'Z', '0', ' ', '(', ')', '_', '.', '-')
                                .ofMinLength(1)
                                .ofMaxLength(6)),
                Tuple.of(2, Arbitraries.of("results", "Results", "RESULTS")),
                Tuple.of(
                        1,
                        Arbitraries.of(
                                "nul", "Com1", "u\u0308ber", "\u00fcber", "a\nb", "a\\b", "deep/a", "a".repeat(160))));
        Arbitrary<String> endings = Arbitraries.frequencyOf(
                Tuple.of(2, Arbitraries.of(".html", ".pdf")),
                Tuple.of(1, Arbitraries.of(".png", ".svg", ".csv", ".xlsx", ".json", ".jsonl", ".txt")),
                Tuple.of(1, Arbitraries.of(".HTML", ".exe", "")));
        return Combinators.combine(stems, endings, bytes())
                .as((stem, ending, content) -> new Content(stem + ending, content));
    }

    @Property(seed = "20261216", tries = 6)
    void aProjectComesOutOfItsPackAsItWas(
            @ForAll @Size(max = 6) List<@From("steps") Step> steps,
            @ForAll @Size(max = 4) List<@From("captures") Content> captures,
            @ForAll @Size(max = 8) List<@From("sheets") Content> sheets,
            @ForAll boolean open)
            throws Exception {
        Path folder = Files.createTempDirectory("ohmstead-pack");
        try {
            Path project = Samples.project(folder, "kestrel");
            Files.writeString(project.resolve("project.json"), " \r\n", StandardOpenOption.APPEND);
            List<String> hashes = storeCaptures(project, folder, captures);
            writeSheets(project, sheets);
            Path other = folder.resolve("other");
            try (TestLog log = Samples.log(project)) {
                fill(log, folder, steps, hashes);
                if (open) {
                    packThere(project, folder, other);
                }
            }
            if (!open) {
                packThere(project, folder, other);
            }
            assertSameLog(project, other);
        } finally {
            delete(folder);
        }
    }

    private static List<String> storeCaptures(Path project, Path folder, List<Content> captures) throws Exception {
        List<String> hashes = new ArrayList<>();
        for (Content capture : captures) {
            Path source = Files.write(folder.resolve(capture.name()), capture.bytes());
            hashes.add(new CaptureStore(project).store(source).sha256());
            Files.delete(source);
        }
        return hashes;
    }

    private static void writeSheets(Path project, List<Content> sheets) throws IOException {
        for (Content sheet : sheets) {
            Path file = project.resolve("sheets").resolve(sheet.name());
            Files.createDirectories(file.getParent());
            Files.write(file, sheet.bytes());
        }
    }

    private static void fill(TestLog log, Path folder, List<Step> steps, List<String> hashes) throws Exception {
        List<String> voidable = new ArrayList<>();
        for (Step step : steps) {
            String[] used = hashes.stream().limit(step.number() % 3).toArray(String[]::new);
            switch (step.kind()) {
                case READING ->
                    voidable.add(log.append(Samples.reading(
                                    step.number(),
                                    Samples.provenance(
                                            Optional.of(new Specimen("L " + step.text(), step.text(), "")), used),
                                    step.text()))
                            .id());
                case FIGURES ->
                    voidable.add(
                            log.append(Samples.figures(step.number(), used)).id());
                case NOTE ->
                    voidable.add(log.note("note " + step.text(), step.text()).id());
                case VOID -> {
                    if (!voidable.isEmpty()) {
                        log.voidEntry(
                                voidable.remove(step.number() % voidable.size()), "reason " + step.text(), step.text());
                    }
                }
                case JOIN -> join(log, folder, step);
            }
        }
    }

    private static void join(TestLog log, Path folder, Step step) throws Exception {
        Path file = Files.createTempFile(folder, "other", ".db");
        Files.delete(file);
        try (TestLog other = TestLog.open(file)) {
            other.note("theirs " + step.text(), "");
            other.append(Samples.reading(step.number()));
            other.voidEntry("N0001", "reason " + step.text(), "");
            log.join(other, "bench " + step.text(), step.text());
        }
    }

    private static void packThere(Path project, Path folder, Path other) throws Exception {
        Map<String, byte[]> before = files(project);
        ProjectPack.Packed packed =
                ProjectPack.pack(project, folder.resolve("kestrel.zip"), "0.1.0", ExchangeProgress.SILENT);
        PackManifest unpacked = ProjectPack.unpack(packed.file(), other, PackLimits.USUAL, ExchangeProgress.SILENT);
        assertEquals(packed.manifest(), unpacked);
        assertEquals(unpacked, ProjectPack.check(packed.file(), PackLimits.USUAL, ExchangeProgress.SILENT));
        Map<String, byte[]> after = files(other);
        List<String> missing = new ArrayList<>();
        before.forEach((name, bytes) -> {
            if (after.containsKey(name)) {
                assertArrayEquals(bytes, after.get(name), name);
            } else {
                missing.add(name);
            }
        });
        assertTrue(before.keySet().containsAll(after.keySet()), after.keySet().toString());
        assertEquals(missing.size(), packed.leftOut().size(), packed.leftOut().toString());
        missing.forEach(name -> assertTrue(
                packed.leftOut().stream().anyMatch(sentence -> sentence.startsWith(name + " ")),
                name + " is missing and not said to be: " + packed.leftOut()));
        TreeSet<String> kept = new TreeSet<>(String.CASE_INSENSITIVE_ORDER);
        after.keySet().forEach(name -> assertTrue(kept.add(name), name));
        missing.forEach(name -> assertFalse(belongs(name) && !kept.contains(name), name + " belongs into the pack"));
        assertEquals(before.keySet(), files(project).keySet());
    }

    /** What may not be left out, unless something else of nearly the same name is there. */
    private static boolean belongs(String name) {
        return name.equals("project.json")
                || name.startsWith("captures/")
                || name.matches("sheets/[A-Za-z0-9][A-Za-z0-9 ()_.-]*\\.(html|pdf|png|svg|csv|xlsx|json|jsonl|txt)")
                        && name.length() < 150
                        && !name.toLowerCase(Locale.ROOT).matches("sheets/(nul|com1)\\..*");
    }

    /** Returns every file but those of the log. */
    private static Map<String, byte[]> files(Path folder) throws IOException {
        Map<String, byte[]> files = new TreeMap<>();
        try (Stream<Path> all = Files.walk(folder)) {
            for (Path file : all.filter(Files::isRegularFile).toList()) {
                String name = folder.relativize(file).toString();
                if (!name.startsWith(TestLog.FILE_NAME)) {
                    files.put(name, Files.readAllBytes(file));
                }
            }
        }
        return files;
    }

    private static void assertSameLog(Path project, Path other) throws Exception {
        try (TestLog log = Samples.log(project);
                TestLog back = Samples.log(other)) {
            assertEquals(List.of(), back.verify(Optional.of(log.headHash())).faults());
            assertEquals(log.headHash(), back.headHash());
            assertEquals(Samples.entries(log), Samples.entries(back));
            assertEquals(log.chains(), back.chains());
            for (ChainInfo chain : log.chains()) {
                List<ChainedRow> rows = log.rows().rows(chain.chain(), 0, MOST);
                assertEquals(chain.entries(), rows.size());
                assertEquals(rows, back.rows().rows(chain.chain(), 0, MOST));
            }
            LogEntry next = log.note("goes on", "");
            LogEntry nextBack = back.note("goes on", "");
            assertEquals(EntryKind.NOTE, nextBack.kind());
            assertEquals(next.id(), nextBack.id());
            assertEquals(next.previousHash(), nextBack.previousHash());
        }
    }

    private static void delete(Path folder) throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(file);
            }
        }
    }
}
