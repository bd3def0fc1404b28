// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange.internal;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.ohmstead.model.CaptureUsed;
import org.ohmstead.model.MeasuredFigures;
import org.ohmstead.model.Reading;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.LogQuery;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.testlog.TestLogException;

/** Which captures a log names, which of them lie in archives, and which files there are. */
public final class CaptureUses {
    private final Map<String, Use> uses = new TreeMap<>();
    private final Map<String, String> archives = new HashMap<>();

    private CaptureUses() {}

    /** How the log uses a capture. */
    public static final class Use {
        private final String fileName;
        private final String firstEntry;
        private int entries;
        private boolean own;
        private boolean counts;
        private Instant latest = Instant.MIN;

        private Use(String fileName, String firstEntry) {
            this.fileName = fileName;
            this.firstEntry = firstEntry;
        }

        /** Returns the name under which it was handed in. */
        public String fileName() {
            return fileName;
        }

        /** Returns the id of the first entry that names it. */
        public String firstEntry() {
            return firstEntry;
        }

        /** Returns how many entries name it. */
        public int entries() {
            return entries;
        }

        /** Returns whether an entry of this bench names it, and not only those of a log that was joined. */
        public boolean own() {
            return own;
        }

        /** Returns whether an entry names it that was not voided. */
        public boolean counts() {
            return counts;
        }

        /** Returns when the latest reading that names it was taken. */
        public Instant latest() {
            return latest;
        }
    }

    /** Looks through a whole log. */
    public static CaptureUses of(TestLog log) throws TestLogException {
        CaptureUses all = new CaptureUses();
        log.forEach(LogQuery.everything(), all::take);
        return all;
    }

    private void take(LogEntry entry) {
        if (entry.reading().isPresent()) {
            Reading reading = entry.reading().get();
            take(entry, reading.provenance().captures(), reading.takenAt());
        } else if (entry.figures().isPresent()) {
            MeasuredFigures figures = entry.figures().get();
            take(entry, figures.provenance().captures(), figures.takenAt());
        }
        entry.archive().ifPresent(note -> note.capturesTakenOut().forEach(hash -> archives.put(hash, note.fileName())));
    }

    private void take(LogEntry entry, List<CaptureUsed> captures, Instant takenAt) {
        for (CaptureUsed capture : captures) {
            Use use = uses.computeIfAbsent(capture.sha256(), any -> new Use(capture.fileName(), entry.id()));
            use.entries++;
            use.own |= entry.chain().isEmpty();
            use.counts |= !entry.voided();
            use.latest = takenAt.isAfter(use.latest) ? takenAt : use.latest;
        }
    }

    /** Returns what is named, by hash. */
    public Map<String, Use> uses() {
        return uses;
    }

    /** Returns the name of the archive that a capture was taken out into. */
    public Optional<String> archive(String sha256) {
        return Optional.ofNullable(archives.get(sha256));
    }

    /** Returns the files of a project's store by the hash in their name; those without one by "". */
    public static Map<String, List<Path>> files(Path project) throws IOException {
        Path store = project.resolve(PackPlaces.CAPTURES);
        Map<String, List<Path>> files = new TreeMap<>();
        if (!Files.isDirectory(store)) {
            return files;
        }
        try (Stream<Path> all = Files.walk(store)) {
            all.filter(file -> !Files.isDirectory(file, LinkOption.NOFOLLOW_LINKS))
                    .sorted()
                    .forEach(file -> files.computeIfAbsent(hash(project, file), any -> new ArrayList<>())
                            .add(file));
        }
        return files;
    }

    private static String hash(Path project, Path file) {
        List<String> parts = new ArrayList<>();
        project.relativize(file).forEach(part -> parts.add(part.toString()));
        return PackPlaces.captureHash(String.join("/", parts)).orElse("");
    }
}
