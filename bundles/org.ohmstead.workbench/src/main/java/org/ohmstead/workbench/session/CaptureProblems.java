// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.ohmstead.model.CaptureUsed;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Severity;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.units.text.Messages;

/** Which captures of readings that count are not in the project's folder. Looks at names only, not at content. */
final class CaptureProblems implements ProblemProvider {
    private static final Messages TEXTS = Messages.of(CaptureProblems.class);
    private static final int MOST_REPORTED = 20;
    private static final int HASH_DIGITS = 64;

    @Override
    public String name() {
        return TEXTS.text("captures.name");
    }

    @Override
    public List<Problem> problems(ProjectView view) {
        List<LogEntry> readings = view.log().entries().stream()
                .filter(entry -> !entry.voided() && entry.reading().isPresent())
                .toList();
        if (readings.isEmpty()) {
            return List.of();
        }
        Set<String> there = hashesIn(view.folder().resolve("captures"));
        List<Problem> problems = new ArrayList<>();
        for (LogEntry entry : readings) {
            List<CaptureUsed> missing = entry.reading().orElseThrow().provenance().captures().stream()
                    .filter(capture -> !there.contains(capture.sha256()))
                    .toList();
            if (!missing.isEmpty() && problems.size() < MOST_REPORTED) {
                problems.add(problem(entry, missing));
            }
        }
        return problems;
    }

    private static Problem problem(LogEntry entry, List<CaptureUsed> missing) {
        String what = missing.size() == 1
                ? TEXTS.text("captures.missing.one", entry.id(), missing.get(0).fileName())
                : TEXTS.text(
                        "captures.missing.many",
                        Integer.toString(missing.size()),
                        entry.id(),
                        missing.get(0).fileName());
        return new Problem(
                Severity.WARNING, TestLog.FILE_NAME + "#" + entry.id(), what, TEXTS.text("captures.missing.remedy"));
    }

    private static Set<String> hashesIn(Path captures) {
        if (!Files.isDirectory(captures)) {
            return Set.of();
        }
        try (Stream<Path> files = Files.find(captures, 2, (path, attributes) -> attributes.isRegularFile())) {
            return files.map(file -> file.getFileName().toString())
                    .filter(name -> name.length() > HASH_DIGITS)
                    .map(name -> name.substring(0, HASH_DIGITS))
                    .collect(Collectors.toSet());
        } catch (IOException failure) {
            throw new UncheckedIOException(TEXTS.text("captures.unlisted", captures), failure);
        }
    }
}
