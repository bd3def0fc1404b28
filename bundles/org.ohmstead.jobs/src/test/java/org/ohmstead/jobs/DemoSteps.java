// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.jobs;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.LogQuery;
import org.ohmstead.testlog.TestLog;

/** The demo's project with the recordings of only a few of its steps. */
final class DemoSteps {
    static final DemoData DATA = new DemoData(Path.of("..", "..", "demo-data").toAbsolutePath());
    static final String VERSION = "0.1.0";
    static final List<String> FIVE = List.of(
            "stereo-8ohm-11V5", "stereo-4ohm-14V4", "stereo-2ohm-12V5", "bridged-4ohm-14V4", "burst-stereo-4ohm-14V4");

    private DemoSteps() {}

    /** Returns a new project in a folder, with no log. */
    static ProjectFolder project(Path folder) throws Exception {
        return ProjectFolder.open(DemoProject.freshCopy(DATA, folder));
    }

    /** Returns a new folder with the recordings of the given steps, their list in reverse order. */
    static Path recordings(Path folder, List<String> stepIds) throws IOException {
        Files.createDirectories(folder);
        List<String> lines = Files.readAllLines(DATA.recordingsFolder().resolve(ReplayJob.LIST_NAME));
        List<String> wanted = lines.stream()
                .filter(line -> stepIds.stream().anyMatch(id -> line.contains("\"step\": \"" + id + "\"")))
                .map(line -> line.strip().replaceAll(",$", ""))
                .sorted((a, b) -> lines.indexOf("    " + b) - lines.indexOf("    " + a))
                .toList();
        for (String line : wanted) {
            String file = line.replaceAll(".*\"file\": \"([^\"]+)\".*", "$1");
            Files.copy(DATA.recordingsFolder().resolve(file), folder.resolve(file));
        }
        Files.writeString(
                folder.resolve(ReplayJob.LIST_NAME),
                wanted.stream()
                        .collect(Collectors.joining(
                                ",\n", "{\"formatVersion\": 1, \"operator\": \"T. Est\", \"recordings\": [\n", "]}")));
        return folder;
    }

    static List<LogEntry> entries(ProjectFolder folder) throws Exception {
        try (TestLog log = folder.readLog()) {
            return log.entries(LogQuery.everything());
        }
    }

    /** Changes a text in the log's file behind its back, to another of the same length. */
    static void tamper(ProjectFolder folder, String text, String other) throws IOException {
        String content = Files.readString(folder.logFile(), StandardCharsets.ISO_8859_1);
        if (!content.contains(text) || text.length() != other.length()) {
            throw new IllegalArgumentException("text is '" + text + "'; it must stand in the log");
        }
        Files.writeString(folder.logFile(), content.replace(text, other), StandardCharsets.ISO_8859_1);
    }

    static List<Path> filesIn(Path folder) {
        try (Stream<Path> files = Files.walk(folder)) {
            return files.filter(Files::isRegularFile).sorted().toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
